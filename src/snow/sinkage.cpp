#include "snow/sinkage.h"

#include <cmath>

namespace rimehaul::snow {

namespace {

using units::Metres;

bool is_above_zero(double number) {
  return number > 0.0 && std::isfinite(number);
}

bool usable(const SnowStrength& strength, const TrackPrint& print) {
  return is_above_zero(strength.n) && is_above_zero(strength.k_phi) && strength.k_c >= 0.0 &&
         std::isfinite(strength.k_c) && is_above_zero(print.pressure.value()) &&
         is_above_zero(print.width.value()) && is_above_zero(print.length.value());
}

}  // namespace

Metres sinkage_of(const SnowStrength& strength, const TrackPrint& print) {
  if (!usable(strength, print)) {
    return Metres{std::nan("")};
  }
  const double stiffness = strength.k_c / print.width.value() + strength.k_phi;
  return Metres{std::pow(print.pressure.value() / stiffness, 1.0 / strength.n)};
}

units::ForceRatio compaction_of(const SnowStrength& strength, const TrackPrint& print) {
  const Metres sunk = sinkage_of(strength, print);
  return units::ForceRatio{sunk / (print.length * (strength.n + 1.0))};
}

Metres sinkage_of(const NewSnow& snow) {
  constexpr double kPressedDensity = 500.0;  // kg/m3
  const double depth_m = snow.depth.value();
  const double density = snow.density.value();
  if (!(depth_m >= 0.0) || !std::isfinite(depth_m) || !(density >= 0.0)) {
    return Metres{std::nan("")};
  }
  return Metres{density < kPressedDensity ? depth_m * (1.0 - density / kPressedDensity) : 0.0};
}

}  // namespace rimehaul::snow
