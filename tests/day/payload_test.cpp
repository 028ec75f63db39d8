// The loads that a way takes, against asking for every kilogram by itself.
#include "day/payload.h"

#include <doctest/doctest.h>

#include "base/require.h"
#include "day/other_rewalks.h"
#include "passage/demo_scene.h"

using namespace rimehaul;
using passage::LoadPlace;
using units::Kilograms;

namespace {

passage::Scene climb_of(double per_cent) {
  testing::TestGround ground;
  ground.ground = testing::plane(0, per_cent / 100);
  return testing::scene_of(ground, testing::straight_trail(0));
}

/// What a fresh judge says of one load, with nothing remembered.
bool is_open(const passage::Judge& judge, rig::Rig rig, LoadPlace place, Kilograms load) {
  (place == LoadPlace::bed ? rig.load.bed : rig.load.towed) = load;
  return judge.with_rig(rig).judge(trails::LegId{0}, testing::mid_morning()).verdict ==
         passage::Verdict::open;
}

day::PayloadQuestion first_leg() {
  return {.way = {trails::LegId{0}}, .depart = testing::mid_morning()};
}

bool holds(const std::vector<day::LoadRange>& ranges, Kilograms load) {
  return std::ranges::any_of(ranges, [&](const day::LoadRange& range) {
    return range.from.load <= load && load <= range.to.load;
  });
}

struct Tally {
  int open = 0;
  int closed = 0;
};

/// Every whole kilogram up to one past the rating.
Tally scan(const passage::Judge& judge, const std::vector<day::LoadRange>& ranges, LoadPlace place,
           Kilograms rating) {
  Tally tally;
  for (Kilograms load{0}; load <= rating + Kilograms{1}; load += Kilograms{1}) {
    const bool open = is_open(judge, judge.rig(), place, load);
    CAPTURE(load.value());
    CHECK(open == holds(ranges, load));
    ++(open ? tally.open : tally.closed);
  }
  return tally;
}

}  // namespace

TEST_CASE("the loads of a way are those that every kilogram asked for by itself finds open") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  for (const double per_cent : {0.0, 2.0, 3.0, 4.0}) {
    CAPTURE(per_cent);
    const passage::Scene scene = climb_of(per_cent);
    const rig::Rig rig = testing::towing_rig();
    const passage::Judge judge{scene, rig, snow};
    const day::Payload payload = day::payload_of(judge, first_leg());
    const Tally bed = scan(judge, payload.bed, LoadPlace::bed, rig.carrier.bed_rating);
    const Tally towed = scan(judge, payload.towed, LoadPlace::towed, rig.trailer->payload_rating);
    CHECK(bed.closed > 0);
    CHECK(towed.closed > 0);
  }
}

TEST_CASE("a heavy trailer may need ballast on the bed, and both ends tell what closes beyond") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Scene scene = climb_of(4);
  rig::Rig rig = testing::towing_rig();
  bool ballast = false;
  for (rig.load.towed = Kilograms{0}; rig.load.towed <= rig.trailer->payload_rating;
       rig.load.towed += Kilograms{5}) {
    const passage::Judge judge{scene, rig, snow};
    const day::Payload payload = day::payload_of(judge, first_leg());
    for (const day::LoadRange& range : payload.bed) {
      CHECK(*range.to.binds.finding.share <= judge.allowed_share());
      REQUIRE(range.to.beyond.has_value());
      REQUIRE(range.to.beyond->at.has_value());
      if (range.from.load == Kilograms{0}) {
        CHECK_FALSE(range.from.beyond.has_value());
        continue;
      }
      ballast = true;
      REQUIRE(range.from.beyond.has_value());
      REQUIRE(range.from.beyond->at.has_value());
      const passage::Finding& closes = range.from.beyond->at->finding;
      CHECK(passage::depends_on_load(closes.check));
      CHECK(*closes.share > judge.allowed_share());
      // What closes a kilogram further is what binds at the end, as a share moves little.
      CHECK(closes.check == range.from.binds.finding.check);
    }
  }
  CHECK(ballast);
}

TEST_CASE("every pair of the grid is what the same pair asked for by itself comes to") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Scene scene = climb_of(3);
  const rig::Rig rig = testing::towing_rig();
  const passage::Judge judge{scene, rig, snow};
  const day::LoadGrid grid = day::payload_of(judge, first_leg()).both;
  REQUIRE(grid.cells.size() == grid.bed.size() * grid.towed.size());
  CHECK(grid.bed.size() <= 9);
  CHECK(grid.towed.size() <= 9);
  CHECK(grid.bed.front() == Kilograms{0});
  CHECK(grid.bed.back() == rig.carrier.bed_rating);
  CHECK(grid.towed.back() == rig.trailer->payload_rating);
  std::size_t open = 0;
  for (std::size_t i = 0; i < grid.cells.size(); ++i) {
    rig::Rig other = rig;
    other.load.bed = grid.bed[i / grid.towed.size()];
    const bool is = is_open(judge, other, LoadPlace::towed, grid.towed[i % grid.towed.size()]);
    CHECK(grid.cells[i].route.has_value() == is);
    open += is ? 1 : 0;
  }
  CHECK(open > 0);
  CHECK(open < grid.cells.size());
}

TEST_CASE("without a trailer only the bed is asked for; a rating that is none takes no load") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Scene scene = climb_of(1);
  rig::Rig rig = testing::solo_rig();
  const passage::Judge judge{scene, rig, snow};
  const day::Payload payload = day::payload_of(judge, first_leg());
  CHECK(payload.bed.size() == 1);
  CHECK(payload.towed.empty());
  CHECK(payload.both.cells.empty());
  CHECK(payload.places_rewalked > 0);
  rig.carrier.bed_rating = Kilograms{std::nan("")};
  const passage::Judge unknown{scene, rig, snow};
  CHECK(day::payload_of(unknown, first_leg()).bed.empty());
}

TEST_CASE("too little fuel closes a load, and the answer says so") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Scene scene = climb_of(1);
  rig::Rig rig = testing::solo_rig();
  rig.load.fuel = rig.carrier.tank * scene.rules.fuel_reserve;
  const passage::Judge judge{scene, rig, snow};
  const day::Payload payload = day::payload_of(judge, first_leg());
  CHECK(payload.bed.empty());
  CHECK_FALSE(payload.as_asked.route.has_value());
  CHECK_FALSE(payload.as_asked.closed.at.has_value());
  REQUIRE(payload.as_asked.closed.fuel_to_spare.has_value());
  CHECK(payload.as_asked.closed.fuel > *payload.as_asked.closed.fuel_to_spare);
}

TEST_CASE("a load with which the way is worse than judged is our own fault, and nothing is told") {
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Scene scene = climb_of(1);
  const rig::Rig rig = testing::solo_rig();
  const passage::Judge judge{scene, rig, snow};
  day::PayloadQuestion question = first_leg();
  question.rewalk = testing::finds_fault;
  CHECK_THROWS_AS((void)day::payload_of(judge, question), base::OurFault);
}
