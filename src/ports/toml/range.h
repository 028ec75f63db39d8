// Which numbers a key takes.
#pragma once

#include <limits>
#include <string>

namespace rimehaul::ports::toml {

/// An interval; what is left out does not bound it. Holds no NaN and nothing infinite.
struct Range {
  double from = -std::numeric_limits<double>::infinity();   ///< least, taken
  double above = -std::numeric_limits<double>::infinity();  ///< least, left out
  double to = std::numeric_limits<double>::infinity();      ///< greatest, taken

  [[nodiscard]] bool holds(double number) const;
  /// "from 0 to 50", "above 0, up to 1".
  [[nodiscard]] std::string words() const;
};

/// The shortest decimal text that reads back as the same number.
[[nodiscard]] std::string shortest(double number);

}  // namespace rimehaul::ports::toml
