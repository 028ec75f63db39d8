#include "crossing/turning.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "base/require.h"

namespace rimehaul::crossing {

using units::Metres;

RoundedCorner rounded_corner(Turn turn, Metres pitch) {
  const auto [before, after] = turn;
  base::require(before == after || after == turned(before, 1) || after == turned(before, -1),
                "a rig turns by one heading at a time");
  const Metres tangent = std::min(length_of(before, pitch), length_of(after, pitch)) / 2.0;
  if (before == after) {
    return {.radius = Metres{std::numeric_limits<double>::infinity()},
            .tangent = tangent,
            .cut = Metres{0.0}};
  }
  const double turn_rad =
      std::abs(bearing_of(before).turn_to(bearing_of(after))) * std::numbers::pi / 180.0;
  return {.radius = tangent / std::tan(turn_rad / 2.0),
          .tangent = tangent,
          .cut = tangent * std::tan(turn_rad / 4.0)};
}

Metres smallest_radius(Metres pitch) {
  return pitch * ((2.0 + std::sqrt(5.0)) / 2.0);
}

Metres least_pitch(Metres turning_radius) {
  base::require(std::isfinite(turning_radius.value()) && turning_radius > Metres{0.0},
                "a turning radius is finite and above 0");
  Metres pitch = turning_radius * (2.0 * (std::sqrt(5.0) - 2.0));
  while (smallest_radius(pitch) < turning_radius) {
    pitch = Metres{std::nextafter(pitch.value(), std::numeric_limits<double>::infinity())};
  }
  return pitch;
}

Metres largest_cut(Metres pitch) {
  Metres largest{0.0};
  for (unsigned index = 0; index < kHeadings; ++index) {
    const Heading heading{static_cast<std::uint8_t>(index)};
    largest = std::max(largest, rounded_corner({heading, turned(heading, 1)}, pitch).cut);
  }
  return largest;
}

}  // namespace rimehaul::crossing
