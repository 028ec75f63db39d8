// Shares of one rig in one snow on plane ground, worked out once and looked up ever after.
#pragma once

#include <cstddef>
#include <vector>

#include "passage/plane_judge.h"

namespace rimehaul::passage {

/// What PlaneJudge says of grades and cross-slopes, in cells of 1 % by 1 %, of which each holds a
/// bound of all that is in it. For maps and searches that ask a million times; what they find is
/// judged again, place by place.
class ShareTable {
 public:
  /// Some ten thousand judgements: about a second. The answer's making needs the references of the
  /// question, not its use.
  explicit ShareTable(const SlopeQuestion& question);

  [[nodiscard]] double allowed_share() const { return allowed_share_; }

  /// Up to the allowed share: no share of any ground check, nor of stopping at walking pace, is
  /// larger with carrier and trailer each on any plane of the box, the ground falling away to
  /// either side. Above it, the box does not pass, and one plane in it may exceed by more
  /// (judge_stopping looks at the brake alone where the steady rig already exceeds). Infinite where
  /// something is closed whatever its share, where a decision is asked for, where the box is not
  /// known or has its ends the wrong way round, and for planes steeper than kSteepest.
  [[nodiscard]] double share_over(const terrain::AttitudeBox& box) const;
  [[nodiscard]] bool passes(const terrain::AttitudeBox& box) const {
    return share_over(box) <= allowed_share_;
  }

  /// Ends of the table: 45 degrees up, down and to either side.
  static constexpr units::Slope kSteepest = units::Slope::from_percent(100);

 private:
  /// A row of cells for each grade from the steepest descent up, a column for each cross-slope.
  static constexpr std::size_t kRows = 200;
  static constexpr std::size_t kColumns = 100;
  static constexpr std::size_t kColumnDoublings = 7;  ///< 2^6 is the most below kColumns

  struct Cell {
    std::size_t row;
    std::size_t column;
  };
  using Shares = std::vector<float>;  ///< row by row; never not a number

  /// Of each share and the one so many cells further on, or at the table's end, the larger.
  static Shares doubled(const Shares& shares, Cell by);
  /// Over a rectangle of cells, first and last included.
  [[nodiscard]] float largest_in(Cell first, Cell last) const;

  double allowed_share_;
  /// At i * kColumnDoublings + j: the largest shares over 2^i rows and 2^j columns from each cell
  /// on. Four of them cover any rectangle (Bender and Farach-Colton 2000).
  std::vector<Shares> largest_;
};

}  // namespace rimehaul::passage
