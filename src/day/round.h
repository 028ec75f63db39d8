// Errands: what is to be taken from one station to another on one round, and what of it is aboard
// on the way.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rig/rig.h"
#include "search/stop_order.h"
#include "trails/network.h"

namespace rimehaul::day {

/// Something that is taken on at one station and put off at another.
struct Errand {
  std::string what;  ///< "gas bottles"
  std::string from;
  std::string to;
  units::Kilograms bed{0};    ///< on the carrier's bed
  units::Kilograms towed{0};  ///< on the trailer
  int passengers = 0;
};

/// Names are those of the site's stations.
struct Round {
  std::string start;
  std::string end;  ///< empty: at the last stop
  std::vector<Errand> errands;
};

/// An errand by where its ends are called at.
struct ErrandCalls {
  std::optional<std::size_t> taken_on;  ///< number of the stop; nothing: where the round starts
  std::optional<std::size_t> put_off;   ///< number of the stop; nothing: where the round ends
};

/// The stops that a round has to put in order, each called at once.
struct RoundStops {
  std::size_t start = 0;                 ///< station
  std::optional<std::size_t> end;        ///< station; nothing: at the last stop
  std::vector<std::size_t> stations;     ///< of the stops, as the errands first name them
  std::vector<search::StopSet> after{};  ///< by stop: those to be called at before it
  std::vector<ErrandCalls> errands;      ///< in the order of the round

  /// The station of a stop on a hop.
  [[nodiscard]] std::size_t departed(const search::Hop& hop) const;
  [[nodiscard]] std::size_t reached(const search::Hop& hop) const;
  /// Whether an errand is aboard once some stops have been called at.
  [[nodiscard]] bool is_aboard(std::size_t errand, search::StopSet called) const;
  /// All sets of stops that may have been called at when the rig drives on.
  [[nodiscard]] std::vector<search::StopSet> sets_on_the_way() const;
};

/// A round that cannot be put in order, and what to do about it.
struct UnfitRound {
  std::string problem;
  std::string remedy;
};

/// Requires names that the network has. The start is a stop too where something is to be brought
/// back to it and the round does not end there. Unfit: an end that something is to be taken on at,
/// a station that no trail reaches, stops each of which must come before another of them, and more
/// stops than can be ordered (search::kMostStops).
[[nodiscard]] std::variant<RoundStops, UnfitRound> stops_of(const Round& round,
                                                            const trails::Network& network);

/// The rig with what stays on it and, besides, every errand that is aboard then.
[[nodiscard]] rig::Rig rig_with(const rig::Rig& as_it_stays, const Round& round,
                                const RoundStops& stops, search::StopSet called);

}  // namespace rimehaul::day
