// Zones of the time zone database, against the C library's own reading of it.
#include "ports/date/zone_clock.h"

#include <doctest/doctest.h>

#include <cstdlib>
#include <ctime>

namespace rimehaul {

namespace {

using units::Instant;

/// The C library reads the same database by itself.
int offset_of_the_c_library(const char* zone, Instant moment) {
  ::setenv("TZ", zone, 1);
  ::tzset();
  const std::time_t seconds = moment.seconds;
  std::tm local{};
  ::localtime_r(&seconds, &local);
  ::unsetenv("TZ");
  ::tzset();
  return static_cast<int>(local.tm_gmtoff / 60);
}

}  // namespace

TEST_CASE("offsets are those of the C library, every three hours from 1975 to 2037") {
  constexpr std::int64_t kThreeHours = 10'800;
  constexpr std::int64_t k1975 = 157'766'400;
  constexpr std::int64_t k2037 = 2'114'380'800;
  for (const char* zone : {"CET", "EST5EDT", "NZ", "Etc/GMT+10"}) {
    CAPTURE(zone);
    const auto clock = ports::date::zone_clock(zone);
    REQUIRE(clock.has_value());
    ::setenv("TZ", zone, 1);
    ::tzset();
    int differing = 0;
    for (std::int64_t second = k1975; second < k2037; second += kThreeHours) {
      const std::time_t moment = second;
      std::tm local{};
      ::localtime_r(&moment, &local);
      differing += clock->offset_minutes({second}) == local.tm_gmtoff / 60 ? 0 : 1;
    }
    ::unsetenv("TZ");
    ::tzset();
    CHECK(differing == 0);
  }
}

TEST_CASE("summer time of 2026 begins and ends at the second that the C library has") {
  const auto clock = ports::date::zone_clock("CET");
  REQUIRE(clock.has_value());
  const auto changes = clock->changes_between(*units::parse_instant("2026-01-01T00:00:00Z"),
                                              *units::parse_instant("2027-01-01T00:00:00Z"));
  REQUIRE(changes.size() == 2);
  for (const Instant& change : changes) {
    for (const std::int64_t off : {-1, 0, 1}) {
      const Instant moment{change.seconds + off};
      CHECK(clock->offset_minutes(moment) == offset_of_the_c_library("CET", moment));
    }
  }
  CHECK(changes.front() == *units::parse_instant("2026-03-29T01:00:00Z"));
}

TEST_CASE("what is no zone's name is told as none, also where such a file lies elsewhere") {
  for (const char* name :
       {"", "Nowhere", "../../etc/passwd", "cet", "CET ", "posixrules", "zone.tab"}) {
    CAPTURE(name);
    CHECK_FALSE(ports::date::zone_clock(name).has_value());
  }
}

}  // namespace rimehaul
