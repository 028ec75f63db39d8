#include "units/rounding.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace rimehaul::units {

namespace {

std::string fixed(double number, int decimals) {
  std::array<char, 400> text{};
  std::snprintf(text.data(), text.size(), "%.*f", decimals, number);
  return text.data();
}

/// Half a unit in the sixth digit behind the printed ones: closer than this, a number counts as
/// having that few digits, because its own binary form is no closer to what a person wrote.
bool prints_exactly(double number, const std::string& text, int decimals) {
  const double step = std::pow(10.0, -decimals);
  return std::abs(std::strtod(text.c_str(), nullptr) - number) <=
         std::max(1e-9 * step, 4e-16 * std::abs(number));
}

}  // namespace

std::string text_of(double number, int decimals, Round round) {
  if (!std::isfinite(number)) {
    return "unknown";
  }
  std::string text = fixed(number, decimals);
  if (round != Round::nearest && !prints_exactly(number, text, decimals)) {
    const double printed = std::strtod(text.c_str(), nullptr);
    const double step = std::pow(10.0, -decimals);
    if (round == Round::up && printed < number) {
      text = fixed(printed + step, decimals);
    } else if (round == Round::down && printed > number) {
      text = fixed(printed - step, decimals);
    }
  }
  return text.find_first_of("123456789") == std::string::npos && text.front() == '-'
             ? text.substr(1)
             : text;
}

std::string text_of(Slope slope, Round round) {
  const double sign = slope.ratio() < 0 ? -1.0 : 1.0;
  Round by_sign = round;
  if (sign < 0 && round != Round::nearest) {
    by_sign = round == Round::up ? Round::down : Round::up;
  }
  return text_of(slope.degrees(), 1, by_sign) + " deg (" + text_of(slope.percent(), 1, by_sign) +
         " %)";
}

}  // namespace rimehaul::units
