// In which directions a rig may be driven on ground of a gradient: worked out once for all of them.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "passage/share_table.h"

namespace rimehaul::passage {

/// How ground stands to a rig that may head any way. Directions are 16 sectors of 22.5 degrees,
/// sector i centred on i x 22.5 degrees clockwise from map north.
struct Headings {
  /// The least over all sectors of the largest share in one, percent, rounded up; kClosedPercent
  /// from that on, and where no sector has a share; kUnknownPercent where nothing is known.
  std::uint8_t share_percent = kUnknownPercent;
  std::uint16_t open = 0;  ///< bit i: every heading of sector i passes

  static constexpr std::uint8_t kClosedPercent = 254;
  static constexpr std::uint8_t kUnknownPercent = 255;
  static constexpr int kSectors = 16;
};

/// Steepness of the ground, rise over run, as rasters have it; not a number where it is not known.
struct RasterGradient {
  float east = 0.0F;
  float north = 0.0F;
};

/// For gradients in squares of a 512th, of which each holds a bound of all that is in it. What is
/// steeper than the table of shares is closed.
class HeadingTable {
 public:
  /// `tolerance`: how far a gradient may be off in any direction, k sigma and the sub-cell term;
  /// what is no number, or below 0, makes all unknown.
  HeadingTable(const ShareTable& shares, units::Slope tolerance);

  [[nodiscard]] Headings on(RasterGradient ground) const {
    const float column = (ground.east + 1.0F) * kPerRatio;
    const float row = (ground.north + 1.0F) * kPerRatio;
    if (column >= 0.0F && column < kSide && row >= 0.0F && row < kSide) {
      return squares_[static_cast<std::size_t>(row) * kSquares + static_cast<std::size_t>(column)];
    }
    return column == column && row == row ? beyond_ : Headings{};
  }

 private:
  static constexpr std::size_t kSquares = 1024;  ///< along each side, from -1 to 1
  static constexpr float kSide = 1024.0F;
  static constexpr float kPerRatio = 512.0F;

  /// One sector on one square: what it means for that and for the three that are a quarter turn on.
  struct SectorShare {
    std::size_t sector;
    double share;
    bool passes;
  };
  struct Square {
    std::size_t east;
    std::size_t north;
  };
  void take(SectorShare found, Square square, std::vector<double>& least);

  std::vector<Headings> squares_;  ///< row by row
  Headings beyond_;
};

}  // namespace rimehaul::passage
