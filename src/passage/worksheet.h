// A finding's numbers as set out to be worked by hand; one that is no number closes the check.
#pragma once

#include <string_view>

#include "passage/finding.h"

namespace rimehaul::passage {

/// Takes a check's inputs in the order in which they are needed and remembers the first that no
/// check may work with.
class Worksheet {
 public:
  explicit Worksheet(Check check) : check_{check} {}

  // Each writes an input down and gives its number back. Names are constant text.
  double any(std::string_view name, units::Amount value, Origin origin);  ///< finite
  double not_negative(std::string_view name, units::Amount value, Origin origin);
  double positive(std::string_view name, units::Amount value, Origin origin);
  double share_of_one(std::string_view name, double value, Origin origin);  ///< (0, 1]

  /// Whether every input so far can be worked with.
  [[nodiscard]] bool holds() const { return bad_.empty(); }

  /// The finding with these inputs: missing where an input was no good, else compared.
  [[nodiscard]] Finding compared(units::Amount demand, units::Amount capacity) const;
  /// The finding with these inputs: missing where an input was no good, else refused.
  [[nodiscard]] Finding refused(std::string_view why) const;

 private:
  double write(std::string_view name, units::Amount value, Origin origin, bool good);

  Check check_;
  Inputs inputs_;
  std::string_view bad_;
};

}  // namespace rimehaul::passage
