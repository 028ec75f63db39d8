#include "terrain/strip.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace rimehaul::terrain {

using units::Metres;

namespace {

/// Far above the rounding of map coordinates (1e-9 m), far below any cell.
constexpr Metres kHair{1e-6};

}  // namespace

StripOnGrid::StripOnGrid(const GridFrame& frame, const Strip& strip) {
  const units::Bearing along = geo::bearing(strip.from, strip.to);
  const units::Bearing right = units::Bearing::from_degrees(along.degrees() + 90.0);
  const geo::MapPoint back = geo::moved(strip.from, along, -(strip.beyond + kHair));
  const geo::MapPoint front = geo::moved(strip.to, along, strip.beyond + kHair);
  const Metres aside = strip.each_side + kHair;
  corners_ = {frame.locate(geo::moved(back, right, aside)),
              frame.locate(geo::moved(front, right, aside)),
              frame.locate(geo::moved(front, right, -aside)),
              frame.locate(geo::moved(back, right, -aside))};
}

CellRange StripOnGrid::rows() const {
  const auto [low, high] = std::ranges::minmax(corners_, {}, &GridPlace::row);
  return {low.row, high.row};
}

// The part of a convex shape between two rows reaches as far as the parts of its edges there.
CellRange StripOnGrid::columns_between(CellRange rows) const {
  CellRange columns{INFINITY, -INFINITY};
  const auto reach = [&columns](double column) {
    columns.low = std::min(columns.low, column);
    columns.high = std::max(columns.high, column);
  };
  for (std::size_t i = 0; i < corners_.size(); ++i) {
    const GridPlace a = corners_[i];
    const GridPlace b = corners_[(i + 1) % corners_.size()];
    const double low = std::max(rows.low, std::min(a.row, b.row));
    const double high = std::min(rows.high, std::max(a.row, b.row));
    if (!(low <= high)) {
      continue;
    }
    if (a.row == b.row) {
      reach(a.column);
      reach(b.column);
      continue;
    }
    const double columns_per_row = (b.column - a.column) / (b.row - a.row);
    reach(low == a.row ? a.column : b.column + (low - b.row) * columns_per_row);
    reach(high == a.row ? a.column : b.column + (high - b.row) * columns_per_row);
  }
  return columns;
}

}  // namespace rimehaul::terrain
