// What is said of a leg: its verdict, what binds, how it is driven.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geo/region.h"
#include "passage/finding.h"
#include "passage/lie.h"
#include "snow/snow.h"
#include "units/clock.h"
#include "units/slope.h"

namespace rimehaul::passage {

enum class Verdict { open, restricted, closed };
[[nodiscard]] const char* words_for(Verdict verdict);

/// A steepness as shown to people: found, and up to what it may be with the error counted. Less
/// than 0 goes the other way.
struct Steepness {
  units::Slope found;
  units::Slope up_to;
  units::Metres at;  ///< chainage along the stretch
};

/// How one piece is driven.
struct PieceDrive {
  geo::Span span;
  std::optional<geo::Height> height;  ///< at its middle
  units::MetresPerSecond speed;
  std::vector<snow::SnowState> snow;  ///< every state that it was judged in, sorted
  std::optional<Lie> lie;             ///< of the ground under the carrier; nothing: not known
};

/// The hours that a leg is judged for.
struct HoursOnLeg {
  std::vector<units::Instant> asked;  ///< for its snow: on entering, then when the tail may leave
  std::optional<units::Seconds>
      staying;  ///< from the nose entering to the tail leaving; nothing: the leg is closed besides
  bool settled = true;  ///< false: judging it at the last hour made it take longer once more
};

/// A finding at one place, with the snow and the hour in which it came out worst there.
struct PlaceFinding {
  Finding finding;
  std::optional<snow::SnowState> snow{};  ///< nothing: unknown, or it has no bearing on the check
  units::Instant when;
};

/// One leg (or a part of one) judged for one rig, snow and hour of entry.
struct LegJudgement {
  Verdict verdict = Verdict::closed;
  std::vector<Finding> findings;  ///< the worst of every check that applied, in order of Check
  std::size_t binding = 0;        ///< index of the finding that binds; findings is never empty
  double allowed_share = 0.0;
  units::Metres length;
  units::Metres climb;  ///< sum of rises along the leg, of the heights' own line
  units::Metres drop;
  // Nothing where no ground of the leg is known.
  std::optional<Steepness> steepest_up;
  std::optional<Steepness> steepest_down;
  std::optional<Steepness> steepest_across;
  units::MetresPerSecond slowest;  ///< the leg's speed: what the driver is told
  units::Seconds time;             ///< no less than it takes at that speed
  units::Litres fuel;              ///< no less than it takes at that speed
  std::vector<PieceDrive> pieces;
  std::vector<snow::SnowState> snow;  ///< every state met, sorted
  /// Where the avalanche policy is not kept without a decision, or not at all: in order, merged.
  std::vector<geo::Span> exposed;
  HoursOnLeg hours;

  [[nodiscard]] const Finding& bind() const { return findings[binding]; }
  /// Largest share of all findings; nothing when one of them has none.
  [[nodiscard]] std::optional<double> share() const;
};

/// Verdict from findings alone: open if all pass; restricted if all pass but some ask for a
/// decision; closed otherwise. No findings: closed.
[[nodiscard]] Verdict verdict_of(const std::vector<Finding>& findings, double allowed_share);

}  // namespace rimehaul::passage
