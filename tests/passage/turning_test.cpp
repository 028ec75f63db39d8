// The width a rig sweeps, against a simulated tow.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "near.h"
#include "passage/turning.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::kNoNumber;
using testing::near;
using testing::share_of;
using units::Metres;

rig::Rig carrier_alone() {
  rig::Rig rig = testing::loaded_rig().rig;
  rig.trailer.reset();
  return rig;
}

}  // namespace

TEST_CASE("the trailer follows at sqrt(R^2 + e^2 - L^2), as a tow driven round shows") {
  // Tractrix with a steady end: the hitch goes round at sqrt(R^2 + e^2); the trailer's middle
  // always heads for the hitch. Simulated until it settles.
  const rig::Rig rig = testing::loaded_rig().rig;  // e = 0.9, L = 2.0
  const double radius = 6.0;
  const double hitch_radius = std::hypot(radius, 0.9);
  double x = hitch_radius;
  double y = -2.0;
  constexpr double kStep = 1e-5;
  for (double angle = 0.0; angle < 4.0; angle += kStep) {
    const double hx = hitch_radius * std::cos(angle);
    const double hy = hitch_radius * std::sin(angle);
    const double gap = std::hypot(hx - x, hy - y);
    x = hx - (hx - x) * 2.0 / gap;
    y = hy - (hy - y) * 2.0 / gap;
  }
  const std::optional<Sweep> sweep = sweep_of(rig, Metres{radius});
  REQUIRE(sweep);
  CHECK(near(radius - sweep->off_tracking.value(), std::hypot(x, y), 1e-3));
  CHECK(near(sweep->off_tracking.value(), 6.0 - std::sqrt(36 + 0.81 - 4), 1e-12));
}

TEST_CASE("no point of carrier or trailer leaves the swept width") {
  const rig::Rig rig = testing::loaded_rig().rig;
  const double radius = 5.0;
  const std::optional<Sweep> sweep = sweep_of(rig, Metres{radius});
  REQUIRE(sweep);
  double outer = 0.0;
  double inner = 1e9;
  // carrier: middle at (R, 0) heading +y; nose as far ahead as its length allows, tail at the hitch
  for (double along = -0.9; along <= 2.1; along += 0.01) {
    for (const double side : {-0.65, 0.65}) {
      outer = std::max(outer, std::hypot(radius + side, along));
      inner = std::min(inner, std::hypot(radius + side, along));
    }
  }
  const double trailer = std::sqrt(25 + 0.81 - 4);
  for (double along = -0.8; along <= 0.8; along += 0.01) {
    for (const double side : {-0.6, 0.6}) {
      outer = std::max(outer, std::hypot(trailer + side, along));
      inner = std::min(inner, std::hypot(trailer + side, along));
    }
  }
  CHECK(outer - inner <= sweep->width.value() + 1e-12);
  CHECK(near(outer - inner, sweep->width.value(), 0.01));
}

TEST_CASE("a carrier alone cuts no bend, however tight") {
  for (const double radius : {3.0, 50.0}) {
    CHECK(sweep_of(carrier_alone(), Metres{radius})->off_tracking == Metres{0});
  }
}

TEST_CASE("a carrier turns a bend of its own radius with a share of 1") {
  rig::Rig rig = carrier_alone();  // 3 m
  const auto bend = [](double radius) {
    return Bend{.at = Metres{0}, .radius = Metres{radius}, .window = Metres{6}};
  };
  CHECK(judge_turning(rig, bend(3.0)).share == 1.0);
  CHECK(share_of(judge_turning(rig, bend(2.999))) > 1.0);
  CHECK(stand_of(judge_turning(rig, bend(0.0)), 1.0) == Stand::refused);
  rig.carrier.turning_radius = Metres{kNoNumber};
  CHECK(stand_of(judge_turning(rig, bend(30)), 1.0) == Stand::missing);
}

TEST_CASE("a long drawbar needs a wider turn than the carrier") {
  rig::Rig rig = testing::loaded_rig().rig;
  CHECK(least_radius(rig) == Metres{3.0});
  rig.trailer->drawbar_length = Metres{4.1};
  CHECK(near(least_radius(rig).value(), std::sqrt(4.1 * 4.1 - 0.81), 1e-12));
  CHECK_FALSE(sweep_of(rig, least_radius(rig) - Metres{0.01}));
  CHECK(sweep_of(rig, least_radius(rig) + Metres{0.01}));
}

TEST_CASE("on the straight a rig needs its own width, and a trail without one is closed") {
  const rig::Rig rig = testing::loaded_rig().rig;
  const Bend straight{.at = Metres{0}, .radius = kStraight, .window = Metres{7}};
  const Finding finding = judge_off_tracking(rig, straight, Metres{2.6});
  CHECK(near(finding.demand.value, 1.3, 2e-3));
  CHECK(near(share_of(finding), 0.5, 1e-3));
  CHECK(stand_of(judge_off_tracking(rig, straight, std::nullopt), 1.0) == Stand::missing);
  CHECK(stand_of(judge_off_tracking(rig, straight, Metres{0}), 1.0) == Stand::refused);
  CHECK(stand_of(judge_off_tracking(rig, straight, Metres{kNoNumber}), 1.0) == Stand::missing);
}

TEST_CASE("the tighter the bend the more width it takes, until it cannot be followed") {
  const rig::Rig rig = testing::loaded_rig().rig;
  double before = 0.0;
  for (const double radius : {500.0, 50.0, 20.0, 10.0, 6.0, 4.0, 3.0}) {
    const Bend bend{.at = Metres{0}, .radius = Metres{radius}, .window = Metres{7}};
    const double needed = judge_off_tracking(rig, bend, Metres{4}).demand.value;
    CHECK(needed > before);
    before = needed;
  }
  const Bend knot{.at = Metres{0}, .radius = Metres{1.0}, .window = Metres{7}};
  CHECK(stand_of(judge_off_tracking(rig, knot, Metres{4}), 1.0) == Stand::refused);
}

TEST_CASE("no sweep is told for a radius or a drawbar that is no length") {
  const rig::Rig alone = carrier_alone();
  const double infinite = std::numeric_limits<double>::infinity();
  CHECK(sweep_of(alone, Metres{5}));
  CHECK(sweep_of(alone, Metres{0}));
  for (const double bad : {-5.0, kNoNumber, infinite}) {
    CHECK_FALSE(sweep_of(alone, Metres{bad}));
  }
  rig::Rig towing = testing::loaded_rig().rig;
  CHECK(sweep_of(towing, Metres{6}));
  for (const double bad : {-2.0, kNoNumber, infinite}) {
    towing.trailer->drawbar_length = Metres{bad};
    CHECK_FALSE(sweep_of(towing, Metres{6}));
  }
  // So wide a turn that the trailer's radius, squared, is beyond all numbers.
  CHECK_FALSE(sweep_of(testing::loaded_rig().rig, Metres{1e200}));
}

}  // namespace rimehaul::passage
