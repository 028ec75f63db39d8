// Places on the trails where a way over open ground may begin or end.
#include "crossing/gate.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/require.h"
#include "units/rounding.h"

namespace rimehaul::crossing {

using trails::Leg;
using trails::Network;
using units::Metres;

namespace {

/// Places on a leg closer to its end than this are the junction there.
constexpr Metres kAtJunction{1.0};

std::string name_on(const trails::Trail& trail, Metres at) {
  return trail.name + " " + units::text_of(at.value(), 0, units::Round::nearest) + " m";
}

/// Chainages along a leg inside a region, its ends included where they are inside.
std::vector<Metres> places_on(const Leg& leg, const geo::Region& region,
                              const GateSpacing& spacing) {
  std::vector<Metres> places;
  for (const geo::Span& span : geo::spans_inside(region, leg.line)) {
    const Metres from = span.from < kAtJunction ? span.from : span.from + spacing.inside;
    const Metres to =
        leg.line.length() - span.to < kAtJunction ? span.to : span.to - spacing.inside;
    if (!(from <= to)) {
      continue;
    }
    const int parts = std::max(1, static_cast<int>(std::ceil((to - from) / spacing.apart)));
    for (int i = 0; i <= parts; ++i) {
      places.push_back(from + (static_cast<double>(i) / parts) * (to - from));
    }
  }
  return places;
}

class Gates {
 public:
  explicit Gates(const Network& network) : network_{&network} {}

  void add_junction(trails::JunctionId id, const trails::OnTrail& where) {
    if (!junctions_.emplace(id, 0).second) {
      return;
    }
    const trails::Junction& junction = network_->junctions[static_cast<std::size_t>(id)];
    Gate gate{.where = where, .place = junction.place, .name = {}, .onward = {}};
    gate.at_station = junction.station.has_value();
    gate.name = gate.at_station ? network_->stations[*junction.station].name
                                : name_on(network_->trails[where.trail], where.at);
    for (const Leg& leg : network_->legs) {
      if (leg.from == id) {
        gate.onward.push_back(leg.line.bearing_at(Metres{0}));
      }
    }
    found_.push_back(std::move(gate));
  }

  void add_along(const Leg& leg, Metres at) {
    const Metres on_trail = leg.span.from + at;
    const units::Bearing onward = leg.line.bearing_at(at);
    found_.push_back({.where = {leg.trail, on_trail},
                      .place = network_->trails[leg.trail].line.at(on_trail),
                      .name = name_on(network_->trails[leg.trail], on_trail),
                      .onward = {onward, onward.opposite()}});
  }

  [[nodiscard]] std::vector<Gate> found() && { return std::move(found_); }

 private:
  const Network* network_;
  std::map<trails::JunctionId, int> junctions_;
  std::vector<Gate> found_;
};

}  // namespace

std::vector<Gate> gates_of(const Network& network, const geo::Region& region,
                           const GateSpacing& spacing) {
  base::require(spacing.apart > Metres{0} && spacing.inside >= Metres{0},
                "gates are looked for without a distance between them");
  Gates gates{network};
  for (const Leg& leg : network.legs) {
    if (leg.way != trails::Way::as_drawn) {
      continue;
    }
    for (const Metres at : places_on(leg, region, spacing)) {
      if (at < kAtJunction) {
        gates.add_junction(leg.from, {leg.trail, leg.span.from});
      } else if (leg.line.length() - at < kAtJunction) {
        gates.add_junction(leg.to, {leg.trail, leg.span.to});
      } else {
        gates.add_along(leg, at);
      }
    }
  }
  return std::move(gates).found();
}

}  // namespace rimehaul::crossing
