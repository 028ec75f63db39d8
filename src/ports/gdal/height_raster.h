// Heights from raster files, guarded: only known drivers, only regular files, only metric maps.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "base/fault.h"
#include "geo/map_frame.h"
#include "terrain/height_map.h"

namespace rimehaul::ports::gdal {

/// Metres per unit of the heights as declared by the site; nothing: the files must say.
struct HeightRasterRequest {
  std::string folder;                         ///< no file may lie outside it or be a link
  std::vector<std::string> files;             ///< relative to the folder; several are a mosaic
  std::string shown_folder{};                 ///< the folder as people wrote it, for faults
  std::optional<std::string> map_frame;       ///< "EPSG:32605"; nothing: that of the first file
  std::optional<std::string> vertical_datum;  ///< for people; needed when the files do not say
  std::optional<double> metres_per_unit;      ///< 1 or a foot; must agree with the files
  units::Metres lowest;                       ///< heights outside lowest..highest are voids
  units::Metres highest;
};

/// What was found in the files, for `check` and for cards.
struct HeightRasterFacts {
  /// Where no file can be opened: the declared one, if that is sound.
  geo::MapFrame frame;
  bool warped = false;  ///< heights were brought once into the metric map frame
  /// Steps between heights that were measured. Where they were warped the cells of the source lie
  /// closer together, and it is the widest of these that counts against a rig's gauge.
  units::Metres narrowest_step;
  units::Metres widest_step;
  double metres_per_unit = 1.0;
  bool says_unit = false;                ///< every file says in what unit its heights are
  bool says_datum = false;               ///< some file says from what level they count
  std::optional<units::Metres> quantum;  ///< step of the heights when they look rounded
  std::vector<std::string> notes;        ///< one line each
};

struct OpenedHeights {
  std::unique_ptr<terrain::BlockSource> source;  ///< null when faults forbid use
  HeightRasterFacts facts;
};

/// Opens the heights. All faults are found in one pass, those of files that cannot be opened among
/// them; a source is there only when none of them is more than a doubt. The source belongs to one
/// thread, and its reads throw BadInput where a file is cut off.
[[nodiscard]] base::Reading<OpenedHeights> open_heights(const HeightRasterRequest& request);

/// The map frame that a site declares, as far as it can be told without heights: known, projected,
/// in metres. Otherwise a fault, and the frame is empty. It has no vertical datum.
[[nodiscard]] base::Reading<geo::MapFrame> declared_frame(const std::string& map_frame);

}  // namespace rimehaul::ports::gdal
