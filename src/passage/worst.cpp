// Folds many findings into the worst of every check, so that a leg is told by a few lines.
#include "passage/worst.h"

#include <utility>

#include "base/require.h"

namespace rimehaul::passage {

void Worst::offer(Finding finding, units::Metres at) {
  finding.at = at;
  keep_if_worse(finding);
}

void Worst::keep_if_worse(Finding& finding) {
  std::optional<Finding>& slot = worst_.at(static_cast<std::size_t>(finding.check));
  if (!slot.has_value() || binds_before(finding, *slot)) {
    slot = std::move(finding);
  }
}

void Worst::offer_all(std::vector<Finding> findings, units::Metres at) {
  for (Finding& finding : findings) {
    finding.at = at;
    keep_if_worse(finding);  // a finding is large, so it is moved when it is kept and no sooner
  }
}

std::vector<Finding> Worst::of_every_check() const {
  std::vector<Finding> found;
  for (const std::optional<Finding>& slot : worst_) {
    if (slot.has_value()) {
      found.push_back(*slot);
    }
  }
  return found;
}

std::size_t binding_of(const std::vector<Finding>& findings) {
  base::require(!findings.empty(), "nothing was judged, so nothing binds");
  std::size_t binding = 0;
  for (std::size_t i = 1; i < findings.size(); ++i) {
    if (binds_before(findings[i], findings[binding])) {
      binding = i;
    }
  }
  return binding;
}

}  // namespace rimehaul::passage
