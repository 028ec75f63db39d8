// Makers' ratings against grade and cross-slope.
#include <doctest/doctest.h>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::exactly;
using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::RigOnSlope;
using testing::share_of;
using units::Slope;

double tangent_of(double degrees) {
  return Slope::from_degrees(degrees).ratio();
}

}  // namespace

TEST_CASE("ratings compare tangents: half of 20 degrees is less than half of its rating") {
  RigOnSlope rig = loaded_rig();  // towing: climb 20, descent 18, cross 14
  rig.on_degrees(10, 7);
  CHECK(near(share_of(judge_climb_rating(rig.footing())), tangent_of(10) / tangent_of(20), 1e-12));
  CHECK(near(share_of(judge_cross_rating(rig.footing())), tangent_of(7) / tangent_of(14), 1e-12));
  CHECK(judge_descent_rating(rig.footing()).share == 0.0);
  rig.on_degrees(-9, -7);
  CHECK(near(share_of(judge_descent_rating(rig.footing())), tangent_of(9) / tangent_of(18), 1e-12));
  CHECK(near(share_of(judge_cross_rating(rig.footing())), tangent_of(7) / tangent_of(14), 1e-12));
  CHECK(judge_climb_rating(rig.footing()).share == 0.0);
}

TEST_CASE("the limit itself is a share of 1") {
  RigOnSlope rig = loaded_rig();
  rig.on(rig.rig.carrier.towing.climb->steepest.ratio(), 0);
  CHECK(judge_climb_rating(rig.footing()).share == 1.0);
}

TEST_CASE("a box that both climbs and falls is judged both ways, on its steeper side across") {
  RigOnSlope rig = loaded_rig();
  rig.carrier = {Slope::from_degrees(-6), Slope::from_degrees(5), Slope::from_degrees(-8),
                 Slope::from_degrees(3)};
  CHECK(near(judge_climb_rating(rig.footing()).demand.value, tangent_of(5), 1e-15));
  CHECK(near(judge_descent_rating(rig.footing()).demand.value, tangent_of(6), 1e-15));
  CHECK(near(judge_cross_rating(rig.footing()).demand.value, tangent_of(8), 1e-15));
}

TEST_CASE("without a trailer and with a load the ratings for loaded count") {
  RigOnSlope rig = loaded_rig();
  rig.without_trailer();
  rig.rig.load.bed = units::Kilograms{100};
  rig.on_degrees(10, 0);
  CHECK(near(share_of(judge_climb_rating(rig.footing())), tangent_of(10) / tangent_of(25), 1e-12));
}

TEST_CASE("a rating that nobody gave closes, and says which") {
  RigOnSlope rig = loaded_rig();
  rig.rig.carrier.towing.climb.reset();
  const Finding finding = judge_climb_rating(rig.footing());
  CHECK(stand_of(finding, 1.0) == Stand::missing);
  CHECK(finding.missing == "rating of Carrier towing: climb rating");
  CHECK(judge_descent_rating(rig.footing()).share);
}

TEST_CASE("a rating of nothing, or no number, closes") {
  RigOnSlope rig = loaded_rig();
  rig.rig.carrier.towing.cross->steepest = Slope::from_ratio(0);
  CHECK(stand_of(judge_cross_rating(rig.footing()), 1.0) == Stand::refused);
  rig.rig.carrier.towing.cross->steepest = Slope::from_ratio(kNoNumber);
  CHECK(stand_of(judge_cross_rating(rig.footing()), 1.0) == Stand::missing);
}

TEST_CASE("the trailer's own ratings count where given, the worst of them, on its own ground") {
  RigOnSlope rig = loaded_rig();
  CHECK(judge_trailer_rating(rig.footing()).share == 0.0);
  rig.rig.trailer->climb = rig.rig.carrier.towing.climb;  // 20
  rig.rig.trailer->cross = rig.rig.carrier.towing.cross;  // 14
  rig.carrier = exactly(0, 0);
  rig.trailer = exactly(tangent_of(5), tangent_of(-10));
  CHECK(
      near(share_of(judge_trailer_rating(rig.footing())), tangent_of(10) / tangent_of(14), 1e-12));
  rig.trailer = exactly(tangent_of(18), tangent_of(1));
  CHECK(
      near(share_of(judge_trailer_rating(rig.footing())), tangent_of(18) / tangent_of(20), 1e-12));
  rig.trailer = exactly(kNoNumber, 0);
  CHECK(stand_of(judge_trailer_rating(rig.footing()), 1.0) == Stand::missing);
}

TEST_CASE("without a trailer there is no rating of one to keep") {
  RigOnSlope rig = loaded_rig();
  rig.rig.trailer->climb = rig.rig.carrier.towing.climb;  // 20
  rig.on_degrees(30, 0);
  CHECK(stand_of(judge_trailer_rating(rig.footing()), 1.0) == Stand::exceeds);
  const Finding alone = judge_trailer_rating(rig.without_trailer().footing());
  CHECK(stand_of(alone, 0.0) == Stand::passes);
  CHECK(alone.inputs.all().empty());
}

}  // namespace rimehaul::passage
