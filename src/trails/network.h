// Trails cut at their junctions: the noded network, whose stretches are driven as legs.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "trails/features.h"
#include "trails/trail.h"

namespace rimehaul::trails {

enum class JunctionId : std::uint32_t {};
enum class LegId : std::uint32_t {};

/// Where trails meet, end, or pass a station.
struct Junction {
  geo::MapPoint place;
  std::optional<std::size_t> station;  ///< index into Network::stations
};

/// Which way a leg follows its trail's line as drawn.
enum class Way { as_drawn, against };

/// A stretch between two junctions, in one direction. Drawn in both directions whatever is allowed:
/// whether it may be driven is a finding, not an absence.
struct Leg {
  std::size_t trail = 0;  ///< index into Network::trails
  geo::Span span{};       ///< by chainage along the trail as drawn, from < to
  Way way = Way::as_drawn;
  JunctionId from{};
  JunctionId to{};
  geo::Polyline line;  ///< in driving direction
};

/// The whole network. Legs come in pairs: 2n as drawn, 2n + 1 against.
struct Network {
  std::vector<Trail> trails;
  std::vector<Station> stations;
  std::vector<Zone> zones;
  std::vector<Mark> marks;
  std::vector<Junction> junctions;
  std::vector<Leg> legs;

  [[nodiscard]] std::optional<std::size_t> station_named(std::string_view name) const;
  [[nodiscard]] std::optional<std::size_t> trail_named(std::string_view name) const;
  /// The junction that stands for a station; nothing when no trail reaches it.
  [[nodiscard]] std::optional<JunctionId> junction_of(std::size_t station) const;
};

[[nodiscard]] inline LegId opposite_of(LegId leg) {
  return LegId{static_cast<std::uint32_t>(leg) ^ 1U};
}

/// All legs of a trail one way, in driving order: from one of its ends to the other.
[[nodiscard]] std::vector<LegId> legs_along(const Network& network, std::size_t trail, Way way);

/// Where a mark lies on a leg: chainage along the leg's own line in driving direction.
[[nodiscard]] std::optional<geo::Span> span_on_leg(const Mark& mark, const Network& network,
                                                   const Leg& leg);

/// Trails cut at given chainages, already snapped to each other; made by a port.
struct Cut {
  std::size_t trail = 0;
  units::Metres at;
  geo::MapPoint place;                 ///< shared exactly by all cuts of one junction
  std::optional<std::size_t> station;  ///< the station reached there, if any
};

/// Builds junctions and legs from trails and the places where they are cut. Every trail must be cut
/// at both its ends (OurFault otherwise). Cuts closer together than a millimetre are one.
[[nodiscard]] Network make_network(std::vector<Trail> trails, std::vector<Station> stations,
                                   std::vector<Zone> zones, std::vector<Mark> marks,
                                   const std::vector<Cut>& cuts);

}  // namespace rimehaul::trails
