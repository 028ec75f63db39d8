#include "hazard/steep_map.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstddef>
#include <limits>

namespace rimehaul::hazard {

using geo::MapPoint;
using terrain::CellIndex;
using units::Metres;

namespace {

/// Keeps a slope that equals the limit on the steep side in spite of rounding.
constexpr double kHair = 1e-9;

constexpr auto kWindowSide = static_cast<std::size_t>(kTileSide) + 2;

/// Heights of a tile with one cell around it, row by row; NaN where unknown.
using Window = std::array<double, kWindowSide * kWindowSide>;

Window window_around(const terrain::HeightMap& heights, TileIndex tile) {
  Window window_m{};
  std::size_t next = 0;
  for (std::int64_t row = -1; row <= kTileSide; ++row) {
    for (std::int64_t column = -1; column <= kTileSide; ++column) {
      const auto height =
          heights.at(CellIndex{tile.column * kTileSide + column, tile.row * kTileSide + row});
      window_m[next++] =
          height ? height->above_datum_m() : std::numeric_limits<double>::quiet_NaN();
    }
  }
  return window_m;
}

/// Square of Horn's slope at a cell of the tile; NaN when any of the nine heights is unknown.
double horn_slope_squared(const terrain::GridFrame& frame, const Window& z, std::size_t corner) {
  const std::size_t above = corner;
  const std::size_t here = corner + kWindowSide;
  const std::size_t below = here + kWindowSide;
  const double west = z[above] + 2.0 * z[here] + z[below];
  const double east = z[above + 2] + 2.0 * z[here + 2] + z[below + 2];
  const double north = z[above] + 2.0 * z[above + 1] + z[above + 2];
  const double south = z[below] + 2.0 * z[below + 1] + z[below + 2];
  const auto gradient = frame.to_map({Metres{(east - west) / 8.0}, Metres{(south - north) / 8.0}});
  const double unknown_if_centre_is = 0.0 * z[here + 1];
  return gradient.east.ratio() * gradient.east.ratio() +
         gradient.north.ratio() * gradient.north.ratio() + unknown_if_centre_is;
}

double distance_m(const geo::Segment& segment, MapPoint place) {
  const double along_east = (segment.to.east - segment.from.east).value();
  const double along_north = (segment.to.north - segment.from.north).value();
  const double east = (place.east - segment.from.east).value();
  const double north = (place.north - segment.from.north).value();
  const double length2 = along_east * along_east + along_north * along_north;
  const double share =
      length2 > 0.0 ? std::clamp((east * along_east + north * along_north) / length2, 0.0, 1.0)
                    : 0.0;
  return std::hypot(east - share * along_east, north - share * along_north);
}

double distance_m(std::span<const geo::Segment> piece, MapPoint place) {
  double least_m = std::numeric_limits<double>::infinity();
  for (const geo::Segment& segment : piece) {
    least_m = std::min(least_m, distance_m(segment, place));
  }
  return least_m;
}

/// Tiles from one corner to the other.
struct TileRange {
  TileIndex first;
  TileIndex last;
};

TileIndex tile_of(terrain::GridPlace place) {
  constexpr auto kSide = static_cast<double>(kTileSide);
  return {static_cast<std::int64_t>(std::floor((place.column + 0.5) / kSide)),
          static_cast<std::int64_t>(std::floor((place.row + 0.5) / kSide))};
}

TileRange tiles_of(const terrain::GridFrame& frame, std::span<const geo::Segment> piece) {
  const TileIndex start = tile_of(frame.locate(piece.front().from));
  TileRange range{start, start};
  for (const geo::Segment& segment : piece) {
    const TileIndex tile = tile_of(frame.locate(segment.to));
    range.first.column = std::min(range.first.column, tile.column);
    range.first.row = std::min(range.first.row, tile.row);
    range.last.column = std::max(range.last.column, tile.column);
    range.last.row = std::max(range.last.row, tile.row);
  }
  return range;
}

}  // namespace

struct SteepMap::Search {
  std::span<const geo::Segment> piece;
  double nearest_m;  ///< lower bound of the distance to the nearest steep ground found
  bool found = false;
};

SteepMap::SteepMap(const terrain::HeightMap& heights, units::Slope least)
    : heights_{&heights}, least_{least}, half_cell_{heights.frame().half_diagonal()} {}

SteepMap::Tile SteepMap::worked_out(TileIndex index) const {
  const Window window_m = window_around(*heights_, index);
  const double least = std::max(0.0, least_.ratio() - kHair);
  Tile tile;
  tile.worked_out = true;
  for (std::size_t row = 0; row < tile.rows.size(); ++row) {
    unsigned bits = 0;
    for (std::size_t column = 0; column < tile.rows.size(); ++column) {
      const double slope2 =
          horn_slope_squared(heights_->frame(), window_m, row * kWindowSide + column);
      const bool gentle = slope2 < least * least;
      bits |= (gentle ? 0U : 1U) << column;
    }
    tile.rows[row] = static_cast<std::uint16_t>(bits);
    tile.any |= bits != 0;
  }
  return tile;
}

const SteepMap::Tile& SteepMap::tile_at(TileIndex index) {
  constexpr auto kSide = static_cast<std::uint64_t>(kShelfSide);
  // Negative indices wrap to large ones, each still to its own shelf.
  const auto column = static_cast<std::uint64_t>(index.column);
  const auto row = static_cast<std::uint64_t>(index.row);
  const std::uint64_t key = (row / kSide) << 32U | (column / kSide & 0xffffffffU);
  if (last_shelf_ == nullptr || key != last_key_) {
    auto& shelf = shelves_[key];
    if (!shelf) {
      shelf = std::make_unique<Shelf>();
    }
    last_key_ = key;
    last_shelf_ = shelf.get();
  }
  Tile& tile = (*last_shelf_)[static_cast<std::size_t>(row % kSide * kSide + column % kSide)];
  if (!tile.worked_out) {
    tile = worked_out(index);
  }
  return tile;
}

void SteepMap::look_into(TileIndex index, Search& search) {
  const Tile& tile = tile_at(index);
  if (!tile.any) {
    return;
  }
  const auto& frame = heights_->frame();
  const CellIndex corner{index.column * kTileSide, index.row * kTileSide};
  const CellIndex middle{corner.column + kTileSide / 2, corner.row + kTileSide / 2};
  const double tile_reach_m = half_cell_.value() * static_cast<double>(kTileSide + 2);
  if (distance_m(search.piece, frame.centre_of(middle)) - tile_reach_m > search.nearest_m) {
    return;
  }
  for (std::size_t row = 0; row < tile.rows.size(); ++row) {
    for (unsigned bits = tile.rows[row]; bits != 0; bits &= bits - 1) {
      const MapPoint centre = frame.centre_of(
          {corner.column + std::countr_zero(bits), corner.row + static_cast<std::int64_t>(row)});
      const double away_m = std::max(0.0, distance_m(search.piece, centre) - half_cell_.value());
      if (away_m <= search.nearest_m) {
        search.nearest_m = away_m;
        search.found = true;
      }
    }
  }
}

// Rings of tiles around those of the piece. Between a tile of ring k and the piece lie k - 1 whole
// tiles, so nothing in it is nearer than their side at the least stretch of the lattice.
std::optional<Metres> SteepMap::nearest_to(std::span<const geo::Segment> piece, Metres reach) {
  const std::scoped_lock lock{one_at_a_time_};
  const auto& frame = heights_->frame();
  const double side_m = static_cast<double>(kTileSide) * frame.least_stretch().value();
  const TileRange own = tiles_of(frame, piece);
  Search search{.piece = piece, .nearest_m = reach.value()};
  for (std::int64_t ring = 0;
       static_cast<double>(ring - 1) * side_m - half_cell_.value() <= search.nearest_m; ++ring) {
    const std::int64_t left = own.first.column - ring;
    const std::int64_t right = own.last.column + ring;
    for (std::int64_t row = own.first.row - ring; row <= own.last.row + ring; ++row) {
      const bool whole_row = ring == 0 || row == own.first.row - ring || row == own.last.row + ring;
      const std::int64_t step = whole_row ? 1 : right - left;
      for (std::int64_t column = left; column <= right; column += step) {
        look_into({column, row}, search);
      }
    }
    if (search.nearest_m <= 0.0 && search.found) {
      break;
    }
  }
  return search.found ? std::optional{Metres{search.nearest_m}} : std::nullopt;
}

}  // namespace rimehaul::hazard
