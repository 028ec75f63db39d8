// Heights finer than a rig, brought to its own scale: the mean of so many cells by so many.
#pragma once

#include <cstdint>
#include <memory>

#include "terrain/height_map.h"

namespace rimehaul::terrain {

/// How many cells side by side are no wider than `width` together, by the larger step; at least 1,
/// and 1 also where they are more than a block's side or nobody knows how many.
[[nodiscard]] std::int64_t cells_across(const GridFrame& frame, units::Metres width);

/// A lattice `side` times as wide, each height the mean of `side` x `side` cells; a void where one
/// of these is. What is left over at the far edges is dropped.
class AveragedHeights final : public BlockSource {
 public:
  /// Requires a source and a side of at least 1.
  AveragedHeights(std::unique_ptr<BlockSource> fine, std::int64_t side);

  [[nodiscard]] GridFrame frame() const override;
  [[nodiscard]] CellIndex size() const override;
  /// Reads `side` x `side` blocks of the fine source, each once.
  [[nodiscard]] HeightBlock read(BlockIndex block) override;

 private:
  std::unique_ptr<BlockSource> fine_;
  std::int64_t side_;
};

}  // namespace rimehaul::terrain
