// Support polygons: how far a centre of gravity stands inside each edge that a rig could tip over.
#include <cmath>
#include <cstddef>

#include "rig/rig.h"

namespace rimehaul::rig {

namespace {

using units::Metres;

struct Edge {
  SupportPoint from;
  SupportPoint to;
};

/// The polygon runs counter-clockwise, so its outside lies to the right of each edge. An edge
/// without length divides 0 by 0, and its NaN closes whatever asks.
TipEdge tip_edge(Edge edge, const BodyPoint& centre) {
  const auto [from, to] = edge;
  const Metres along = to.forward - from.forward;
  const Metres across = to.left - from.left;
  const double length_m = std::hypot(along.value(), across.value());
  const BodyDirection outward{.forward = across.value() / length_m,
                              .left = -along.value() / length_m};
  const Metres inside =
      (from.forward - centre.forward) * outward.forward + (from.left - centre.left) * outward.left;
  const bool above_ground = centre.up > Metres{0};
  return {.from = from,
          .to = to,
          .outward = outward,
          .inside = inside,
          .static_tip = units::Slope::from_ratio(above_ground ? inside / centre.up : std::nan(""))};
}

}  // namespace

std::vector<TipEdge> tip_edges(const std::vector<SupportPoint>& polygon, const BodyPoint& centre) {
  std::vector<TipEdge> edges;
  if (polygon.size() < 3) {
    return edges;
  }
  edges.reserve(polygon.size());
  for (std::size_t corner = 0; corner < polygon.size(); ++corner) {
    edges.push_back(tip_edge({polygon[corner], polygon[(corner + 1) % polygon.size()]}, centre));
  }
  return edges;
}

std::vector<SupportPoint> support_of(const Trailer& trailer) {
  const Metres half_gauge = trailer.gauge / 2.0;
  const SupportPoint rear_right{.forward = Metres{0}, .left = -half_gauge};
  const SupportPoint rear_left{.forward = Metres{0}, .left = half_gauge};
  if (trailer.hitch_free_to_roll) {
    const Metres hitch = trailer.contact_length / 2.0 + trailer.drawbar_length;
    return {rear_right, {.forward = hitch, .left = Metres{0}}, rear_left};
  }
  return {rear_right,
          {.forward = trailer.contact_length, .left = -half_gauge},
          {.forward = trailer.contact_length, .left = half_gauge},
          rear_left};
}

}  // namespace rimehaul::rig
