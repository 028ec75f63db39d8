// Local time through the days on which clocks are changed.
#include "units/local_clock.h"

#include <doctest/doctest.h>

#include "base/require.h"

namespace rimehaul {

namespace {

using units::Instant;
using units::LocalClock;
using units::NoOneMoment;
using units::TimeOfDay;

Instant at(const char* text) {
  return *units::parse_instant(text);
}

/// Central European Time of 2026: an hour forward at 01:00Z on 29 March, back on 25 October.
LocalClock changed_twice() {
  return LocalClock{60,
                    {{.from = at("2026-03-29T01:00:00Z"), .minutes = 120},
                     {.from = at("2026-10-25T01:00:00Z"), .minutes = 60}}};
}

}  // namespace

TEST_CASE("local time follows the offset across midnight both ways") {
  const Instant late = at("2026-02-01T23:30:00Z");
  CHECK(LocalClock{}.time_of_day(late) == TimeOfDay{1410});
  CHECK(LocalClock{60}.time_of_day(late) == TimeOfDay{30});
  CHECK(LocalClock{-600}.time_of_day(Instant{0}) == TimeOfDay{14 * 60});
  CHECK(LocalClock{}.time_of_day(Instant{-60}) == TimeOfDay{1439});
  CHECK(LocalClock{}.seconds_of_day(Instant{-1}) == 86'399);
}

TEST_CASE("the offset is the new one from the very second of the change") {
  const LocalClock clock = changed_twice();
  CHECK(clock.offset_minutes(at("2026-03-29T00:59:59Z")) == 60);
  CHECK(clock.offset_minutes(at("2026-03-29T01:00:00Z")) == 120);
  CHECK(clock.time_of_day(at("2026-03-29T01:00:00Z")) == TimeOfDay{180});
  CHECK(clock.offset_minutes(at("2026-10-25T00:59:59Z")) == 120);
  CHECK(clock.offset_minutes(at("2026-10-25T01:00:00Z")) == 60);
  CHECK(clock.put_forward(at("2026-03-29T00:00:00Z"), at("2026-03-29T02:00:00Z")) ==
        units::Seconds{3600});
  CHECK(clock.put_forward(at("2026-10-25T00:00:00Z"), at("2026-10-25T02:00:00Z")) ==
        units::Seconds{-3600});
}

TEST_CASE("the days of the change have 23 and 25 hours") {
  const LocalClock clock = changed_twice();
  const auto length_h = [&](const char* noon) {
    return clock.next_day_begins(at(noon)).since(clock.day_begins(at(noon))).value() / 3600;
  };
  CHECK(length_h("2026-03-28T12:00:00Z") == 24);
  CHECK(length_h("2026-03-29T12:00:00Z") == 23);
  CHECK(length_h("2026-10-25T12:00:00Z") == 25);
  CHECK(clock.day_begins(at("2026-03-29T12:00:00Z")) == at("2026-03-28T23:00:00Z"));
  CHECK(clock.day_begins(at("2026-10-25T23:30:00Z")) == at("2026-10-25T23:00:00Z"));
}

TEST_CASE("a time of day that is skipped or comes twice is told as such") {
  const LocalClock clock = changed_twice();
  const Instant spring = at("2026-03-29T12:00:00Z");
  CHECK(std::get<NoOneMoment>(clock.on_day_of(spring, {150})) == NoOneMoment::never);
  CHECK(std::get<NoOneMoment>(clock.on_day_of(spring, {120})) == NoOneMoment::never);
  CHECK(std::get<Instant>(clock.on_day_of(spring, {180})) == at("2026-03-29T01:00:00Z"));
  CHECK(std::get<Instant>(clock.on_day_of(spring, {119})) == at("2026-03-29T00:59:00Z"));
  CHECK(std::get<Instant>(clock.on_day_of(spring, {1440})) == at("2026-03-29T22:00:00Z"));
  const Instant autumn = at("2026-10-25T12:00:00Z");
  CHECK(std::get<NoOneMoment>(clock.on_day_of(autumn, {150})) == NoOneMoment::twice);
  CHECK(std::get<Instant>(clock.on_day_of(autumn, {180})) == at("2026-10-25T02:00:00Z"));
  CHECK(std::get<Instant>(LocalClock{-600}.on_day_of(at("2026-02-01T08:00:00Z"), {0})) ==
        at("2026-01-31T10:00:00Z"));
}

TEST_CASE("where midnight itself is skipped the day begins with what follows") {
  const LocalClock clock{-180, {{.from = at("2026-04-05T03:00:00Z"), .minutes = -120}}};
  CHECK(clock.day_begins(at("2026-04-05T12:00:00Z")) == at("2026-04-05T03:00:00Z"));
  CHECK(clock.time_of_day(at("2026-04-05T03:00:00Z")) == TimeOfDay{60});
  CHECK(clock.next_day_begins(at("2026-04-04T12:00:00Z")) == at("2026-04-05T03:00:00Z"));
}

TEST_CASE("changes are told from after one moment up to another") {
  const LocalClock clock = changed_twice();
  const Instant change = at("2026-03-29T01:00:00Z");
  CHECK(clock.changes_between(at("2026-01-01T00:00:00Z"), change) == std::vector{change});
  CHECK(clock.changes_between(change, at("2026-10-24T00:00:00Z")).empty());
  CHECK_THROWS_AS((LocalClock{0, {{.from = {10}, .minutes = 1}, {.from = {5}, .minutes = 2}}}),
                  base::OurFault);
}

}  // namespace rimehaul
