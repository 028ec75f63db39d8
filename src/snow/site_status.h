// What was said today of the site itself: its marks, its grooming, the rig that fetches others.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "units/clock.h"

namespace rimehaul::snow {

/// What somebody said of a mark by its name, and until when (included) that holds.
struct MarkStatus {
  std::string mark;
  bool clear = false;
  std::optional<units::Instant> until;  ///< none: it does not run out
};

/// When the last grooming of a trail was finished.
struct Grooming {
  std::string trail;
  units::Instant finished;
};

/// Today's word on marks and trails. What nobody said is unknown.
struct SiteStatus {
  std::vector<MarkStatus> marks;
  std::vector<Grooming> grooming;
  /// The rig that tows others out stands ready, with a driver.
  std::optional<bool> tow_out_ready{};
  /// When the last snowfall, drifting wind, rain or slide ended.
  std::optional<units::Instant> last_weather{};

  /// Whether a mark is clear at a time. Nothing: nobody said, or it has run out. Where it was said
  /// more than once, one "not clear" that still holds outweighs the rest.
  [[nodiscard]] std::optional<bool> is_clear(const std::string& mark, units::Instant when) const;
  /// The latest that was said; nothing: nobody did.
  [[nodiscard]] std::optional<units::Instant> groomed(const std::string& trail) const;
  /// Moments at which an answer may change, in no order: the second after a word on a mark has run
  /// out, when a grooming was finished, and when the last weather ended. What the site's rules
  /// reckon from these (how long groomed snow sets) is theirs to add.
  [[nodiscard]] std::vector<units::Instant> turning_moments() const;
  /// No status outlasts the report that it stands in.
  void end_by(units::Instant until);
};

}  // namespace rimehaul::snow
