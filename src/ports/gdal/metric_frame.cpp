#include "ports/gdal/metric_frame.h"

#include <ogr_srs_api.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>
#include <numbers>
#include <string>
#include <utility>

namespace rimehaul::ports::gdal {

namespace {

/// A grade of 20 % read as 20.1 %: well inside the error of any heights.
constexpr double kMostOff = 0.005;

bool counts_towards_east_and_north(const Reference& map) {
  for (const int index : {0, 1}) {
    OGRAxisOrientation towards = OAO_Other;
    OSRGetAxis(map.get(), nullptr, index, &towards);
    if (towards != OAO_East && towards != OAO_North) {
      return false;
    }
  }
  return true;
}

/// Longitudes and latitudes in radians.
struct Ends {
  PlainPoint from;
  PlainPoint to;
};

/// Metres on the ellipsoid between two places not far apart.
double ground_distance(const Reference& map, const Ends& ends) {
  const auto& [from, to] = ends;
  const double semi_major = OSRGetSemiMajor(map.get(), nullptr);
  const double inverse = OSRGetInvFlattening(map.get(), nullptr);
  const double flattening = inverse > 0 ? 1.0 / inverse : 0.0;
  const double eccentricity2 = flattening * (2.0 - flattening);
  const double latitude = (from.y + to.y) / 2.0;
  const double w2 = 1.0 - eccentricity2 * std::sin(latitude) * std::sin(latitude);
  // Radii of curvature in the meridian and the prime vertical (Snyder 1987, USGS Professional
  // Paper 1395, eq. 4-18 and 4-20).
  const double meridian = semi_major * (1.0 - eccentricity2) / (w2 * std::sqrt(w2));
  const double across = semi_major / std::sqrt(w2);
  // The shorter way round, for places on both sides of the 180th meridian.
  const double turn = std::remainder(to.x - from.x, 2.0 * std::numbers::pi);
  return std::hypot(meridian * (to.y - from.y), across * std::cos(latitude) * turn);
}

std::string percent_off(Stretch stretch) {
  const double off = std::max(std::abs(stretch.most - 1.0), std::abs(stretch.least - 1.0));
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.1f %%", off * 100.0);
  return text.data();
}

}  // namespace

bool is_projected(const Reference& reference) {
  return reference && OSRIsProjected(reference.get()) != 0;
}

double full_turn_of(const Reference& geographic) {
  return 2.0 * std::numbers::pi / OSRGetAngularUnits(geographic.get(), nullptr);
}

double metres_per_map_unit(const Reference& reference) {
  return OSRGetLinearUnits(reference.get(), nullptr);
}

std::optional<Stretch> stretch_at(const Reference& map, PlainPoint place) {
  const ErrorScope errors;
  const Reference globe = horizontal_part(Reference{OSRCloneGeogCS(map.get())}.get());
  const Transformation to_globe = transformation_between({map, globe});
  if (!to_globe) {
    return std::nullopt;
  }
  constexpr double kStep = 50.0;
  constexpr double kDiagonal = kStep * std::numbers::sqrt2 / 2.0;
  const double unit = metres_per_map_unit(map);
  const double step = kStep / unit;
  const double diagonal = kDiagonal / unit;
  std::vector<PlainPoint> ends;
  for (const PlainPoint way : {PlainPoint{step, 0}, PlainPoint{0, step},
                               PlainPoint{diagonal, diagonal}, PlainPoint{diagonal, -diagonal}}) {
    ends.push_back({place.x - way.x, place.y - way.y});
    ends.push_back({place.x + way.x, place.y + way.y});
  }
  transform(to_globe, ends);
  const double radians = OSRGetAngularUnits(globe.get(), nullptr);
  Stretch stretch{std::numeric_limits<double>::infinity(), 0.0};
  for (std::size_t index = 0; index < ends.size(); index += 2) {
    const PlainPoint from{ends[index].x * radians, ends[index].y * radians};
    const PlainPoint to{ends[index + 1].x * radians, ends[index + 1].y * radians};
    const double ratio = 2.0 * kStep / ground_distance(map, {from, to});
    if (!std::isfinite(ratio)) {
      return std::nullopt;
    }
    stretch.least = std::min(stretch.least, ratio);
    stretch.most = std::max(stretch.most, ratio);
  }
  return stretch;
}

std::optional<Complaint> trouble_with(const Reference& map, const std::vector<PlainPoint>& places) {
  const std::string remedy =
      "set map_frame in site.toml to a projected system in metres made for the area, such as its "
      "UTM zone";
  if (!is_projected(map)) {
    return Complaint{"the map frame is not a projected reference system", remedy};
  }
  const std::string name = name_of(map);
  if (!(metres_per_map_unit(map) == 1.0)) {
    return Complaint{"the map frame " + name + " does not count in metres", remedy};
  }
  if (!counts_towards_east_and_north(map)) {
    return Complaint{"the map frame " + name + " does not count towards east and north", remedy};
  }
  for (const PlainPoint place : places) {
    const std::optional<Stretch> stretch = stretch_at(map, place);
    if (!stretch.has_value()) {
      return Complaint{"the heights lie outside what the map frame " + name + " can show", remedy};
    }
    const bool is_true = stretch->least >= 1.0 - kMostOff && stretch->most <= 1.0 + kMostOff;
    if (!is_true) {
      return Complaint{"the metres of the map frame " + name + " are off by " +
                           percent_off(*stretch) + " here, and so would be every slope",
                       remedy};
    }
  }
  return std::nullopt;
}

Reference in_metres(const Reference& projected) {
  const ErrorScope errors;
  Reference metric{OSRClone(projected.get())};
  const std::string name = name_of(projected) + ", in metres";
  if (OSRSetLinearUnitsAndUpdateParameters(metric.get(), "metre", 1.0) != OGRERR_NONE) {
    return nullptr;
  }
  OSRSetProjCS(metric.get(), name.c_str());
  return metric;
}

Reference utm_around(const Reference& geographic, PlainPoint place) {
  const ErrorScope errors;
  const double degrees = OSRGetAngularUnits(geographic.get(), nullptr) * 180.0 / std::numbers::pi;
  const double latitude = place.y * degrees;
  const double longitude =
      std::remainder(place.x * degrees + OSRGetPrimeMeridian(geographic.get(), nullptr), 360.0);
  constexpr double kNorthEnd = 84.0;
  constexpr double kSouthEnd = -80.0;
  if (!(latitude >= kSouthEnd && latitude <= kNorthEnd)) {
    return nullptr;
  }
  const int zone = std::clamp(static_cast<int>(std::floor((longitude + 180.0) / 6.0)) + 1, 1, 60);
  const bool is_north = latitude >= 0;
  if (are_same({geographic, globe_reference()})) {
    return reference_from("EPSG:" + std::to_string((is_north ? 32600 : 32700) + zone));
  }
  Reference utm{OSRClone(geographic.get())};
  const std::string name =
      "UTM zone " + std::to_string(zone) + (is_north ? "N on " : "S on ") + name_of(geographic);
  if (OSRSetProjCS(utm.get(), name.c_str()) != OGRERR_NONE ||
      OSRSetUTM(utm.get(), zone, is_north ? 1 : 0) != OGRERR_NONE) {
    return nullptr;
  }
  OSRSetAxisMappingStrategy(utm.get(), OAMS_TRADITIONAL_GIS_ORDER);
  return utm;
}

}  // namespace rimehaul::ports::gdal
