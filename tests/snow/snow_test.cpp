// What an observer's report says of a place and hour, and the words of the snow classes.
#include <doctest/doctest.h>

#include <cmath>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "snow/snow.h"

namespace rimehaul::snow {

namespace {

using units::Bearing;

constexpr SnowState kDryGroomed{Wetness::dry, Surface::groomed};
constexpr SnowState kDryIce{Wetness::dry, Surface::ice};
constexpr SnowState kWetGroomed{Wetness::wet, Surface::groomed};
constexpr SnowState kMoistFresh{Wetness::moist, Surface::fresh};

units::Instant hour(const char* text) {
  return *units::parse_instant(text);
}

struct Sector {
  double from_deg;
  double to_deg;
};

SnowBand band(SnowState state, std::optional<Sector> sector = {}) {
  SnowBand made;
  made.state = state;
  if (sector) {
    made.aspect_from = Bearing::from_degrees(sector->from_deg);
    made.aspect_to = Bearing::from_degrees(sector->to_deg);
  }
  return made;
}

SnowReport report_of(std::vector<SnowBand> bands) {
  SnowReport report;
  report.bands = std::move(bands);
  report.observer = "A. Example";
  report.observed = hour("2026-02-01T06:30:00Z");
  report.valid_until = hour("2026-02-01T18:00:00Z");
  return report;
}

PlaceAndHour place(double height_m, std::optional<double> aspect_deg) {
  PlaceAndHour where;
  where.height = geo::Height{height_m};
  if (aspect_deg) {
    where.aspect = Bearing::from_degrees(*aspect_deg);
  }
  where.when = hour("2026-02-01T09:00:00Z");
  return where;
}

}  // namespace

TEST_CASE("every class has a key that reads back, and words without underscores") {
  std::set<std::string> keys;
  for (int index = 0; index < kWetnessCount; ++index) {
    const auto wetness = static_cast<Wetness>(index);
    keys.insert(key_of(wetness));
    CHECK(wetness_named(key_of(wetness)) == wetness);
    CHECK(std::string{words_for(wetness)}.find('_') == std::string::npos);
  }
  for (int index = 0; index < kSurfaceCount; ++index) {
    const auto surface = static_cast<Surface>(index);
    keys.insert(key_of(surface));
    CHECK(surface_named(key_of(surface)) == surface);
    CHECK(std::string{words_for(surface)}.find('_') == std::string::npos);
  }
  CHECK(keys.size() == kWetnessCount + kSurfaceCount);
  CHECK(std::string{words_for(Wetness::very_wet)} == "very wet");
  CHECK(std::string{words_for(Surface::refrozen)} == "refrozen");
  CHECK_FALSE(wetness_named("very wet").has_value());
  CHECK_FALSE(wetness_named("").has_value());
  CHECK_FALSE(surface_named("Groomed").has_value());
}

TEST_CASE("the worse of two states is the wetter class on the slipperier surface") {
  CHECK(kDryIce.worst_with(kWetGroomed) == SnowState{Wetness::wet, Surface::ice});
  CHECK(kWetGroomed.worst_with(kDryIce) == SnowState{Wetness::wet, Surface::ice});
  CHECK(kDryGroomed.worst_with(kDryGroomed) == kDryGroomed);
}

TEST_CASE("a planner's what-if is the same everywhere and always") {
  DayWeather weather;
  weather.bulletin_level = 2;
  const ConstantSnow snow{kMoistFresh, weather, "assumed for planning"};
  CHECK(snow.at(place(0, {})) == kMoistFresh);
  CHECK(snow.at(place(3000, 180)) == kMoistFresh);
  CHECK(snow.weather().bulletin_level == 2);
  CHECK(snow.told_by().words == "assumed for planning");
  CHECK_FALSE(snow.told_by().observed.has_value());
}

TEST_CASE("a report speaks from its observation to its expiry, both moments included") {
  const ReportedSnow snow{report_of({band(kDryGroomed)})};
  PlaceAndHour where = place(1500, 90);
  for (const char* inside : {"2026-02-01T06:30:00Z", "2026-02-01T18:00:00Z"}) {
    where.when = hour(inside);
    CHECK(snow.at(where) == kDryGroomed);
  }
  for (const char* outside : {"2026-02-01T06:29:59Z", "2026-02-01T18:00:01Z"}) {
    where.when = hour(outside);
    CHECK_FALSE(snow.at(where).has_value());
  }
  CHECK(snow.told_by().words == "observed by A. Example");
  CHECK(snow.told_by().observed == units::parse_instant("2026-02-01T06:30:00Z"));
}

TEST_CASE("a report without a time of observation or expiry says nothing") {
  SnowReport undated = report_of({band(kDryGroomed)});
  undated.observed.reset();
  CHECK_FALSE(ReportedSnow{undated}.at(place(1500, 90)).has_value());
  CHECK(ReportedSnow{undated}.told_by().words == "observed by A. Example, time not given");
  SnowReport endless = report_of({band(kDryGroomed)});
  endless.valid_until.reset();
  CHECK_FALSE(ReportedSnow{endless}.at(place(1500, 90)).has_value());
}

TEST_CASE("a band speaks between its heights, ends included, and of no unknown height") {
  SnowBand middle = band(kDryGroomed);
  middle.above = geo::Height{1000};
  middle.below = geo::Height{1500};
  const ReportedSnow snow{report_of({middle})};
  CHECK(snow.at(place(1000, 90)) == kDryGroomed);
  CHECK(snow.at(place(1500, 90)) == kDryGroomed);
  CHECK_FALSE(snow.at(place(999.99, 90)).has_value());
  CHECK_FALSE(snow.at(place(1500.01, 90)).has_value());
  CHECK_FALSE(snow.at(place(std::nan(""), 90)).has_value());
  CHECK_FALSE(ReportedSnow{report_of({band(kDryGroomed)})}.at(place(std::nan(""), 90)).has_value());
}

TEST_CASE("a band speaks of its sector clockwise, ends included, also across north") {
  const ReportedSnow south{report_of({band(kDryGroomed, Sector{90, 270})})};
  CHECK(south.at(place(1500, 90)).has_value());
  CHECK(south.at(place(1500, 180)).has_value());
  CHECK(south.at(place(1500, 270)).has_value());
  CHECK_FALSE(south.at(place(1500, 89.9)).has_value());
  CHECK_FALSE(south.at(place(1500, 270.1)).has_value());
  const ReportedSnow north{report_of({band(kDryGroomed, Sector{270, 90})})};
  CHECK(north.at(place(1500, 0)).has_value());
  CHECK(north.at(place(1500, 300)).has_value());
  CHECK_FALSE(north.at(place(1500, 180)).has_value());
}

TEST_CASE("a sector of which only one side was said speaks nowhere") {
  SnowBand half = band(kDryGroomed);
  half.aspect_from = Bearing::from_degrees(90);
  CHECK_FALSE(ReportedSnow{report_of({half})}.at(place(1500, 100)).has_value());
  CHECK_FALSE(ReportedSnow{report_of({half})}.at(place(1500, {})).has_value());
  std::swap(half.aspect_from, half.aspect_to);
  CHECK_FALSE(ReportedSnow{report_of({half})}.at(place(1500, 80)).has_value());
  CHECK_FALSE(ReportedSnow{report_of({half})}.at(place(1500, {})).has_value());
  // Nor does it close a gap that others leave.
  CHECK_FALSE(ReportedSnow{report_of({half, band(kDryGroomed, Sector{90, 80})})}
                  .at(place(1500, {}))
                  .has_value());
}

TEST_CASE("where bands overlap, the wettest class and the slipperiest surface count together") {
  const ReportedSnow snow{
      report_of({band(kDryIce, Sector{0, 180}), band(kWetGroomed, Sector{90, 270})})};
  CHECK(snow.at(place(1500, 45)) == kDryIce);
  CHECK(snow.at(place(1500, 135)) == SnowState{Wetness::wet, Surface::ice});
  CHECK(snow.at(place(1500, 200)) == kWetGroomed);
}

TEST_CASE("of an unknown aspect the worst of that height counts") {
  SnowBand high_south = band(kWetGroomed, Sector{90, 270});
  high_south.above = geo::Height{2000};
  const ReportedSnow snow{
      report_of({high_south, band(kDryGroomed, Sector{90, 270}), band(kDryIce, Sector{270, 90})})};
  CHECK(snow.at(place(1500, {})) == kDryIce);
  CHECK(snow.at(place(2500, {})) == SnowState{Wetness::wet, Surface::ice});
}

TEST_CASE("of an unknown aspect nothing is known unless every aspect was observed") {
  const auto state = [](std::vector<SnowBand> bands) {
    return ReportedSnow{report_of(std::move(bands))}.at(place(1500, {}));
  };
  CHECK_FALSE(state({band(kDryGroomed, Sector{90, 270})}).has_value());
  CHECK_FALSE(
      state({band(kDryGroomed, Sector{90, 270}), band(kDryGroomed, Sector{270, 89})}).has_value());
  CHECK_FALSE(
      state({band(kDryGroomed, Sector{0, 170}), band(kDryGroomed, Sector{180, 350})}).has_value());
  CHECK_FALSE(state({band(kDryGroomed, Sector{0, 180}), band(kDryGroomed, Sector{180, 359.5})})
                  .has_value());
  CHECK(
      state({band(kDryGroomed, Sector{90, 270}), band(kDryGroomed, Sector{270, 90})}).has_value());
  CHECK(state({band(kDryGroomed, Sector{300, 60}), band(kDryGroomed, Sector{50, 180}),
               band(kDryGroomed, Sector{170, 310})})
            .has_value());
  CHECK(state({band(kDryGroomed)}).has_value());
  CHECK_FALSE(state({}).has_value());
}

TEST_CASE("snow taken for planning holds as long as the report whose weather goes with it") {
  const units::Instant until = hour("2026-02-01T21:00:00Z");
  const ConstantSnow snow{kDryGroomed, {}, Told{"assumed", {}}, until};
  const auto at = [&](const char* when) { return snow.at({geo::Height{900}, {}, hour(when)}); };
  CHECK(at("2026-02-01T21:00:00Z") == kDryGroomed);
  CHECK_FALSE(at("2026-02-01T21:00:01Z").has_value());
  // Another class for comparison is known only where the first is.
  const OtherSnow other{snow, kWetGroomed};
  CHECK(other.at({geo::Height{900}, {}, hour("2026-02-01T20:00:00Z")}) == kWetGroomed);
  CHECK_FALSE(other.at({geo::Height{900}, {}, hour("2026-02-01T22:00:00Z")}).has_value());
}

TEST_CASE("snow put in another's place for comparison says so, under the same weather") {
  SnowReport report = report_of({band(kDryGroomed)});
  report.weather.bulletin_level = 3;
  const ReportedSnow seen{report};
  const OtherSnow other{seen, kWetGroomed};
  CHECK(other.weather().bulletin_level == 3);
  CHECK(&other.weather() == &seen.weather());
  CHECK(other.told_by().words == "assumed for comparison");
  CHECK_FALSE(other.told_by().observed.has_value());
}

}  // namespace rimehaul::snow
