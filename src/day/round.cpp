#include "day/round.h"

#include <algorithm>
#include <utility>

#include "base/require.h"

namespace rimehaul::day {

using search::StopSet;
using trails::Network;

namespace {

bool holds(StopSet set, std::size_t stop) {
  return ((set >> stop) & 1U) != 0;
}

std::size_t station_of(const Network& network, const std::string& name) {
  const auto station = network.station_named(name);
  base::require(station.has_value(), "a round names a station that is not there");
  return *station;
}

/// The stops as they are named, one after the other.
class Listing {
 public:
  Listing(const Round& round, const Network& network) {
    stops_.start = station_of(network, round.start);
    if (!round.end.empty()) {
      stops_.end = station_of(network, round.end);
    }
    for (const Errand& errand : round.errands) {
      const std::size_t from = station_of(network, errand.from);
      const std::size_t to = station_of(network, errand.to);
      stops_.errands.push_back(
          {.taken_on = from == stops_.start ? std::nullopt : std::optional{stop_at(from)},
           .put_off = to == stops_.end ? std::nullopt : std::optional{stop_at(to)}});
    }
  }

  [[nodiscard]] RoundStops stops() && { return std::move(stops_); }

 private:
  std::size_t stop_at(std::size_t station) {
    const auto known = std::ranges::find(stops_.stations, station);
    const auto stop = static_cast<std::size_t>(known - stops_.stations.begin());
    if (known == stops_.stations.end()) {
      stops_.stations.push_back(station);
    }
    return stop;
  }

  RoundStops stops_;
};

/// By stop, those from which something is to be brought to it, those that these wait for, and so
/// on.
std::vector<StopSet> all_before(const RoundStops& stops) {
  std::vector<StopSet> after(stops.stations.size(), 0);
  for (std::size_t pass = 0; pass < after.size(); ++pass) {
    for (const ErrandCalls& errand : stops.errands) {
      if (errand.taken_on && errand.put_off) {
        after[*errand.put_off] |= after[*errand.taken_on] | (StopSet{1} << *errand.taken_on);
      }
    }
  }
  return after;
}

std::optional<UnfitRound> unreachable(const RoundStops& stops, const Network& network) {
  std::vector<std::size_t> stations = stops.stations;
  stations.push_back(stops.start);
  stations.push_back(stops.end.value_or(stops.start));
  for (const std::size_t station : stations) {
    if (!network.junction_of(station).has_value()) {
      return UnfitRound{"no trail reaches " + network.stations[station].name,
                        "see what `rimehaul check` says of it"};
    }
  }
  return std::nullopt;
}

std::optional<UnfitRound> without_order(const RoundStops& stops, const Network& network) {
  for (std::size_t stop = 0; stop < stops.stations.size(); ++stop) {
    if (holds(stops.after[stop], stop)) {
      return UnfitRound{network.stations[stops.stations[stop]].name +
                            " would have to be called at before itself, as what is put off there "
                            "waits for what is taken on there",
                        "make two rounds of it"};
    }
  }
  return std::nullopt;
}

}  // namespace

std::size_t RoundStops::departed(const search::Hop& hop) const {
  return hop.from.has_value() ? stations.at(*hop.from) : start;
}

std::size_t RoundStops::reached(const search::Hop& hop) const {
  return hop.to.has_value() ? stations.at(*hop.to) : end.value();
}

bool RoundStops::is_aboard(std::size_t errand, StopSet called) const {
  const ErrandCalls& calls = errands.at(errand);
  const bool on = !calls.taken_on.has_value() || holds(called, *calls.taken_on);
  return on && !(calls.put_off.has_value() && holds(called, *calls.put_off));
}

std::vector<StopSet> RoundStops::sets_on_the_way() const {
  const StopSet all = StopSet{1} << after.size();
  std::vector<StopSet> sets;
  for (StopSet called = 0; called < (end.has_value() ? all : all - 1); ++called) {
    bool may_be = true;
    for (std::size_t stop = 0; stop < after.size(); ++stop) {
      may_be = may_be && (!holds(called, stop) || (after[stop] & ~called) == 0);
    }
    if (may_be) {
      sets.push_back(called);
    }
  }
  return sets;
}

std::variant<RoundStops, UnfitRound> stops_of(const Round& round, const Network& network) {
  for (const Errand& errand : round.errands) {
    if (errand.from == round.end && round.end != round.start) {
      return UnfitRound{
          errand.what + " would be taken on at " + round.end + ", where the round ends",
          "end it elsewhere, or bring that on another round"};
    }
  }
  RoundStops stops = Listing{round, network}.stops();
  if (stops.stations.size() > search::kMostStops) {
    return UnfitRound{std::to_string(stops.stations.size()) + " stops are more than can be ordered",
                      "make rounds of " + std::to_string(search::kMostStops) + " stops at most"};
  }
  if (auto unfit = unreachable(stops, network); unfit.has_value()) {
    return *unfit;
  }
  stops.after = all_before(stops);
  if (auto unfit = without_order(stops, network); unfit.has_value()) {
    return *unfit;
  }
  return stops;
}

rig::Rig rig_with(const rig::Rig& as_it_stays, const Round& round, const RoundStops& stops,
                  StopSet called) {
  rig::Rig rig = as_it_stays;
  for (std::size_t i = 0; i < round.errands.size(); ++i) {
    if (stops.is_aboard(i, called)) {
      rig.load.bed = rig.load.bed + round.errands[i].bed;
      rig.load.towed = rig.load.towed + round.errands[i].towed;
      rig.load.passengers += round.errands[i].passengers;
    }
  }
  return rig;
}

}  // namespace rimehaul::day
