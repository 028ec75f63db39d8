#include "terrain/horizon.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/require.h"

namespace rimehaul::terrain {

using units::Metres;

namespace {

constexpr double kUnknown = std::numeric_limits<double>::quiet_NaN();

/// The least height in each pixel; a void makes it NaN, and so it stays.
class Lowest final : public PixelCells {
 public:
  explicit Lowest(std::size_t count) : heights_m(count, std::numeric_limits<double>::infinity()) {}

  void take(std::size_t pixel, double height_m) override {
    double& least = heights_m[pixel];
    least = std::isnan(height_m) || height_m < least ? height_m : least;
  }

  std::vector<double> heights_m;
};

bool lies_on(const GridPlace& place, CellIndex size) {
  return place.column >= 0.0 && place.row >= 0.0 &&
         place.column <= static_cast<double>(size.column - 1) &&
         place.row <= static_cast<double>(size.row - 1);
}

/// Whether the heights cover all of a pixel.
bool is_covered(const BlockSource& source, const ReliefFrame& frame, PixelIndex pixel) {
  const GridFrame grid = source.frame();
  for (const std::int64_t right : {0, 1}) {
    for (const std::int64_t down : {0, 1}) {
      const geo::MapPoint corner{
          frame.upper_left.east + frame.pixel * static_cast<double>(pixel.column + right),
          frame.upper_left.north - frame.pixel * static_cast<double>(pixel.row + down)};
      if (!lies_on(grid.locate(corner), source.size())) {
        return false;
      }
    }
  }
  return true;
}

/// The least of a pixel and the eight around it; NaN where any is unknown.
double least_around(const Relief& lows, PixelIndex pixel) {
  double least = std::numeric_limits<double>::infinity();
  for (std::int64_t row = pixel.row - 1; row <= pixel.row + 1; ++row) {
    for (std::int64_t column = pixel.column - 1; column <= pixel.column + 1; ++column) {
      const double low = lows.at({column, row});
      if (std::isnan(low)) {
        return kUnknown;
      }
      least = std::min(least, low);
    }
  }
  return least;
}

}  // namespace

Horizons::Horizons(BlockSource& source, const ReliefFrame& frame)
    : frame_{frame},
      surely_m_(static_cast<std::size_t>(std::max<std::int64_t>(frame.columns * frame.rows, 0)),
                kUnknown) {
  base::require(frame.pixel >= kLeastCells * source.frame().larger_step(),
                "pixels of a horizon are far wider than cells");
  Lowest lowest{surely_m_.size()};
  pour_cells(source, frame, lowest);
  Relief lows{frame, std::move(lowest.heights_m)};
  for (std::int64_t row = 0; row < frame.rows; ++row) {
    for (std::int64_t column = 0; column < frame.columns; ++column) {
      if (!is_covered(source, frame, {column, row})) {
        lows.heights_m[static_cast<std::size_t>(row * frame.columns + column)] = kUnknown;
      }
    }
  }
  for (std::int64_t row = 1; row + 1 < frame.rows; ++row) {
    for (std::int64_t column = 1; column + 1 < frame.columns; ++column) {
      surely_m_[static_cast<std::size_t>(row * frame.columns + column)] =
          least_around(lows, {column, row});
    }
  }
}

std::optional<std::size_t> Horizons::pixel_of(geo::MapPoint place) const {
  return terrain::pixel_of(frame_, place);
}

double Horizons::hidden_up_to_deg(const Outlook& outlook) const {
  constexpr double kEarthRadius = 6'371'000.0;
  const std::optional<std::size_t> own = pixel_of(outlook.from);
  if (!own) {
    return 0.0;
  }
  // All places of the pixel look along lines beside the one from its middle.
  const auto columns = static_cast<std::size_t>(frame_.columns);
  const std::size_t column = *own % columns;
  const std::size_t row = *own / columns;
  const geo::MapPoint middle{
      frame_.upper_left.east + frame_.pixel * (static_cast<double>(column) + 0.5),
      frame_.upper_left.north - frame_.pixel * (static_cast<double>(row) + 0.5)};
  double steepest = 0.0;
  for (int step = 1;; ++step) {
    const Metres away = frame_.pixel * static_cast<double>(step);
    const std::optional<std::size_t> there = pixel_of(geo::moved(middle, outlook.towards, away));
    if (!there) {
      break;
    }
    const double sunk = away.value() * away.value() / (2.0 * kEarthRadius);
    const double above = surely_m_[*there] - sunk - outlook.height.above_datum_m();
    steepest = std::max(steepest, above > 0.0 ? above / away.value() : 0.0);
  }
  return std::atan(steepest) * 180.0 / std::numbers::pi;
}

ReliefFrame horizon_frame(const BlockSource& source, const geo::Segment& diagonal) {
  const Metres west = std::min(diagonal.from.east, diagonal.to.east);
  const Metres north = std::max(diagonal.from.north, diagonal.to.north);
  const Metres wide = std::max(diagonal.from.east, diagonal.to.east) - west;
  const Metres high = north - std::min(diagonal.from.north, diagonal.to.north);
  ReliefFrame frame;
  frame.pixel =
      std::max({Horizons::kLeastCells * source.frame().larger_step(),
                wide / static_cast<double>(kMostPixels), high / static_cast<double>(kMostPixels)});
  frame.upper_left = {west, north};
  frame.columns = static_cast<std::int64_t>(std::ceil(wide / frame.pixel));
  frame.rows = static_cast<std::int64_t>(std::ceil(high / frame.pixel));
  frame.columns = std::max<std::int64_t>(frame.columns, 1);
  frame.rows = std::max<std::int64_t>(frame.rows, 1);
  return frame;
}

}  // namespace rimehaul::terrain
