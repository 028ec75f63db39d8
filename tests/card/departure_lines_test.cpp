// What is told of hours is never more than what is open.
#include "card/departure_lines.h"

#include <doctest/doctest.h>

namespace rimehaul::card {

namespace {

using units::Instant;
using units::Period;
using units::Seconds;
using units::TimeSpans;

/// At the site, ten hours west of Greenwich.
Instant local(const char* time) {
  return *units::parse_instant(std::string{"2026-02-01T"} + time + "-10:00");
}

day::Departures departures(std::vector<Period> windows) {
  return {.hours = {local("08:00:00"), local("23:59:59")},
          .late = Seconds{900},
          .out = TimeSpans{std::move(windows)}};
}

const units::LocalClock kClock{-600};

std::string hours(const day::Departures& all, Instant depart) {
  return departure_lines({all, depart, kClock}).front().text;
}

constexpr const char* kEnd = "; up to 15 min late allowed for; trips over by 23:59 looked at";

}  // namespace

TEST_CASE("the end of the window one is in is the last safe departure, then come the others") {
  const day::Departures all = departures({{local("08:00:00"), local("10:40:59")},
                                          {local("17:19:01"), local("19:00:00")},
                                          {local("20:00:00"), local("21:00:00")}});
  CHECK(hours(all, local("08:30:00")) ==
        std::string{"last safe departure 10:40; again from 17:20 to 19:00, 20:00 to 21:00"} + kEnd);
  CHECK(hours(all, local("18:00:00")) ==
        std::string{"last safe departure 19:00; again from 20:00 to 21:00"} + kEnd);
  CHECK(hours(all, local("20:30:00")) == std::string{"last safe departure 21:00"} + kEnd);
}

TEST_CASE("a departure in no window says so, and when it is open later") {
  const day::Departures all =
      departures({{local("08:00:00"), local("10:40:59")}, {local("17:19:01"), local("19:00:00")}});
  CHECK(hours(all, local("12:00:00")) ==
        std::string{"not this departure; open from 17:20 to 19:00"} + kEnd);
  CHECK(hours(all, local("19:00:01")) == std::string{"no departure from now on is open"} + kEnd);
  CHECK(hours(departures({}), local("08:00:00")) ==
        std::string{"no departure from now on is open"} + kEnd);
}

TEST_CASE("a window that holds no whole minute is not told by minutes") {
  const day::Departures all = departures({{local("17:19:01"), local("17:19:59")}});
  CHECK(hours(all, local("12:00:00")) == std::string{"no departure from now on is open"} + kEnd);
}

TEST_CASE("no delay is told as none, and the way back in its own line") {
  day::Departures all = departures({{local("08:00:00"), local("10:40:00")}});
  all.late = Seconds{0};
  all.turn_round = Seconds{1800};
  all.back = TimeSpans{{{local("09:00:00"), local("11:10:00")}}};
  const auto lines = departure_lines({all, local("08:00:00"), kClock});
  REQUIRE(lines.size() == 2);
  CHECK(lines[0].text ==
        "last safe departure 10:40; no delay allowed for; trips over by 23:59 looked at");
  CHECK(lines[1].label == "Way back");
  CHECK(lines[1].text == "set out from 09:00 to 11:10, 30 min after arriving or later");
  all.back = TimeSpans{};
  CHECK(departure_lines({all, local("08:00:00"), kClock})[1].text ==
        "none is open with its load, or none in time");
  // The hours are then those from which both can be driven: a way out alone may be open.
  CHECK(departure_lines({all, local("12:00:00"), kClock})[0].text.starts_with(
      "no departure from now on is open there and back"));
  all.out = TimeSpans{{{local("17:20:00"), local("19:00:00")}}};
  CHECK(departure_lines({all, local("12:00:00"), kClock})[0].text.starts_with(
      "not this departure there and back; open from 17:20 to 19:00"));
}

TEST_CASE("a wait is told to the minute after it ends, never to one before") {
  CHECK(wait_words({"Col Hut", local("18:40:00"), kClock}) == "wait at Col Hut until 18:40");
  CHECK(wait_words({"Col Hut", local("18:40:01"), kClock}) == "wait at Col Hut until 18:41");
}

}  // namespace rimehaul::card
