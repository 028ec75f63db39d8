// Slopes of all cells of the heights, worked out block by block on every core.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "base/watcher.h"
#include "passage/heading_table.h"
#include "ports/gdal/raster_answer.h"
#include "terrain/sweep.h"

namespace rimehaul::app {

enum class SlopeLayer { slope, aspect, slope_error, share, directions };

/// A raster to fill with one layer.
struct LayerToFill {
  SlopeLayer layer;
  const ports::gdal::RasterAnswer* raster;
};

struct SlopeSweep {
  terrain::SheetTerms terms;
  const passage::HeadingTable* headings = nullptr;  ///< needed for shares and directions
  std::vector<LayerToFill> layers;
  terrain::VectorPath path = terrain::VectorPath::baseline;
};

struct SweepTally {
  terrain::SlopeTally slopes;
  std::int64_t open = 0;  ///< cells with an open direction
};

/// Heights of one raster, one source for each worker, which must be alike. The watcher is told of a
/// part for each block; how many there are says `blocks`.
[[nodiscard]] SweepTally sweep_slopes(const std::vector<terrain::BlockSource*>& sources,
                                      const terrain::Sweep& blocks, const SlopeSweep& slopes,
                                      base::Watcher& watcher);

}  // namespace rimehaul::app
