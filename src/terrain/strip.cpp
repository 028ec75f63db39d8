#include "terrain/strip.h"

#include <algorithm>
#include <cstddef>
#include <limits>

namespace rimehaul::terrain {

using units::Metres;

namespace {

/// Far above the rounding of map coordinates (1e-9 m), far below any cell.
constexpr Metres kHair{1e-6};

constexpr double kInfinite = std::numeric_limits<double>::infinity();

/// A corner of a shape: one coordinate to cut by, one to measure.
struct Corner {
  double cut = 0.0;
  double reach = 0.0;
};

/// How far the part of a convex shape that lies within a range of `cut` reaches in `reach`: as far
/// as the parts of its edges there.
CellRange reach_within(const std::array<Corner, 4>& shape, CellRange range) {
  CellRange reached{kInfinite, -kInfinite};
  const auto take = [&reached](double reach) {
    reached.low = std::min(reached.low, reach);
    reached.high = std::max(reached.high, reach);
  };
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const Corner a = shape[i];
    const Corner b = shape[(i + 1) % shape.size()];
    const double low = std::max(range.low, std::min(a.cut, b.cut));
    const double high = std::min(range.high, std::max(a.cut, b.cut));
    if (!(low <= high)) {
      continue;
    }
    if (a.cut == b.cut) {
      take(a.reach);
      take(b.reach);
      continue;
    }
    const double slant = (b.reach - a.reach) / (b.cut - a.cut);
    take(low == a.cut ? a.reach : b.reach + (low - b.cut) * slant);
    take(high == a.cut ? a.reach : b.reach + (high - b.cut) * slant);
  }
  return reached;
}

}  // namespace

StripOnGrid::StripOnGrid(const GridFrame& frame, const Strip& strip) {
  const units::Bearing along = geo::bearing({strip.from, strip.to});
  const units::Bearing right = units::Bearing::from_degrees(along.degrees() + 90.0);
  const geo::MapPoint back = geo::moved(strip.from, along, -(strip.beyond + kHair));
  const geo::MapPoint front = geo::moved(strip.to, along, strip.beyond + kHair);
  const Metres aside = strip.each_side + kHair;
  const Metres east = right.sine() * aside;
  const Metres north = right.cosine() * aside;
  corners_ = {frame.locate({back.east + east, back.north + north}),
              frame.locate({front.east + east, front.north + north}),
              frame.locate({front.east - east, front.north - north}),
              frame.locate({back.east - east, back.north - north})};
}

CellRange StripOnGrid::rows() const {
  const auto [low, high] = std::ranges::minmax(corners_, {}, &GridPlace::row);
  return {low.row, high.row};
}

CellRange StripOnGrid::columns() const {
  const auto [low, high] = std::ranges::minmax(corners_, {}, &GridPlace::column);
  return {low.column, high.column};
}

CellRange StripOnGrid::columns_between(CellRange rows) const {
  std::array<Corner, 4> shape;
  std::ranges::transform(corners_, shape.begin(), [](GridPlace place) {
    return Corner{place.row, place.column};
  });
  return reach_within(shape, rows);
}

CellRange StripOnGrid::rows_between(CellRange columns) const {
  std::array<Corner, 4> shape;
  std::ranges::transform(corners_, shape.begin(), [](GridPlace place) {
    return Corner{place.column, place.row};
  });
  return reach_within(shape, columns);
}

}  // namespace rimehaul::terrain
