// Limits that depend on the load alone.
#include <doctest/doctest.h>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::RigOnSlope;
using testing::share_of;
using units::Kilograms;

}  // namespace

TEST_CASE("400 kg towed of 600 allowed are two thirds; without a trailer nothing is towed") {
  RigOnSlope rig = loaded_rig();
  CHECK(near(share_of(judge_towed_mass(rig.rig, rig.weighed)), 400.0 / 600.0, 1e-15));
  rig.weighed.trailer.mass = Kilograms{600};
  CHECK(judge_towed_mass(rig.rig, rig.weighed).share == 1.0);
  rig.without_trailer();
  CHECK(judge_towed_mass(rig.rig, rig.weighed).share == 0.0);
}

TEST_CASE("of payload and bed load the larger share of its rating counts") {
  RigOnSlope rig = loaded_rig();  // 200 kg of 300 in all
  CHECK(near(share_of(judge_payload(rig.rig, rig.weighed)), 200.0 / 300.0, 1e-15));
  rig.rig.load.bed = Kilograms{150};  // of 200 on the bed
  CHECK(near(share_of(judge_payload(rig.rig, rig.weighed)), 150.0 / 200.0, 1e-15));
  rig.rig.load.bed = Kilograms{10};
  CHECK(near(share_of(judge_payload(rig.rig, rig.weighed)), 200.0 / 300.0, 1e-15));
}

TEST_CASE("load on a bed that has no rating is closed, no load on it is not") {
  RigOnSlope rig = loaded_rig();
  rig.rig.carrier.bed_rating = Kilograms{0};
  CHECK(judge_payload(rig.rig, rig.weighed).share);
  rig.rig.load.bed = Kilograms{1};
  CHECK_FALSE(judge_payload(rig.rig, rig.weighed).share);
}

TEST_CASE("a mass below nothing, or unknown, is closed") {
  RigOnSlope rig = loaded_rig();
  for (const double bad : {-1.0, kNoNumber}) {
    rig.rig.load.bed = Kilograms{bad};
    CHECK(stand_of(judge_payload(rig.rig, rig.weighed), 1.0) == Stand::missing);
    rig.rig.load.towed = Kilograms{bad};
    CHECK(stand_of(judge_trailer_payload(rig.rig), 1.0) == Stand::missing);
    rig.weighed.trailer.mass = Kilograms{bad};
    CHECK(stand_of(judge_towed_mass(rig.rig, rig.weighed), 1.0) == Stand::missing);
  }
}

TEST_CASE("the sled carries its payload, and a towed load needs a sled") {
  RigOnSlope rig = loaded_rig();
  rig.rig.load.towed = Kilograms{175};
  CHECK(near(share_of(judge_trailer_payload(rig.rig)), 0.5, 1e-15));
  rig.without_trailer();
  CHECK(stand_of(judge_trailer_payload(rig.rig), 1.0) == Stand::refused);
  rig.rig.load.towed = Kilograms{0};
  CHECK(judge_trailer_payload(rig.rig).share == 0.0);
}

TEST_CASE("everybody has a seat, or nobody rides") {
  RigOnSlope rig = loaded_rig();  // two seats
  rig.rig.load.passengers = 2;
  CHECK(stand_of(judge_seats(rig.rig), 0.7) == Stand::passes);
  rig.rig.load.passengers = 3;
  CHECK(stand_of(judge_seats(rig.rig), 1.0) == Stand::refused);
  rig.rig.load.passengers = -1;
  CHECK(stand_of(judge_seats(rig.rig), 1.0) == Stand::refused);
}

}  // namespace rimehaul::passage
