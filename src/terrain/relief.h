// The ground as a picture: mean heights on an upright lattice, and how light falls on it. For
// looking at only: nothing is judged by it.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "terrain/height_map.h"

namespace rimehaul::terrain {

/// An upright lattice of square pixels over the map, row by row from its upper left corner.
struct ReliefFrame {
  geo::MapPoint upper_left;
  units::Metres pixel{1.0};
  std::int64_t columns = 0;
  std::int64_t rows = 0;
};

/// One pixel of a lattice, counted from its upper left corner.
struct PixelIndex {
  std::int64_t column = 0;
  std::int64_t row = 0;
};

/// Mean height of the cells whose centres lie in each pixel; NaN where there is none, or where a
/// void lies among them: a hole is never painted over.
struct Relief {
  ReliefFrame frame;
  std::vector<double> heights_m;

  [[nodiscard]] double at(PixelIndex pixel) const {
    return heights_m[static_cast<std::size_t>(pixel.row * frame.columns + pixel.column)];
  }
};

/// The smallest pixel that has a cell's centre in it wherever it lies on the grid: root 2 of the
/// larger step.
[[nodiscard]] units::Metres smallest_pixel(const GridFrame& grid);

/// The pixel of a place, counted row by row; nothing outside.
[[nodiscard]] std::optional<std::size_t> pixel_of(const ReliefFrame& frame, geo::MapPoint place);

/// Is handed cells with the pixel that their centre lies in.
class PixelCells {
 public:
  virtual ~PixelCells() = default;
  /// `pixel` counts row by row; a void's height is NaN.
  virtual void take(std::size_t pixel, double height_m) = 0;
};

/// Reads every block that the picture touches, each once, keeps none, and hands over all its cells
/// that lie in a pixel. Requires a pixel above 0 and at least one pixel.
void pour_cells(BlockSource& source, const ReliefFrame& frame, PixelCells& into);

/// As pour_cells reads.
[[nodiscard]] Relief relief_of(BlockSource& source, const ReliefFrame& frame);

/// Light on every pixel from 0 (dark) to 1, NaN where any of the 3 x 3 heights is unknown: the
/// cosine between the ground's normal, by Horn's gradient (1981), and a sun in the north-west, 45
/// degrees high.
[[nodiscard]] std::vector<double> hillshade(const Relief& relief);

}  // namespace rimehaul::terrain
