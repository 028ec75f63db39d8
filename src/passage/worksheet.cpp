// Takes a check's inputs down and keeps bad ones from becoming a share.
#include "passage/worksheet.h"

#include <cmath>
#include <string>

namespace rimehaul::passage {

// Demand before capacity, as in every table. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
Finding Worksheet::compared(units::Amount demand, units::Amount capacity) const {
  Finding finding = holds() ? compare(check_, demand, capacity)
                            : unknown(check_, "a usable number for " + std::string{bad_});
  finding.inputs = inputs_;
  return finding;
}

Finding Worksheet::refused(std::string_view why) const {
  Finding finding = holds() ? refusal(check_, std::string{why})
                            : unknown(check_, "a usable number for " + std::string{bad_});
  finding.inputs = inputs_;
  return finding;
}

}  // namespace rimehaul::passage
