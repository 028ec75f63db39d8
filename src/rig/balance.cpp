// Weighs a rig out: masses, their moments on each axis, and the ratings that the load brings in.
#include <algorithm>
#include <cstddef>

#include "base/require.h"
#include "rig/rig.h"

namespace rimehaul::rig {

namespace {

/// Sum of masses and of their moments.
class Scale {
 public:
  void put(PlacedMass placed) {
    mass_ += placed.mass;
    const double mass_kg = placed.mass.value();
    moment_.forward += placed.at.forward * mass_kg;
    moment_.left += placed.at.left * mass_kg;
    moment_.up += placed.at.up * mass_kg;
  }

  [[nodiscard]] Balance balance() const {
    const double mass_kg = mass_.value();
    return {.mass = mass_,
            .centre = {.forward = moment_.forward / mass_kg,
                       .left = moment_.left / mass_kg,
                       .up = moment_.up / mass_kg}};
  }

 private:
  units::Kilograms mass_;
  BodyPoint moment_{};  // metres times kilograms
};

BodyPoint seat_of(const Carrier& carrier, std::size_t passenger) {
  if (passenger < carrier.seats.size()) {
    return carrier.seats[passenger];
  }
  const auto highest = std::ranges::max_element(carrier.seats, {}, &BodyPoint::up);
  return highest != carrier.seats.end() ? *highest : carrier.driver_at;
}

units::Kilograms fuel_mass(const Rig& rig) {
  constexpr double kLitresPerCubicMetre = 1000.0;
  return units::Kilograms{rig.load.fuel.value() / kLitresPerCubicMetre *
                          rig.carrier.fuel_density.value()};
}

Balance weigh_carrier(const Rig& rig) {
  Scale scale;
  scale.put(rig.carrier.empty);
  scale.put({rig.carrier.driver_mass, rig.carrier.driver_at});
  for (int passenger = 0; passenger < rig.load.passengers; ++passenger) {
    const auto seat = static_cast<std::size_t>(passenger);
    scale.put({rig.load.passenger_mass, seat_of(rig.carrier, seat)});
  }
  scale.put({rig.load.bed, rig.carrier.bed_at});
  scale.put({fuel_mass(rig), rig.carrier.tank_at});
  return scale.balance();
}

Balance weigh_trailer(const Trailer& trailer, units::Kilograms towed) {
  Scale scale;
  scale.put(trailer.empty);
  scale.put({towed, trailer.bed_at});
  return scale.balance();
}

}  // namespace

Rig without_cargo(Rig rig) {
  rig.load.bed = units::Kilograms{0};
  rig.load.towed = units::Kilograms{0};
  return rig;
}

Rig without_trailer(Rig rig) {
  rig.trailer.reset();
  rig.load.towed = units::Kilograms{0};
  return rig;
}

Weighed weigh(const Rig& rig) {
  base::require(rig.load.passengers >= 0, "a rig carries no fewer than 0 passengers");
  Weighed weighed{
      .carrier = weigh_carrier(rig),
      .trailer = {},
      .tongue_mass = {},
      .payload = rig.load.bed + rig.load.passenger_mass * static_cast<double>(rig.load.passengers)};
  if (rig.trailer) {
    weighed.trailer = weigh_trailer(*rig.trailer, rig.load.towed);
    weighed.tongue_mass = weighed.trailer.mass * rig.trailer->tongue_share;
  }
  return weighed;
}

const SlopeRatings& ratings_in_force(const Rig& rig) {
  if (rig.trailer) {
    return rig.carrier.towing;
  }
  const bool proven_empty = rig.load.passengers == 0 && rig.load.bed == units::Kilograms{0};
  return proven_empty ? rig.carrier.solo_empty : rig.carrier.solo_loaded;
}

}  // namespace rimehaul::rig
