// Sixteen headings on square cells, and the step that a move in each of them takes.
#pragma once

#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>

#include "units/bearing.h"
#include "units/quantities.h"

namespace rimehaul::crossing {

inline constexpr unsigned kHeadings = 16;

/// A direction of moving, 0 to 15, clockwise from grid north. Heading h is called h x 22.5 degrees;
/// its moves really lie along bearing_of(h), at most 4.07 degrees beside that.
enum class Heading : std::uint8_t {};

[[nodiscard]] constexpr unsigned index_of(Heading heading) {
  return static_cast<unsigned>(heading);
}

/// A way over whole cells: columns to grid east, rows to grid south.
struct CellStep {
  std::int32_t columns = 0;
  std::int32_t rows = 0;

  friend bool operator==(const CellStep&, const CellStep&) = default;
};

/// Even headings go to one of the eight neighbours, odd ones a knight's move between two of them.
inline constexpr std::array<CellStep, kHeadings> kSteps{{{0, -1},
                                                         {1, -2},
                                                         {1, -1},
                                                         {2, -1},
                                                         {1, 0},
                                                         {2, 1},
                                                         {1, 1},
                                                         {1, 2},
                                                         {0, 1},
                                                         {-1, 2},
                                                         {-1, 1},
                                                         {-2, 1},
                                                         {-1, 0},
                                                         {-2, -1},
                                                         {-1, -1},
                                                         {-1, -2}}};

/// The step of one move. Requires a heading below 16.
[[nodiscard]] constexpr CellStep step_of(Heading heading) {
  return kSteps.at(index_of(heading));
}

/// The heading so many sixteenths of a circle further to the right; negative to the left.
[[nodiscard]] constexpr Heading turned(Heading heading, int sixteenths) {
  return Heading{static_cast<std::uint8_t>((static_cast<int>(heading) + sixteenths) & 15)};
}

/// The true direction of the step: 0, atan(1/2), 45, atan(2) degrees and so on round the circle.
[[nodiscard]] units::Bearing bearing_of(Heading heading);

/// Length of one move: 1, the square root of 2 or that of 5 times the pitch.
[[nodiscard]] units::Metres length_of(Heading heading, units::Metres pitch);

/// A change of heading where one move ends and the next begins; none if both are the same.
struct Turn {
  Heading before{};
  Heading after{};
};

/// All bearings a rig can have on a move, its corners rounded: from halfway to the heading on its
/// left, clockwise to halfway to the one on its right. The sixteen sectors fill the circle.
struct Sector {
  units::Bearing from;
  units::Bearing to;
};
[[nodiscard]] Sector sector_of(Heading heading);

/// The heading in whose sector a bearing lies; on the border of two, the one to the right.
[[nodiscard]] Heading heading_of(units::Bearing bearing);

}  // namespace rimehaul::crossing
