#include "units/slope.h"

#include <cmath>
#include <limits>
#include <numbers>

namespace rimehaul::units {

Slope Slope::from_degrees(double degrees) {
  if (!(degrees > -90.0 && degrees < 90.0)) {
    return Slope{std::numeric_limits<double>::quiet_NaN()};
  }
  return Slope{std::tan(degrees * std::numbers::pi / 180.0)};
}

double Slope::degrees() const {
  return std::atan(ratio_) * 180.0 / std::numbers::pi;
}

}  // namespace rimehaul::units
