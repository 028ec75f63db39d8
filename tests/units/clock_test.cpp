// Moments and times of day from text and back.
#include "units/clock.h"

#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

namespace rimehaul {

namespace {

using units::Instant;
using units::parse_instant;
using units::parse_time_of_day;
using units::Seconds;
using units::text_of;
using units::TimeOfDay;

}  // namespace

// 1 000 000 000 s after 1970 is 2001-09-09T01:46:40Z (POSIX time, well known). RFC 3339 section 5.8
// gives 1996-12-19T16:39:57-08:00 as the same moment as 1996-12-20T00:39:57Z.
TEST_CASE("moments are read as RFC 3339 writes them") {
  CHECK(parse_instant("1970-01-01T00:00:00Z") == Instant{0});
  CHECK(parse_instant("2001-09-09T01:46:40Z") == Instant{1'000'000'000});
  REQUIRE(parse_instant("1996-12-20T00:39:57Z").has_value());
  CHECK(parse_instant("1996-12-19T16:39:57-08:00") == parse_instant("1996-12-20T00:39:57Z"));
  CHECK(parse_instant("2026-02-01T06:30Z") == parse_instant("2026-02-01T06:30:00Z"));
  CHECK(parse_instant("2026-02-01T06:30+01:00") == parse_instant("2026-02-01T05:30:00Z"));
  CHECK(parse_instant("2024-02-29T00:00Z").has_value());
  CHECK(parse_instant("1969-12-31T23:59:59Z") == Instant{-1});
}

TEST_CASE("the time since another moment is counted in seconds, and is negative before it") {
  const Instant earlier = *parse_instant("2026-02-28T23:59:30Z");
  const Instant later = *parse_instant("2026-03-01T00:01:00Z");
  CHECK(later.since(earlier) == Seconds{90});
  CHECK(earlier.since(later) == Seconds{-90});
  CHECK(later.since(later) == Seconds{0});
}

TEST_CASE("what is not a moment is not read as one") {
  for (const char* text :
       {"", "2026-02-01", "2026-02-30T00:00Z", "2025-02-29T00:00Z", "2026-13-01T00:00Z",
        "2026-02-01T24:00Z", "2026-02-01T06:60Z", "2026-02-01T06:30:60Z", "2026-02-01T06:30",
        "2026-02-01T06:30Zx", "2026-02-01 06:30Z", "2026-2-1T06:30Z", "2026-02-01T06:30+24:00",
        "2026-02-01T06:30+0100", "+026-02-01T06:30Z"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_instant(text).has_value());
  }
}

TEST_CASE("a moment prints in UTC and reads back as itself, before 1970 too") {
  for (const std::int64_t seconds : {0LL, -1LL, 951'782'400LL, 1'000'000'000LL, 1'769'927'400LL}) {
    CHECK(parse_instant(text_of(Instant{seconds})) == Instant{seconds});
  }
  CHECK(text_of(Instant{1'000'000'000}) == "2001-09-09T01:46:40Z");
  CHECK(text_of(Instant{-1}) == "1969-12-31T23:59:59Z");
}

TEST_CASE("a while later is rounded up, never to an earlier second") {
  CHECK(after(Instant{100}, units::Seconds{0}) == Instant{100});
  CHECK(after(Instant{100}, units::Seconds{1.0}) == Instant{101});
  CHECK(after(Instant{100}, units::Seconds{1.001}) == Instant{102});
  CHECK(after(Instant{100}, units::Seconds{-1.5}) == Instant{99});
  CHECK(after(Instant{100}, units::Seconds{1e12}) == Instant{1'000'000'000'100});
  for (const double endless : {1e13, 1e300, HUGE_VAL, std::nan("")}) {
    CHECK(after(Instant{100}, units::Seconds{endless}) == Instant{1'000'000'000'100});
  }
}

TEST_CASE("times of day run from 00:00 to 24:00 and no further") {
  CHECK(parse_time_of_day("00:00") == TimeOfDay{0});
  CHECK(parse_time_of_day("06:30") == TimeOfDay{390});
  CHECK(parse_time_of_day("24:00") == TimeOfDay{1440});
  for (const char* text : {"24:01", "25:00", "6:30", "06:60", "06:3", "06-30", "06:30 ", ""}) {
    CAPTURE(text);
    CHECK_FALSE(parse_time_of_day(text).has_value());
  }
  CHECK(text_of(TimeOfDay{390}) == "06:30");
  CHECK(text_of(TimeOfDay{1440}) == "24:00");
}

}  // namespace rimehaul
