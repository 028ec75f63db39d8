// The rasters that `slopes` writes: their names, what they hold, and how they look.
#pragma once

#include <string>
#include <vector>

#include "app/slope_sweep.h"

namespace rimehaul::app {

/// What never changes about a layer.
struct LayerFacts {
  SlopeLayer layer = SlopeLayer::slope;
  const char* word = "";  ///< on the command line; its file is `word`.tif
  const char* meaning = "";
  const char* unit = "";
  ports::gdal::CellKind kind = ports::gdal::CellKind::real_32;
  std::optional<double> nodata;
  ports::gdal::Overview overview = ports::gdal::Overview::largest;
};

/// All of them, in the order in which they are told.
[[nodiscard]] const std::vector<LayerFacts>& slope_layers();
[[nodiscard]] std::vector<std::string> slope_layer_words();
/// "slope.tif"
[[nodiscard]] std::string file_of(const LayerFacts& facts);
/// Whether it speaks of a rig.
[[nodiscard]] bool is_of_a_rig(SlopeLayer layer);

/// A colour for each value of a layer; none for layers of real numbers.
[[nodiscard]] std::vector<ports::gdal::Colour> colours_of(SlopeLayer layer, double allowed_share);

}  // namespace rimehaul::app
