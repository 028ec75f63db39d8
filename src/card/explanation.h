// Everything judged at one place of a trail as plain data, so that a person can work it out again.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "passage/open_loads.h"

namespace rimehaul::card {

/// A place on a trail, by chainage along it as drawn.
struct TrailPlace {
  std::size_t trail = 0;  ///< index into Network::trails
  units::Metres at;
};

/// One finding and how it stands.
struct ExplainedFinding {
  passage::Finding finding;
  passage::Stand stand = passage::Stand::missing;
  bool binds = false;
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
  geo::Span piece{};                           ///< of the leg, that was judged as one
  std::optional<terrain::AttitudeBox> ground;  ///< under the carrier, error not yet added
  ExplainedVerdict verdict;
  std::vector<ExplainedFinding> findings;  ///< in order of Check
  ExplainedLeg leg;
};

/// A number's source, for people: "climb rating, towing: 20 deg, maker: operator's manual, p. 41".
struct Explanation {
  int schema = 1;
  std::string site;
  std::string trail;
  units::Metres at;  ///< along the trail as drawn
  geo::MapPoint place;
  std::string map_frame;
  std::optional<geo::Height> height;
  std::string rig;
  std::string snow;  ///< state at the place, or that it is unknown
  snow::Told snow_told_by;
  units::Instant when;
  int utc_offset_minutes = 0;
  double allowed_share = 0.0;
  std::optional<units::Slope> tolerance;  ///< added to every slope: k sigma and sub-cell
  std::vector<std::string> sources;       ///< of the grip row and of the ratings in force
  std::vector<ExplainedWay> ways;
};

/// Which directions are asked for.
enum class Directions { forward, backward, both };

/// Explains a place. Requires that it lies on a leg of the trail.
[[nodiscard]] Explanation explain(const passage::Judge& judge, const TrailPlace& place,
                                  Directions directions, units::Instant when);

/// The explanation as text, no line longer than `columns` (60 or more).
[[nodiscard]] std::string text_of(const Explanation& explanation, int columns);

}  // namespace rimehaul::card
