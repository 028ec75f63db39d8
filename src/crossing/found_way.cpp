// The cheapest ways over the cells of one zone, between its gates.
#include "crossing/found_way.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "crossing/drawn_way.h"
#include "crossing/reach.h"

namespace rimehaul::crossing {

using units::Bearing;
using units::Metres;

namespace {

/// A way over open ground is worth its while where what there is already is so much longer.
constexpr double kWorthwhile = 1.2;
/// Headings that differ by no more are alike to a trail that bends a little.
constexpr double kAlikeDeg = 30.0;

/// Who arrives goes straight on, more or less; from a station one may set out any of its ways.
std::vector<Port> ports_in(const Gate& gate) {
  std::vector<Port> ports;
  for (const Bearing onward : gate.onward) {
    ports.push_back({&gate, onward.opposite()});
    if (gate.at_station) {
      ports.push_back({&gate, onward});
    }
  }
  return ports;
}

std::vector<Port> ports_out(const Gate& gate) {
  std::vector<Port> ports;
  for (const Bearing onward : gate.onward) {
    ports.push_back({&gate, onward});
    if (gate.at_station) {
      ports.push_back({&gate, onward.opposite()});
    }
  }
  return ports;
}

/// The states at a port: its heading and those beside it.
std::vector<State> states_at(const Lattice& lattice, const Port& port) {
  std::vector<State> states;
  const auto cell = cell_of(lattice, port.gate->place);
  if (cell) {
    const Heading heading = heading_of(port.heading);
    for (const int turn : {0, -1, 1}) {
      states.push_back({*cell, turned(heading, turn)});
    }
  }
  return states;
}

Metres length_of(const std::vector<geo::MapPoint>& points) {
  Metres length{0};
  for (std::size_t i = 1; i < points.size(); ++i) {
    length += geo::distance(points[i - 1], points[i]);
  }
  return length;
}

/// How far it is from one port to another along one trail, heading alike at both; nothing where the
/// trail does not lead there.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): as far the one way as the other
std::optional<Metres> along_trail(const Port& one, const Port& other) {
  const trails::OnTrail& from = one.gate->where;
  const trails::OnTrail& to = other.gate->where;
  if (from.trail != to.trail || std::abs(one.heading.turn_to(other.heading)) > kAlikeDeg) {
    return std::nullopt;
  }
  return from.at < to.at ? to.at - from.at : from.at - to.at;
}

/// Whether another way, with what is driven on trails to come to it and on from it, is hardly
/// longer.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): in the order of its name
bool is_hardly_longer(const FoundWay& other, const FoundWay& way) {
  const auto before = along_trail(way.from, other.from);
  const auto after = along_trail(other.to, way.to);
  return before && after && *before + other.length + *after <= kWorthwhile * way.length;
}

bool leads_along_one_trail(const FoundWay& way) {
  const trails::OnTrail& from = way.from.gate->where;
  const trails::OnTrail& to = way.to.gate->where;
  const Metres along = from.at < to.at ? to.at - from.at : from.at - to.at;
  return from.trail == to.trail && along <= kWorthwhile * way.length;
}

/// The cheapest way from one port to another; nothing where there is none.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): in driving order
std::optional<FoundWay> cheapest_between(const Port& from, const Port& to, const Reach& reach,
                                         const Lattice& lattice) {
  std::optional<FoundWay> best;
  for (const State goal : states_at(lattice, to)) {
    const std::optional<Way> way = reach.way_to(goal);
    if (!way || (best && best->price <= way->price)) {
      continue;
    }
    if (auto points = bent_to({from.gate->place, to.gate->place}, lattice, *way)) {
      best = FoundWay{from, to, way->price, *std::move(points)};
      best->length = length_of(best->points);
    }
  }
  return best;
}

/// Adds the ways from one port to those of all other gates.
void add_ways_from(const Port& from, const OpenGround& ground, const std::vector<Gate>& gates,
                   std::vector<FoundWay>& ways) {
  const std::vector<State> starts = states_at(ground.lattice(), from);
  if (starts.empty()) {
    return;
  }
  const Reach reach{ground.prices(), starts};
  for (const Gate& gate : gates) {
    if (&gate == from.gate) {
      continue;
    }
    for (const Port& to : ports_out(gate)) {
      auto way = cheapest_between(from, to, reach, ground.lattice());
      if (way && !leads_along_one_trail(*way)) {
        ways.push_back(*std::move(way));
      }
    }
  }
}

}  // namespace

std::vector<FoundWay> found_ways(const OpenGround& ground, const std::vector<Gate>& gates) {
  std::vector<FoundWay> all;
  for (const Gate& gate : gates) {
    for (const Port& from : ports_in(gate)) {
      add_ways_from(from, ground, gates, all);
    }
  }
  std::ranges::stable_sort(all, {}, &FoundWay::length);
  std::vector<FoundWay> found;
  for (FoundWay& way : all) {
    const auto follows = [&](const FoundWay& kept) { return is_hardly_longer(kept, way); };
    if (std::ranges::none_of(found, follows)) {
      found.push_back(std::move(way));
    }
  }
  return found;
}

}  // namespace rimehaul::crossing
