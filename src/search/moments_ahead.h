// Until which hour of entry the judgement of a leg says the same.
#pragma once

#include <vector>

#include "passage/judge.h"

namespace rimehaul::search {

/// The turning moments of one leg (LegJudge::turning_moments), asked for as far ahead as they are
/// needed.
class MomentsAhead {
 public:
  /// Holds a reference: the judge must outlive it.
  MomentsAhead(const passage::LegJudge& judge, trails::LegId leg, units::Period horizon);

  /// The first entry of the horizon later than this one for which one of the hours that were asked
  /// for has come to or past a turning moment; the end of the horizon, and a second, where there is
  /// none. The entry must be in the horizon.
  [[nodiscard]] units::Instant next_entry(const passage::HoursOnLeg& hours, units::Instant entry);
  /// The first entry of the horizon from which on none of these hours has come to or past a turning
  /// moment by this entry: what was judged now is what was to be judged then.
  [[nodiscard]] units::Instant first_entry(const passage::HoursOnLeg& hours, units::Instant entry);

 private:
  void look_until(units::Instant until);

  const passage::LegJudge* judge_;
  trails::LegId leg_;
  units::Period horizon_;
  units::Instant looked_until_;
  std::vector<units::Instant> moments_;
};

}  // namespace rimehaul::search
