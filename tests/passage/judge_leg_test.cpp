// Legs walked piece by piece where something changes on the way, or is known of a part only.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "base/require.h"
#include "near.h"
#include "passage/course.h"
#include "passage/demo_scene.h"
#include "passage/judge.h"

namespace rimehaul::passage {

namespace {

using snow::Surface;
using snow::Wetness;
using testing::mid_morning;
using testing::near;
using trails::LegId;
using units::Metres;
using units::MetresPerSecond;

Scene straight_on(testing::Surface surface) {
  return testing::scene_of({std::move(surface)}, testing::straight_trail(0));
}

Finding finding_of(const LegJudgement& judgement, Check check) {
  const auto found = std::ranges::find(judgement.findings, check, &Finding::check);
  REQUIRE(found != judgement.findings.end());
  return *found;
}

/// What was seen on ground that falls to the east, and to the west; on level ground both count.
snow::SnowReport report_of(std::optional<Wetness> east_half, std::optional<Wetness> west_half) {
  snow::SnowReport said;
  said.weather = testing::plain_weather();
  said.observer = "N. N.";
  said.observed = mid_morning();
  said.valid_until = units::after(mid_morning(), units::Seconds{36'000});
  const auto band = [&said](double from_deg, double to_deg, Wetness wetness) {
    said.bands.push_back({.above = {},
                          .below = {},
                          .aspect_from = units::Bearing::from_degrees(from_deg),
                          .aspect_to = units::Bearing::from_degrees(to_deg),
                          .state = {wetness, Surface::groomed}});
  };
  if (east_half) {
    band(0, 180, *east_half);
  }
  if (west_half) {
    band(180, 0, *west_half);
  }
  return said;
}

/// Wetter every time it is asked for another hour.
class SnowThatMelts : public snow::SnowAt {
 public:
  [[nodiscard]] std::optional<snow::SnowState> at(const snow::PlaceAndHour& where) const override {
    auto hour = std::ranges::find(hours_, where.when);
    if (hour == hours_.end()) {
      hour = hours_.insert(hour, where.when);
    }
    return snow::SnowState{static_cast<Wetness>(hour - hours_.begin()), Surface::groomed};
  }
  [[nodiscard]] const snow::DayWeather& weather() const override { return weather_; }
  [[nodiscard]] snow::Told told_by() const override { return {"told for a test", {}}; }
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period) const override {
    return {};  // nobody asks for them here
  }

 private:
  snow::DayWeather weather_ = testing::plain_weather();
  mutable std::vector<units::Instant> hours_;
};

/// Grip that holds everywhere and drags the more the wetter the snow is.
snow::GripLaw dragging() {
  using units::ForceRatio;
  std::vector<snow::MeasuredGrip> law;
  for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
    snow::MeasuredGrip grip;
    grip.state = {static_cast<Wetness>(wetness), Surface::groomed};
    grip.traction = grip.brake = grip.lateral = grip.trailer_lateral = ForceRatio{0.9};
    const ForceRatio drag{0.05 + 0.02 * wetness};
    grip.carrier_resistance = snow::ForceRange{drag, drag};
    grip.source = "told for a test";
    law.push_back(grip);
  }
  return snow::GripLaw{law};
}

TEST_CASE("a leg of which no ground was measured is closed, and neither driven nor left") {
  const Scene scene = straight_on(testing::plane(0, 0.02));
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  const Judge judge{scene, rig, snow};
  const LegJudgement judgement = judge.judge_over(judge.stretch_of(LegId{0}), {}, mid_morning());
  CHECK(judgement.verdict == Verdict::closed);
  const Finding no_ground = finding_of(judgement, Check::heights_known);
  CHECK(no_ground.missing == "ground of this stretch");
  CHECK(no_ground.at == Metres{0});
  CHECK(judgement.slowest == MetresPerSecond{0});
  CHECK(judgement.time.value() == HUGE_VAL);
  CHECK(std::isnan(judgement.fuel.value()));
  CHECK_FALSE(judgement.hours.staying.has_value());
  CHECK(judgement.pieces.empty());
}

TEST_CASE("snow that is worse every time it is asked closes the leg, there and at its places") {
  Scene scene = straight_on(testing::plane(0, 0));
  scene.rules.grip = dragging();
  rig::Rig rig = testing::solo_rig();
  rig.carrier.engine_power = units::Watts{6'000};
  const snow::ConstantSnow slush = testing::snow_of(Wetness::slush);
  REQUIRE(Judge{scene, rig, slush}.judge(LegId{0}, mid_morning()).verdict == Verdict::open);
  const SnowThatMelts melting;
  const Judge judge{scene, rig, melting};
  const LegJudgement judgement = judge.judge(LegId{0}, mid_morning());
  CHECK(judgement.verdict == Verdict::closed);
  CHECK(finding_of(judgement, Check::snow_known).missing ==
        "snow that stays while the leg is driven");
  CHECK_FALSE(judgement.hours.settled);
  REQUIRE(judgement.hours.asked.size() == 5);
  CHECK(std::ranges::is_sorted(judgement.hours.asked));
  CHECK(judgement.snow.size() == 5);
  const Stretch stretch = judge.stretch_of(LegId{0});
  const Footfall step = footfalls(scene, stretch.line, rig, Metres{1})[3];
  const auto here = judge.findings_at(stretch, step, judgement.hours);
  const auto of_snow = std::ranges::find_if(
      here, [](const PlaceFinding& found) { return found.finding.check == Check::snow_known; });
  REQUIRE(of_snow != here.end());
  CHECK(of_snow->finding.missing == "snow that stays while the leg is driven");
}

TEST_CASE("a place is looked at for the hours of its leg, and for none it is not") {
  const Scene scene = straight_on(testing::plane(0, 0));
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  const Judge judge{scene, rig, snow};
  const Stretch stretch = judge.stretch_of(LegId{0});
  const Footfall step = footfalls(scene, stretch.line, rig, Metres{1})[3];
  CHECK_FALSE(judge.findings_at(stretch, step, {.asked = {mid_morning()}, .staying = {}}).empty());
  CHECK_THROWS_AS((void)judge.findings_at(stretch, step, HoursOnLeg{}), base::OurFault);
}

TEST_CASE("who never leaves the leg is outside its hours, there and at its places") {
  Scene scene = straight_on(testing::plane(0, 0));
  scene.network.trails[0].hours = trails::OpenHours{{0}, {1439}};
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  const Judge judge{scene, rig, snow};
  const Stretch stretch = judge.stretch_of(LegId{0});
  const std::vector<Footfall> ground = footfalls(scene, stretch.line, rig, Metres{1});
  for (const double speed : {0.0, std::nan("")}) {
    const LegJudgement judgement =
        judge.judge_driven(stretch, ground, {mid_morning(), MetresPerSecond{speed}});
    CHECK(judgement.verdict == Verdict::closed);
    CHECK_FALSE(finding_of(judgement, Check::hours).refused.empty());
    CHECK(judgement.hours.asked == std::vector{mid_morning()});  // it is never left at another hour
    const auto here = judge.findings_at(stretch, ground[3], judgement.hours);
    CHECK(std::ranges::any_of(here, [](const PlaceFinding& found) {
      return found.finding.check == Check::hours && !found.finding.refused.empty();
    }));
  }
}

TEST_CASE("a piece whose snow is known for some aspects only is driven at no speed") {
  const Scene scene = straight_on(testing::plane(0, 0));
  const rig::Rig rig = testing::solo_rig();
  const snow::ReportedSnow half{report_of(Wetness::dry, std::nullopt)};
  const LegJudgement judgement = Judge{scene, rig, half}.judge(LegId{0}, mid_morning());
  CHECK(judgement.verdict == Verdict::closed);
  CHECK(finding_of(judgement, Check::snow_known).missing == kNoSnowHere);
  CHECK(judgement.slowest == MetresPerSecond{0});
  REQUIRE_FALSE(judgement.pieces.empty());
  for (const PieceDrive& piece : judgement.pieces) {
    CHECK(piece.speed == MetresPerSecond{0});
    CHECK(piece.snow == std::vector{snow::SnowState{Wetness::dry, Surface::groomed}});
  }
}

TEST_CASE("known snow of which no grip is known closes the leg and costs no known fuel") {
  const Scene scene = straight_on(testing::plane(0, 0));
  rig::Rig rig = testing::solo_rig();
  rig.carrier.contact_area = units::SquareMetres{0};
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  const LegJudgement judgement = Judge{scene, rig, snow}.judge(LegId{0}, mid_morning());
  CHECK(judgement.verdict == Verdict::closed);
  CHECK(finding_of(judgement, Check::snow_known).missing == "grip of this snow for this rig");
  CHECK(judgement.slowest == MetresPerSecond{0});
  CHECK(judgement.pieces.empty());
  CHECK(std::isnan(judgement.fuel.value()));
}

TEST_CASE("what lies near steep ground is told in whole spans, whatever snow lies there") {
  // Ground of 35 degrees, 20 m beside the trail, over against its first 10 m and from 200 to 210 m.
  const Scene scene = straight_on([](double east, double north) {
    const bool beside = (0 <= north && north <= 10) || (200 <= north && north <= 210);
    return 1000 + (beside && east > 20 ? 0.7 * (east - 20) : 0.0);
  });
  const rig::Rig rig = testing::solo_rig();
  snow::SnowReport said = report_of(Wetness::dry, Wetness::wet);
  said.weather.bulletin_level = 3;  // 40 m, or a decision
  const snow::ReportedSnow snow{said};
  const LegJudgement judgement = Judge{scene, rig, snow}.judge(LegId{0}, mid_morning());
  CHECK(judgement.verdict == Verdict::restricted);
  CHECK(judgement.snow.size() == 2);
  REQUIRE(judgement.exposed.size() == 2);
  // Within 40 m of what is 20 m aside is up to 34.6 m along; pieces and cells are of 5 m.
  CHECK(judgement.exposed[0].from == Metres{0});
  CHECK(near(judgement.exposed[0].to, Metres{10 + 34.6}, Metres{15}));
  CHECK(near(judgement.exposed[1].from, Metres{200 - 34.6}, Metres{15}));
  CHECK(near(judgement.exposed[1].to, Metres{210 + 34.6}, Metres{15}));
}

}  // namespace

}  // namespace rimehaul::passage
