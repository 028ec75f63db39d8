// What would open places that block: the questions that a refusal asks of its trials.
#pragma once

#include <vector>

#include "search/no_route.h"
#include "search/trials.h"

namespace rimehaul::search {

/// Asks about one refusal.
class Inquiry {
 public:
  /// Holds a reference: the judge must outlive it.
  Inquiry(const passage::Judge& judge, Permission permission);

  [[nodiscard]] Trials& trials() { return trials_; }

  /// What opens all of these places at once. Where decisions alone are wanting, what opens them
  /// without a decision.
  [[nodiscard]] Openings opens(const std::vector<Place>& places);
  /// What makes one check pass at all of these places and closes them by nothing new.
  [[nodiscard]] Openings lifts(passage::Check check, const std::vector<Place>& places);

 private:
  const rig::Rig& rig_;
  Trials trials_;
};

}  // namespace rimehaul::search
