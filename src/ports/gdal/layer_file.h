// A vector file that has been opened, and which of its layers is meant.
#pragma once

#include <string>
#include <vector>

#include "base/fault.h"
#include "geo/map_frame.h"
#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/layer_source.h"
#include "ports/gdal/map_transform.h"

namespace rimehaul::ports::gdal {

/// An OGRLayerH; owned by its dataset.
using LayerHandle = void*;

struct Source {
  Dataset dataset;
  std::string driver;
  std::string shown;  ///< the file's name for people

  [[nodiscard]] bool is_gpx() const { return driver == "GPX"; }
  /// Whether the format has no columns of its own, so that free text may hold `key=value` pairs.
  [[nodiscard]] bool has_pairs() const { return is_gpx() || driver == "KML" || driver == "LIBKML"; }
};

/// Opens a file of the site. A Shapefile that names no code page is UTF-8. Throws BadInput.
[[nodiscard]] Source open_source(const LayerFile& file);

/// The layers that are meant: in GPX the waypoints, or routes and tracks; else the one named as
/// wanted, else the only one of the right geometry. None when the file is empty. Throws BadInput.
[[nodiscard]] std::vector<LayerHandle> layers_of(const Source& source, const Wanted& wanted);

/// Doubts about columns that are not read, with the name that was probably meant.
[[nodiscard]] std::vector<base::Fault> column_doubts(const Source& source, LayerHandle layer,
                                                     const Wanted& wanted);

/// The operation from a layer's coordinates to the map frame. Throws BadInput when the layer does
/// not say what its coordinates mean, or no exact operation is installed.
[[nodiscard]] Transformation to_map_of(const Source& source, LayerHandle layer,
                                       const geo::MapFrame& frame);

/// "a point or a line"
[[nodiscard]] std::string words_for_kinds(const Wanted& wanted);

}  // namespace rimehaul::ports::gdal
