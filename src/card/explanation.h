// Everything judged at one place of a trail as plain data, so that a person can work it out again.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "card/made_from.h"
#include "card/what_if.h"
#include "passage/course.h"
#include "passage/open_loads.h"
#include "passage/workings.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// A place on a trail, by chainage along it as drawn.
struct TrailPlace {
  std::size_t trail = 0;  ///< index into Network::trails
  units::Metres at;
};

/// One finding, how it stands, and what is needed to work it out again.
struct ExplainedFinding {
  passage::Finding finding;
  passage::Stand stand = passage::Stand::missing;
  bool binds = false;
  std::string_view formula;               ///< for a rig with a trailer, or without
  std::string source;                     ///< of the formula, or who set the limit
  std::optional<snow::SnowState> snow{};  ///< in which it came out so; nothing: no matter
  units::Instant when;                    ///< hour at which it came out so
  std::vector<passage::Working> besides;  ///< numbers that are neither inputs nor shared
};

/// The numbers that several checks share at a place, in one snow, with so much in the tank.
struct SharedNumbers {
  snow::SnowState snow;
  passage::Tank tank;
  std::vector<passage::Working> numbers;
};

/// What a place or a leg comes to: restricted when a named person's decision, or one of these
/// loads, or both together open it.
struct ExplainedVerdict {
  passage::Verdict verdict = passage::Verdict::closed;
  passage::OpenLoads loads{};  ///< asked for where it is closed as it stands
  std::string decision{};      ///< that it waits for; empty: none
};

/// The leg that the place is on.
struct ExplainedLeg {
  ExplainedVerdict verdict;
  passage::Finding binding;
  units::Metres length;
};

/// The place driven one way.
struct ExplainedWay {
  trails::Way way = trails::Way::as_drawn;
  std::string from;  ///< ends of the leg that the place is on
  std::string to;
  units::Metres at;  ///< along the leg in driving direction
  units::Bearing heading;
  geo::Span piece{};     ///< of the leg, that was judged as one
  passage::Lies ground;  ///< under carrier and trailer; surveys stand for heights where they count
  std::vector<std::optional<snow::SnowState>> snow;  ///< all that may be met; nothing: unknown
  std::vector<SharedNumbers> shared;  ///< for every snow and tank that a finding came out in
  ExplainedVerdict verdict;
  std::vector<ExplainedFinding> findings;  ///< the worst of every check, in order of Check
  std::vector<MovingShare> what_if{};      ///< asked for with WhatIf::yes alone
  ExplainedLeg leg;
};

/// A place on a trail, driven the ways that were asked for.
struct Explanation {
  int schema = 1;
  std::string site;
  std::string trail;
  units::Metres at;  ///< along the trail as drawn
  geo::MapPoint place;
  std::string map_frame;
  std::optional<geo::Height> height;
  std::string rig;
  std::string snow;  ///< every state that may be met at the place, or that one is unknown
  snow::Told snow_told_by;
  units::Instant when;
  units::LocalClock local_clock{};
  double allowed_share = 0.0;
  std::optional<units::Slope> tolerance;  ///< added to every slope: k sigma and sub-cell
  double confidence_k = 0.0;
  std::optional<units::Slope> sigma;  ///< standard deviation of a slope by the heights
  std::vector<std::string> sources;   ///< of the grip, the rig's sheets and the ratings in force
  std::vector<ExplainedWay> ways;
  MadeFrom made_from{};  ///< left to fill in
};

/// Which directions are asked for.
enum class Directions { forward, backward, both };

/// Whether it is asked for how the shares move.
enum class WhatIf { no, yes };

/// Explains a place. Requires that it lies on a leg of the trail.
[[nodiscard]] Explanation explain(const passage::Judge& judge, const TrailPlace& place,
                                  Directions directions, units::Instant when,
                                  WhatIf what_if = WhatIf::no);

/// The explanation as text, no line longer than `columns` (60 or more).
[[nodiscard]] std::string text_of(const Explanation& explanation, int columns);

}  // namespace rimehaul::card
