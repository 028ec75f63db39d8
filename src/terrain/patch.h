// The bilinear surface between four neighbouring cell centres: what ground is between heights.
#pragma once

#include <optional>
#include <vector>

#include "terrain/height_map.h"
#include "terrain/strip.h"

namespace rimehaul::terrain {

/// z(u, t) = (1-u)(1-t) z00 + u(1-t) z10 + (1-u)t z01 + u t z11, with u the share of the way along
/// the columns and t along the rows, both in [0, 1]. The rise per column depends on t alone, the
/// rise per row on u alone, and both linearly: their extremes are at the ends.
class Patch {
 public:
  /// The patch whose first corner, u = t = 0, is this cell; nothing if any corner is unknown.
  [[nodiscard]] static std::optional<Patch> from(const HeightMap& heights, CellIndex first);

  /// `within` is (u, t).
  [[nodiscard]] geo::Height height_at(GridPlace within) const;
  [[nodiscard]] units::Metres rise_per_column(double t) const;
  [[nodiscard]] units::Metres rise_per_row(double u) const;

 private:
  explicit Patch(const FourHeights& four) : four_{four} {}

  FourHeights four_;
};

struct PatchPlace {
  Patch patch;
  GridPlace within;  ///< (u, t)
};

/// The patch under a place; nothing if it is not wholly known.
[[nodiscard]] std::optional<PatchPlace> patch_under(const HeightMap& heights, geo::MapPoint place);

/// Gradients over part of a patch: all combinations of the two ranges, and no others.
struct PatchRises {
  units::Metres per_column_low;
  units::Metres per_column_high;
  units::Metres per_row_low;
  units::Metres per_row_high;
};

/// Gradients of every part of a patch that a strip covers; nothing if any of the patches is not
/// wholly known.
[[nodiscard]] std::optional<std::vector<PatchRises>> rises_under(const HeightMap& heights,
                                                                 const Strip& strip);

}  // namespace rimehaul::terrain
