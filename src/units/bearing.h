// Directions on the map, clockwise from map north.
#pragma once

#include <compare>

namespace rimehaul::units {

/// A direction on the map: 0 is map north, 90 map east. Always in [0, 360). Not a Slope.
class Bearing {
 public:
  constexpr Bearing() = default;
  static Bearing from_degrees(double degrees);
  /// Direction of the vector (east, north). Both zero gives north.
  static Bearing of(double east, double north);

  [[nodiscard]] constexpr double degrees() const { return degrees_; }
  [[nodiscard]] double sine() const;
  [[nodiscard]] double cosine() const;
  [[nodiscard]] Bearing opposite() const;
  /// Signed turn from this bearing to the other, degrees in (-180, 180], positive to the right.
  [[nodiscard]] double turn_to(Bearing other) const;

  friend constexpr auto operator<=>(Bearing, Bearing) = default;

 private:
  explicit constexpr Bearing(double degrees) : degrees_{degrees} {}
  double degrees_ = 0.0;
};

}  // namespace rimehaul::units
