// Which cells are steep, worked out where somebody looks, and how near the nearest one is.
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <mutex>
#include <optional>
#include <span>
#include <unordered_map>

#include "terrain/height_map.h"

namespace rimehaul::hazard {

/// Cells along each side of a tile, the unit in which steepness is worked out and skipped.
inline constexpr std::int64_t kTileSide = 16;
/// Tiles along each side of a shelf, the unit in which tiles are kept.
inline constexpr std::int64_t kShelfSide = 8;

struct TileIndex {
  std::int64_t column = 0;
  std::int64_t row = 0;

  friend bool operator==(const TileIndex&, const TileIndex&) = default;
};

class SteepMap {
 public:
  /// A cell is steep unless its slope by Horn (1981) is known and below `least`.
  SteepMap(const terrain::HeightMap& heights, units::Slope least);

  /// A lower bound of the distance in plan to the nearest ground that a steep cell stands for;
  /// nothing when there is none within `reach`.
  [[nodiscard]] std::optional<units::Metres> nearest_to(std::span<const geo::Segment> piece,
                                                        units::Metres reach);

 private:
  /// One bit per cell, set where it is steep.
  struct Tile {
    bool worked_out = false;
    bool any = false;
    std::array<std::uint16_t, kTileSide> rows{};
  };
  using Shelf = std::array<Tile, static_cast<std::size_t>(kShelfSide* kShelfSide)>;

  /// A search under way: the nearest so far, at first just beyond reach.
  struct Search;

  [[nodiscard]] const Tile& tile_at(TileIndex index);
  [[nodiscard]] Tile worked_out(TileIndex index) const;
  void look_into(TileIndex index, Search& search);

  const terrain::HeightMap* heights_;
  units::Slope least_;
  units::Metres half_cell_;  ///< from the centre of a cell to its farthest corner
  std::mutex one_at_a_time_;
  std::unordered_map<std::uint64_t, std::unique_ptr<Shelf>> shelves_;
  std::uint64_t last_key_ = 0;
  Shelf* last_shelf_ = nullptr;
};

}  // namespace rimehaul::hazard
