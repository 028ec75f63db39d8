// Visibility against marker spacing.
#include <doctest/doctest.h>

#include <limits>
#include <vector>

#include "demo_scene.h"
#include "passage/visibility.h"

namespace rimehaul::passage {

namespace {

using units::Metres;

constexpr double kVoid = std::numeric_limits<double>::quiet_NaN();

trails::Trail marked_every(std::optional<Metres> spacing) {
  trails::Trail trail =
      testing::plain_trail("Ridge Line", {{Metres{0}, Metres{0}}, {Metres{100}, Metres{0}}});
  trail.marker_spacing = spacing;
  return trail;
}

Stand stand_at(std::optional<Metres> seen, std::optional<Metres> spacing, double markers) {
  Rules rules;
  rules.markers_in_sight = markers;
  snow::DayWeather weather;
  weather.visibility = seen;
  return stand_of(judge_visibility(weather, marked_every(spacing), rules), 0.7);
}

}  // namespace

TEST_CASE("two markers 25 m apart need 50 m of sight, and no less") {
  CHECK(stand_at(Metres{50}, Metres{25}, 2.0) == Stand::passes);
  CHECK(stand_at(Metres{49.999}, Metres{25}, 2.0) == Stand::refused);
  CHECK(stand_at(Metres{0}, Metres{25}, 2.0) == Stand::refused);
}

TEST_CASE("visibility or spacing that nobody gave closes, unless no markers are asked for") {
  CHECK(stand_at(std::nullopt, Metres{25}, 2.0) == Stand::missing);
  CHECK(stand_at(Metres{500}, std::nullopt, 2.0) == Stand::missing);
  CHECK(stand_at(Metres{kVoid}, Metres{25}, 2.0) == Stand::missing);
  CHECK(stand_at(Metres{500}, Metres{kVoid}, 2.0) == Stand::missing);
  CHECK(stand_at(Metres{500}, Metres{0}, 2.0) == Stand::missing);
  CHECK(stand_at(std::nullopt, std::nullopt, 0.0) == Stand::passes);
}

TEST_CASE("where nothing is marked the place's own least visibility counts, whatever the markers") {
  const auto stand = [](std::optional<Metres> seen, std::optional<Metres> least) {
    trails::Trail way = marked_every(Metres{10});
    way.marked = false;
    way.least_visibility = least;
    Rules rules;
    rules.markers_in_sight = 0.0;
    snow::DayWeather weather;
    weather.visibility = seen;
    return stand_of(judge_visibility(weather, way, rules), 0.7);
  };
  CHECK(stand(Metres{300}, Metres{300}) == Stand::passes);
  CHECK(stand(Metres{299.9}, Metres{300}) == Stand::refused);
  CHECK(stand(std::nullopt, Metres{300}) == Stand::missing);
  CHECK(stand(Metres{kVoid}, Metres{300}) == Stand::missing);
  CHECK(stand(Metres{300}, std::nullopt) == Stand::missing);
  CHECK(stand(Metres{300}, Metres{kVoid}) == Stand::missing);
  CHECK(stand(Metres{300}, Metres{0}) == Stand::missing);
}

TEST_CASE("a rule that is no number closes") {
  for (const double bad : {kVoid, -1.0, std::numeric_limits<double>::infinity()}) {
    CHECK(stand_at(Metres{500}, Metres{25}, bad) == Stand::missing);
  }
}

}  // namespace rimehaul::passage
