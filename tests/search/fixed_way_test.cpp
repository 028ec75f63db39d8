// A way that is given: driven as it lies, all that stands in it told, and its hours by the minute.
#include "search/fixed_way.h"

#include <doctest/doctest.h>

#include <limits>

#include "search/timed_case.h"
#include "search/timed_routes.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::trails::LegId;
using rimehaul::trails::Network;
using rimehaul::units::Instant;
using rimehaul::units::Seconds;
using rimehaul::units::TimeSpans;

namespace {

/// 0 to 1 to 2 to 3 by legs 0, 2 and 4.
Network chain() {
  return network_of(4, {{0, 1}, {1, 2}, {2, 3}});
}

const FixedWay kAll{{LegId{0}, LegId{2}, LegId{4}}};
constexpr Instant kDepart{1'000};

Route driven(const FakeJudge& judge, Permission permission = Permission::nobody) {
  auto answer = drive_fixed(judge, kAll, kDepart, permission);
  REQUIRE(std::holds_alternative<Route>(answer));
  return std::get<Route>(answer);
}

NoRoute refused(const FakeJudge& judge, Permission permission = Permission::nobody) {
  auto answer = drive_fixed(judge, kAll, kDepart, permission);
  REQUIRE(std::holds_alternative<NoRoute>(answer));
  return std::get<NoRoute>(answer);
}

/// Whether a way holds, by a loop of its own.
bool holds(const FakeJudge& judge, const std::vector<LegId>& way, Instant depart) {
  Instant entry = depart;
  for (std::size_t i = 0; i < way.size(); ++i) {
    const auto leg = judge.judge(way[i], entry);
    const auto turn = judge.judge_turn(way[i > 0 ? i - 1 : 0], way[i], entry);
    if (leg.verdict != rimehaul::passage::Verdict::open ||
        (i > 0 && turn.verdict != rimehaul::passage::Verdict::open)) {
      return false;
    }
    entry.seconds += static_cast<std::int64_t>(leg.time.value());
  }
  return true;
}

}  // namespace

TEST_CASE("a given way is driven leg by leg, each entered when the one before it is driven") {
  const Network network = chain();
  FakeJudge judge{network};
  judge.legs[2].time_s = 90;
  judge.legs[2].share = 0.6;
  const Route route = driven(judge);
  REQUIRE(route.legs.size() == 3);
  CHECK(route.legs[1].entry == Instant{1'060});
  CHECK(route.legs[2].entry == Instant{1'150});
  CHECK(route.time == Seconds{210});
  CHECK(route.worst_share == 0.6);
}

TEST_CASE("no way round is looked for, were it as open as can be") {
  const Network network = network_of(4, {{0, 1}, {1, 2}, {2, 3}, {0, 3}});
  FakeJudge judge{network};
  judge.legs[2].refused = true;
  const NoRoute none = refused(judge);
  CHECK(none.way == kAll.legs);
  REQUIRE(none.obstacles.size() == 1);
  CHECK(none.obstacles[0].leg == LegId{2});
  CHECK(none.why == "1 leg blocks the way");
}

TEST_CASE("all that stands in a given way is told, and not the first alone") {
  const Network network = chain();
  FakeJudge judge{network};
  judge.legs[0].share = 0.9;
  judge.turns[{LegId{0}, LegId{2}}].refused = true;
  judge.legs[4].share = 0.8;
  const NoRoute none = refused(judge);
  REQUIRE(none.obstacles.size() == 3);
  CHECK(none.obstacles[0].leg == LegId{4});  // nearest to open first
  CHECK(none.obstacles[1].leg == LegId{0});
  CHECK(none.obstacles[2].turn_from == LegId{0});
  CHECK(none.why == "2 legs and 1 turn block the way");
}

TEST_CASE("a leg that closes before the rig comes there closes the way") {
  const Network network = chain();
  FakeJudge judge{network};
  judge.legs[4].closes_s = 1'121;
  CHECK(driven(judge).legs.size() == 3);
  judge.legs[4].closes_s = 1'120;
  const NoRoute none = refused(judge);
  REQUIRE(none.obstacles.size() == 1);
  CHECK(none.obstacles[0].leg == LegId{4});
  CHECK(none.obstacles[0].entry == Instant{1'120});
}

TEST_CASE("what comes after a closed leg is judged for the hour after it, if that is known") {
  const Network network = chain();
  FakeJudge judge{network};
  judge.legs[0].refused = true;
  judge.legs[2].refused = true;
  judge.legs[4].refused = true;
  CHECK(refused(judge).obstacles[2].entry == Instant{1'120});
  for (const double unknown : {std::numeric_limits<double>::quiet_NaN(), 0.0, -5.0}) {
    judge.legs[0].time_s = unknown;
    CHECK(refused(judge).obstacles[1].entry == Instant{1'000});
  }
}

TEST_CASE("a leg of which nobody knows how long it takes closes the way") {
  const Network network = chain();
  FakeJudge judge{network};
  judge.legs[2].time_s = std::numeric_limits<double>::quiet_NaN();
  const NoRoute none = refused(judge);
  REQUIRE(none.obstacles.size() == 1);
  CHECK_FALSE(none.obstacles[0].finding.missing.empty());
}

TEST_CASE("a given way that waits for decisions is driven with a named person's permission") {
  const Network network = chain();
  FakeJudge judge{network};
  judge.legs[2].asks = true;
  judge.turns[{LegId{2}, LegId{4}}].asks = true;
  const NoRoute none = refused(judge);
  REQUIRE(none.obstacles.size() == 2);
  CHECK_FALSE(none.obstacles[0].decision.empty());
  CHECK_FALSE(none.obstacles[1].decision.empty());
  CHECK(driven(judge, Permission::named_person).needs_permission);
}

TEST_CASE("the way back is the opposite legs, the last one first") {
  CHECK(back_along(kAll).legs == std::vector{LegId{5}, LegId{3}, LegId{1}});
  CHECK(back_along(back_along(kAll)) == kAll);
}

TEST_CASE("on random networks a given way is driven when a loop over its legs finds it open") {
  std::size_t open = 0;
  std::size_t closed = 0;
  for (std::uint32_t seed = 0; seed < 60; ++seed) {
    CAPTURE(seed);
    const TimedCase test{seed};
    for (const auto& way :
         AllWays{test.network, rimehaul::trails::JunctionId{0}, rimehaul::trails::JunctionId{1}}
             .ways) {
      for (std::int64_t at = 0; at < kMinutes; at += 9) {
        const auto answer = drive_fixed(test.judge, {way}, minute(at), Permission::nobody);
        const bool is_open = std::holds_alternative<Route>(answer);
        REQUIRE(is_open == holds(test.judge, way, minute(at)));
        ++(is_open ? open : closed);
      }
    }
  }
  CHECK(open > 300);
  CHECK(closed > 300);
}

TEST_CASE("the windows of a given way are the minutes at which it holds, one tried after another") {
  std::size_t told = 0;
  for (std::uint32_t seed = 0; seed < 150; ++seed) {
    CAPTURE(seed);
    const TimedCase test{seed};
    LegHours hours{test.judge, kHours};
    for (const auto& way :
         AllWays{test.network, rimehaul::trails::JunctionId{0}, rimehaul::trails::JunctionId{1}}
             .ways) {
      const TimeSpans windows = TimedWays{test.network, hours, FixedWay{way}}.windows(
          {Permission::nobody, TimeSpans{{kHours}}});
      const std::vector<bool> minutes = minutes_of(test, way);
      for (std::int64_t i = 0; i < kMinutes; ++i) {
        CAPTURE(i);
        REQUIRE(windows.contains(minute(i)) == minutes[static_cast<std::size_t>(i)]);
        REQUIRE(windows.contains({i * 60 + 59}) == minutes[static_cast<std::size_t>(i)]);
      }
      told += windows.periods().size() > 1 ? 1 : 0;
    }
  }
  CHECK(told > 20);
}

TEST_CASE("a ring has its windows too, although it ends where it begins") {
  TimedCase test{1};
  test.network = network_of(3, {{0, 1}, {1, 2}, {2, 0}});
  test.judge.legs.assign(test.network.legs.size(), {.time_s = 300});
  test.judge.turns.clear();
  test.judge.legs[2].spells = {{.when = {minute(20), {50 * 60 - 1}}}};
  for (auto& junction : test.network.junctions) {
    junction.station.reset();
  }
  LegHours hours{test.judge, kHours};
  // The tail has left the second leg before 20:00, or its nose enters at 50:00 or later.
  CHECK(TimedWays{test.network, hours, kAll}.windows({Permission::nobody, TimeSpans{{kHours}}}) ==
        TimeSpans{{{minute(0), {10 * 60 - 1}}, {minute(45), {75 * 60 - 1}}}});
}
