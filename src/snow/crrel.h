// Gross traction of vehicles on snow and ice, as published by the Cold Regions Research and
// Engineering Laboratory (CRREL).
#pragma once

#include "units/quantities.h"

namespace rimehaul::snow {

// Gross traction stress from normal stress, both kilopascals: Richmond, Shoop and Blaisdell (1995),
// Cold Regions Mobility Models, CRREL Report 95-1. The coefficients are values from memory; they
// reproduce the report's Table A5 to its last printed digit. The report's vehicles press on the
// snow with some 50 kPa. Not a number, not finite or not above 0 gives NaN.

/// T = 0.851 N^0.823, undisturbed snow.
[[nodiscard]] units::Kilopascals traction_on_undisturbed_snow(units::Kilopascals normal);
/// T = 0.321 N^0.97, disturbed or prepared snow.
[[nodiscard]] units::Kilopascals traction_on_prepared_snow(units::Kilopascals normal);
/// T = 0.127 N^1.06, ice.
[[nodiscard]] units::Kilopascals traction_on_ice(units::Kilopascals normal);

}  // namespace rimehaul::snow
