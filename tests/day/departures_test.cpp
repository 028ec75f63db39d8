// Windows on real ground against setting out at one hour after the other.
#include "day/departures.h"

#include <doctest/doctest.h>

#include "passage/demo_scene.h"
#include "passage/remembering_judge.h"
#include "passage/turning_snow.h"
#include "search/timed_case.h"

namespace rimehaul::day {

namespace {

using testing::TurningSnow;
using trails::LegId;
using units::Instant;
using units::Period;
using units::Seconds;
using units::TimeSpans;

const Instant kMorning = testing::mid_morning();

Instant after_minutes(std::int64_t minutes) {
  return {kMorning.seconds + 60 * minutes};
}

/// From the first to the second station, with snow that is slush for an hour.
struct Day {
  passage::Scene scene = testing::scene_of({.ground = testing::rolling()}, testing::two_ways());
  rig::Rig rig = testing::solo_rig();
  TurningSnow snow{testing::plain_weather(), {after_minutes(60), after_minutes(120)}};
  passage::Judge judge{scene, rig, snow};
  passage::GroundMemory ground;
  passage::RememberingJudge remembering{judge, ground};
  Trip trip = Stops{{0, 1}};
  std::optional<Instant> arrive_by;
  Period hours{kMorning, after_minutes(240)};

  Day() {
    // In the afternoon nobody of this level drives.
    scene.rules.driver_levels[0].hours = trails::OpenHours{{8 * 60}, {12 * 60 + 40}};
  }
  Day(const Day&) = delete;
  Day& operator=(const Day&) = delete;

  [[nodiscard]] Departures departures(Seconds late, const std::optional<WayBack>& back = {}) {
    search::LegHours through{remembering, hours};
    return departures_of(scene.network, through,
                         {.trip = trip, .hours = hours, .late = late, .arrive_by = arrive_by},
                         back);
  }
};

/// Arrival of one way set out on at an hour, judged leg by leg; nothing where it does not hold.
std::optional<Instant> arrival(const passage::LegJudge& judge, const std::vector<LegId>& way,
                               Instant depart) {
  auto driven = search::Timekeeper{judge, depart}.drive(way, search::Permission::nobody);
  const auto* route = std::get_if<search::Route>(&driven);
  return route == nullptr ? std::nullopt : std::optional{units::after(depart, route->time)};
}

/// Whether some way holds at an hour and arrives by another.
bool some_way_holds(const passage::LegJudge& judge, const testing::AllWays& all, Instant depart,
                    Instant arrive_by) {
  return std::ranges::any_of(all.ways, [&](const std::vector<LegId>& way) {
    const auto arrived = arrival(judge, way, depart);
    return arrived.has_value() && *arrived <= arrive_by;
  });
}

}  // namespace

TEST_CASE("windows are the hours at which some way holds, one hour tried after the other") {
  Day day;
  const Departures found = day.departures(Seconds{0});
  const testing::AllWays all{day.scene.network, *day.scene.network.junction_of(0),
                             *day.scene.network.junction_of(1)};
  std::size_t changes = 0;
  bool before = found.out.contains(kMorning);
  for (std::int64_t minute = 0; minute < 240; minute += 2) {
    CAPTURE(minute);
    const Instant depart = after_minutes(minute);
    const bool open = some_way_holds(day.remembering, all, depart, day.hours.to);
    CHECK(found.out.contains(depart) == open);
    changes += open == before ? 0 : 1;
    before = open;
  }
  CHECK(changes >= 3);  // it closes with the slush, opens with the frost, and closes for the day
}

TEST_CASE("a window that allows for setting out late is shorter by just that") {
  Day day;
  const Departures at_once = day.departures(Seconds{0});
  const Departures late = day.departures(Seconds{900});
  CHECK(late.out == at_once.out.lasting(900));
  CHECK_FALSE(late.out.empty());
}

TEST_CASE("there and back: out only while a heavier way back is still to be had") {
  Day day;
  rig::Rig heavier = day.rig;
  heavier.load.bed = units::Kilograms{170};
  const passage::Judge judge_back = day.judge.with_rig(heavier);
  const passage::RememberingJudge remembering_back{judge_back, day.ground};
  const Seconds turn_round{1200};
  const Departures found = day.departures(Seconds{0}, WayBack{remembering_back, turn_round});
  REQUIRE(found.back.has_value());
  const trails::Network& network = day.scene.network;
  const testing::AllWays out{network, *network.junction_of(0), *network.junction_of(1)};
  const testing::AllWays back{network, *network.junction_of(1), *network.junction_of(0)};
  std::optional<Instant> last_back;
  for (std::int64_t minute = 0; minute < 240; minute += 2) {
    CAPTURE(minute);
    const Instant depart = after_minutes(minute);
    const bool open = some_way_holds(remembering_back, back, depart, day.hours.to);
    CHECK(found.back->contains(depart) == open);
    last_back = open ? std::optional{depart} : last_back;
  }
  REQUIRE(last_back.has_value());
  // The last way back to the second lies within the two minutes after the last one tried.
  const Instant last = found.back->periods().back().to;
  CHECK(last >= *last_back);
  CHECK(last.seconds - last_back->seconds < 120);
  for (std::int64_t minute = 0; minute < 240; minute += 2) {
    CAPTURE(minute);
    const Instant depart = after_minutes(minute);
    CHECK(found.out.contains(depart) ==
          some_way_holds(day.remembering, out, depart, {last.seconds - 1200}));
  }
}

TEST_CASE("the windows of one trail are the hours at which it holds, out and back the same way") {
  Day day;
  const std::vector<LegId> out = trails::legs_along(day.scene.network, 0, trails::Way::as_drawn);
  const std::vector<LegId> in = trails::legs_along(day.scene.network, 0, trails::Way::against);
  REQUIRE(out.size() > 1);
  day.trip = search::FixedWay{out};
  const Departures alone = day.departures(Seconds{0});
  const Seconds turn_round{1200};
  const Departures both = day.departures(Seconds{0}, WayBack{day.remembering, turn_round});
  REQUIRE(both.back.has_value());
  REQUIRE_FALSE(both.back->empty());
  const Instant last = both.back->periods().back().to;
  std::size_t changes = 0;
  for (std::int64_t minute = 0; minute < 240; ++minute) {
    CAPTURE(minute);
    const Instant depart = after_minutes(minute);
    const auto arrived = arrival(day.remembering, out, depart);
    const bool open = arrived.has_value() && *arrived <= day.hours.to;
    CHECK(alone.out.contains(depart) == open);
    CHECK(both.out.contains(depart) == (open && arrived->seconds <= last.seconds - 1200));
    const auto home = arrival(day.remembering, in, depart);
    CHECK(both.back->contains(depart) == (home.has_value() && *home <= day.hours.to));
    changes += minute > 0 && open != alone.out.contains(after_minutes(minute - 1)) ? 1 : 0;
  }
  CHECK(changes >= 3);
  CHECK(day.departures(Seconds{900}).out == alone.out.lasting(900));
}

TEST_CASE("where no way back is open, there is none out either") {
  Day day;
  rig::Rig overloaded = day.rig;
  overloaded.load.bed = units::Kilograms{2'000};
  const passage::Judge judge_back = day.judge.with_rig(overloaded);
  const passage::RememberingJudge remembering_back{judge_back, day.ground};
  const Departures found = day.departures(Seconds{0}, WayBack{remembering_back, Seconds{0}});
  CHECK(found.back->empty());
  CHECK(found.out.empty());
}

TEST_CASE("an hour of arrival ends the windows") {
  Day day;
  const TimeSpans all_day = day.departures(Seconds{0}).out;
  day.arrive_by = after_minutes(40);
  const TimeSpans by_forty = day.departures(Seconds{0}).out;
  REQUIRE_FALSE(by_forty.empty());
  CHECK(by_forty.periods().back().to < after_minutes(40));
  CHECK(by_forty.shared_with(all_day) == by_forty);
  day.trip = Stops{{0, 99}};
  CHECK(day.departures(Seconds{0}).out.empty());
}

TEST_CASE("the latest departure is told by a clock without seconds, and never too late") {
  CHECK(latest(TimeSpans{}) == std::nullopt);
  CHECK(latest(TimeSpans{{{{0}, {119}}}}) == Instant{60});
  CHECK(latest(TimeSpans{{{{0}, {120}}, {{130}, {170}}}}) == Instant{120});
  CHECK(latest(TimeSpans{{{{61}, {90}}}}) == Instant{90});
  CHECK(whole_minutes_in({{61}, {200}}) == Period{{120}, {180}});
}

}  // namespace rimehaul::day
