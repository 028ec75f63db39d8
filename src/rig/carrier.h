// The sheets of a carrier and a trailer: geometry, masses and what their makers allow.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rig/provenance.h"
#include "units/quantities.h"
#include "units/slope.h"

namespace rimehaul::rig {

/// A place on the machine, metres: forward of and to the left of the rear end of its ground contact
/// on its centre line, and up from the snow.
struct BodyPoint {
  units::Metres forward;
  units::Metres left;
  units::Metres up;
};

/// A mass and where it sits.
struct PlacedMass {
  units::Kilograms mass;
  BodyPoint at;
};

/// A steepest slope and who said so.
struct Rating {
  units::Slope steepest;
  Provenance provenance;
};

/// Maker's (or named and dated site) ratings for one way of driving. Not given is unknown: closed.
struct SlopeRatings {
  std::optional<Rating> climb;
  std::optional<Rating> descent;
  std::optional<Rating> cross;
};

/// Corner of the support polygon, seen from above.
struct SupportPoint {
  units::Metres forward;
  units::Metres left;
};

enum class CarrierKind { skis_and_tracks, twin_track };

/// What filling up has told of the fuel that was reckoned.
struct FuelLog {
  int fills = 0;
  double factor = 1.0;  ///< the next fill takes no more of what was reckoned, with 95 % confidence
};

struct Carrier {
  std::string name;
  CarrierKind kind = CarrierKind::twin_track;
  PlacedMass empty;  ///< with driver's share left out, fluids in, tank empty
  units::Kilograms driver_mass;
  BodyPoint driver_at;
  std::vector<BodyPoint> seats;       ///< of passengers
  BodyPoint bed_at;                   ///< where the bed load's centre of gravity sits
  units::Kilograms bed_rating;        ///< most on the bed
  units::Kilograms payload_rating;    ///< most in all: passengers and bed load, driver left out
  std::vector<SupportPoint> support;  ///< convex, counter-clockwise seen from above, 3 or more
  units::Metres contact_length;
  units::Metres gauge;  ///< over the outer edges
  units::Metres overall_length;
  units::Metres overall_width;
  units::SquareMetres contact_area;  ///< of the tracks: carries the weight that gives traction
  double track_weight_share = 1.0;   ///< share of the carrier's weight on driven tracks, (0, 1]
  units::Metres turning_radius;      ///< least, of the centre line
  BodyPoint hitch_at;
  units::Kilograms hitch_vertical_rating;
  units::Kilograms towed_mass_rating;
  SlopeRatings solo_empty;
  SlopeRatings solo_loaded;
  SlopeRatings towing;
  units::Watts engine_power;                ///< at the crankshaft, at the site's height
  double driveline_efficiency = 0.65;       ///< (0, 1]
  units::GramsPerKilowattHour consumption;  ///< by the fuel log, where there is one
  units::LitresPerHour idle_consumption;    ///< the same
  std::optional<FuelLog> fuel_log{};
  units::Litres tank;
  BodyPoint tank_at{};  ///< centre of the fuel
  units::KilogramsPerCubicMetre fuel_density;
  units::Newtons brake_force;  ///< hardware limit of the service brake at the snow
  units::Newtons parking_brake_force;
  units::MetresPerSecond top_speed;  ///< the site's or maker's, the lower
  Provenance provenance;
};

enum class TrailerRunning { runners, tracks };

struct Trailer {
  std::string name;
  TrailerRunning running = TrailerRunning::runners;
  PlacedMass empty;  ///< measured from the rear end of its runners
  BodyPoint bed_at;
  units::Kilograms payload_rating;
  double tongue_share = 0.1;  ///< share of its mass carried by the hitch, [0, 0.5]
  units::Metres gauge;
  units::Metres contact_length;
  units::Metres drawbar_length;  ///< hitch eye to the middle of its runners
  units::Metres overall_width;
  units::SquareMetres contact_area;
  bool hitch_free_to_roll = true;
  units::Newtons brake_force;   ///< 0: unbraked
  std::optional<Rating> climb;  ///< its own ratings, where its maker gives any
  std::optional<Rating> descent;
  std::optional<Rating> cross;
  Provenance provenance;
};

}  // namespace rimehaul::rig
