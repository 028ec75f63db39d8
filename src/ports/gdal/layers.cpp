#include "ports/gdal/layers.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <set>
#include <utility>

#include "ports/gdal/layer_columns.h"
#include "ports/gdal/layer_source.h"

namespace rimehaul::ports::gdal {

using trails::AllowedDirection;
using trails::StationKind;
using trails::Trail;
using trails::ZoneKind;
using units::Metres;

namespace {

constexpr double kTiny = std::numeric_limits<double>::min();
constexpr Allowed kAboveZero{kTiny, 1e6, "a number above 0"};
constexpr Allowed kZeroOrMore{0.0, 1e6, "a number of 0 or more"};

constexpr std::array<Word<AllowedDirection>, 3> kDirections{
    {{"forward", AllowedDirection::forward},
     {"backward", AllowedDirection::backward},
     {"both", AllowedDirection::both}}};

constexpr std::array<Word<StationKind>, 6> kStationKinds{
    {{"lift_station", StationKind::lift_station},
     {"hut", StationKind::hut},
     {"workshop", StationKind::workshop},
     {"fuel", StationKind::fuel},
     {"lodging", StationKind::lodging},
     {"refuge", StationKind::refuge}}};

constexpr std::array<Word<ZoneKind>, 5> kZoneKinds{{{"forbidden", ZoneKind::forbidden},
                                                    {"speed_limit", ZoneKind::speed_limit},
                                                    {"open_ground", ZoneKind::open_ground},
                                                    {"release_area", ZoneKind::release_area},
                                                    {"runout", ZoneKind::runout}}};

std::optional<Metres> metres(std::optional<double> number) {
  return number ? std::optional{Metres{*number}} : std::nullopt;
}

std::optional<units::MetresPerSecond> speed(std::optional<double> kilometres_per_hour) {
  return kilometres_per_hour ? std::optional{units::MetresPerSecond{*kilometres_per_hour / 3.6}}
                             : std::nullopt;
}

std::optional<trails::OpenHours> hours_of(const Columns& columns) {
  const auto from = columns.time("open_from");
  const auto to = columns.time("open_to");
  if (!from || !to) {
    return std::nullopt;
  }
  if (!(*from <= *to)) {
    columns.fault({"open_from is later than open_to, and its hours count as not given",
                   "give hours of one day, 00:00 to 24:00"});
    return std::nullopt;
  }
  return trails::OpenHours{*from, *to};
}

Trail trail_of(const LayerFeature& feature, const Columns& columns, const std::string& file) {
  Trail trail{.name = feature.name,
              .line = geo::Polyline{feature.shape.front().front()},
              .direction = columns.word<AllowedDirection>("direction", kDirections),
              .width = metres(columns.number("width_m", kAboveZero)),
              .lanes = columns.whole_number("lanes", {1, 100, "a whole number of 1 or more"}),
              .groomed = columns.yes_no("groomed"),
              .shared_with_skiers = columns.yes_no("skiers"),
              .hours = hours_of(columns),
              .line_error = metres(columns.number("error_m", kZeroOrMore)),
              .sight = metres(columns.number("sight_m", kAboveZero)),
              .marker_spacing = metres(columns.number("marker_m", kAboveZero)),
              .most_wind = speed(columns.number("wind_kmh", kAboveZero)),
              .file = file};
  if (const auto missing = trail.missing(); !missing.empty()) {
    columns.doubt(
        {"it is closed, because it does not say " + list_of(missing), "fill in these columns"});
  }
  return trail;
}

/// What a zone says of crossing it; only open ground is asked.
trails::OpenGround crossing_of(const Columns& columns) {
  trails::OpenGround crossing{
      .width = metres(columns.number("width_m", kAboveZero)),
      .lanes = columns.whole_number("lanes", {1, 100, "a whole number of 1 or more"}),
      .shared_with_skiers = columns.yes_no("skiers"),
      .hours = hours_of(columns),
      .line_error = metres(columns.number("error_m", kZeroOrMore)),
      .sight = metres(columns.number("sight_m", kAboveZero)),
      .most_wind = speed(columns.number("wind_kmh", kAboveZero)),
      .least_visibility = metres(columns.number("visibility_m", kAboveZero))};
  if (const auto missing = crossing.missing(); !missing.empty()) {
    columns.doubt({"no way over it is looked for, because it does not say " + list_of(missing),
                   "fill in these columns, or leave it as it is"});
  }
  return crossing;
}

/// Names already used in a file; a second use is a fault.
class UsedNames {
 public:
  [[nodiscard]] bool is_new(const LayerFeature& feature, const Columns& columns) {
    if (feature.has_unfit_name) {
      return false;
    }
    if (feature.name.empty()) {
      columns.fault({"it has no name", "fill in the column name"});
      return false;
    }
    if (!names_.insert(feature.name).second) {
      columns.fault({"the name is used twice in this file", "give each its own name"});
      return false;
    }
    return true;
  }

 private:
  std::set<std::string> names_;
};

template <class Data>
void tell_if_empty(base::Reading<std::vector<Data>>& reading, const LayerFile& file,
                   const std::string& what) {
  if (reading.data.empty() && reading.faults.empty()) {
    reading.faults.push_back({.file = file.shown,
                              .place = "",
                              .problem = "it holds no " + what,
                              .remedy = "draw them, or take the file out of site.toml",
                              .weight = base::Weight::doubt});
  }
}

}  // namespace

base::Reading<std::vector<Trail>> read_trails(const LayerFile& file, const geo::MapFrame& frame) {
  auto features =
      read_features(file, frame,
                    {"trails",
                     "trail",
                     {ShapeKind::line},
                     {"name", "direction", "width_m", "lanes", "groomed", "skiers", "open_from",
                      "open_to", "error_m", "sight_m", "marker_m", "wind_kmh"}});
  base::Reading<std::vector<Trail>> reading;
  reading.faults = std::move(features.faults);
  UsedNames names;
  for (const LayerFeature& feature : features.data) {
    const Columns columns{feature.said, {file.shown, feature.place}, reading.faults};
    if (names.is_new(feature, columns)) {
      reading.data.push_back(trail_of(feature, columns, file.shown));
    }
  }
  tell_if_empty(reading, file, "trails");
  return reading;
}

base::Reading<std::vector<trails::Station>> read_stations(const LayerFile& file,
                                                          const geo::MapFrame& frame) {
  auto features = read_features(
      file, frame, {"stations", "station", {ShapeKind::point}, {"name", "kind", "turning_m"}});
  base::Reading<std::vector<trails::Station>> reading;
  reading.faults = std::move(features.faults);
  UsedNames names;
  for (const LayerFeature& feature : features.data) {
    const Columns columns{feature.said, {file.shown, feature.place}, reading.faults};
    const auto kind = columns.word<StationKind>("kind", kStationKinds);
    const auto turning = metres(columns.number("turning_m", kZeroOrMore));
    if (!columns.text("kind")) {
      columns.fault({"it does not say its kind", "fill in the column kind"});
    }
    if (names.is_new(feature, columns) && kind) {
      reading.data.push_back({.name = feature.name,
                              .kind = *kind,
                              .place = feature.shape.front().front().front(),
                              .turning_radius = turning,
                              .file = file.shown});
    }
  }
  tell_if_empty(reading, file, "stations");
  return reading;
}

base::Reading<std::vector<trails::Zone>> read_zones(const LayerFile& file,
                                                    const geo::MapFrame& frame) {
  auto features =
      read_features(file, frame,
                    {"zones",
                     "zone",
                     {ShapeKind::area},
                     {"name", "kind", "speed_kmh", "width_m", "lanes", "skiers", "open_from",
                      "open_to", "error_m", "sight_m", "wind_kmh", "visibility_m"}});
  base::Reading<std::vector<trails::Zone>> reading;
  reading.faults = std::move(features.faults);
  UsedNames names;
  for (const LayerFeature& feature : features.data) {
    const Columns columns{feature.said, {file.shown, feature.place}, reading.faults};
    // A zone takes ground away, so one with a fault in its words still stands.
    (void)names.is_new(feature, columns);
    const auto kind = columns.word<ZoneKind>("kind", kZoneKinds);
    if (!columns.text("kind")) {
      columns.fault(
          {"it does not say its kind, and counts as forbidden", "fill in the column kind"});
    }
    const auto most_speed = speed(columns.number("speed_kmh", kAboveZero));
    if (kind == ZoneKind::speed_limit && !most_speed) {
      columns.doubt({"it is closed, because it does not say speed_kmh", "fill in this column"});
    }
    const auto crossing =
        kind == ZoneKind::open_ground ? crossing_of(columns) : trails::OpenGround{};
    for (const auto& rings : feature.shape) {
      reading.data.push_back({.name = feature.name.empty() ? feature.place : feature.name,
                              .kind = kind.value_or(ZoneKind::forbidden),
                              .region = {rings},
                              .speed = most_speed,
                              .file = file.shown,
                              .crossing = crossing});
    }
  }
  tell_if_empty(reading, file, "zones");
  return reading;
}

}  // namespace rimehaul::ports::gdal
