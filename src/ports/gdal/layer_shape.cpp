#include "ports/gdal/layer_shape.h"

#include <ogr_api.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace rimehaul::ports::gdal {

using geo::MapPoint;
using units::Metres;

namespace {

/// Parts of a line whose ends are this near are one line.
constexpr Metres kJoined{0.001};
/// No map of the Earth in metres reaches farther from its origin.
constexpr double kEdgeOfMaps = 1e8;
/// No trail of a resort is longer; one that is would be judged for hours.
constexpr Metres kLongest{200'000};

std::vector<PlainPoint> points_of(OGRGeometryH line) {
  const int count = OGR_G_GetPointCount(line);
  std::vector<PlainPoint> points(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) {
    points[static_cast<std::size_t>(i)] = {OGR_G_GetX(line, i), OGR_G_GetY(line, i)};
  }
  return points;
}

std::vector<std::vector<PlainPoint>> rings_of(OGRGeometryH polygon) {
  const int count = OGR_G_GetGeometryCount(polygon);
  std::vector<std::vector<PlainPoint>> rings;
  rings.reserve(static_cast<std::size_t>(count));
  for (int i = 0; i < count; ++i) {
    rings.push_back(points_of(OGR_G_GetGeometryRef(polygon, i)));
  }
  return rings;
}

/// Adds a single geometry; false when it is none of point, line and polygon.
bool add_piece(OGRGeometryH geometry, PlainShape& shape) {
  switch (wkbFlatten(OGR_G_GetGeometryType(geometry))) {
    case wkbPoint:
      shape.kind = ShapeKind::point;
      shape.pieces.push_back({points_of(geometry)});
      return true;
    case wkbLineString:
      shape.kind = ShapeKind::line;
      shape.pieces.push_back({points_of(geometry)});
      return true;
    case wkbPolygon:
      shape.kind = ShapeKind::area;
      shape.pieces.push_back(rings_of(geometry));
      return true;
    default:
      return false;
  }
}

bool is_multiple(OGRGeometryH geometry) {
  const auto kind = wkbFlatten(OGR_G_GetGeometryType(geometry));
  return kind == wkbMultiPoint || kind == wkbMultiLineString || kind == wkbMultiPolygon;
}

bool all_finite(const PlainShape& shape) {
  return std::ranges::all_of(shape.pieces, [](const auto& rings) {
    return std::ranges::all_of(rings, [](const auto& ring) {
      return std::ranges::all_of(
          ring, [](PlainPoint point) { return std::isfinite(point.x) && std::isfinite(point.y); });
    });
  });
}

PlainShape troubled(PlainShape shape, Complaint complaint) {
  shape.trouble = std::move(complaint.problem);
  shape.remedy = std::move(complaint.remedy);
  return shape;
}

/// Joins the parts of a line end to start, in the order drawn; says where they do not meet.
MapShape joined(Shape parts) {
  std::vector<MapPoint> line = parts.front().front();
  for (std::size_t i = 1; i < parts.size(); ++i) {
    const std::vector<MapPoint>& next = parts[i].front();
    if (!(geo::distance(line.back(), next.front()) <= kJoined)) {
      return {{},
              "its part " + std::to_string(i + 1) + " does not begin where part " +
                  std::to_string(i) + " ends",
              "draw it as one line, or as several features each with its own name"};
    }
    line.insert(line.end(), next.begin() + 1, next.end());
  }
  const bool has_two = std::ranges::any_of(
      line, [&line](MapPoint point) { return geo::distance(point, line.front()) > kJoined; });
  if (!has_two) {
    return {{}, "it has fewer than two different points", "draw it anew or take it out"};
  }
  Metres length{0};
  for (std::size_t i = 1; i < line.size(); ++i) {
    length += geo::distance(line[i - 1], line[i]);
  }
  if (!(length <= kLongest)) {
    return {{}, "it is longer than 200 km", "check its coordinates, or draw it as several trails"};
  }
  return {{{std::move(line)}}, "", ""};
}

MapShape closed(Shape polygons) {
  for (auto& rings : polygons) {
    for (auto& ring : rings) {
      if (!ring.empty() && ring.front() != ring.back()) {
        ring.push_back(ring.front());
      }
      if (ring.size() < 4) {
        return {{}, "one of its outlines has fewer than three corners", "draw it anew"};
      }
    }
  }
  return {std::move(polygons), "", ""};
}

}  // namespace

const char* words_for(ShapeKind kind) {
  switch (kind) {
    case ShapeKind::point:
      return "a point";
    case ShapeKind::line:
      return "a line";
    case ShapeKind::area:
      return "an area";
  }
  return "a shape";
}

PlainShape plain_shape(void* geometry) {
  PlainShape shape;
  if (geometry == nullptr || OGR_G_IsEmpty(geometry) != 0) {
    return troubled(std::move(shape), {"it has no geometry", "draw it or take it out"});
  }
  bool understood = true;
  if (is_multiple(geometry)) {
    for (int i = 0; i < OGR_G_GetGeometryCount(geometry); ++i) {
      OGRGeometryH part = OGR_G_GetGeometryRef(geometry, i);
      understood = understood && (OGR_G_IsEmpty(part) != 0 || add_piece(part, shape));
    }
  } else {
    understood = add_piece(geometry, shape);
  }
  if (!understood) {
    return troubled(std::move(shape), {std::string{"its geometry is a "} +
                                           OGR_G_GetGeometryName(geometry) + ", which is not read",
                                       "draw it as a plain point, line or polygon"});
  }
  if (!all_finite(shape)) {
    return troubled(std::move(shape), {"it has a coordinate that is no number", "draw it anew"});
  }
  if (shape.kind == ShapeKind::point && shape.pieces.size() > 1) {
    return troubled(std::move(shape), {"it has several points", "make each a feature of its own"});
  }
  return shape;
}

MapShape map_shape(const PlainShape& plain, const Transformation& to_map) {
  Shape shape;
  for (const auto& rings : plain.pieces) {
    auto& piece = shape.emplace_back();
    for (const auto& ring : rings) {
      std::vector<PlainPoint> points = ring;
      transform(to_map, points);
      auto& placed = piece.emplace_back();
      for (const PlainPoint point : points) {
        if (!(std::abs(point.x) <= kEdgeOfMaps && std::abs(point.y) <= kEdgeOfMaps)) {
          return {{},
                  "it cannot be brought into the map frame",
                  "check its coordinates, their order and the file's coordinate system"};
        }
        placed.push_back({Metres{point.x}, Metres{point.y}});
      }
    }
  }
  switch (plain.kind) {
    case ShapeKind::line:
      return joined(std::move(shape));
    case ShapeKind::area:
      return closed(std::move(shape));
    case ShapeKind::point:
      break;
  }
  return {std::move(shape), "", ""};
}

}  // namespace rimehaul::ports::gdal
