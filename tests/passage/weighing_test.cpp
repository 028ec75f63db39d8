// What presses on the snow: the hitch's load and the fullest tank too, and a trailer by itself.
#include "passage/weighing.h"

#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::passage {

namespace {

constexpr snow::SnowState kFresh{snow::Wetness::dry, snow::Surface::fresh};
constexpr snow::SnowStrength kStrength{1.6, 4.37, 196.72};

snow::GripLaw measured_law() {
  snow::MeasuredGrip entry;
  entry.state = kFresh;
  entry.strength = kStrength;
  return snow::GripLaw{{entry}};
}

/// Twice the pressure of a weight on a body's own area.
units::Metres one_side(units::Kilograms mass, units::SquareMetres area, units::Metres length) {
  return snow::sinkage_of(kStrength, {.pressure = units::weight_of(mass) / area * 2.0,
                                      .width = units::Metres{area.value() / length.value()},
                                      .length = length});
}

}  // namespace

TEST_CASE("tracks sink under the hitch's load and the full tank, whatever is left in it") {
  rig::Rig rig = testing::towing_rig();
  rig.load.fuel = units::Litres{30};
  const rig::Weighed weighed = rig::weigh(rig);
  const rig::Carrier& carrier = rig.carrier;
  const units::Metres wanted =
      one_side((weighed.carrier.mass + weighed.tongue_mass) * carrier.track_weight_share,
               carrier.contact_area, carrier.contact_length);
  const auto weighings = weighings_of(measured_law(), rig);
  REQUIRE(weighings.size() == 2);
  for (const WeighedOut& weighing : weighings) {
    CHECK(testing::near(weighing.grip.row(kFresh)->side_sinkage.value(), wanted.value(), 1e-12));
  }
  CHECK(weighings[0].grip.row(kFresh)->carrier_resistance.high ==
        weighings[1].grip.row(kFresh)->carrier_resistance.high);
}

TEST_CASE("a trailer sinks by its own weight on its own runners, and closes where they are open") {
  rig::Rig rig = testing::towing_rig();
  const auto sinkage = [&rig](const snow::GripLaw& law) {
    return weighings_of(law, rig).front().grip.row(kFresh)->trailer_side_sinkage.value();
  };
  const rig::Trailer& trailer = *rig.trailer;
  CHECK(testing::near(
      sinkage(measured_law()),
      one_side(rig::weigh(rig).trailer.mass, trailer.contact_area, trailer.contact_length).value(),
      1e-12));
  CHECK(sinkage(snow::GripLaw{}) == 0.0);
  rig.trailer->contact_area = units::SquareMetres{0};
  CHECK(std::isnan(sinkage(measured_law())));
  rig.trailer.reset();
  CHECK(sinkage(measured_law()) == 0.0);
}

TEST_CASE("where what presses on the tracks besides is unknown, so are sinkage and resistance") {
  rig::Rig rig = testing::towing_rig();
  const auto row = [&rig] { return weighings_of(measured_law(), rig).front().grip.row(kFresh); };
  REQUIRE(row().has_value());
  CHECK(std::isfinite(row()->side_sinkage.value()));
  CHECK(std::isfinite(row()->carrier_resistance.high.value()));
  rig.trailer->tongue_share = std::nan("");
  REQUIRE(row().has_value());
  CHECK(std::isnan(row()->side_sinkage.value()));
  CHECK(std::isnan(row()->carrier_resistance.high.value()));
}

}  // namespace rimehaul::passage
