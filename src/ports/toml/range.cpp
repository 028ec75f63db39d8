// Tests and words for ranges of numbers.
#include "ports/toml/range.h"

#include <array>
#include <charconv>
#include <cmath>

namespace rimehaul::ports::toml {

bool Range::holds(double number) const {
  return std::isfinite(number) && number >= from && number > above && number <= to;
}

std::string Range::words() const {
  const bool least_is_taken = from > above;
  return (least_is_taken ? "from " + shortest(from) + " to "
                         : "above " + shortest(above) + ", up to ") +
         shortest(to);
}

std::string shortest(double number) {
  const double size = std::abs(number);
  const bool is_everyday = size == 0 || (size >= 1e-4 && size < 1e7);
  const auto format = is_everyday ? std::chars_format::fixed : std::chars_format::general;
  std::array<char, 64> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), number, format).ptr;
  return {text.data(), end};
}

}  // namespace rimehaul::ports::toml
