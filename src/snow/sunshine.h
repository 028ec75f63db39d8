// How much light of the sun falls on ground of any slope.
#pragma once

#include <optional>

#include "snow/snow.h"
#include "snow/sun.h"

namespace rimehaul::snow {

/// On level ground under a clear sky, 1098 cos Z e^(-0.059 / cos Z): Haurwitz (1945), J. Meteorol.
/// 2, 154-166. 0 when the sun is not above the horizon. Low at altitude.
[[nodiscard]] units::WattsPerSquareMetre clear_sky(double zenith_deg);

/// What passes through cloud, 1 - 0.75 n^3.4, n the share of the sky under it: Kasten and Czeplak
/// (1980), Solar Energy 24, 177-189 (values from memory). `cloud` in [0, 8].
[[nodiscard]] double share_through(units::Oktas cloud);

/// Light on level ground, and its parts.
struct Sunlight {
  units::WattsPerSquareMetre level;    ///< all of it, on level ground
  units::WattsPerSquareMetre diffuse;  ///< of that, from the sky
  units::WattsPerSquareMetre beam;     ///< straight from the sun, square to it
};

/// Above the air, square to the sun, on a day of the year: 1367 (1 + 0.033 cos(2 pi n / 365)).
[[nodiscard]] units::WattsPerSquareMetre above_the_air(units::Instant when);

/// Splits light on level ground by how clear the sky is: Erbs, Klein and Duffie (1982), Solar
/// Energy 28, 293-302 (values from memory). The beam is never more than `outside`, the light above
/// the air.
[[nodiscard]] Sunlight split(units::WattsPerSquareMetre level, double zenith_deg,
                             units::WattsPerSquareMetre outside);

/// Directions of the downslope that some ground may have, clockwise from true north.
struct AspectSpan {
  double middle_deg = 0.0;
  double half_width_deg = 0.0;  ///< 180 or more: every direction
};

/// Ground by its slopes and aspects. What is not told may be anything.
struct SunnyGround {
  std::optional<SlopeRange> slope;
  std::optional<AspectSpan> aspect;
};

/// The greatest cosine, not below 0, between the sun's beam and the normal of any such ground:
/// cos Z cos b + sin Z sin b cos(difference of azimuths). 1 where the slope is not told.
[[nodiscard]] double most_facing(const SunnyGround& ground, const SunPosition& sun);

enum class Shade { none, in_shadow };

/// The most light that may fall on any such ground: beam by its facing, none in shadow; the sky's
/// by (1 + cos b) / 2 and that thrown back by other snow by (1 - cos b) / 2: Liu and Jordan (1963),
/// Solar Energy 7, 53-74. Snow around throws back 0.9 of its light, the high side.
[[nodiscard]] units::WattsPerSquareMetre most_on(const SunnyGround& ground, const Sunlight& light,
                                                 const SunPosition& sun, Shade shade);

}  // namespace rimehaul::snow
