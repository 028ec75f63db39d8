// Heights brought once into the metric map frame, block by block as they are asked for.
#pragma once

#include <cstddef>
#include <deque>
#include <map>
#include <memory>
#include <utility>
#include <vector>

#include "ports/gdal/height_mosaic.h"

namespace rimehaul::ports::gdal {

/// Blocks of one mosaic, the last few kept. Belongs to one thread.
class BlockShelf {
 public:
  explicit BlockShelf(HeightMosaic mosaic) : mosaic_{std::move(mosaic)} {}

  [[nodiscard]] const HeightMosaic& mosaic() const { return mosaic_; }
  /// Bilinear between the four centres around a place in cells; NaN where any of the four is a void
  /// or lies outside, so that holes grow and are never filled.
  [[nodiscard]] double height_at(terrain::GridPlace place);

 private:
  [[nodiscard]] double height_of(terrain::CellIndex cell);
  [[nodiscard]] const terrain::HeightBlock& block(terrain::BlockIndex index);

  HeightMosaic mosaic_;
  std::map<terrain::BlockIndex, terrain::HeightBlock> kept_;
  std::deque<terrain::BlockIndex> oldest_first_;
};

/// A north-up lattice in the map frame over all mosaics, its cells half as wide as the narrowest
/// step between measured heights: then each patch of measured ground holds whole cells of the new
/// lattice, and no slope is lost between two of them. Bilinear in the measured heights; the place
/// of every cell is transformed exactly, none is interpolated. The first mosaic that knows a height
/// wins.
class WarpedHeights final : public terrain::BlockSource {
 public:
  /// Nothing when some mosaic cannot be transformed into the map frame without a ballpark guess,
  /// or when the lattice would be too large.
  static std::unique_ptr<WarpedHeights> make(std::vector<HeightMosaic> mosaics,
                                             const Reference& frame);

  [[nodiscard]] terrain::GridFrame frame() const override { return lattice_.as_metric(); }
  [[nodiscard]] terrain::CellIndex size() const override { return size_; }
  [[nodiscard]] terrain::HeightBlock read(terrain::BlockIndex block) override;
  /// Steps between measured heights, on the map.
  [[nodiscard]] units::Metres narrowest_step() const { return narrowest_step_; }
  [[nodiscard]] units::Metres widest_step() const { return widest_step_; }

 private:
  struct Part {
    BlockShelf shelf;
    Transformation from_map;
  };
  WarpedHeights() = default;
  void add_part(Part& part, const std::vector<PlainPoint>& centres, terrain::HeightBlock& heights);

  std::vector<Part> parts_;
  Lattice lattice_;
  terrain::CellIndex size_;
  units::Metres narrowest_step_;
  units::Metres widest_step_;
};

}  // namespace rimehaul::ports::gdal
