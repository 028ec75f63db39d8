// A finding's numbers as set out to be worked by hand; one that is no number closes the check.
#pragma once

#include <cmath>
#include <string_view>

#include "passage/finding.h"

namespace rimehaul::passage {

/// Takes a check's inputs in the order in which they are needed and remembers the first that no
/// check may work with.
class Worksheet {
 public:
  explicit Worksheet(Check check) : check_{check} {}

  // Each writes an input down and gives its number back. Names are constant text.
  /// Finite.
  double any(std::string_view name, units::Amount value, Origin origin) {
    return write(name, value, origin, std::isfinite(value.value));
  }
  double not_negative(std::string_view name, units::Amount value, Origin origin) {
    return write(name, value, origin, std::isfinite(value.value) && value.value >= 0.0);
  }
  double positive(std::string_view name, units::Amount value, Origin origin) {
    return write(name, value, origin, std::isfinite(value.value) && value.value > 0.0);
  }
  /// In (0, 1].
  double share_of_one(std::string_view name, double value, Origin origin) {
    return write(name, units::count_of(value), origin, value > 0.0 && value <= 1.0);
  }

  /// Whether every input so far can be worked with.
  [[nodiscard]] bool holds() const { return bad_.empty(); }

  /// The finding with these inputs: missing where an input was no good, else compared.
  [[nodiscard]] Finding compared(units::Amount demand, units::Amount capacity) const;
  /// The finding with these inputs: missing where an input was no good, else refused.
  [[nodiscard]] Finding refused(std::string_view why) const;

 private:
  double write(std::string_view name, units::Amount value, Origin origin, bool good) {
    inputs_.add(name, value, origin);
    if (!good && bad_.empty()) {
      bad_ = name;
    }
    return value.value;
  }

  Check check_;
  Inputs inputs_;
  std::string_view bad_;
};

}  // namespace rimehaul::passage
