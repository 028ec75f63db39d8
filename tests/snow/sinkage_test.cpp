// Sinkage and compaction against published snows and the published table of a mobility report.
#include "snow/sinkage.h"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>
#include <limits>

namespace rimehaul::snow {
namespace {

using units::KilogramsPerCubicMetre;
using units::Kilopascals;
using units::Metres;

bool near(double found, double wanted, double tolerance) {
  return std::abs(found - wanted) <= tolerance;
}

/// One track of 0.5 m by 1.4 m under 700 kg.
TrackPrint one_track() {
  return {Kilopascals{700 * 9.80665 / 0.7 / 1000}, Metres{0.5}, Metres{1.4}};
}

/// Snows of the table of terrain values in Wong, Theory of Ground Vehicles (2008).
struct PublishedSnow {
  const char* name;
  SnowStrength strength;
};

const PublishedSnow kSnows[]{{"U.S.", {1.6, 4.37, 196.72}},
                             {"U.S., Harrison", {1.6, 2.49, 245.90}},
                             {"Sweden", {1.44, 10.55, 66.08}}};

}  // namespace

TEST_CASE("sinkage is the depth at which the plate's law gives the pressure back") {
  for (const PublishedSnow& snow : kSnows) {
    CAPTURE(snow.name);
    const double z = sinkage_of(snow.strength, one_track()).value();
    const double pressed =
        (snow.strength.k_c / 0.5 + snow.strength.k_phi) * std::pow(z, snow.strength.n);
    CHECK(near(pressed, 9.80665, 1e-9));
  }
}

TEST_CASE("compaction is the work of the plate's law pressed in over the length of the track") {
  for (const PublishedSnow& snow : kSnows) {
    CAPTURE(snow.name);
    // Per metre driven: the integral of b p dz from 0 to z, by Simpson's rule.
    const double z = sinkage_of(snow.strength, one_track()).value();
    constexpr int kParts = 20'000;
    double work = 0.0;
    for (int i = 0; i <= kParts; ++i) {
      const double depth = z * i / kParts;
      const double pressure =
          (snow.strength.k_c / 0.5 + snow.strength.k_phi) * std::pow(depth, snow.strength.n);
      work += (i == 0 || i == kParts ? 1 : i % 2 == 1 ? 4 : 2) * pressure;
    }
    const double resistance_n = 0.5 * 1000 * work * z / kParts / 3;
    CHECK(near(compaction_of(snow.strength, one_track()).value() * 700 * 9.80665, resistance_n,
               0.001));
  }
}

TEST_CASE("the three published snows under a light track") {
  // Worked by hand from the table's values: z, then 0.5 (k_c / 0.5 + k_phi) z^(n + 1) / (n + 1).
  const double wanted_m[]{0.149364, 0.131836, 0.219303};
  const double wanted_newton[]{281.68, 248.63, 440.70};
  for (int i = 0; i < 3; ++i) {
    CAPTURE(kSnows[i].name);
    CHECK(near(sinkage_of(kSnows[i].strength, one_track()).value(), wanted_m[i], 6e-7));
    CHECK(near(compaction_of(kSnows[i].strength, one_track()).value() * 700 * 9.80665,
               wanted_newton[i], 0.006));
  }
}

TEST_CASE("a wider plate and more pressure sink no less") {
  for (const PublishedSnow& snow : kSnows) {
    TrackPrint print = one_track();
    const Metres narrow = sinkage_of(snow.strength, print);
    print.width = Metres{1.0};
    CHECK(sinkage_of(snow.strength, print) >= narrow);
    print = one_track();
    print.pressure = print.pressure * 2.0;
    CHECK(sinkage_of(snow.strength, print) > narrow);
  }
}

TEST_CASE("new snow over firm ground: the rut depths of Table A5 of CRREL Report 95-1") {
  CHECK(near(sinkage_of({Metres{0.15}, KilogramsPerCubicMetre{200}}).value(), 0.090, 1e-12));
  CHECK(near(sinkage_of({Metres{0.12}, KilogramsPerCubicMetre{200}}).value(), 0.072, 1e-12));
}

TEST_CASE("snow that nobody weighed may sink to the ground, and firn not at all") {
  CHECK(sinkage_of({Metres{0.2}, KilogramsPerCubicMetre{0}}) == Metres{0.2});
  CHECK(sinkage_of({Metres{0.2}, KilogramsPerCubicMetre{500}}) == Metres{0});
  CHECK(sinkage_of({Metres{0.2}, KilogramsPerCubicMetre{600}}) == Metres{0});
  CHECK(sinkage_of({Metres{0}, KilogramsPerCubicMetre{100}}) == Metres{0});
}

TEST_CASE("what is no number, or out of range, gives none") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const SnowStrength us = kSnows[0].strength;
  for (const double bad : {nan, 0.0, -1.0, HUGE_VAL}) {
    CAPTURE(bad);
    CHECK(std::isnan(sinkage_of({bad, us.k_c, us.k_phi}, one_track()).value()));
    CHECK(std::isnan(sinkage_of({us.n, us.k_c, bad}, one_track()).value()));
    CHECK(std::isnan(compaction_of({us.n, us.k_c, bad}, one_track()).value()));
    for (Metres TrackPrint::*side : {&TrackPrint::width, &TrackPrint::length}) {
      TrackPrint print = one_track();
      print.*side = Metres{bad};
      CHECK(std::isnan(sinkage_of(us, print).value()));
    }
    TrackPrint print = one_track();
    print.pressure = Kilopascals{bad};
    CHECK(std::isnan(sinkage_of(us, print).value()));
  }
  for (const double bad : {nan, -1.0, HUGE_VAL}) {
    CHECK(std::isnan(sinkage_of({us.n, bad, us.k_phi}, one_track()).value()));
    CHECK(std::isnan(sinkage_of({Metres{bad}, KilogramsPerCubicMetre{100}}).value()));
  }
  CHECK(std::isnan(sinkage_of({Metres{0.1}, KilogramsPerCubicMetre{nan}}).value()));
  CHECK(std::isnan(sinkage_of({Metres{0.1}, KilogramsPerCubicMetre{-1}}).value()));
}

}  // namespace rimehaul::snow
