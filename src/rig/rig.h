// One rig: a carrier, its trailer or none, its load and its driver's level, and how that balances.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rig/carrier.h"

namespace rimehaul::rig {

/// What is put on the rig today.
struct Load {
  units::Kilograms bed;
  units::Kilograms towed;
  int passengers = 0;
  units::Kilograms passenger_mass{90};  ///< each, with gear; the site's rule
  units::Litres fuel;

  friend bool operator==(const Load&, const Load&) = default;
};

/// A rig as it stands: sheets plus today's load.
struct Rig {
  std::string name;
  Carrier carrier;
  std::optional<Trailer> trailer;
  std::string driver_level;
  Load load;
  bool accompanied = false;  ///< a second rig or a second trained person goes with it
};

/// The same rig with its beds empty; passengers and fuel stay.
[[nodiscard]] Rig without_cargo(Rig rig);
/// The same carrier and what is on it, the trailer and what that carries left behind.
[[nodiscard]] Rig without_trailer(Rig rig);

/// What the masses of one body add up to.
struct Balance {
  units::Kilograms mass;
  BodyPoint centre;  ///< centre of gravity
};

/// A rig weighed out: everything the checks need of masses and balance.
struct Weighed {
  Balance carrier;  ///< with driver, passengers, bed load and fuel; hitch load left out
  Balance trailer;  ///< mass 0 without one
  units::Kilograms tongue_mass;  ///< carried by the hitch on level ground
  units::Kilograms payload;      ///< passengers and bed load

  [[nodiscard]] units::Kilograms total() const { return carrier.mass + trailer.mass; }
};

/// Adds up the masses (h = sum m h / sum m, and so on for each axis). Passengers take the seats in
/// the order of the sheet; any beyond the last seat are reckoned on the highest one, and the seats
/// check refuses them. Requires passengers >= 0. A mass of NaN makes its body's balance NaN.
[[nodiscard]] Weighed weigh(const Rig& rig);

/// The ratings that count for the rig as it stands: towing with a trailer, else loaded with any
/// passenger or bed load, else empty. What cannot be proven empty is loaded.
[[nodiscard]] const SlopeRatings& ratings_in_force(const Rig& rig);

/// A level direction on the machine: the parts of a unit vector.
struct BodyDirection {
  double forward = 0.0;
  double left = 0.0;
};

/// One edge of a support polygon and how far the centre of gravity stands inside it. The rig tips
/// over the edge where the part of the ground's tangent along the edge's outward normal exceeds
/// static_tip: on ground that only falls away sideways, tan(tip angle) = static_tip /
/// |normal.left|, which is the half-width of the polygon abreast of the centre of gravity over its
/// height.
struct TipEdge {
  SupportPoint from;
  SupportPoint to;
  BodyDirection outward;  ///< normal of the edge, away from the polygon
  units::Metres inside;   ///< distance of the centre of gravity's foot from the edge; < 0: outside
  units::Slope static_tip;  ///< inside / height; NaN when the height is not above 0
};

/// All edges of a convex, counter-clockwise polygon around a centre of gravity. A polygon of fewer
/// than three corners has none; an edge without length has NaN for its numbers.
[[nodiscard]] std::vector<TipEdge> tip_edges(const std::vector<SupportPoint>& polygon,
                                             const BodyPoint& centre);

/// The trailer's polygon: when the hitch is free to roll, a triangle of the hitch and the rear ends
/// of its runners (it lies within the hull of hitch and runners, so it never flatters), else the
/// rectangle of its runners.
[[nodiscard]] std::vector<SupportPoint> support_of(const Trailer& trailer);

}  // namespace rimehaul::rig
