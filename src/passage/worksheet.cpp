// Takes a check's inputs down and keeps bad ones from becoming a share.
#include "passage/worksheet.h"

#include <cmath>
#include <string>

namespace rimehaul::passage {

double Worksheet::write(std::string_view name, units::Amount value, Origin origin, bool good) {
  inputs_.add(name, value, origin);
  if (!good && bad_.empty()) {
    bad_ = name;
  }
  return value.value;
}

double Worksheet::any(std::string_view name, units::Amount value, Origin origin) {
  return write(name, value, origin, std::isfinite(value.value));
}

double Worksheet::not_negative(std::string_view name, units::Amount value, Origin origin) {
  return write(name, value, origin, std::isfinite(value.value) && value.value >= 0.0);
}

double Worksheet::positive(std::string_view name, units::Amount value, Origin origin) {
  return write(name, value, origin, std::isfinite(value.value) && value.value > 0.0);
}

double Worksheet::share_of_one(std::string_view name, double value, Origin origin) {
  return write(name, units::count_of(value), origin, value > 0.0 && value <= 1.0);
}

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
