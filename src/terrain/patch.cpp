#include "terrain/patch.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::terrain {

using units::Metres;

namespace {

struct Shares {
  double low = 0.0;
  double high = 1.0;
};

/// The part of a range of columns or rows that lies between `first` and the next.
Shares shares_of(CellRange range, std::int64_t first) {
  const auto start = static_cast<double>(first);
  return {std::clamp(range.low - start, 0.0, 1.0), std::clamp(range.high - start, 0.0, 1.0)};
}

struct PatchPart {
  Shares u;
  Shares t;
};

PatchRises rises_over(const Patch& patch, const PatchPart& part) {
  const auto [column_low, column_high] =
      std::minmax({patch.rise_per_column(part.t.low), patch.rise_per_column(part.t.high)});
  const auto [row_low, row_high] =
      std::minmax({patch.rise_per_row(part.u.low), patch.rise_per_row(part.u.high)});
  return {column_low, column_high, row_low, row_high};
}

/// Whether a range of columns or rows lies between the first and the last of `cells` cells.
bool within_raster(CellRange range, std::int64_t cells) {
  return range.low <= range.high && range.low >= 0.0 &&
         range.high <= static_cast<double>(cells) - 1.0;
}

std::int64_t first_of(CellRange range) {
  return static_cast<std::int64_t>(std::floor(range.low));
}

/// Index of the last patch that a range reaches into, never before its first.
std::int64_t last_of(CellRange range) {
  return std::max(first_of(range), static_cast<std::int64_t>(std::ceil(range.high)) - 1);
}

CellRange from_one_to_the_next(std::int64_t first) {
  const auto start = static_cast<double>(first);
  return {start, start + 1.0};
}

}  // namespace

std::optional<Patch> Patch::from(const HeightMap& heights, CellIndex first) {
  const auto four = heights.four_from(first);
  if (!four) {
    return std::nullopt;
  }
  return Patch{*four};
}

geo::Height Patch::height_at(GridPlace within) const {
  const double u = within.column;
  const double t = within.row;
  return four_.first + (1.0 - t) * u * (four_.next_column - four_.first) +
         t * ((1.0 - u) * (four_.next_row - four_.first) + u * (four_.next_both - four_.first));
}

Metres Patch::rise_per_column(double t) const {
  return (1.0 - t) * (four_.next_column - four_.first) + t * (four_.next_both - four_.next_row);
}

Metres Patch::rise_per_row(double u) const {
  return (1.0 - u) * (four_.next_row - four_.first) + u * (four_.next_both - four_.next_column);
}

std::optional<PatchPlace> patch_under(const HeightMap& heights, geo::MapPoint place) {
  const GridPlace at = heights.frame().locate(place);
  const CellIndex size = heights.size();
  if (!within_raster({at.column, at.column}, size.column) ||
      !within_raster({at.row, at.row}, size.row)) {
    return std::nullopt;
  }
  const CellIndex first{first_of({at.column, at.column}), first_of({at.row, at.row})};
  const auto patch = Patch::from(heights, first);
  if (!patch) {
    return std::nullopt;
  }
  return PatchPlace{*patch, GridPlace{at.column - static_cast<double>(first.column),
                                      at.row - static_cast<double>(first.row)}};
}

std::optional<std::vector<PatchRises>> rises_under(const HeightMap& heights, const Strip& strip) {
  const StripOnGrid on_grid{heights.frame(), strip};
  const CellRange rows = on_grid.rows();
  const CellRange columns = on_grid.columns();
  if (!within_raster(rows, heights.size().row) || !within_raster(columns, heights.size().column)) {
    return std::nullopt;
  }
  // Rounding must not carry a range beyond the whole it is a part of.
  const auto in_all_columns = [&columns](CellRange range) {
    return CellRange{std::clamp(range.low, columns.low, columns.high),
                     std::clamp(range.high, columns.low, columns.high)};
  };
  std::vector<CellRange> rows_of;
  for (std::int64_t column = first_of(columns); column <= last_of(columns); ++column) {
    rows_of.push_back(on_grid.rows_between(from_one_to_the_next(column)));
  }
  std::vector<PatchRises> found;
  for (std::int64_t row = first_of(rows); row <= last_of(rows); ++row) {
    const CellRange here = in_all_columns(on_grid.columns_between(from_one_to_the_next(row)));
    for (std::int64_t column = first_of(here); column <= last_of(here); ++column) {
      const auto patch = Patch::from(heights, {column, row});
      if (!patch) {
        return std::nullopt;
      }
      const auto index = static_cast<std::size_t>(column - first_of(columns));
      found.push_back(
          rises_over(*patch, {shares_of(here, column), shares_of(rows_of[index], row)}));
    }
  }
  return found;
}

}  // namespace rimehaul::terrain
