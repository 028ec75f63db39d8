#include "ports/gdal/lattice.h"

#include <cmath>

namespace rimehaul::ports::gdal {

namespace {

double determinant(const Lattice& lattice) {
  return lattice.per_column.x * lattice.per_row.y - lattice.per_row.x * lattice.per_column.y;
}

bool is_near_whole(double value) {
  constexpr double kHundredth = 0.01;
  return std::abs(value - std::round(value)) <= kHundredth;
}

}  // namespace

PlainPoint Lattice::at(terrain::GridPlace place) const {
  return {first.x + place.column * per_column.x + place.row * per_row.x,
          first.y + place.column * per_column.y + place.row * per_row.y};
}

terrain::GridPlace Lattice::locate(PlainPoint point) const {
  const double dx = point.x - first.x;
  const double dy = point.y - first.y;
  const double area = determinant(*this);
  return {(dx * per_row.y - dy * per_row.x) / area, (dy * per_column.x - dx * per_column.y) / area};
}

bool Lattice::is_sound() const {
  const double longest = std::hypot(per_column.x, per_column.y) * std::hypot(per_row.x, per_row.y);
  const bool is_finite = std::isfinite(first.x) && std::isfinite(first.y) && std::isfinite(longest);
  // A sine of the angle between the steps below a thousandth is a broken header, not a raster.
  constexpr double kFlattest = 1e-3;
  return is_finite && longest > 0 && std::abs(determinant(*this)) >= kFlattest * longest;
}

Lattice Lattice::scaled(double factor) const {
  const auto scale = [factor](PlainPoint point) {
    return PlainPoint{point.x * factor, point.y * factor};
  };
  return {scale(first), scale(per_column), scale(per_row)};
}

Lattice Lattice::shifted(terrain::CellIndex by) const {
  return {at({static_cast<double>(by.column), static_cast<double>(by.row)}), per_column, per_row};
}

terrain::GridFrame Lattice::as_metric() const {
  const auto step = [](PlainPoint point) {
    return terrain::GridStep{units::Metres{point.x}, units::Metres{point.y}};
  };
  return terrain::GridFrame{geo::MapPoint{units::Metres{first.x}, units::Metres{first.y}},
                            {step(per_column), step(per_row)}};
}

Lattice lattice_of(const std::array<double, 6>& geotransform) {
  const Lattice corners{{geotransform[0], geotransform[3]},
                        {geotransform[1], geotransform[4]},
                        {geotransform[2], geotransform[5]}};
  return {corners.at({0.5, 0.5}), corners.per_column, corners.per_row};
}

std::vector<PlainPoint> outline_of(const Lattice& lattice, terrain::CellIndex size) {
  std::vector<PlainPoint> places;
  for (const double down : {0.0, 0.5, 1.0}) {
    for (const double along : {0.0, 0.5, 1.0}) {
      places.push_back(lattice.at({along * static_cast<double>(size.column - 1),
                                   down * static_cast<double>(size.row - 1)}));
    }
  }
  return places;
}

std::optional<terrain::CellIndex> offset_on(const TwoLattices& two, terrain::CellIndex extent) {
  const terrain::GridPlace near_corner = two.base.locate(two.other.first);
  const auto columns = static_cast<double>(extent.column - 1);
  const auto rows = static_cast<double>(extent.row - 1);
  const terrain::GridPlace offset{std::round(near_corner.column), std::round(near_corner.row)};
  constexpr double kFarthest = 1e9;
  if (!(std::abs(offset.column) <= kFarthest && std::abs(offset.row) <= kFarthest)) {
    return std::nullopt;
  }
  // All four corners must fall on the same whole offset, so that neither step nor turn differs.
  for (const terrain::GridPlace corner :
       {terrain::GridPlace{0, 0}, terrain::GridPlace{columns, 0}, terrain::GridPlace{0, rows},
        terrain::GridPlace{columns, rows}}) {
    const terrain::GridPlace found = two.base.locate(two.other.at(corner));
    const double column = found.column - corner.column;
    const double row = found.row - corner.row;
    const bool agrees = is_near_whole(column) && is_near_whole(row) &&
                        std::round(column) == offset.column && std::round(row) == offset.row;
    if (!agrees) {
      return std::nullopt;
    }
  }
  return terrain::CellIndex{static_cast<std::int64_t>(offset.column),
                            static_cast<std::int64_t>(offset.row)};
}

}  // namespace rimehaul::ports::gdal
