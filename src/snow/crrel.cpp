// The power laws of CRREL Report 95-1.
#include "snow/crrel.h"

#include <cmath>

namespace rimehaul::snow {

namespace {

/// T = factor N^exponent.
struct PowerLaw {
  double factor;
  double exponent;
};

units::Kilopascals traction_by(PowerLaw law, units::Kilopascals normal) {
  const double normal_kpa = normal.value();
  const bool usable = std::isfinite(normal_kpa) && normal_kpa > 0;
  return units::Kilopascals{usable ? law.factor * std::pow(normal_kpa, law.exponent)
                                   : std::nan("")};
}

}  // namespace

units::Kilopascals traction_on_undisturbed_snow(units::Kilopascals normal) {
  return traction_by({.factor = 0.851, .exponent = 0.823}, normal);
}

units::Kilopascals traction_on_prepared_snow(units::Kilopascals normal) {
  return traction_by({.factor = 0.321, .exponent = 0.97}, normal);
}

units::Kilopascals traction_on_ice(units::Kilopascals normal) {
  return traction_by({.factor = 0.127, .exponent = 1.06}, normal);
}

}  // namespace rimehaul::snow
