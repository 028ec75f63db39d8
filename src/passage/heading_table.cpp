#include "passage/heading_table.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "terrain/heading_arc.h"

namespace rimehaul::passage {

namespace {

using units::Slope;

constexpr std::size_t kQuarter = Headings::kSectors / 4;

std::array<terrain::HeadingArc, kQuarter> quarter_of_sectors() {
  const auto sector = [](double centre_deg) {
    return terrain::HeadingArc{units::Bearing::from_degrees(centre_deg)}.reaching(-11.25).reaching(
        11.25);
  };
  return {sector(0.0), sector(22.5), sector(45.0), sector(67.5)};
}

std::uint8_t percent_of(double share) {
  const double percent = std::ceil(share * 100.0);
  return percent < Headings::kClosedPercent ? static_cast<std::uint8_t>(percent)
                                            : Headings::kClosedPercent;
}

}  // namespace

// A share depends on heading and gradient as they lie to each other. So a sector a quarter turn on
// stands to a gradient as this sector does to the gradient turned back by a quarter.
void HeadingTable::take(SectorShare found, Square square, std::vector<double>& least) {
  for (std::size_t turn = 0; turn < 4; ++turn) {
    const std::size_t at = square.north * kSquares + square.east;
    least[at] = std::min(least[at], found.share);
    if (found.passes) {
      squares_[at].open =
          static_cast<std::uint16_t>(squares_[at].open | 1U << (found.sector + turn * kQuarter));
    }
    // (east, north) turned by a quarter to the right is (north, -east).
    square.east = std::exchange(square.north, kSquares - 1 - square.east);
  }
}

HeadingTable::HeadingTable(const ShareTable& shares, Slope tolerance)
    : squares_(kSquares * kSquares) {
  const bool is_known = tolerance.ratio() >= 0.0 && std::isfinite(tolerance.ratio());
  if (!is_known) {
    return;
  }
  beyond_.share_percent = Headings::kClosedPercent;
  // From the middle of a square to its corner, and what single precision may be off.
  constexpr double kSquare = 1.0 / static_cast<double>(kPerRatio);
  const Slope reach = Slope::from_ratio(tolerance.ratio() + kSquare * 0.70710678118654757 + 1e-6);
  const auto middle = [](std::size_t square) {
    return Slope::from_ratio((static_cast<double>(square) + 0.5) * kSquare - 1.0);
  };
  const auto sectors = quarter_of_sectors();
  std::vector<double> least(squares_.size(), std::numeric_limits<double>::infinity());
  for (std::size_t row = 0; row < kSquares; ++row) {
    for (std::size_t column = 0; column < kSquares; ++column) {
      const terrain::Gradient gradient{middle(column), middle(row)};
      for (std::size_t sector = 0; sector < sectors.size(); ++sector) {
        const double share =
            shares.share_over(sectors.at(sector).attitudes_on(gradient).widened(reach));
        take({sector, share, share <= shares.allowed_share()}, {column, row}, least);
      }
    }
  }
  std::ranges::transform(squares_, least, squares_.begin(), [](Headings square, double share) {
    square.share_percent = percent_of(share);
    return square;
  });
}

}  // namespace rimehaul::passage
