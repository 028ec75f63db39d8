// All gradients that some ground may have.
#include "terrain/gradient_box.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::terrain {

using units::Slope;

GradientBox GradientBox::with(Gradient gradient) const {
  return {{std::min(low.east, gradient.east), std::min(low.north, gradient.north)},
          {std::max(high.east, gradient.east), std::max(high.north, gradient.north)}};
}

Slope GradientBox::diameter() const {
  return Slope::from_ratio(
      std::hypot(high.east.ratio() - low.east.ratio(), high.north.ratio() - low.north.ratio()));
}

AttitudeBox GradientBox::attitudes(const HeadingArc& headings) const {
  return headings.attitudes_on(low)
      .with(headings.attitudes_on({low.east, high.north}))
      .with(headings.attitudes_on({high.east, low.north}))
      .with(headings.attitudes_on(high));
}

std::array<Gradient, 4> extremes_of(const GridFrame& frame, const PatchRises& rises) {
  return {frame.to_map({rises.per_column_low, rises.per_row_low}),
          frame.to_map({rises.per_column_low, rises.per_row_high}),
          frame.to_map({rises.per_column_high, rises.per_row_low}),
          frame.to_map({rises.per_column_high, rises.per_row_high})};
}

std::optional<GradientBox> gradients_under(const HeightMap& heights, const Strip& strip) {
  const auto touched = rises_under(heights, strip);
  if (!touched) {
    return std::nullopt;
  }
  std::optional<GradientBox> box;
  for (const PatchRises& rises : *touched) {
    for (const Gradient gradient : extremes_of(heights.frame(), rises)) {
      box = box ? box->with(gradient) : GradientBox{gradient, gradient};
    }
  }
  return box;
}

}  // namespace rimehaul::terrain
