// Closeness with a stated tolerance: a relative default would pass a 60 m error on a northing.
#pragma once

#include <cmath>

#include "units/quantity.h"
#include "units/slope.h"

namespace rimehaul::testing {

/// Whether two numbers differ by no more than `within`, in the same unit. NaN is near nothing.
[[nodiscard]] inline bool near(double found, double wanted, double within) {
  return std::abs(found - wanted) <= within;
}

template <class Tag>
[[nodiscard]] bool near(units::Quantity<Tag> found, units::Quantity<Tag> wanted,
                        units::Quantity<Tag> within) {
  return near(found.value(), wanted.value(), within.value());
}

/// Whether two slopes differ by no more than so many degrees.
[[nodiscard]] inline bool near_degrees(units::Slope found, double wanted_deg, double within_deg) {
  return near(found.degrees(), wanted_deg, within_deg);
}

}  // namespace rimehaul::testing
