// Ground kept clear for turning round, and whether a rig can turn round on it.
#include "passage/turning_room.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "passage/turning.h"

namespace rimehaul::passage {

using trails::Mark;
using units::Metres;

namespace {

constexpr Metres kNearJunction{15.0};

/// The middle of a mark's room; nothing for other marks, and for those on no trail of the network.
std::optional<geo::MapPoint> middle_of_room(const trails::Network& network, const Mark& mark) {
  if (mark.kind != trails::MarkKind::turning_room || !mark.room.has_value()) {
    return std::nullopt;
  }
  const std::optional<std::size_t> trail = network.trail_named(mark.trail);
  if (!trail.has_value()) {
    return std::nullopt;
  }
  return network.trails[*trail].line.at((mark.span.from + mark.span.to) / 2);
}

}  // namespace

Metres room_to_turn_round(const rig::Rig& rig) {
  const rig::Carrier& carrier = rig.carrier;
  // The ground contact lies within the machine, so no end of it is further from its middle.
  const Metres furthest_end = carrier.overall_length - carrier.contact_length / 2;
  const double corner_m = std::hypot(furthest_end.value(), carrier.overall_width.value() / 2);
  const double arcs = rig.trailer.has_value() ? std::numbers::sqrt3 : 1.0;
  return least_radius(rig) * arcs + Metres{corner_m};
}

Metres turning_room_at(const trails::Network& network, trails::JunctionId junction) {
  const trails::Junction& there = network.junctions[static_cast<std::size_t>(junction)];
  Metres room{0};
  if (there.station.has_value()) {
    room = std::max(room, network.stations[*there.station].turning_radius.value_or(Metres{0}));
  }
  for (const Mark& mark : network.marks) {
    if (const auto middle = middle_of_room(network, mark); middle.has_value()) {
      room = std::max(room, *mark.room - geo::distance(*middle, there.place));
    }
  }
  return room;
}

Metres room_to_turn_back(const trails::Network& network, const trails::Leg& leg) {
  const geo::MapPoint end = network.junctions[static_cast<std::size_t>(leg.to)].place;
  Metres room = turning_room_at(network, leg.to);
  for (const Mark& mark : network.marks) {
    if (mark.trail != network.trails[leg.trail].name || mark.span.from < leg.span.from ||
        mark.span.to > leg.span.to) {
      continue;
    }
    if (const auto middle = middle_of_room(network, mark);
        middle.has_value() && geo::distance(*middle, end) <= kNearJunction) {
      room = std::max(room, *mark.room);
    }
  }
  return room;
}

}  // namespace rimehaul::passage
