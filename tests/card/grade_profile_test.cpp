// The grade profile of a route: closed form on a plane, and limits that are the rig's own.
#include "card/grade_profile.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "card/triggers.h"
#include "near.h"
#include "passage/demo_scene.h"
#include "passage/limits.h"

namespace rimehaul::card {
namespace {

using testing::near;
using units::Metres;
using units::Slope;

/// Northings of millions of metres leave nine digits behind the point of a height, over 5 m.
constexpr double kWithin = 1e-8;

/// 300 m straight north up a plane that climbs 4 % that way, and down again.
struct UpAndDown {
  passage::Scene scene = testing::scene_of({testing::plane(0.0, 0.04)}, testing::straight_trail(0));
  rig::Rig rig = testing::solo_rig();
  snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  GradeProfile profile;
  Slope tolerance;

  UpAndDown() {
    const passage::Judge judge{scene, rig, snow};
    tolerance = *judge.tolerance();
    search::Route route;
    for (const trails::LegId leg : {trails::LegId{0}, trails::LegId{1}}) {
      search::RouteLeg part;
      part.leg = leg;
      part.judgement = judge.judge(leg, testing::mid_morning());
      route.legs.push_back(part);
    }
    profile = grade_profile_of(route, {scene, rig});
  }
};

TEST_CASE("on a plane every piece climbs by its grade and its error, and falls so coming back") {
  const UpAndDown drive;
  REQUIRE(drive.profile.pieces.size() > 100);
  for (const GradePiece& piece : drive.profile.pieces) {
    const double grade = piece.span.from < Metres{300} ? 0.04 : -0.04;
    REQUIRE(piece.lowest.has_value());
    REQUIRE(piece.highest.has_value());
    CHECK(near(piece.lowest->ratio(), grade - drive.tolerance.ratio(), kWithin));
    CHECK(near(piece.highest->ratio(), grade + drive.tolerance.ratio(), kWithin));
  }
}

TEST_CASE("pieces follow each other along the whole route, and legs begin where the last ended") {
  const UpAndDown drive;
  Metres until{0};
  for (const GradePiece& piece : drive.profile.pieces) {
    CHECK(near(piece.span.from.value(), until.value(), 1e-6));
    until = piece.span.to;
  }
  CHECK(near(until.value(), 600, 1e-6));
  REQUIRE(drive.profile.legs.size() == 2);
  CHECK(near(drive.profile.legs[1].from.value(), 300, 1e-6));
}

TEST_CASE("the limits drawn are those that the limits command tells for the same snow") {
  const UpAndDown drive;
  const passage::GradeLimits limits = passage::grade_limits(
      {drive.rig, drive.scene.rules, {snow::Wetness::dry, snow::Surface::groomed}});
  for (const GradeBounds& leg : drive.profile.limits) {
    CHECK(leg.climb == limits.climb->steepest);
    CHECK(leg.descent == limits.descent->steepest);
  }
}

TEST_CASE("where the snow changes along a leg the limits change with it") {
  UpAndDown drive;
  const geo::Height line =
      *drive.scene.heights.at(drive.scene.network.trails[0].line.at(Metres{150}));
  snow::SnowReport report;
  report.bands.resize(2);
  report.bands[0].below = line;
  report.bands[0].state = {snow::Wetness::dry, snow::Surface::groomed};
  report.bands[1].above = line;
  report.bands[1].state = {snow::Wetness::moist, snow::Surface::groomed};
  report.weather = testing::plain_weather();
  report.observer = "N. Warden";
  report.observed = testing::mid_morning();
  report.valid_until = units::Instant{testing::mid_morning().seconds + 7200};
  const snow::ReportedSnow banded{report};
  const passage::Judge judge{drive.scene, drive.rig, banded};
  search::Route route;
  route.legs.resize(1);
  route.legs[0].leg = trails::LegId{0};
  route.legs[0].judgement = judge.judge(trails::LegId{0}, testing::mid_morning());
  const GradeProfile profile = grade_profile_of(route, {drive.scene, drive.rig});
  const auto limit_in = [&](snow::Wetness wetness) {
    return passage::grade_limits({drive.rig, drive.scene.rules, {wetness, snow::Surface::groomed}})
        .climb->steepest;
  };
  REQUIRE(profile.limits.size() >= 2);
  CHECK(profile.limits.front().climb == limit_in(snow::Wetness::dry));
  CHECK(profile.limits.back().climb == limit_in(snow::Wetness::moist));
  CHECK(profile.limits.front().span.to < Metres{160});
  CHECK(profile.limits.back().span.from > Metres{140});
  // And the driver is told which snow belongs to which part.
  const search::RouteQuestion question{
      .stations = {0, 1}, .depart = testing::mid_morning(), .permitted_by = {}};
  const CardContext context{
      .scene = drive.scene,
      .rig = drive.rig,
      .snow = banded,
      .question = question,
      .made_from = {.inputs = {}, .versions = {}, .made = testing::mid_morning()},
      .snow_valid_until = {},
      .heights_notes = {}};
  const std::vector<std::string> triggers = turn_back_triggers(route, context);
  const auto about_snow = std::ranges::find_if(triggers, [](const std::string& trigger) {
    return trigger.starts_with("the snow is wetter");
  });
  REQUIRE(about_snow != triggers.end());
  CHECK(about_snow->find("leg 1 from 0 m to 15") != std::string::npos);
  CHECK(about_snow->find("m: dry, groomed / leg 1 from 15") != std::string::npos);
  CHECK(about_snow->ends_with("m on: moist, groomed)"));
  const auto holds = std::ranges::find_if(triggers, [](const std::string& trigger) {
    return trigger.find("holds for this departure alone") != std::string::npos;
  });
  CHECK(holds != triggers.end());
}

}  // namespace
}  // namespace rimehaul::card
