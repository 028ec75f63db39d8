// No route, as plain data: why, which legs stand in the way, by how much, and what would open them.
#pragma once

#include <string>
#include <vector>

#include "card/made_from.h"
#include "day/departure_hours.h"
#include "passage/scene.h"
#include "search/route.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// A finding that does not pass, and how it stands.
struct RefusedFinding {
  passage::Finding finding;
  passage::Stand stand = passage::Stand::missing;
};

/// One leg, or the turn into it, in the way.
struct RefusedLeg {
  std::string trail;
  std::string from;
  std::string to;
  geo::Span span{};  ///< by chainage along the trail as drawn
  trails::Way way = trails::Way::as_drawn;
  std::string turn_from;  ///< trail from which the turn into the leg blocks; empty: the leg does
  /// Restricted: open with a load that its openings hold, or by a decision alone.
  passage::Verdict verdict = passage::Verdict::closed;
  passage::Finding finding;
  passage::Stand stand = passage::Stand::missing;
  std::string remedy;  ///< where to say what is missing; empty: nothing is missing
  std::vector<RefusedFinding> findings{};  ///< all that do not pass, in order of Check
  search::Openings opens{};
  std::vector<std::string> opens_it{};  ///< the same in words; empty: nothing that was tried
};

/// One reason, told once for all the places where it holds.
struct RefusalCause {
  passage::Finding finding;  ///< where it binds most
  passage::Stand stand = passage::Stand::missing;
  std::vector<std::size_t> places{};  ///< indices into Refusal::legs, in driving order
  std::size_t worst = 0;              ///< index into Refusal::legs
  std::string where;                  ///< "on all 3 legs and 2 turns"
  std::string remedy;                 ///< where to say what is missing; empty: nothing is missing
  search::Openings lifts{};
  std::vector<std::string> lifted_by{};  ///< the same in words
};

/// A way that a rig without its trailer or without any load would find open.
struct RefusedWay {
  std::vector<std::string> trails{};  ///< in driving order, none twice in a row
  search::Openings opens{};
  std::vector<std::string> opens_it{};
};

/// The honest no.
struct Refusal {
  int schema = 1;
  std::string site;
  std::string title;  ///< "Cable House to Fell Lodge"
  std::string rig;
  std::string load;  ///< "bed 40 kg, towed 60 kg, ..."
  bool towing = false;
  std::string snow;  ///< state where and when the rig would leave, or that it is unknown
  snow::Told snow_told_by;
  units::Instant depart;
  units::LocalClock local_clock{};
  double allowed_share = 0.0;
  std::string why;
  std::vector<RefusedLeg> legs{};  ///< nearest to a way first
  RefusedWay nearest{};            ///< the way nearest to open; no trails: there is not one alone
  std::vector<RefusalCause> causes{};  ///< the one at most places first
  std::vector<RefusedWay> other_ways{};
  std::optional<day::Departures> departures{};  ///< nothing: not asked for
  MadeFrom made_from{};

  /// Whether a named person's decision alone stands in the way.
  [[nodiscard]] bool only_by_decision() const;
  /// Restricted when that is so, or when some way is open with a load that is printed.
  [[nodiscard]] passage::Verdict verdict() const;
};

/// What is known beside the search's answer.
struct RefusalContext {
  const passage::Scene& scene;
  const rig::Rig& rig;
  const snow::SnowAt& snow;
  const search::RouteQuestion& question;
  MadeFrom made_from{};
  std::optional<day::Departures> departures{};
};

[[nodiscard]] Refusal make_refusal(const search::NoRoute& answer, const RefusalContext& context);

/// Why a route that is open is not given: too little fuel aboard for it and the reserve.
[[nodiscard]] std::string not_enough_fuel(const rig::Rig& rig, const passage::Rules& rules,
                                          units::Litres route);

/// The refusal as text, no line longer than `columns` (60 or more).
[[nodiscard]] std::string text_of(const Refusal& refusal, int columns);

/// "Cable House to Fell Lodge via Col Hut"
[[nodiscard]] std::string title_of(const trails::Network& network,
                                   const search::RouteQuestion& question);

}  // namespace rimehaul::card
