// Folds many findings into the worst of every check, so that a leg is told by a few lines.
#pragma once

#include <array>
#include <vector>

#include "passage/finding.h"

namespace rimehaul::passage {

class Worst {
 public:
  /// Keeps a finding if it binds before what was found of its check so far, as found at `at`.
  void offer(Finding finding, units::Metres at);
  void offer_all(std::vector<Finding> findings, units::Metres at);

  /// The worst of every check that was offered anything, in order of Check.
  [[nodiscard]] std::vector<Finding> of_every_check() const;

 private:
  void keep_if_worse(Finding& finding);

  std::array<std::optional<Finding>, kCheckCount> worst_;
};

/// Index of the finding that binds; requires that there is one.
[[nodiscard]] std::size_t binding_of(const std::vector<Finding>& findings);

}  // namespace rimehaul::passage
