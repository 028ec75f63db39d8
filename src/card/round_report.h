// A round of errands for people: the stops in their order, what is taken on and put off at each,
// and how the trips between them are driven; or how far it gets and what stops it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/made_from.h"
#include "card/route_card.h"
#include "day/round_plan.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// One place where the rig stands, its start and its end among them.
struct RoundCall {
  std::string station;
  std::optional<units::Instant> arrives{};  ///< nothing at the start
  std::optional<units::Instant> leaves{};   ///< nothing at the end
  std::vector<day::Errand> put_off{};
  std::vector<day::Errand> taken_on{};
  std::optional<rig::Load> aboard{};  ///< when it leaves; nothing at the end
};

/// Where the round cannot go on to.
struct UnreachedCall {
  std::string station;
  rig::Load aboard{};
  units::Instant ready;
  std::string why;
};

struct RoundReport {
  int schema = 1;
  std::string site;
  std::string rig;
  std::string trailer{};  ///< empty: none
  search::Preference prefer = search::Preference::safest;
  units::Seconds halt;
  units::LocalClock local_clock{};
  std::vector<RoundCall> calls;  ///< in order, the start first; of no round, as far as it gets
  /// From each call to the next, as a route's card is; none where there is no round.
  std::vector<RouteCard> trips{};
  std::vector<UnreachedCall> unreached{};  ///< none where there is a round
  units::Litres fuel{};                    ///< of all trips
  units::Litres fuel_to_spare{};           ///< at the start, above the reserve
  /// What other orders may come to that were not followed to their end; nothing: proven the best,
  /// or that there is none.
  std::optional<search::OrderWorth> not_ruled_out{};
  std::vector<std::string> orders{};  ///< of named persons, in force
  MadeFrom made_from{};

  [[nodiscard]] bool holds() const { return unreached.empty(); }
};

/// What is known of the round that is told.
struct RoundContext {
  const trails::Network& network;
  const day::Round& round;
  const day::RoundStops& stops;
};

/// The calls of hops that follow each other: of a whole round, or as far as one gets.
[[nodiscard]] std::vector<RoundCall> calls_of(const std::vector<day::RoundHop>& hops,
                                              const RoundContext& context);

/// Why the round cannot go on to a stop, in one line.
[[nodiscard]] UnreachedCall unreached_call(const day::UnreachedStop& stop,
                                           const RoundContext& context);

/// The trip with the largest share, the first of equals. Requires a trip.
[[nodiscard]] std::size_t tightest_trip(const RoundReport& report);
/// Open, or restricted where a trip waits for a decision; closed where there is no round.
[[nodiscard]] passage::Verdict verdict_of(const RoundReport& report);

/// The report as text, no line longer than `columns` (60 or more).
[[nodiscard]] std::string text_of(const RoundReport& report, int columns);

}  // namespace rimehaul::card
