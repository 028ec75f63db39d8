// Builds junctions and legs from cut trails, and finds things in the finished network.
#include "trails/network.h"

#include <algorithm>
#include <numeric>
#include <span>
#include <tuple>
#include <utility>

#include "base/require.h"

namespace rimehaul::trails {

using units::Metres;

namespace {

/// Cuts closer together than this are one junction.
constexpr Metres kSame{0.001};

/// Sets of cuts that are one junction: a disjoint-set forest with path halving.
class Merged {
 public:
  explicit Merged(std::size_t count) : parents_(count) {
    std::iota(parents_.begin(), parents_.end(), std::size_t{0});
  }
  /// The first cut of the set that holds `index`.
  std::size_t first_of(std::size_t index) {
    while (parents_[index] != index) {
      parents_[index] = parents_[parents_[index]];
      index = parents_[index];
    }
    return index;
  }
  struct Two {
    std::size_t one = 0;
    std::size_t other = 0;
  };
  void merge(Two two) {
    const std::size_t first = first_of(two.one);
    const std::size_t other = first_of(two.other);
    parents_[std::max(first, other)] = std::min(first, other);
  }

 private:
  std::vector<std::size_t> parents_;
};

/// Cuts are put in order by this, so that junctions are numbered the same way every time.
auto order_of(const Cut& cut) {
  return std::tuple{cut.trail, cut.at, cut.place, cut.station};
}

/// Merges cuts that lie within a millimetre on the map; sorted by east, so that few are compared.
void merge_by_place(const std::vector<Cut>& cuts, Merged& merged) {
  std::vector<std::size_t> order(cuts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order, {}, [&cuts](std::size_t i) { return std::pair{cuts[i].place, i}; });
  for (std::size_t i = 0; i < order.size(); ++i) {
    const geo::MapPoint here = cuts[order[i]].place;
    for (std::size_t j = i + 1; j < order.size() && cuts[order[j]].place.east - here.east < kSame;
         ++j) {
      if (geo::distance(here, cuts[order[j]].place) < kSame) {
        merged.merge({order[i], order[j]});
      }
    }
  }
}

void merge_by_chainage(const std::vector<Cut>& cuts, Merged& merged) {
  for (std::size_t i = 1; i < cuts.size(); ++i) {
    if (cuts[i].trail == cuts[i - 1].trail && cuts[i].at - cuts[i - 1].at < kSame) {
      merged.merge({i - 1, i});
    }
  }
}

/// A junction's place on one trail.
struct Stop {
  Metres at;
  JunctionId junction{};
};

/// Junctions numbered in the order in which sorted cuts first meet them, and each cut's junction.
std::vector<Stop> number_junctions(const std::vector<Cut>& cuts, std::vector<Junction>& junctions) {
  Merged merged{cuts.size()};
  merge_by_place(cuts, merged);
  merge_by_chainage(cuts, merged);
  std::vector<Stop> stops(cuts.size());
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    const std::size_t first = merged.first_of(i);
    if (first == i) {
      stops[i].junction = JunctionId{static_cast<std::uint32_t>(junctions.size())};
      junctions.push_back({.place = cuts[i].place, .station = cuts[i].station});
    } else {
      stops[i].junction = stops[first].junction;
    }
    stops[i].at = cuts[i].at;
    Junction& junction = junctions[static_cast<std::size_t>(stops[i].junction)];
    if (!junction.station) {
      junction.station = cuts[i].station;
    }
  }
  return stops;
}

/// The stops of one trail: its ends exactly, and none twice.
std::vector<Stop> tidy_stops(std::span<const Stop> stops, Metres length) {
  base::require(!stops.empty() && stops.front().at < kSame && length - stops.back().at < kSame,
                "a trail is not cut at both its ends");
  std::vector<Stop> tidy{{Metres{0}, stops.front().junction}};
  for (const Stop& stop : stops.subspan(1)) {
    if (!(stop.at - tidy.back().at < kSame)) {
      tidy.push_back(stop);
    }
  }
  base::require(tidy.size() >= 2, "a trail is shorter than a millimetre");
  tidy.back().at = length;
  return tidy;
}

/// A part of a trail whose ends touch its junctions exactly.
std::vector<geo::MapPoint> points_between(const geo::Polyline& line, geo::Span span,
                                          const geo::Segment& junctions) {
  const geo::Polyline part = line.part(span);
  std::vector<geo::MapPoint> points(part.points().begin(), part.points().end());
  points.front() = junctions.from;
  points.back() = junctions.to;
  return points;
}

void add_legs(Network& network, std::size_t trail, const std::vector<Stop>& stops) {
  for (std::size_t i = 0; i + 1 < stops.size(); ++i) {
    const geo::Span span{stops[i].at, stops[i + 1].at};
    const JunctionId from = stops[i].junction;
    const JunctionId to = stops[i + 1].junction;
    std::vector<geo::MapPoint> points =
        points_between(network.trails[trail].line, span,
                       {network.junctions[static_cast<std::size_t>(from)].place,
                        network.junctions[static_cast<std::size_t>(to)].place});
    if (from == to && points.size() == 2) {
      continue;  // a hair's breadth within one junction
    }
    geo::Polyline line{std::move(points)};
    geo::Polyline back = line.reversed();
    network.legs.push_back({trail, span, Way::as_drawn, from, to, std::move(line)});
    network.legs.push_back({trail, span, Way::against, to, from, std::move(back)});
  }
}

template <class Named>
std::optional<std::size_t> named(const std::vector<Named>& things, std::string_view name) {
  const auto found = std::ranges::find(things, name, &Named::name);
  if (found == things.end()) {
    return std::nullopt;
  }
  return static_cast<std::size_t>(found - things.begin());
}

}  // namespace

std::optional<std::size_t> Network::station_named(std::string_view name) const {
  return named(stations, name);
}

std::optional<std::size_t> Network::trail_named(std::string_view name) const {
  return named(trails, name);
}

std::optional<JunctionId> Network::junction_of(std::size_t station) const {
  const auto found = std::ranges::find(junctions, std::optional{station}, &Junction::station);
  if (found == junctions.end()) {
    return std::nullopt;
  }
  return JunctionId{static_cast<std::uint32_t>(found - junctions.begin())};
}

std::vector<LegId> legs_along(const Network& network, std::size_t trail, Way way) {
  std::vector<LegId> legs;
  for (std::uint32_t i = 0; i < network.legs.size(); ++i) {
    if (network.legs[i].trail == trail && network.legs[i].way == way) {
      legs.push_back(LegId{i});
    }
  }
  std::ranges::sort(legs, {}, [&network](LegId leg) {
    return network.legs[static_cast<std::size_t>(leg)].span.from;
  });
  if (way == Way::against) {
    std::ranges::reverse(legs);
  }
  return legs;
}

std::optional<geo::Span> span_on_leg(const Mark& mark, const Network& network, const Leg& leg) {
  if (network.trails[leg.trail].name != mark.trail) {
    return std::nullopt;
  }
  const Metres from = std::max(mark.span.from, leg.span.from);
  const Metres to = std::min(mark.span.to, leg.span.to);
  const bool is_point = mark.span.from == mark.span.to;
  if (!(is_point ? from <= to : from < to)) {
    return std::nullopt;  // a stretch that only touches the leg's end lies on its neighbour
  }
  const auto on_leg = [&leg](Metres at) {
    const Metres driven = leg.way == Way::as_drawn ? at - leg.span.from : leg.span.to - at;
    return std::clamp(driven, Metres{0}, leg.line.length());
  };
  return leg.way == Way::as_drawn ? geo::Span{on_leg(from), on_leg(to)}
                                  : geo::Span{on_leg(to), on_leg(from)};
}

Network make_network(std::vector<Trail> trails, std::vector<Station> stations,
                     std::vector<Zone> zones, std::vector<Mark> marks,
                     const std::vector<Cut>& cuts) {
  Network network{.trails = std::move(trails),
                  .stations = std::move(stations),
                  .zones = std::move(zones),
                  .marks = std::move(marks),
                  .junctions = {},
                  .legs = {}};
  std::vector<Cut> sorted{cuts};
  std::ranges::sort(sorted, {}, order_of);
  base::require(sorted.empty() || sorted.back().trail < network.trails.size(),
                "a cut names a trail that does not exist");
  const std::vector<Stop> stops = number_junctions(sorted, network.junctions);
  for (std::size_t trail = 0; trail < network.trails.size(); ++trail) {
    const auto begin = std::ranges::lower_bound(sorted, trail, {}, &Cut::trail);
    const auto end = std::ranges::upper_bound(sorted, trail, {}, &Cut::trail);
    const auto first = static_cast<std::size_t>(begin - sorted.begin());
    const std::span<const Stop> here{stops.data() + first, static_cast<std::size_t>(end - begin)};
    add_legs(network, trail, tidy_stops(here, network.trails[trail].line.length()));
  }
  return network;
}

}  // namespace rimehaul::trails
