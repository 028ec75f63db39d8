// Numbers as text that never flatter: a demand is rounded up, a capacity is rounded down.
#pragma once

#include <string>

#include "units/slope.h"

namespace rimehaul::units {

/// Which way a printed number may differ from the true one.
enum class Round { nearest, up, down };

/// Decimal text with `decimals` digits (0 to 9) after the point, rounded the given way on the exact
/// decimal value of the number, so 0.996 rounded down to two digits is "0.99" and never "1.00".
/// A number that already has that few digits is printed as it is. NaN and infinities: "unknown".
[[nodiscard]] std::string text_of(double number, int decimals, Round round);

/// "7.2 deg (12.7 %)", both parts rounded the given way on their size, sign kept.
[[nodiscard]] std::string text_of(Slope slope, Round round);

}  // namespace rimehaul::units
