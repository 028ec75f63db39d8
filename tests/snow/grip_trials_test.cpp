// Pulls, stops and holds by hand, and the other way round: what a known grip would have read.
#include "snow/grip_trials.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

namespace rimehaul::snow {
namespace {

using units::Slope;

constexpr double kG = 9.80665;

double radians(double degrees) {
  return degrees * std::numbers::pi / 180.0;
}

TrialGround ground(double grade_deg, double error_deg) {
  return {Slope::from_degrees(grade_deg), Slope::from_degrees(error_deg)};
}

/// What a scale reads on a body of some resistance that is pulled up a grade, a few times over.
Pulls pulls_of(Pulled what, double ratio, TrialGround on) {
  Pulls pulls{
      .what = what, .mass = units::Kilograms{400}, .track_share = 0.9, .ground = on, .read = {}};
  const double angle = std::atan(on.grade.ratio());
  const double normal = 400 * kG * std::cos(angle);
  const double along = 400 * kG * std::sin(angle);
  const double newton =
      what == Pulled::drawbar ? ratio * 0.9 * normal - along : ratio * normal + along;
  pulls.read.assign(6, units::Newtons{newton});
  return pulls;
}

}  // namespace

TEST_CASE("a sled of 100 kg that takes 98.0665 N on the level resists with a tenth of its weight") {
  const Pulls pulls{.what = Pulled::trailer_rolling,
                    .mass = units::Kilograms{100},
                    .ground = ground(0, 0),
                    .read = std::vector<units::Newtons>(5, units::Newtons{98.0665})};
  const auto ratio = ratio_of(pulls);
  REQUIRE(ratio.has_value());
  CHECK(ratio->mean == doctest::Approx(0.1));
  CHECK(ratio->low == doctest::Approx(0.1));
  CHECK(ratio->high == doctest::Approx(0.1));
}

TEST_CASE("on any grade a pull gives back the ratio that made it") {
  for (const Pulled what : {Pulled::drawbar, Pulled::carrier_rolling, Pulled::trailer_side}) {
    for (const double grade : {-8.0, 0.0, 5.0}) {
      const auto ratio = ratio_of(pulls_of(what, 0.3, ground(grade, 0)));
      REQUIRE(ratio.has_value());
      CHECK(ratio->mean == doctest::Approx(0.3).epsilon(1e-12));
      CHECK(ratio->high - ratio->low < 1e-9);
    }
  }
}

TEST_CASE("the grade's error widens a pull's limits by about its tangent, either way") {
  const auto drawn = ratio_of(pulls_of(Pulled::trailer_rolling, 0.1, ground(0, 0.5)));
  REQUIRE(drawn.has_value());
  CHECK(drawn->low == doctest::Approx(0.1 - std::tan(radians(0.5))).epsilon(1e-4));
  CHECK(drawn->high == doctest::Approx(0.1 + std::tan(radians(0.5))).epsilon(1e-4));
  const auto pulling = ratio_of(pulls_of(Pulled::drawbar, 0.3, ground(0, 0.5)));
  REQUIRE(pulling.has_value());
  CHECK(pulling->low == doctest::Approx(0.3 - std::tan(radians(0.5)) / 0.9).epsilon(1e-3));
}

TEST_CASE("a stop from 20 km/h in a known distance gives back the grip that stopped it") {
  // v^2 = 2 g d (mu phi cos t + sin t): by energy, downhill t below 0.
  for (const double grade : {-10.0, 0.0, 4.0}) {
    const double t = radians(grade);
    const double v = 20.0 / 3.6;
    const double mu = 0.45;
    const double d = v * v / (2 * kG * (mu * 0.9 * std::cos(t) + std::sin(t)));
    Stops stops{.track_share = 0.9, .ground = ground(grade, 0), .stops = {}};
    stops.stops.assign(5, {units::MetresPerSecond{v}, units::Metres{d}});
    const auto ratio = ratio_of(stops);
    REQUIRE(ratio.has_value());
    CHECK(ratio->mean == doctest::Approx(mu).epsilon(1e-12));
    stops.ground = ground(grade, 0.5);
    CHECK(ratio_of(stops)->low < mu - 0.005);
  }
}

TEST_CASE("holding proves the tangent of the steepest slope held below all that slid") {
  Holds holds{.track_share = 0.8, .error = Slope::from_degrees(0.5), .held = {}, .slid = {}};
  const auto slopes = [](std::initializer_list<double> degrees) {
    std::vector<Slope> found;
    for (const double each : degrees) {
      found.push_back(Slope::from_degrees(each));
    }
    return found;
  };
  holds.held = slopes({8, 10, 12});
  CHECK(ratio_of(holds)->value() == doctest::Approx(std::tan(radians(11.5)) / 0.8));
  holds.slid = slopes({11});
  CHECK(ratio_of(holds)->value() == doctest::Approx(std::tan(radians(9.5)) / 0.8));
  holds.slid = slopes({7});
  CHECK_FALSE(ratio_of(holds).has_value());
  holds.slid = {};
  holds.held = slopes({8, 10});
  CHECK_FALSE(ratio_of(holds).has_value());
}

TEST_CASE("four pulls or stops are too few") {
  Pulls pulls = pulls_of(Pulled::carrier_side, 0.3, ground(0, 0));
  pulls.read.resize(4);
  CHECK_FALSE(ratio_of(pulls).has_value());
  CHECK_FALSE(ratio_of(Stops{.track_share = 1, .ground = ground(0, 0), .stops = {}}).has_value());
}

TEST_CASE("a spread is told with its limits on their safe sides") {
  CHECK(words_for(*units::spread_of({0.22, 0.23, 0.24, 0.25, 0.26}), "pulls") ==
        "5 pulls, 0.240 +- 0.016, the next between 0.203 and 0.277");
}

TEST_CASE("trials on ground whose grade nobody knows how well are no trials") {
  TrialGround unsure = ground(5, 0);
  unsure.error = Slope::from_ratio(std::nan(""));
  Pulls pulls = pulls_of(Pulled::drawbar, 0.3, ground(5, 0));
  CHECK(ratio_of(pulls).has_value());
  pulls.ground = unsure;
  CHECK_FALSE(ratio_of(pulls).has_value());
  Stops stops{.track_share = 0.9, .ground = unsure, .stops = {}};
  stops.stops.assign(5, {units::MetresPerSecond{5}, units::Metres{4}});
  CHECK_FALSE(ratio_of(stops).has_value());
  stops.ground = ground(5, 0);
  CHECK(ratio_of(stops).has_value());
}

}  // namespace rimehaul::snow
