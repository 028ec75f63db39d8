// Melt and loss against published factors and values worked by hand.
#include "snow/melt.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "near.h"

namespace rimehaul::snow {

namespace {

using testing::near;
using units::Celsius;
using units::Oktas;
using units::Percent;
using units::WattsPerSquareMetre;

double frozen_mm(double air_c, double cloud) {
  return melted_by(radiated({Celsius{air_c}, Percent{60}, Oktas{cloud}})).value();
}

}  // namespace

TEST_CASE("the fitted index melts what Pellicciotti et al. (2005) have, worked by hand") {
  // 0.05 x 6 + 0.0094 x 0.4 x 700 = 2.932; with an albedo of 0.7: 0.15 + 1.41 = 1.56.
  CHECK(near(melt_by(kFittedMelt, Celsius{6}, WattsPerSquareMetre{700}).value(), 2.932, 1e-12));
  MeltFactors fresh = kFittedMelt;
  fresh.albedo = 0.7;
  CHECK(near(melt_by(fresh, Celsius{3}, WattsPerSquareMetre{500}).value(), 1.56, 1e-12));
}

TEST_CASE("every factor that softening is reckoned with melts more than the fitted one") {
  CHECK(kMostMelt.per_kelvin >= 1.56 * kFittedMelt.per_kelvin - 1e-12);
  CHECK(kMostMelt.per_watt >= 1.06 * kFittedMelt.per_watt);
  CHECK(kMostMelt.albedo < kFittedMelt.albedo);
  // A watt and an hour: 3600 / 334 000.
  CHECK(near(melted_by(WattsPerSquareMetre{1}).value(), 0.010778, 5e-7));
}

TEST_CASE("air under the melting point takes nothing from what the sun melts") {
  CHECK(melt_by(kMostMelt, Celsius{-20}, WattsPerSquareMetre{100}) ==
        melt_by(kMostMelt, Celsius{0}, WattsPerSquareMetre{100}));
  CHECK(near(melt_by(kFittedMelt, Celsius{0.5}, WattsPerSquareMetre{0}).value(), 0.025, 1e-12));
  CHECK(std::isnan(melt_by(kMostMelt, Celsius{std::nan("")}, WattsPerSquareMetre{100}).value()));
}

TEST_CASE("a clear night freezes 1.1 mm an hour at 0 deg C and 0.93 at 3, an overcast one 0.18") {
  // Brutsaert (1975) with 60 % humidity. The vapour pressure's formula moves the third digit.
  CHECK(near(frozen_mm(0, 0), 1.101, 0.003));
  CHECK(near(frozen_mm(0, 8), 0.176, 0.003));
  CHECK(near(frozen_mm(3, 0), 0.932, 0.003));
}

TEST_CASE("the warmer, the damper and the cloudier, the less the snow loses") {
  const auto loss = [](double air_c, double humidity, double cloud) {
    return radiated({Celsius{air_c}, Percent{humidity}, Oktas{cloud}}).value();
  };
  CHECK(loss(-5, 60, 2) > loss(-4, 60, 2));
  CHECK(loss(-5, 60, 2) > loss(-5, 80, 2));
  CHECK(loss(-5, 60, 2) > loss(-5, 60, 3));
  CHECK(loss(25, 100, 8) < 0.0);
  CHECK(std::isnan(loss(std::nan(""), 60, 2)));
}

}  // namespace rimehaul::snow
