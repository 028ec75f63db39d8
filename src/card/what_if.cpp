#include "card/what_if.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace rimehaul::card {

namespace {

using passage::Footfall;
using passage::Judge;
using terrain::AttitudeBox;
using units::Kilograms;
using units::Metres;
using units::Slope;

using Shares = std::vector<passage::PlaceFinding>;

Slope turned(Slope slope, double degrees) {
  return Slope::from_degrees(slope.degrees() + degrees);
}

AttitudeBox steeper(AttitudeBox box, double degrees) {
  box.grade_low = turned(box.grade_low, degrees);
  box.grade_high = turned(box.grade_high, degrees);
  return box;
}

AttitudeBox steeper_across(AttitudeBox box, double degrees) {
  const bool to_the_right = box.cross_high.ratio() >= -box.cross_low.ratio();
  const double turn = to_the_right ? degrees : -degrees;
  box.cross_low = turned(box.cross_low, turn);
  box.cross_high = turned(box.cross_high, turn);
  return box;
}

/// The ground under carrier and trailer, changed.
template <class Change>
Footfall with_ground(Footfall footfall, const Change& change) {
  for (std::optional<AttitudeBox>* box : {&footfall.carrier, &footfall.trailer}) {
    if (box->has_value()) {
      *box = change(**box);
    }
  }
  return footfall;
}

/// All masses of carrier and trailer higher.
rig::Rig raised(rig::Rig rig, Metres by) {
  rig::Carrier& carrier = rig.carrier;
  for (rig::BodyPoint* at :
       {&carrier.empty.at, &carrier.driver_at, &carrier.bed_at, &carrier.tank_at}) {
    at->up += by;
  }
  for (rig::BodyPoint& seat : carrier.seats) {
    seat.up += by;
  }
  if (rig.trailer) {
    rig.trailer->empty.at.up += by;
    rig.trailer->bed_at.up += by;
  }
  return rig;
}

/// The same snow, a class wetter.
class Wetter final : public snow::SnowAt {
 public:
  explicit Wetter(const snow::SnowAt& snow) : snow_{&snow} {}

  [[nodiscard]] std::optional<snow::SnowState> at(const snow::PlaceAndHour& where) const override {
    std::optional<snow::SnowState> state = snow_->at(where);
    if (state && state->wetness != snow::Wetness::slush) {
      state->wetness = static_cast<snow::Wetness>(static_cast<int>(state->wetness) + 1);
    }
    return state;
  }
  [[nodiscard]] const snow::DayWeather& weather() const override { return snow_->weather(); }
  [[nodiscard]] snow::Told told_by() const override { return snow_->told_by(); }
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period during) const override {
    return snow_->turning_moments(during);
  }

 private:
  const snow::SnowAt* snow_;
};

/// Judges the place again and again, and notes what moves.
class Sensitivity {
 public:
  Sensitivity(const Judge& judge, const AskedPlace& place)
      : judge_{judge}, place_{place}, now_{shares_of(judge, place.footfall)} {
    for (const passage::PlaceFinding& found : now_) {
      if (found.finding.measure == passage::Measure::share) {
        moving_.push_back({found.finding.check, found.finding.share, {}});
      }
    }
  }

  void with_ground_of(std::string_view change, const Footfall& footfall) {
    note(change, shares_of(judge_, footfall));
  }
  void with_rig(std::string_view change, const rig::Rig& rig) {
    note(change, shares_of(judge_.with_rig(rig), place_.footfall));
  }
  void with_snow(std::string_view change, const snow::SnowAt& snow) {
    note(change, shares_of(judge_.with_snow(snow), place_.footfall));
  }

  [[nodiscard]] std::vector<MovingShare> take() && { return std::move(moving_); }

 private:
  [[nodiscard]] Shares shares_of(const Judge& judge, const Footfall& footfall) const {
    return judge.findings_at(place_.stretch, footfall, place_.hours);
  }

  void note(std::string_view change, const Shares& then) {
    constexpr double kStill = 5e-4;
    for (MovingShare& moving : moving_) {
      const auto found = std::ranges::find(then, moving.check,
                                           [](const auto& place) { return place.finding.check; });
      const std::optional<double> share = found == then.end() ? std::nullopt : found->finding.share;
      const bool still = share.has_value() == moving.now.has_value() &&
                         (!share || std::abs(*share - *moving.now) <= kStill);
      if (!still) {
        moving.then.push_back({change, share});
      }
    }
  }

  const Judge& judge_;
  const AskedPlace& place_;
  Shares now_;
  std::vector<MovingShare> moving_;
};

}  // namespace

std::vector<MovingShare> what_if(const Judge& judge, const AskedPlace& place) {
  constexpr Kilograms kMore{10};
  constexpr Metres kHigher{0.1};
  Sensitivity sensitivity{judge, place};
  const auto turn = [&](double degrees) {
    return with_ground(place.footfall,
                       [&](const AttitudeBox& box) { return steeper(box, degrees); });
  };
  sensitivity.with_ground_of("1 deg more up", turn(1.0));
  sensitivity.with_ground_of("1 deg more down", turn(-1.0));
  sensitivity.with_ground_of(
      "1 deg more across",
      with_ground(place.footfall, [](const AttitudeBox& box) { return steeper_across(box, 1.0); }));
  rig::Rig loaded = judge.rig();
  loaded.load.bed += kMore;
  sensitivity.with_rig("10 kg more on the bed", loaded);
  if (judge.rig().trailer) {
    loaded = judge.rig();
    loaded.load.towed += kMore;
    sensitivity.with_rig("10 kg more on the trailer", loaded);
  }
  const Wetter wetter{judge.snow()};
  sensitivity.with_snow("a class wetter", wetter);
  const rig::Rig high = raised(judge.rig(), kHigher);
  sensitivity.with_rig("centres 0.1 m higher", high);
  return std::move(sensitivity).take();
}

}  // namespace rimehaul::card
