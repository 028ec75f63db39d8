// The sun's place against the worked example of a published algorithm.
#include "snow/sun.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "near.h"

namespace rimehaul::snow {

namespace {

using testing::near;

units::Instant at(const char* text) {
  return *units::parse_instant(text);
}

/// Reda and Andreas (2004), NREL/TP-560-34302, worked example: Golden, 2003-10-17.
constexpr geo::GlobePoint kExample{39.742476, -105.1786};
constexpr BendingAir kExampleAir{.pressure_hpa = 820, .temperature = units::Celsius{11}};

}  // namespace

TEST_CASE("the sun stands where the published example has it, to 0.01 deg") {
  const SunPosition sun = sun_at(kExample, at("2003-10-17T19:30:30Z"), kExampleAir);
  CHECK(near(sun.zenith_deg, 50.127954, 0.01));
  CHECK(near(sun.apparent_zenith_deg, 50.111622, 0.01));
  CHECK(near(sun.true_azimuth_deg, 194.340241, 0.01));
  // Refraction alone, the last printed digits.
  CHECK(near(sun.zenith_deg - sun.apparent_zenith_deg, 0.016332, 2e-6));
}

TEST_CASE("at the published sunrise and sunset the disc's edge is on the horizon, to 0.02 deg") {
  constexpr double kSet = 90.0 + 0.5667 + 0.26667;
  CHECK(near(sun_at(kExample, at("2003-10-17T13:12:43Z")).zenith_deg, kSet, 0.02));
  // It is worked out for the day in UT, whose sunset is that of the evening before.
  CHECK(near(sun_at(kExample, at("2003-10-17T00:20:19Z")).zenith_deg, kSet, 0.02));
}

TEST_CASE("under the horizon the air lifts nothing, and no place has no sun") {
  const SunPosition midnight = sun_at(kExample, at("2003-10-17T07:00:00Z"));
  CHECK(midnight.zenith_deg > 120.0);
  CHECK(midnight.apparent_zenith_deg == midnight.zenith_deg);
  const SunPosition nowhere =
      sun_at({std::numeric_limits<double>::quiet_NaN(), 0.0}, at("2003-10-17T07:00:00Z"));
  CHECK(std::isnan(nowhere.zenith_deg));
}

}  // namespace rimehaul::snow
