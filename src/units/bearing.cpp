#include "units/bearing.h"

#include <cmath>
#include <numbers>

namespace rimehaul::units {

namespace {
constexpr double kRadiansPerDegree = std::numbers::pi / 180.0;
}  // namespace

Bearing Bearing::from_degrees(double degrees) {
  const double turned = std::fmod(degrees, 360.0);
  const double wrapped = turned < 0.0 ? turned + 360.0 : turned;
  return Bearing{wrapped == 360.0 ? 0.0 : wrapped};
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): east, then north, as in every point
Bearing Bearing::of(double east, double north) {
  return from_degrees(std::atan2(east, north) / kRadiansPerDegree);
}

double Bearing::sine() const {
  return std::sin(degrees_ * kRadiansPerDegree);
}

double Bearing::cosine() const {
  return std::cos(degrees_ * kRadiansPerDegree);
}

Bearing Bearing::opposite() const {
  return from_degrees(degrees_ + 180.0);
}

double Bearing::turn_to(Bearing other) const {
  const double turn = std::fmod(other.degrees_ - degrees_ + 540.0, 360.0) - 180.0;
  return turn == -180.0 ? 180.0 : turn;
}

}  // namespace rimehaul::units
