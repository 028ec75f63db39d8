// What rasters of slopes were written, of what and from what, as plain data.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "card/made_from.h"
#include "passage/finding.h"
#include "rig/rig.h"
#include "snow/snow.h"
#include "terrain/grid.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// One raster.
struct SlopeRaster {
  std::string layer;  ///< "slope", "aspect", ...
  std::string file;
  std::string meaning;
  std::string unit;  ///< "" for none
};

/// The rig and the snow that shares and directions are of.
struct SlopeRig {
  std::string name;
  rig::Load load;
  std::string towing;  ///< name of the trailer; empty: none
  snow::SnowState snow;
  double allowed_share = 0.0;
  std::optional<units::Slope> tolerance;   ///< k sigma and the sub-cell term; nothing: not known
  std::optional<passage::Finding> closed;  ///< why it is so on any ground; nothing: it is not
  std::vector<std::string> ratings;
};

struct SlopesReport {
  int schema = 1;
  std::string site;
  std::string map_frame;
  terrain::CellIndex size;
  units::Metres cell;  ///< the wider side
  std::int64_t known = 0;
  std::optional<units::Slope> steepest;
  std::optional<units::Slope> sigma;  ///< of the gradient in any direction
  std::vector<std::string> heights_notes;
  std::vector<SlopeRaster> rasters;
  std::optional<SlopeRig> rig;
  std::int64_t open = 0;  ///< cells with an open direction
  std::vector<std::string> estimates;
  MadeFrom made_from;
  units::LocalClock local_clock{};
};

/// What every raster says of itself: how it may be used.
[[nodiscard]] std::string slopes_caution();

/// As text, no line longer than `columns` (80 or more).
[[nodiscard]] std::string text_of(const SlopesReport& report, int columns);

}  // namespace rimehaul::card
