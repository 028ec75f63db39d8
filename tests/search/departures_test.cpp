// Hours of departure against going through every minute, on small random networks with legs that
// close and open again.
#include "search/departures.h"

#include <doctest/doctest.h>

#include "search/timed_case.h"
#include "search/windows.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::trails::JunctionId;
using rimehaul::trails::LegId;
using rimehaul::trails::Network;
using rimehaul::units::Instant;
using rimehaul::units::Period;
using rimehaul::units::TimeSpans;

namespace {

constexpr JunctionId kStart{0};
constexpr JunctionId kGoal{1};

struct Reckoned {
  explicit Reckoned(const TimedCase& test, Period arrivals = kHours)
      : turns{turns_of(test.network)},
        legs{make_leg_graph(test.network, std::vector{kStart, kGoal}, turns)},
        to_stations{legs_to_stations(test.network)},
        hours{test.judge, kHours},
        steps{{legs, turns, to_stations}, hours, Permission::nobody},
        departures{steps, TimeSpans{{arrivals}}} {}
  Reckoned(const Reckoned&) = delete;
  Reckoned& operator=(const Reckoned&) = delete;

  std::vector<Turn> turns;
  LegGraph legs;
  std::vector<bool> to_stations;
  LegHours hours;
  StepHours steps;
  Departures departures;
};

/// Whether the goal can be reached, minute by minute from the last one back, driving round allowed.
class ByTheMinute {
 public:
  explicit ByTheMinute(const TimedCase& test) : test_{test} {
    for (std::int64_t arrived = kMinutes - 1; arrived >= 0; --arrived) {
      for (std::uint32_t i = 0; i < test.network.legs.size(); ++i) {
        leads_on_[{leg(i), arrived}] = leads_on(leg(i), arrived);
      }
    }
  }

  [[nodiscard]] bool may_enter(Turn turn, std::int64_t entry) const {
    const auto step = taken(test_.judge, turn, entry);
    const auto on =
        step.has_value() ? leads_on_.find({turn.to, entry + step->minutes}) : leads_on_.end();
    return on != leads_on_.end() && on->second;
  }

 private:
  [[nodiscard]] bool leads_on(LegId from, std::int64_t arrived) const {
    const JunctionId at = test_.network.legs[static_cast<std::size_t>(from)].to;
    if (at == kGoal || at == kStart) {
      return at == kGoal;
    }
    const bool waits = test_.network.junctions[static_cast<std::size_t>(at)].station.has_value();
    for (std::uint32_t i = 0; i < test_.network.legs.size(); ++i) {
      if (test_.network.legs[i].from != at) {
        continue;
      }
      for (std::int64_t entry = arrived; entry < (waits ? kMinutes : arrived + 1); ++entry) {
        if (may_enter({from, leg(i)}, entry)) {
          return true;
        }
      }
    }
    return false;
  }

  const TimedCase& test_;
  std::map<std::pair<LegId, std::int64_t>, bool> leads_on_;
};

}  // namespace

TEST_CASE("a way can be set out on at those minutes from which going on by the minute arrives") {
  std::size_t changing = 0;
  for (std::uint32_t seed = 0; seed < 150; ++seed) {
    CAPTURE(seed);
    const TimedCase test{seed};
    Reckoned reckoned{test};
    const ByTheMinute by_the_minute{test};
    for (ArcIndex arc = 0; arc < reckoned.legs.steps.size(); ++arc) {
      const Step& step = reckoned.legs.steps[arc];
      if (!step.leg.has_value()) {
        continue;
      }
      const Turn turn =
          step.turn.has_value() ? reckoned.turns[*step.turn] : Turn{*step.leg, *step.leg};
      const TimeSpans& entries = reckoned.departures.entries(arc);
      changing += entries.periods().size() > 1 ? 1 : 0;
      for (std::int64_t entry = 0; entry < kMinutes; ++entry) {
        CAPTURE(entry);
        const bool enters = by_the_minute.may_enter(turn, entry);
        REQUIRE(entries.contains(minute(entry)) == enters);
        REQUIRE(entries.contains({entry * 60 + 59}) == enters);
      }
    }
  }
  CHECK(changing > 100);  // the networks are of the kind that the test is for
}

TEST_CASE("windows are the minutes at which some way without driving round holds to its end") {
  std::size_t told = 0;
  for (std::uint32_t seed = 0; seed < 150; ++seed) {
    CAPTURE(seed);
    const TimedCase test{seed};
    Reckoned reckoned{test};
    const TimeSpans windows = windows_from(reckoned.departures, reckoned.legs.starts.front());
    std::vector<bool> open(kMinutes, false);
    for (const std::vector<LegId>& way : AllWays{test.network, kStart, kGoal}.ways) {
      const std::vector<bool> minutes = minutes_of(test, way);
      for (std::size_t i = 0; i < minutes.size(); ++i) {
        open[i] = open[i] || minutes[i];
      }
    }
    for (std::int64_t i = 0; i < kMinutes; ++i) {
      CAPTURE(i);
      REQUIRE(windows.contains(minute(i)) == open[static_cast<std::size_t>(i)]);
    }
    told += windows.periods().size() > 1 ? 1 : 0;
  }
  CHECK(told > 20);
}

TEST_CASE("who must arrive by an hour leaves in time for it, and not a second later") {
  auto network = network_of(3, {{0, 2}, {2, 1}});
  TimedCase test{1};
  test.network = network;
  test.judge.legs.assign(network.legs.size(), {.time_s = 240});
  test.judge.turns.clear();
  Reckoned reckoned{test, {minute(0), minute(30)}};
  CHECK(windows_from(reckoned.departures, reckoned.legs.starts.front()) ==
        TimeSpans{{{minute(0), minute(22)}}});
}

TEST_CASE("a leg that closes is waited out at a station, and nowhere else") {
  TimedCase test{1};
  test.network = network_of(3, {{0, 2}, {2, 1}});
  test.judge.legs.assign(test.network.legs.size(), {.time_s = 300});
  test.judge.turns.clear();
  test.judge.legs[2].spells = {{.when = {minute(20), {50 * 60 - 1}}}};
  {
    Reckoned at_hut{test};
    CHECK(windows_from(at_hut.departures, at_hut.legs.starts.front()) ==
          TimeSpans{{{minute(0), {80 * 60 - 1}}}});
  }
  test.network.junctions[2].station.reset();
  Reckoned on_the_way{test};
  // The tail has left the second leg before 20:00, or its nose enters at 50:00 or later.
  CHECK(windows_from(on_the_way.departures, on_the_way.legs.starts.front()) ==
        TimeSpans{{{minute(0), {10 * 60 - 1}}, {minute(45), {80 * 60 - 1}}}});
}
