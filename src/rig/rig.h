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
};

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

/// Adds up the masses (h = sum m h / sum m, and so on for each axis).
[[nodiscard]] Weighed weigh(const Rig& rig);

/// The ratings that count for the rig as it stands: towing, else loaded, else empty.
[[nodiscard]] const SlopeRatings& ratings_in_force(const Rig& rig);

/// One edge of a support polygon and how far the centre of gravity stands inside it.
struct TipEdge {
  SupportPoint from;
  SupportPoint to;
  units::Metres inside;  ///< distance of the centre of gravity's foot from the edge; < 0: outside
  units::Slope static_tip;  ///< inside / height
};

/// All edges of the polygon around a centre of gravity.
[[nodiscard]] std::vector<TipEdge> tip_edges(const std::vector<SupportPoint>& polygon,
                                             const BodyPoint& centre);

/// The trailer's polygon: a triangle with the hitch as apex when the hitch is free to roll, else
/// the rectangle of its runners.
[[nodiscard]] std::vector<SupportPoint> support_of(const Trailer& trailer);

}  // namespace rimehaul::rig
