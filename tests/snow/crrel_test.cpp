// Published traction: Table A5 of CRREL Report 95-1, to its last printed digit.
#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <limits>
#include <numbers>

#include "near.h"
#include "snow/built_in_grip.h"
#include "snow/crrel.h"

namespace rimehaul::snow {

namespace {

using testing::near;
using units::Kilopascals;
using units::Newtons;
using units::SquareMetres;

// Richmond, Shoop and Blaisdell (1995), Cold Regions Mobility Models, CRREL Report 95-1, Table A5.
// Its vehicle's weight follows from its level and 30 degree resistances, R0 + W sin 30; its contact
// area is two tracks of 0.381 m by 2.667 m (value from memory).
const Newtons kWeight{104092.4};
const SquareMetres kArea{0.381 * 2.667 * 2};
constexpr double kLastDigitN = 0.05 + 1e-9;

Newtons force(Kilopascals stress) {
  return Newtons{stress.value() * 1000.0 * kArea.value()};
}

}  // namespace

TEST_CASE("the table's vehicle presses on the snow with 51.2202 kPa") {
  CHECK(near(kArea.value(), 2.032254, 5e-7));
  CHECK(near(kWeight / kArea, Kilopascals{51.2202}, Kilopascals{5e-5}));
  CHECK(near(Newtons{57631.6} - Newtons{5585.4}, kWeight * 0.5, Newtons{0.2}));
}

TEST_CASE("Table A5: traction and drawbar pull on 15 cm of undisturbed snow, level and on 30 deg") {
  const Newtons level = force(traction_on_undisturbed_snow(kWeight / kArea));
  CHECK(near(level, Newtons{44134.3}, Newtons{0.2}));
  CHECK(near(level, Newtons{44134.43}, Newtons{0.01}));
  CHECK(near(level - Newtons{5585.4}, Newtons{38548.9}, Newtons{0.2}));
  CHECK(near((level - Newtons{5585.4}) / kWeight, 0.370, 5e-4));

  const Newtons normal = kWeight * std::cos(30.0 * std::numbers::pi / 180.0);
  const Newtons steep = force(traction_on_undisturbed_snow(normal / kArea));
  CHECK(near(steep, Newtons{39207.1}, Newtons{0.2}));
  CHECK(near(steep, Newtons{39207.15}, Newtons{0.01}));
  CHECK(near(steep - Newtons{57631.6}, Newtons{-18424.5}, Newtons{0.2}));
}

TEST_CASE("Table A5: traction and drawbar pull on prepared snow over a road and over a trail") {
  const Newtons traction = force(traction_on_prepared_snow(kWeight / kArea));
  CHECK(near(traction, Newtons{29692.1}, Newtons{kLastDigitN}));
  CHECK(near(traction, Newtons{29692.09}, Newtons{0.01}));
  const Newtons on_road = kHardGroundResistance.low * kWeight;
  const Newtons on_trail = kHardGroundResistance.high * kWeight;
  CHECK(near(on_road, Newtons{3903.5}, Newtons{kLastDigitN}));
  CHECK(near(on_trail, Newtons{5464.8}, Newtons{0.06}));
  CHECK(near(traction - on_road, Newtons{25788.6}, Newtons{0.06}));
  CHECK(near(traction - on_trail, Newtons{24227.2}, Newtons{0.06}));
  CHECK(near((traction - on_road) / kWeight, 0.248, 5e-4));
  CHECK(near((traction - on_trail) / kWeight, 0.233, 5e-4));
}

TEST_CASE("Table A5: traction and drawbar pull on 12 cm of snow over ice") {
  const Newtons traction = force(traction_on_ice(kWeight / kArea));
  CHECK(near(traction, Newtons{16741.3}, Newtons{kLastDigitN}));
  CHECK(near(traction, Newtons{16741.30}, Newtons{0.01}));
  CHECK(near(traction - Newtons{5275.1}, Newtons{11466.2}, Newtons{0.06}));
  CHECK(near((traction - Newtons{5275.1}) / kWeight, 0.110, 5e-4));
}

TEST_CASE("at the pressure of light tracks the laws stay near those of the table's vehicle") {
  // Over N: 0.851 N^-0.177, 0.321 N^-0.03 and 0.127 N^0.06 (closed forms) at 4 and 10 kPa.
  const Kilopascals light{4.0};
  const Kilopascals heavy{10.0};
  CHECK(near(traction_on_undisturbed_snow(light) / light, 0.67, 0.005));
  CHECK(near(traction_on_undisturbed_snow(heavy) / heavy, 0.57, 0.005));
  CHECK(near(traction_on_prepared_snow(light) / light, 0.308, 5e-4));
  CHECK(near(traction_on_prepared_snow(heavy) / heavy, 0.300, 5e-4));
  CHECK(near(traction_on_ice(light) / light, 0.138, 5e-4));
  CHECK(near(traction_on_ice(heavy) / heavy, 0.146, 5e-4));
}

TEST_CASE("a pressure that is none has no traction: nothing, negative, unknown, without end") {
  for (const double pressure_kpa :
       {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(pressure_kpa);
    const Kilopascals pressure{pressure_kpa};
    CHECK(std::isnan(traction_on_undisturbed_snow(pressure).value()));
    CHECK(std::isnan(traction_on_prepared_snow(pressure).value()));
    CHECK(std::isnan(traction_on_ice(pressure).value()));
  }
}

}  // namespace rimehaul::snow
