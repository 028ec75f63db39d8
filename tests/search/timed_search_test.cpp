// The best way through the hours against all ways, each tried at every minute.
#include "search/timed_search.h"

#include <doctest/doctest.h>

#include <limits>
#include <tuple>

#include "near.h"
#include "search/timed_case.h"
#include "search/timed_routes.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::trails::JunctionId;
using rimehaul::trails::LegId;
using rimehaul::units::Instant;
using rimehaul::units::Period;
using rimehaul::units::TimeSpans;

namespace {

constexpr double kNone = std::numeric_limits<double>::infinity();

/// What a way costs.
struct Cost {
  double worst_share = kNone;
  double weighted = kNone;
  double minutes = kNone;
  double fuel = kNone;
};

double weighted_minutes(const Taken& step) {
  return static_cast<double>(step.minutes) *
         rimehaul::passage::share_penalty(step.share, step.allowed_share);
}

/// Of one way, driven without a wait.
std::optional<Cost> driven(const TimedCase& test, const std::vector<LegId>& way,
                           std::int64_t depart) {
  Cost cost{0, 0, 0, 0};
  std::int64_t now = depart;
  LegId from = way.front();
  for (const LegId into : way) {
    const auto step = taken(test.judge, {from, into}, now);
    if (!step.has_value()) {
      return std::nullopt;
    }
    cost.worst_share = std::max(cost.worst_share, step->share);
    cost.weighted += weighted_minutes(*step);
    cost.fuel += step->fuel_l;
    now += step->minutes;
    from = into;
  }
  cost.minutes = static_cast<double>(now - depart);
  return now < kMinutes ? std::optional{cost} : std::nullopt;
}

/// The least of one way with waits to the minute: weighted minutes, waits as they last; minutes;
/// litres; each by itself.
Cost least_with_waits(const TimedCase& test, const std::vector<LegId>& way, std::int64_t depart) {
  std::vector<Cost> on;  // by minute of arrival at the end of what was looked at
  for (std::int64_t arrived = 0; arrived < kMinutes; ++arrived) {
    on.push_back({0, 0, 0, 0});
  }
  for (std::size_t i = way.size(); i > 0; --i) {
    const Turn turn{way[i > 1 ? i - 2 : 0], way[i - 1]};
    std::vector<Cost> enters(kMinutes);
    const JunctionId at = test.network.legs[static_cast<std::size_t>(way[i - 1])].from;
    const bool waits =
        i > 1 && test.network.junctions[static_cast<std::size_t>(at)].station.has_value();
    for (std::int64_t entry = kMinutes - 1; entry >= 0; --entry) {
      Cost& here = enters[static_cast<std::size_t>(entry)];
      const auto step = taken(test.judge, turn, entry);
      if (step.has_value() && entry + step->minutes < kMinutes) {
        const Cost& then = on[static_cast<std::size_t>(entry + step->minutes)];
        here = {0, then.weighted + weighted_minutes(*step),
                then.minutes + static_cast<double>(step->minutes), then.fuel + step->fuel_l};
      }
      if (waits && entry + 1 < kMinutes) {
        const Cost& later = enters[static_cast<std::size_t>(entry + 1)];
        here = {0, std::min(here.weighted, later.weighted + 1),
                std::min(here.minutes, later.minutes + 1), std::min(here.fuel, later.fuel)};
      }
    }
    on = enters;
  }
  return on[static_cast<std::size_t>(depart)];
}

/// What a found way costs, reckoned anew.
Cost cost_of(const Route& route) {
  Cost cost{route.worst_share, route.waits.value() / 60, route.time.value() / 60,
            route.fuel.value()};
  for (const RouteLeg& leg : route.legs) {
    const double share = std::max(*leg.judgement.share(), *leg.turn_into.binding.share);
    cost.weighted += leg.judgement.time.value() / 60 *
                     rimehaul::passage::share_penalty(share, leg.judgement.allowed_share);
  }
  return cost;
}

struct Best {
  Cost at_once;  ///< each by itself, but the weighted time: among those with the least worst share
  Cost waiting;
};

Best best_of_all(const TimedCase& test, const std::vector<std::vector<LegId>>& ways,
                 std::int64_t depart) {
  Best best;
  for (const auto& way : ways) {
    if (const auto cost = driven(test, way, depart); cost.has_value()) {
      const bool safer = std::tuple{cost->worst_share, cost->weighted} <
                         std::tuple{best.at_once.worst_share, best.at_once.weighted};
      if (safer) {
        best.at_once.worst_share = cost->worst_share;
        best.at_once.weighted = cost->weighted;
      }
      best.at_once.minutes = std::min(best.at_once.minutes, cost->minutes);
      best.at_once.fuel = std::min(best.at_once.fuel, cost->fuel);
    }
    const Cost waiting = least_with_waits(test, way, depart);
    best.waiting.weighted = std::min(best.waiting.weighted, waiting.weighted);
    best.waiting.minutes = std::min(best.waiting.minutes, waiting.minutes);
    best.waiting.fuel = std::min(best.waiting.fuel, waiting.fuel);
  }
  return best;
}

void check_drivable(const TimedCase& test, const Route& route) {
  Instant reached = route.legs.front().entry;
  for (std::size_t i = 0; i < route.legs.size(); ++i) {
    const RouteLeg& one = route.legs[i];
    CHECK(one.judgement.verdict == rimehaul::passage::Verdict::open);
    CHECK(one.entry.since(reached) == one.waits_before);
    const auto at = test.network.legs[static_cast<std::size_t>(one.leg)].from;
    if (one.waits_before > rimehaul::units::Seconds{0}) {
      CHECK(test.network.junctions[static_cast<std::size_t>(at)].station.has_value());
    }
    reached = rimehaul::units::after(one.entry, one.judgement.time);
  }
}

}  // namespace

TEST_CASE("of all ways at every minute the best is found, waiting only where it must") {
  constexpr double kEqual = 1e-9;
  std::size_t waited = 0;
  std::size_t found = 0;
  for (std::uint32_t seed = 0; seed < 60; ++seed) {
    const TimedCase test{seed};
    LegHours hours{test.judge, kHours};
    const std::vector<JunctionId> stops{JunctionId{0}, JunctionId{1}};
    TimedWays timed{test.network, hours, stops};
    const TimedWays::Trip trip{Permission::nobody, TimeSpans{{kHours}}};
    const AllWays all{test.network, stops[0], stops[1]};
    for (std::int64_t depart = 0; depart < kMinutes; depart += 3) {
      CAPTURE(seed);
      CAPTURE(depart);
      const Best best = best_of_all(test, all.ways, depart);
      const auto safest = timed.best(trip, minute(depart), Preference::safest);
      const auto quickest = timed.best(trip, minute(depart), Preference::quickest);
      const auto thrifty = timed.best(trip, minute(depart), Preference::least_fuel);
      REQUIRE(safest.has_value() == (best.waiting.minutes < kNone));
      REQUIRE(quickest.has_value() == safest.has_value());
      REQUIRE(thrifty.has_value() == safest.has_value());
      if (!safest.has_value()) {
        continue;
      }
      ++found;
      check_drivable(test, *safest);
      check_drivable(test, *quickest);
      check_drivable(test, *thrifty);
      REQUIRE(near(cost_of(*quickest).minutes, best.waiting.minutes, kEqual));
      if (best.at_once.minutes < kNone) {
        REQUIRE(safest->waits.value() == 0.0);
        REQUIRE(near(cost_of(*safest).worst_share, best.at_once.worst_share, kEqual));
        REQUIRE(near(cost_of(*safest).weighted, best.at_once.weighted, kEqual));
        REQUIRE(near(cost_of(*thrifty).fuel, best.at_once.fuel, kEqual));
      } else {
        ++waited;
        REQUIRE(safest->waits.value() > 0.0);
        REQUIRE(near(cost_of(*safest).weighted, best.waiting.weighted, kEqual));
        REQUIRE(near(cost_of(*thrifty).fuel, best.waiting.fuel, kEqual));
      }
    }
  }
  CHECK(found > 400);
  CHECK(waited > 40);
}
