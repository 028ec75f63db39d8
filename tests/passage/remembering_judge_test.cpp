// A judge that remembers: the same answers to the last digit, and nothing worked out twice.
#include "passage/remembering_judge.h"

#include <doctest/doctest.h>

#include <sstream>
#include <string>
#include <vector>

#include "passage/demo_scene.h"
#include "passage/stretch_judge.h"

namespace rimehaul::passage {

namespace {

using testing::mid_morning;
using trails::LegId;
using units::Instant;
using units::Metres;

/// Snow that counts how often somebody asks for it.
class CountedSnow final : public snow::SnowAt {
 public:
  explicit CountedSnow(snow::Wetness wetness) : snow_{testing::snow_of(wetness)} {}

  [[nodiscard]] std::optional<snow::SnowState> at(const snow::PlaceAndHour& where) const override {
    ++asked_;
    return snow_.at(where);
  }
  [[nodiscard]] const snow::DayWeather& weather() const override { return snow_.weather(); }
  [[nodiscard]] snow::Told told_by() const override { return snow_.told_by(); }
  [[nodiscard]] std::vector<Instant> turning_moments(units::Period during) const override {
    return snow_.turning_moments(during);
  }

  /// How often since this was last asked.
  [[nodiscard]] int asked() const { return std::exchange(asked_, 0); }

 private:
  snow::ConstantSnow snow_;
  mutable int asked_ = 0;
};

Scene two_ways() {
  return testing::scene_of({.ground = testing::rolling()}, testing::two_ways());
}

/// Every number to the last digit.
class Written {
 public:
  Written() { out_ << std::hexfloat; }

  Written& add(double number) {
    out_ << number << ' ';
    return *this;
  }
  Written& add(const std::string& words) {
    out_ << '"' << words << "\" ";
    return *this;
  }
  Written& add(const Finding& finding) {
    out_ << static_cast<int>(finding.check) << ' ' << static_cast<int>(finding.measure) << ' '
         << static_cast<int>(finding.tank) << ' ';
    add(finding.demand.value).add(finding.capacity.value).add(finding.share.value_or(-1));
    add(std::string{finding.how}).add(std::string{finding.formula});
    add(finding.missing).add(finding.refused).add(finding.asks).add(finding.at.value());
    for (const Input& input : finding.inputs.all()) {
      add(std::string{input.name}).add(input.value.value);
    }
    return *this;
  }
  Written& add(const std::vector<Finding>& findings) {
    for (const Finding& finding : findings) {
      add(finding);
    }
    return *this;
  }
  [[nodiscard]] std::string text() const { return out_.str(); }

 private:
  std::ostringstream out_;
};

std::string text_of(const LegJudgement& leg) {
  Written written;
  written.add(leg.findings).add(words_for(leg.verdict)).add(static_cast<double>(leg.binding));
  for (const double number :
       {leg.allowed_share, leg.length.value(), leg.climb.value(), leg.drop.value(),
        leg.slowest.value(), leg.time.value(), leg.fuel.value(),
        leg.hours.staying.value_or(units::Seconds{-1}).value(), leg.hours.settled ? 1.0 : 0.0}) {
    written.add(number);
  }
  for (const auto& steepest : {leg.steepest_up, leg.steepest_down, leg.steepest_across}) {
    written.add(steepest->found.ratio()).add(steepest->up_to.ratio()).add(steepest->at.value());
  }
  for (const PieceDrive& piece : leg.pieces) {
    written.add(piece.span.from.value()).add(piece.span.to.value()).add(piece.speed.value());
  }
  for (const Instant hour : leg.hours.asked) {
    written.add(units::text_of(hour));
  }
  return written.text();
}

std::string text_of(const TurnJudgement& turn) {
  return Written{}.add(turn.findings).add(turn.binding).add(words_for(turn.verdict)).text();
}

std::vector<LegId> legs_of(const Scene& scene) {
  std::vector<LegId> legs;
  for (std::uint32_t i = 0; i < scene.network.legs.size(); ++i) {
    legs.push_back(LegId{i});
  }
  return legs;
}

}  // namespace

TEST_CASE("asked once or twice, it answers of every leg and turn as the judge does") {
  const Scene scene = two_ways();
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::moist);
    const Judge judge{scene, rig, snow};
    GroundMemory ground;
    const RememberingJudge remembering{judge, ground};
    const Instant late = units::after(mid_morning(), units::Seconds{5 * 3600});
    for (const LegId leg : legs_of(scene)) {
      CHECK(remembering.at_best(leg).time == judge.at_best(leg).time);
      CHECK(remembering.at_best(leg).fuel == judge.at_best(leg).fuel);
      for (const Instant entry : {mid_morning(), late, mid_morning()}) {
        const std::string plain = text_of(judge.judge(leg, entry));
        CHECK(text_of(remembering.judge(leg, entry)) == plain);
        for (const LegId next : legs_of(scene)) {
          if (scene.network.legs[static_cast<std::size_t>(next)].from ==
              scene.network.legs[static_cast<std::size_t>(leg)].to) {
            const std::string turned = text_of(judge.judge_turn(leg, next, entry));
            CHECK(text_of(remembering.judge_turn(leg, next, entry)) == turned);
          }
        }
      }
    }
    CHECK(text_of(judge.judge(LegId{0}, late)) != text_of(judge.judge(LegId{0}, mid_morning())));
  }
}

TEST_CASE("each leg is judged once for each hour, each turn once for each hour and way") {
  const Scene scene = two_ways();
  const rig::Rig rig = testing::solo_rig();
  const CountedSnow snow{snow::Wetness::dry};
  const Judge judge{scene, rig, snow};
  GroundMemory ground;
  const RememberingJudge remembering{judge, ground};
  const Instant entry = mid_morning();
  const Instant later = units::after(entry, units::Seconds{60});
  const auto judged = [&](LegId leg, Instant when) {
    (void)remembering.judge(leg, when);
    return snow.asked() > 0;
  };
  CHECK(judged(LegId{0}, entry));
  CHECK_FALSE(judged(LegId{0}, entry));
  CHECK(judged(LegId{1}, entry));
  CHECK(judged(LegId{0}, later));
  CHECK_FALSE(judged(LegId{1}, entry));
  CHECK_FALSE(judged(LegId{0}, later));
  CHECK_FALSE(judged(LegId{0}, entry));

  const auto turned = [&](LegId from, LegId to, Instant when) {
    (void)remembering.judge_turn(from, to, when);
    return snow.asked() > 0;
  };
  CHECK(turned(LegId{0}, LegId{1}, entry));
  CHECK_FALSE(turned(LegId{0}, LegId{1}, entry));
  CHECK(turned(LegId{1}, LegId{0}, entry));
  CHECK(turned(LegId{0}, LegId{2}, entry));
  CHECK(turned(LegId{0}, LegId{1}, later));
  CHECK_FALSE(turned(LegId{1}, LegId{0}, entry));
  CHECK_FALSE(turned(LegId{0}, LegId{2}, entry));
  CHECK_FALSE(turned(LegId{0}, LegId{1}, later));
  CHECK_FALSE(turned(LegId{0}, LegId{1}, entry));
}

TEST_CASE("the ground of a leg is measured once, for every load and hour, and judged as it was") {
  const Scene scene = two_ways();
  const rig::Rig light = testing::towing_rig();
  rig::Rig heavy = light;
  heavy.load.bed = units::Kilograms{240};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const Judge of_light{scene, light, snow};
  const Judge of_heavy{scene, heavy, snow};
  GroundMemory ground;
  const RememberingJudge one{of_light, ground};
  const RememberingJudge other{of_heavy, ground};
  CHECK(ground.empty());
  CHECK(text_of(one.judge(LegId{2}, mid_morning())) ==
        text_of(of_light.judge(LegId{2}, mid_morning())));
  REQUIRE(ground.size() == 1);
  const std::vector<Footfall>* measured = &ground.at(LegId{2});
  CHECK(measured->size() == ground_under(scene, light, of_light.stretch_of(LegId{2})).size());
  CHECK(&ground_under(LegId{2}, of_heavy, ground) == measured);
  CHECK(text_of(other.judge(LegId{2}, mid_morning())) ==
        text_of(of_heavy.judge(LegId{2}, mid_morning())));
  CHECK(text_of(other.judge(LegId{2}, mid_morning())) !=
        text_of(one.judge(LegId{2}, mid_morning())));
  CHECK(ground.size() == 1);

  // Of a leg that it holds the memory asks nobody: not even whether there is such a leg.
  constexpr LegId kNoLeg{999};
  GroundMemory told{{kNoLeg, *measured}};
  CHECK(&ground_under(kNoLeg, of_light, told) == &told.at(kNoLeg));

  // What lies in the memory is what is judged: were it unknown, the leg would be closed.
  GroundMemory unknown = ground;
  for (Footfall& footfall : unknown.at(LegId{2})) {
    footfall.carrier.reset();
  }
  const RememberingJudge blind{of_light, unknown};
  CHECK(one.judge(LegId{2}, mid_morning()).verdict == Verdict::open);
  CHECK(blind.judge(LegId{2}, mid_morning()).verdict == Verdict::closed);
  CHECK(blind.judge(LegId{2}, mid_morning()).bind().check == Check::heights_known);
  CHECK(unknown.size() == 1);
}

}  // namespace rimehaul::passage
