#include "terrain/plane.h"

#include <algorithm>
#include <cmath>

#include "base/require.h"

namespace rimehaul::terrain {

using units::Metres;
using units::Slope;

namespace {

constexpr int kLeastAlong = 5;
constexpr int kLeastAcross = 3;

/// Equally spaced places from one end of an extent to the other, around its middle.
struct Ruler {
  int count = 0;
  Metres extent;

  [[nodiscard]] Metres at(int index) const {
    return (static_cast<double>(index) / (count - 1) - 0.5) * extent;
  }
  [[nodiscard]] double sum_of_squares_m2() const {
    double sum = 0.0;
    for (int i = 0; i < count; ++i) {
      sum += at(i).value() * at(i).value();
    }
    return sum;
  }
};

Ruler ruler_over(Metres extent, int least, Metres spacing) {
  const double gaps = std::ceil(extent / spacing);
  base::require(gaps <= 1e4, "a footprint covers too many cells to fit a plane");
  return {std::max(least, static_cast<int>(gaps) + 1), extent};
}

}  // namespace

// On a grid that is symmetric about its middle the normal equations fall apart: the slope along is
// sum(a z) / sum(a^2), whatever lies across, and the same the other way.
std::optional<Gradient> fitted_gradient(const HeightMap& heights, geo::MapPoint middle,
                                        units::Bearing heading, const Footprint& footprint) {
  base::require(footprint.length > Metres{0} && footprint.gauge > Metres{0},
                "a footprint has no size");
  const Metres spacing = heights.frame().smaller_step() / 2.0;
  const Ruler along = ruler_over(footprint.length, kLeastAlong, spacing);
  const Ruler across = ruler_over(footprint.gauge, kLeastAcross, spacing);
  const auto level = heights.at(middle);
  if (!level) {
    return std::nullopt;
  }
  const double sine = heading.sine();
  const double cosine = heading.cosine();
  double along_sum = 0.0;
  double across_sum = 0.0;
  for (int i = 0; i < along.count; ++i) {
    for (int j = 0; j < across.count; ++j) {
      const auto height =
          heights.at(geo::MapPoint{middle.east + sine * along.at(i) + cosine * across.at(j),
                                   middle.north + cosine * along.at(i) - sine * across.at(j)});
      if (!height) {
        return std::nullopt;
      }
      const double rise_m = (*height - *level).value();
      along_sum += along.at(i).value() * rise_m;
      across_sum += across.at(j).value() * rise_m;
    }
  }
  const double uphill = along_sum / (across.count * along.sum_of_squares_m2());
  const double to_right = across_sum / (along.count * across.sum_of_squares_m2());
  return Gradient{Slope::from_ratio(uphill * sine + to_right * cosine),
                  Slope::from_ratio(uphill * cosine - to_right * sine)};
}

}  // namespace rimehaul::terrain
