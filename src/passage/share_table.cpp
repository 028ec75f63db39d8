// Shares of one rig in one snow on plane ground, worked out once and looked up ever after.
#include "passage/share_table.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>

namespace rimehaul::passage {

using terrain::AttitudeBox;
using units::Slope;

namespace {

constexpr double kCellsPerRatio = 100.0;
constexpr float kClosed = std::numeric_limits<float>::infinity();
/// Covers the rounding of an index: far under a hundredth of a degree.
constexpr double kRounding = 1e-9;

Slope edge(double cells) {
  return Slope::from_ratio(cells / kCellsPerRatio);
}

/// Where a cell begins, in cells from level.
struct Corner {
  double grade;
  double cross;
};

/// The share that binds in a cell, not rounded down; closed without one.
float share_in(const PlaneJudge& judge, const Corner& lowest) {
  const AttitudeBox cell{.grade_low = edge(lowest.grade),
                         .grade_high = edge(lowest.grade + 1.0),
                         .cross_low = edge(lowest.cross),
                         .cross_high = edge(lowest.cross + 1.0)};
  const Finding binding = judge.binding_over(cell.widened(Slope::from_ratio(kRounding)));
  const Stand stand = stand_of(binding, judge.allowed_share());
  if (stand != Stand::passes && stand != Stand::exceeds) {
    return kClosed;
  }
  return std::nextafter(static_cast<float>(*binding.share), kClosed);
}

/// How often 1 can be doubled and be no more than a count of 1 or more.
std::size_t doublings_in(std::size_t count) {
  return static_cast<std::size_t>(std::bit_width(count | 1U)) - 1;
}

/// The cell that holds a ratio counted from the table's edge.
std::size_t index_of(double ratio) {
  return static_cast<std::size_t>(ratio * kCellsPerRatio);
}

}  // namespace

ShareTable::ShareTable(const SlopeQuestion& question) {
  const PlaneJudge judge{question};
  allowed_share_ = judge.allowed_share();
  Shares shares(kRows * kColumns, kClosed);
  if (!judge.closed().has_value()) {
    for (std::size_t row = 0; row < kRows; ++row) {
      for (std::size_t column = 0; column < kColumns; ++column) {
        shares[row * kColumns + column] =
            share_in(judge, {static_cast<double>(row) - kRows / 2.0, static_cast<double>(column)});
      }
    }
  }
  for (std::size_t i = 0; i <= doublings_in(kRows); ++i) {
    if (i > 0) {
      shares = doubled(largest_[(i - 1) * kColumnDoublings], {std::size_t{1} << (i - 1), 0});
    }
    largest_.push_back(shares);
    for (std::size_t j = 1; j < kColumnDoublings; ++j) {
      largest_.push_back(doubled(largest_.back(), {0, std::size_t{1} << (j - 1)}));
    }
  }
}

ShareTable::Shares ShareTable::doubled(const Shares& shares, Cell by) {
  Shares larger(shares.size());
  for (std::size_t row = 0; row < kRows; ++row) {
    for (std::size_t column = 0; column < kColumns; ++column) {
      const std::size_t further =
          std::min(row + by.row, kRows - 1) * kColumns + std::min(column + by.column, kColumns - 1);
      const std::size_t here = row * kColumns + column;
      larger[here] = std::max(shares[here], shares[further]);
    }
  }
  return larger;
}

float ShareTable::largest_in(Cell first, Cell last) const {
  const std::size_t i = doublings_in(last.row - first.row + 1);
  const std::size_t j = doublings_in(last.column - first.column + 1);
  const Shares& shares = largest_[i * kColumnDoublings + j];
  const std::size_t top = first.row * kColumns;
  const std::size_t bottom = (last.row + 1 - (std::size_t{1} << i)) * kColumns;
  const std::size_t right = last.column + 1 - (std::size_t{1} << j);
  return std::max({shares[top + first.column], shares[top + right], shares[bottom + first.column],
                   shares[bottom + right]});
}

double ShareTable::share_over(const AttitudeBox& box) const {
  const double end = kSteepest.ratio();
  const bool in_table = -end < box.grade_low.ratio() && box.grade_low <= box.grade_high &&
                        box.grade_high.ratio() < end && -end < box.cross_low.ratio() &&
                        box.cross_low <= box.cross_high && box.cross_high.ratio() < end;
  if (!in_table) {
    return static_cast<double>(kClosed);
  }
  const auto row = [](Slope grade) { return index_of(grade.ratio() + 1.0); };
  const Slope least = std::max({Slope{}, box.cross_low, box.cross_high.reversed()});
  const Slope most = std::max(box.cross_high, box.cross_low.reversed());
  return static_cast<double>(largest_in({row(box.grade_low), index_of(least.ratio())},
                                        {row(box.grade_high), index_of(most.ratio())}));
}

}  // namespace rimehaul::passage
