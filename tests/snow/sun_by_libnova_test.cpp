// The sun's place against libnova, all over the globe. Without libnova-dev this fails and says so.
#include <doctest/doctest.h>

#include "snow/sun.h"

#if __has_include(<libnova/solar.h>)

#include <libnova/precession.h>
#include <libnova/solar.h>
#include <libnova/transform.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace rimehaul::snow {

TEST_CASE("all over the globe and two centuries the sun stands where libnova has it") {
  double worst_zenith = 0.0;
  double worst_aside = 0.0;
  int compared = 0;
  for (double latitude = -85; latitude <= 85; latitude += 17) {
    for (double longitude = -180; longitude < 180; longitude += 45) {
      // 37 days, 5 hours and 7 minutes, so that all hours and seasons come up: 1951 to 2050.
      for (std::int64_t when = -600'000'000; when < 2'550'000'000; when += 3'215'220) {
        const double day = 2440587.5 + static_cast<double>(when) / 86'400.0;
        ln_equ_posn sky{};
        ln_get_solar_equ_coords(day + 69.0 / 86'400.0, &sky);
        // It gives them for the equinox of 2000.
        ln_equ_posn then{};
        ln_get_equ_prec(&sky, day, &then);
        ln_lnlat_posn observer{.lng = longitude, .lat = latitude};
        ln_hrz_posn wanted{};
        ln_get_hrz_from_equ(&then, &observer, day, &wanted);
        const SunPosition found = sun_at({latitude, longitude}, {when});
        const double parallax =
            8.794 / 3600.0 * std::sin(found.zenith_deg * std::numbers::pi / 180);
        worst_zenith =
            std::max(worst_zenith, std::abs(found.zenith_deg - parallax - (90.0 - wanted.alt)));
        // libnova counts azimuths from the south.
        const double turned = std::remainder(found.true_azimuth_deg - wanted.az - 180.0, 360.0);
        worst_aside = std::max(
            worst_aside, std::abs(turned) * std::sin(found.zenith_deg * std::numbers::pi / 180.0));
        ++compared;
      }
    }
  }
  CHECK(compared > 80'000);
  CHECK(worst_zenith <= 0.015);
  CHECK(worst_aside <= 0.015);
}

}  // namespace rimehaul::snow

#else

TEST_CASE("the sun's place is held against libnova") {
  FAIL("libnova-dev is missing: bash .ci/install test");
}

#endif
