// The grade profile of a route: closed form on a plane, and limits that are the rig's own.
#include "card/grade_profile.h"

#include <doctest/doctest.h>

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
  CHECK(near(drive.profile.legs[1].span.from.value(), 300, 1e-6));
}

TEST_CASE("the limits drawn are those that the limits command tells for the same snow") {
  const UpAndDown drive;
  const passage::GradeLimits limits = passage::grade_limits(
      {drive.rig, drive.scene.rules, {snow::Wetness::dry, snow::Surface::groomed}});
  for (const GradeBounds& leg : drive.profile.legs) {
    CHECK(leg.climb == limits.climb->steepest);
    CHECK(leg.descent == limits.descent->steepest);
  }
}

}  // namespace
}  // namespace rimehaul::card
