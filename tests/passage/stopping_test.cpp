// Stopping ways and speeds, against uniform deceleration.
#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "near.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::input_of;
using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::rig_without_shift;
using testing::RigOnSlope;
using units::Metres;
using units::MetresPerSecond;
using units::Seconds;

/// From 20 km/h, without time to react: the numbers of the worked example.
RigOnSlope at_20_kmh(double grade_deg) {
  RigOnSlope rig = rig_without_shift();
  rig.rules.reaction = Seconds{0};
  rig.rules.walking_pace = MetresPerSecond{20 / 3.6};
  rig.rig.carrier.top_speed = MetresPerSecond{100};
  return rig.on_degrees(grade_deg, 0);
}

}  // namespace

TEST_CASE("from 20 km/h the rig stops in 6.435 m on the flat and in 23.42 m on 10 degrees") {
  // a = g ((mu_b mv + ft mt) cos - (mv + mt) sin) / (mv + mt); v^2 / 2a.
  const Stopping flat = judge_stopping(at_20_kmh(0).footing(), Metres{30}, 1.0);
  CHECK(near(input_of(flat.finding, "a"), 2.3982, 5e-5));
  CHECK(near(flat.finding.demand.value, 6.435, 5e-4));
  const Stopping steep = judge_stopping(at_20_kmh(-10).footing(), Metres{30}, 1.0);
  CHECK(near(input_of(steep.finding, "a"), 0.6588, 5e-5));
  CHECK(near(steep.finding.demand.value, 23.42, 5e-3));
  CHECK(near(*steep.finding.share, steep.finding.demand.value / 30, 1e-12));
}

TEST_CASE("on 15 degrees it cannot stop, and no speed is allowed") {
  const Stopping stopping = judge_stopping(at_20_kmh(-15).footing(), Metres{30}, 1.0);
  CHECK(stand_of(stopping.finding, 1.0) == Stand::refused);
  CHECK(stopping.speed == MetresPerSecond{0});
}

TEST_CASE("the highest speed uses up the allowed share of the sight and no more") {
  std::mt19937 dice{41};
  std::uniform_real_distribution<double> grade(-13, 10);
  std::uniform_real_distribution<double> sight(5, 80);
  for (int trial = 0; trial < 500; ++trial) {
    RigOnSlope rig = rig_without_shift();
    rig.rig.carrier.top_speed = MetresPerSecond{1000};
    rig.rules.reaction = Seconds{trial % 2 == 0 ? 2.0 : 0.0};
    rig.on_degrees(grade(dice), 0);
    const double way = 0.7 * sight(dice);
    const Stopping stopping = judge_stopping(rig.footing(), Metres{way / 0.7}, 0.7);
    if (stand_of(stopping.finding, 0.7) != Stand::passes) {
      CHECK(stopping.speed == MetresPerSecond{0});
      continue;
    }
    const double a = input_of(stopping.finding, "a");
    const double v = stopping.speed.value();
    const double needed = v * rig.rules.reaction.value() + v * v / (2 * a);
    CHECK(needed <= way * (1 + 1e-15));
    CHECK(near(needed, way, 1e-8));
    CHECK(v >= rig.rules.walking_pace.value());
  }
}

TEST_CASE("no speed is over the top speed, and an unknown top speed allows none") {
  RigOnSlope rig = loaded_rig();
  rig.rig.carrier.top_speed = MetresPerSecond{3};
  CHECK(judge_stopping(rig.footing(), Metres{80}, 0.7).speed == MetresPerSecond{3});
  for (const double bad : {kNoNumber, 0.0, -1.0}) {
    rig.rig.carrier.top_speed = MetresPerSecond{bad};
    CHECK(judge_stopping(rig.footing(), Metres{80}, 0.7).speed == MetresPerSecond{0});
  }
}

TEST_CASE("sight that just serves walking pace passes, a hair less does not") {
  RigOnSlope rig = loaded_rig();
  const double way = judge_stopping(rig.footing(), Metres{80}, 0.7).finding.demand.value;
  const Stopping just = judge_stopping(rig.footing(), Metres{way}, 1.0);
  CHECK(stand_of(just.finding, 1.0) == Stand::passes);
  CHECK(near(just.speed, rig.rules.walking_pace, MetresPerSecond{1e-9}));
  const Stopping less = judge_stopping(rig.footing(), Metres{way * (1 - 1e-9)}, 1.0);
  CHECK(stand_of(less.finding, 1.0) == Stand::exceeds);
  CHECK(less.speed == MetresPerSecond{0});
}

TEST_CASE("no sight, unknown sight or an unknown time to react closes") {
  RigOnSlope rig = loaded_rig();
  CHECK(stand_of(judge_stopping(rig.footing(), Metres{0}, 0.7).finding, 1.0) == Stand::refused);
  CHECK(stand_of(judge_stopping(rig.footing(), Metres{kNoNumber}, 0.7).finding, 1.0) ==
        Stand::missing);
  rig.rules.reaction = Seconds{kNoNumber};
  const Stopping stopping = judge_stopping(rig.footing(), Metres{50}, 0.7);
  CHECK(stand_of(stopping.finding, 1.0) == Stand::missing);
  CHECK(stopping.speed == MetresPerSecond{0});
}

}  // namespace rimehaul::passage
