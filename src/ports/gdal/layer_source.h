// Opens a vector file, finds the one layer that is meant, and hands out its features in the map
// frame with what they say; nothing of the vector library passes on.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "geo/map_frame.h"
#include "geo/point.h"
#include "ports/gdal/layer_columns.h"
#include "ports/gdal/layers.h"

namespace rimehaul::ports::gdal {

enum class ShapeKind { point, line, area };

/// Points of the map frame, all finite. A point is one ring of one point; a line one ring; an area
/// has one entry per polygon: its outline, then its holes, each closed.
using Shape = std::vector<std::vector<std::vector<geo::MapPoint>>>;

struct LayerFeature {
  std::string name;             ///< "" when it has none
  bool has_unfit_name = false;  ///< of which it has been told; its place stands for the name
  std::string place;            ///< "trail North Bowl", or "trail number 3" by its feature id
  ShapeKind kind = ShapeKind::point;
  Shape shape;
  Said said;
};

/// What is looked for in a file.
struct Wanted {
  std::string layer;                 ///< "trails"
  std::string one;                   ///< "trail"
  std::vector<ShapeKind> kinds;      ///< what its features may be
  std::vector<std::string> columns;  ///< the names that are read
};

/// Every feature that can be placed on the map. Those that cannot are faults; columns that are not
/// known are doubts. Throws BadInput when nothing can be read.
[[nodiscard]] base::Reading<std::vector<LayerFeature>> read_features(const LayerFile& file,
                                                                     const geo::MapFrame& frame,
                                                                     const Wanted& wanted);

}  // namespace rimehaul::ports::gdal
