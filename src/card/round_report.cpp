#include "card/round_report.h"

#include <algorithm>

#include "base/require.h"

namespace rimehaul::card {

using day::RoundHop;

namespace {

/// Stops called at before the rig comes to stand, and when it goes on; nothing aboard where none.
struct Standing {
  std::optional<search::StopSet> before;
  std::optional<search::StopSet> then;
};

/// What is handled where the rig stands.
void handle(RoundCall& call, const RoundContext& context, const Standing& at) {
  const auto aboard = [&](std::size_t errand, std::optional<search::StopSet> called) {
    return called.has_value() && context.stops.is_aboard(errand, *called);
  };
  for (std::size_t i = 0; i < context.round.errands.size(); ++i) {
    if (aboard(i, at.before) && !aboard(i, at.then)) {
      call.put_off.push_back(context.round.errands[i]);
    }
    if (!aboard(i, at.before) && aboard(i, at.then)) {
      call.taken_on.push_back(context.round.errands[i]);
    }
  }
}

std::string station_name(std::size_t station, const RoundContext& context) {
  return context.network.stations[station].name;
}

std::string why_unreached(const day::UnreachedStop& stop) {
  if (!stop.none.has_value()) {
    return "there is a way, but not the fuel or the hours left for it";
  }
  return stop.none->why;
}

}  // namespace

std::vector<RoundCall> calls_of(const std::vector<RoundHop>& hops, const RoundContext& context) {
  std::vector<RoundCall> calls;
  RoundCall call{.station = station_name(context.stops.start, context)};
  std::optional<search::StopSet> before;
  for (const RoundHop& hop : hops) {
    handle(call, context, {before, hop.hop.called});
    before = hop.hop.called;
    call.leaves = hop.departs;
    call.aboard = hop.rig.load;
    calls.push_back(std::move(call));
    call = {.station = station_name(context.stops.reached(hop.hop), context),
            .arrives = hop.arrives};
  }
  // The last stop is called at with everything for it still aboard; the end leaves nothing aboard.
  std::optional<search::StopSet> then;
  if (!hops.empty() && hops.back().hop.to.has_value()) {
    then = hops.back().hop.called | (search::StopSet{1} << *hops.back().hop.to);
  }
  handle(call, context, {before, hops.empty() ? std::optional<search::StopSet>{0} : then});
  calls.push_back(std::move(call));
  return calls;
}

UnreachedCall unreached_call(const day::UnreachedStop& stop, const RoundContext& context) {
  return {.station = station_name(context.stops.reached(stop.hop), context),
          .aboard = stop.rig.load,
          .ready = stop.ready,
          .why = why_unreached(stop)};
}

std::size_t tightest_trip(const RoundReport& report) {
  base::require(!report.trips.empty(), "a round has a trip");
  const auto tightest = std::ranges::max_element(report.trips, {}, &RouteCard::worst_share);
  return static_cast<std::size_t>(tightest - report.trips.begin());
}

passage::Verdict verdict_of(const RoundReport& report) {
  if (!report.holds() || report.trips.empty()) {
    return passage::Verdict::closed;
  }
  const bool all_open = std::ranges::all_of(
      report.trips, [](const RouteCard& trip) { return trip.verdict == passage::Verdict::open; });
  return all_open ? passage::Verdict::open : passage::Verdict::restricted;
}

}  // namespace rimehaul::card
