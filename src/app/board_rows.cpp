#include "app/board_rows.h"

#include <algorithm>
#include <utility>

#include "app/question.h"
#include "app/status.h"
#include "app/value_kinds.h"
#include "card/trip_words.h"

namespace rimehaul::app {

namespace {

/// Keeps what leaves from one station and arrives at another, where one is asked for.
template <class Ways, class Leaves, class Arrives>
void keep_asked(Ways& ways, const BoardOptions& options, const trails::Network& network,
                const Leaves& leaves, const Arrives& arrives) {
  if (options.from) {
    const std::size_t station = station_named(network, *options.from);
    std::erase_if(ways, [&](const auto& way) { return !leaves(way, station); });
  }
  if (options.to) {
    const std::size_t station = station_named(network, *options.to);
    std::erase_if(ways, [&](const auto& way) { return !arrives(way, station); });
  }
}

}  // namespace

std::vector<day::Stops> pairs_asked(const BoardOptions& options, const trails::Network& network) {
  std::vector<day::Stops> pairs = day::all_pairs(network);
  keep_asked(
      pairs, options, network,
      [](const day::Stops& stops, std::size_t station) { return stops.first() == station; },
      [](const day::Stops& stops, std::size_t station) { return stops.last() == station; });
  if (pairs.empty()) {
    throw WrongUsage{"there is no pair of different stations to judge; give two different ones"};
  }
  return pairs;
}

RigOptions usual_rig(const LoadedSite& site, const day::NamedRoute& route) {
  RigOptions options;
  options.name = route.rig;
  options.bed_kg = route.bed.value();
  const auto rig = std::ranges::find(site.rigs, route.rig, &rig::Rig::name);
  const bool tows = rig != site.rigs.end() && rig->trailer.has_value();
  if (tows || route.towed > units::Kilograms{0}) {
    options.towed_kg = route.towed.value();
  }
  options.passengers = route.passengers;
  options.accompanied = route.accompanied;
  return options;
}

std::vector<AskedRow> named_routes(const LoadedSite& site, const HoursOptions& hours) {
  if (site.routes.empty()) {
    throw WrongUsage{
        "this site keeps no named routes: write routes.toml and name it in site.toml under [files] "
        "as routes = \"routes.toml\""};
  }
  std::vector<AskedRow> rows;
  for (const day::NamedRoute& route : site.routes) {
    const RigOptions usual = usual_rig(site, route);
    day::Stops stops;
    for (const std::string& station : route.stations) {
      stops.stations.push_back(station_named(site.scene->network, station));
    }
    rows.push_back({.name = route.name,
                    .trip = std::move(stops),
                    .rig = rig_as_loaded(site, usual),
                    .back = way_back_asked(site, usual, hours)});
  }
  return rows;
}

namespace {

/// A trip for whatever rig.
struct NamedTrip {
  std::string name;
  day::Trip trip;
};

std::vector<NamedTrip> named_pairs(const BoardOptions& options, const trails::Network& network) {
  std::vector<NamedTrip> trips;
  for (const day::Stops& stops : pairs_asked(options, network)) {
    trips.push_back(
        {network.stations[stops.first()].name + " to " + network.stations[stops.last()].name,
         stops});
  }
  return trips;
}

std::vector<NamedTrip> named_trails(const BoardOptions& options, const trails::Network& network) {
  using search::FixedWay;
  const auto end = [&](trails::LegId leg) { return network.legs[static_cast<std::size_t>(leg)]; };
  std::vector<FixedWay> ways = day::marked_trails(network);
  keep_asked(
      ways, options, network,
      [&](const FixedWay& way, std::size_t station) {
        return end(way.legs.front()).from == network.junction_of(station);
      },
      [&](const FixedWay& way, std::size_t station) {
        return end(way.legs.back()).to == network.junction_of(station);
      });
  if (ways.empty()) {
    throw WrongUsage{
        "no marked trail begins and ends there; leave out --from and --to, or see the trails with "
        "rimehaul check"};
  }
  std::vector<NamedTrip> trips;
  trips.reserve(ways.size());
  for (const FixedWay& way : ways) {
    trips.push_back({card::trail_and_direction(way, network), way});
  }
  return trips;
}

}  // namespace

bool have_own_rigs(const BoardOptions& options) {
  return options.rows == kRowsOfRoutes;
}

std::vector<AskedRow> rows_asked(const BoardOptions& options, const LoadedSite& site) {
  if (have_own_rigs(options)) {
    return named_routes(site, options.hours);
  }
  const trails::Network& network = site.scene->network;
  const std::vector<NamedTrip> trips = options.rows == kRowsOfTrails
                                           ? named_trails(options, network)
                                           : named_pairs(options, network);
  std::vector<AskedRow> rows;
  for (const rig::Rig& rig : site.rigs) {
    if (!options.all_rigs && rig.name != options.rig.name) {
      continue;
    }
    RigOptions loaded = options.rig;
    loaded.name = rig.name;
    if (!rig.trailer) {
      loaded.towed_kg.reset();
    }
    for (const NamedTrip& trip : trips) {
      rows.push_back({.name = trip.name,
                      .trip = trip.trip,
                      .rig = rig_as_loaded(site, loaded),
                      .back = way_back_asked(site, loaded, options.hours)});
    }
  }
  return rows;
}

std::string title_of_rows(const BoardOptions& options) {
  return options.rows == kRowsOfRoutes   ? "NAMED ROUTES"
         : options.rows == kRowsOfTrails ? "MARKED TRAILS"
                                         : "PAIRS OF STATIONS";
}

}  // namespace rimehaul::app
