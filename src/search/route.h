// Routes over judged legs, found by graph search. Only the .cpp files beside this know the library.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "search/no_route.h"

namespace rimehaul::search {

enum class Preference { safest, quickest, least_fuel };

/// What is wanted: stations as indices into Network::stations, passed in order.
struct RouteQuestion {
  std::vector<std::size_t> stations;  ///< two or more: from, via..., to
  Preference prefer = Preference::safest;
  units::Instant depart;
  std::size_t most_alternatives = 3;  ///< beside the best
  /// A named person who permits what the rules leave to a decision; empty: nobody does.
  std::string permitted_by;
  /// Heeded where ways are looked for through the hours (timed_routes.h); nothing: at any hour.
  std::optional<units::Instant> arrive_by{};
};

/// One way: legs in order, each with its judgement and the turn into it.
struct RouteLeg {
  trails::LegId leg{};
  units::Instant entry;
  passage::LegJudgement judgement{};
  passage::TurnJudgement turn_into{};  ///< of the first leg: open, share 0
  units::Seconds waits_before{};       ///< at the station where it begins
};

struct Route {
  std::vector<RouteLeg> legs;
  double worst_share = 0.0;  ///< over legs and turns
  units::Seconds time;       ///< from setting out to arriving, waits included
  units::Seconds waits{};
  units::Litres fuel;
  units::Metres length;
  bool needs_permission = false;  ///< some leg or turn is restricted
};

/// Routes, the best first, or the reason for none.
using RouteAnswer = std::variant<std::vector<Route>, NoRoute>;

/// Vertices are directed legs, arcs the turns the rig may make; closed legs are not in the graph.
/// Restricted ones are only for a named person, and a way that needs that person's decision comes
/// after every way that needs none: it is the best only where there is no other, whatever is
/// preferred. Safest: the least possible worst share first, then time weighted by a penalty on
/// share among legs and turns at or under it; its alternatives come first from among those too,
/// then from all that may be driven. Quickest and least fuel: time or fuel among all that may be
/// driven. Alternatives share at most 70 % of their length with any better one, leave some leg of
/// it out, and pass no junction twice where the best does not. No leg is driven twice, except where
/// stations on the way make it so. The search takes every leg as judged for the departure, and
/// judges those legs that it comes to need; each way found is then judged again leg by leg at the
/// hour it is entered, and dropped for the next best if that does not hold.
[[nodiscard]] RouteAnswer find_routes(const trails::Network& network,
                                      const passage::LegJudge& judge,
                                      const RouteQuestion& question);
/// The same for who does not ask why there is none, which takes much longer to tell: empty then.
[[nodiscard]] std::vector<Route> open_routes(const trails::Network& network,
                                             const passage::LegJudge& judge,
                                             const RouteQuestion& question);

}  // namespace rimehaul::search
