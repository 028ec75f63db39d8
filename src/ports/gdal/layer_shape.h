// Geometries of a vector file as plain points, in the file's own coordinates.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ports/gdal/layer_source.h"
#include "ports/gdal/map_transform.h"

namespace rimehaul::ports::gdal {

/// A geometry taken apart, or why it cannot be used.
struct PlainShape {
  ShapeKind kind = ShapeKind::point;
  std::vector<std::vector<std::vector<PlainPoint>>> pieces;
  std::string trouble;  ///< "" when there is none
  std::string remedy;
};

/// Takes a geometry handle (may be null) apart. Parts of a line are still separate.
[[nodiscard]] PlainShape plain_shape(void* geometry);

/// Brings it into the map frame and makes it whole: parts of a line joined, rings closed.
struct MapShape {
  Shape shape;
  std::string trouble;  ///< "" when there is none
  std::string remedy;
};
[[nodiscard]] MapShape map_shape(const PlainShape& plain, const Transformation& to_map);

/// "a point", "a line" or "an area".
[[nodiscard]] const char* words_for(ShapeKind kind);

}  // namespace rimehaul::ports::gdal
