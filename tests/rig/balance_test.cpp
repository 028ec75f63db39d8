// Weighing a rig out: masses, balance and the ratings that a load brings into force.
#include <doctest/doctest.h>

#include <cmath>

#include "base/require.h"
#include "near.h"
#include "rig/rig.h"

namespace rimehaul::rig {

namespace {

using testing::near;
using units::Kilograms;
using units::Litres;
using units::Metres;

BodyPoint at(double forward_m, double left_m, double up_m) {
  return {Metres{forward_m}, Metres{left_m}, Metres{up_m}};
}

/// 450 kg at 0.55 m, bed at 1.1 m, a driver without mass: the load example of a rigid machine.
Rig plain_rig() {
  Rig rig;
  rig.name = "plain";
  rig.carrier.empty = {Kilograms{450}, at(0.9, 0, 0.55)};
  rig.carrier.driver_at = at(0.9, 0, 1.0);
  rig.carrier.bed_at = at(0.3, 0, 1.1);
  rig.carrier.tank_at = at(0.5, 0.2, 0.6);
  rig.carrier.fuel_density = units::KilogramsPerCubicMetre{741};
  rig.carrier.seats = {at(0.6, 0.3, 1.0), at(0.2, -0.3, 1.3)};
  return rig;
}

Trailer plain_trailer() {
  Trailer trailer;
  trailer.empty = {Kilograms{100}, at(0.8, 0, 0.3)};
  trailer.bed_at = at(1.0, 0, 0.6);
  trailer.tongue_share = 0.12;
  return trailer;
}

}  // namespace

TEST_CASE("150 kg on the bed raises the centre of gravity from 0.55 m to 0.6875 m") {
  Rig rig = plain_rig();
  CHECK(near(weigh(rig).carrier.centre.up, Metres{0.55}, Metres{1e-12}));
  rig.load.bed = Kilograms{150};
  const Weighed weighed = weigh(rig);
  // h = (450 * 0.55 + 150 * 1.1) / 600 = 0.6875 (sum of moments over sum of masses, closed form).
  CHECK(near(weighed.carrier.mass, Kilograms{600}, Kilograms{1e-9}));
  CHECK(near(weighed.carrier.centre.up, Metres{0.6875}, Metres{1e-12}));
  CHECK(near(weighed.carrier.centre.forward, Metres{(450 * 0.9 + 150 * 0.3) / 600}, Metres{1e-12}));
  CHECK(weighed.payload == Kilograms{150});
}

TEST_CASE("driver and fuel count where they sit, and neither is payload") {
  Rig rig = plain_rig();
  rig.carrier.driver_mass = Kilograms{100};
  rig.load.fuel = Litres{40};
  const Weighed weighed = weigh(rig);
  const double fuel_kg = 40.0 / 1000.0 * 741.0;
  const double mass_kg = 450 + 100 + fuel_kg;
  CHECK(near(weighed.carrier.mass, Kilograms{mass_kg}, Kilograms{1e-9}));
  CHECK(near(weighed.carrier.centre.left, Metres{fuel_kg * 0.2 / mass_kg}, Metres{1e-12}));
  CHECK(near(weighed.carrier.centre.up, Metres{(450 * 0.55 + 100 * 1.0 + fuel_kg * 0.6) / mass_kg},
             Metres{1e-12}));
  CHECK(weighed.payload == Kilograms{0});
}

TEST_CASE("passengers take the seats in the order of the sheet") {
  Rig rig = plain_rig();
  rig.load.passengers = 1;
  rig.load.passenger_mass = Kilograms{90};
  CHECK(near(weigh(rig).carrier.centre.left, Metres{90 * 0.3 / 540}, Metres{1e-12}));
  rig.load.passengers = 2;
  CHECK(near(weigh(rig).carrier.centre.left, Metres{0}, Metres{1e-12}));
  CHECK(weigh(rig).payload == Kilograms{180});
}

TEST_CASE("a passenger without a seat is reckoned on the highest seat, or by the driver") {
  Rig rig = plain_rig();
  rig.load.passengers = 3;
  const double three_up_m = (450 * 0.55 + 90 * 1.0 + 90 * 1.3 + 90 * 1.3) / 720;
  CHECK(near(weigh(rig).carrier.centre.up, Metres{three_up_m}, Metres{1e-12}));
  rig.carrier.seats.clear();
  rig.load.passengers = 1;
  CHECK(near(weigh(rig).carrier.centre.up, Metres{(450 * 0.55 + 90 * 1.0) / 540}, Metres{1e-12}));
}

TEST_CASE("a rig without a trailer weighs nothing behind its hitch") {
  Rig rig = plain_rig();
  rig.load.towed = Kilograms{300};
  CHECK(weigh(rig).trailer.mass == Kilograms{0});
  CHECK(weigh(rig).tongue_mass == Kilograms{0});
  CHECK(weigh(rig).total() == Kilograms{450});
}

TEST_CASE("the trailer is weighed by itself and lays its tongue share on the hitch") {
  Rig rig = plain_rig();
  rig.trailer = plain_trailer();
  rig.load.towed = Kilograms{300};
  const Weighed weighed = weigh(rig);
  CHECK(near(weighed.trailer.mass, Kilograms{400}, Kilograms{1e-9}));
  CHECK(near(weighed.trailer.centre.up, Metres{(100 * 0.3 + 300 * 0.6) / 400}, Metres{1e-12}));
  CHECK(near(weighed.tongue_mass, Kilograms{48}, Kilograms{1e-9}));
  CHECK(near(weighed.carrier.mass, Kilograms{450}, Kilograms{1e-9}));
  CHECK(near(weighed.total(), Kilograms{850}, Kilograms{1e-9}));
}

TEST_CASE("an unknown mass leaves an unknown balance, so that nothing passes on it") {
  Rig rig = plain_rig();
  rig.load.bed = Kilograms{std::nan("")};
  const Weighed weighed = weigh(rig);
  CHECK(std::isnan(weighed.carrier.mass.value()));
  CHECK(std::isnan(weighed.carrier.centre.up.value()));
  CHECK(std::isnan(weighed.payload.value()));
}

TEST_CASE("fewer than no passengers is a fault of the program") {
  Rig rig = plain_rig();
  rig.load.passengers = -1;
  CHECK_THROWS_AS((void)weigh(rig), base::OurFault);
}

TEST_CASE("ratings: towing with a trailer, loaded with anything aboard, empty only when proven") {
  Rig rig = plain_rig();
  CHECK(&ratings_in_force(rig) == &rig.carrier.solo_empty);
  rig.load.fuel = Litres{40};
  CHECK(&ratings_in_force(rig) == &rig.carrier.solo_empty);
  rig.load.passengers = 1;
  CHECK(&ratings_in_force(rig) == &rig.carrier.solo_loaded);
  rig.load.passengers = 0;
  rig.load.bed = Kilograms{0.001};
  CHECK(&ratings_in_force(rig) == &rig.carrier.solo_loaded);
  rig.load.bed = Kilograms{std::nan("")};
  CHECK(&ratings_in_force(rig) == &rig.carrier.solo_loaded);
  rig.load.bed = Kilograms{0};
  rig.trailer = plain_trailer();
  CHECK(&ratings_in_force(rig) == &rig.carrier.towing);
}

TEST_CASE("without its cargo a rig keeps passengers and fuel, and weighs so much less") {
  Rig rig = plain_rig();
  rig.trailer = plain_trailer();
  rig.load = {.bed = Kilograms{150},
              .towed = Kilograms{300},
              .passengers = 2,
              .passenger_mass = Kilograms{95},
              .fuel = Litres{40}};
  const Rig bare = without_cargo(rig);
  CHECK(bare.load == Load{.bed = Kilograms{0},
                          .towed = Kilograms{0},
                          .passengers = 2,
                          .passenger_mass = Kilograms{95},
                          .fuel = Litres{40}});
  CHECK(bare.trailer.has_value());
  CHECK(near(weigh(rig).total() - weigh(bare).total(), Kilograms{450}, Kilograms{1e-9}));
  CHECK(near(weigh(bare).trailer.mass, Kilograms{100}, Kilograms{1e-12}));
}

TEST_CASE("a trailer left behind stays with its load, and the bed keeps its own") {
  Rig rig = plain_rig();
  rig.trailer = plain_trailer();
  rig.load.bed = Kilograms{150};
  rig.load.towed = Kilograms{300};
  const Rig alone = without_trailer(rig);
  CHECK_FALSE(alone.trailer.has_value());
  CHECK(alone.load.towed == Kilograms{0});
  CHECK(alone.load.bed == Kilograms{150});
  CHECK(near(weigh(alone).total(), Kilograms{600}, Kilograms{1e-9}));
  CHECK(&ratings_in_force(alone) == &alone.carrier.solo_loaded);
}

TEST_CASE("two loads are the same only when nothing about them differs") {
  const Load load{.bed = Kilograms{150},
                  .towed = Kilograms{300},
                  .passengers = 2,
                  .passenger_mass = Kilograms{95},
                  .fuel = Litres{40}};
  const auto but = [&](auto change) {
    Load other = load;
    change(other);
    return other;
  };
  CHECK(load == but([](Load&) {}));
  CHECK(load != but([](Load& other) { other.bed = Kilograms{151}; }));
  CHECK(load != but([](Load& other) { other.towed = Kilograms{301}; }));
  CHECK(load != but([](Load& other) { other.passengers = 1; }));
  CHECK(load != but([](Load& other) { other.passenger_mass = Kilograms{90}; }));
  CHECK(load != but([](Load& other) { other.fuel = Litres{39}; }));
  // What nobody knows is the same as nothing.
  CHECK(load != but([](Load& other) { other.bed = Kilograms{std::nan("")}; }));
}

}  // namespace rimehaul::rig
