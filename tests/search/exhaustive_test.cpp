// The search against every way there is, on small random networks.
#include <doctest/doctest.h>

#include <algorithm>
#include <memory>
#include <set>
#include <tuple>

#include "near.h"
#include "passage/share_penalty.h"
#include "search/fake_judge.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::passage::Verdict;
using rimehaul::trails::LegId;
using rimehaul::trails::Network;
using rimehaul::units::Instant;

namespace {

/// What one whole way costs.
struct Cost {
  bool decision = false;  ///< somebody has to take one
  double worst_share = 0.0;
  double weighted = 0.0;
  double time = 0.0;
  double fuel = 0.0;
};

/// Whether a way is the better one: no decision where none is needed, then what is preferred.
bool is_better(const Cost& a, const Cost& b, Preference prefer) {
  switch (prefer) {
    case Preference::safest:
      return std::tuple{a.decision, a.worst_share, a.weighted} <
             std::tuple{b.decision, b.worst_share, b.weighted};
    case Preference::quickest:
      return std::tuple{a.decision, a.time} < std::tuple{b.decision, b.time};
    case Preference::least_fuel:
      return std::tuple{a.decision, a.fuel} < std::tuple{b.decision, b.fuel};
  }
  return false;
}

/// What every way there is costs, by trying them all.
class Enumeration {
 public:
  Enumeration(const Network& network, const FakeJudge& judge, const RouteQuestion& question)
      : network_{&network}, judge_{&judge}, question_{&question} {
    for (std::uint32_t i = 0; i < network.legs.size(); ++i) {
      if (static_cast<std::size_t>(network.legs[i].from) == question.stations[0]) {
        enter(leg(i), 0, {}, 0.0);
      }
    }
  }
  [[nodiscard]] const std::vector<Cost>& ways() const { return ways_; }
  /// Of at least one way.
  [[nodiscard]] const Cost& best(Preference prefer) const {
    return *std::ranges::min_element(
        ways_, [&](const Cost& a, const Cost& b) { return is_better(a, b, prefer); });
  }

 private:
  [[nodiscard]] bool allowed(Verdict verdict) const {
    return verdict == Verdict::open ||
           (verdict == Verdict::restricted && !question_->permitted_by.empty());
  }

  void enter(LegId into, std::size_t stage, Cost cost, double turn_share) {
    const auto judged = judge_->judge(into, question_->depart);
    if (!allowed(judged.verdict) || used_.contains({into, stage})) {
      return;
    }
    const double share = std::max(*judged.share(), turn_share);
    cost.decision = cost.decision || judged.verdict == Verdict::restricted;
    cost.worst_share = std::max(cost.worst_share, share);
    cost.weighted +=
        judged.time.value() * rimehaul::passage::share_penalty(share, judged.allowed_share);
    cost.time += judged.time.value();
    cost.fuel += judged.fuel.value();
    const auto reached =
        static_cast<std::size_t>(network_->legs[static_cast<std::size_t>(into)].to);
    std::size_t next_stage = stage;
    if (reached == question_->stations[stage + 1]) {
      ++next_stage;
    }
    if (next_stage + 1 == question_->stations.size()) {
      ways_.push_back(cost);
      return;
    }
    used_.insert({into, stage});
    for (std::uint32_t i = 0; i < network_->legs.size(); ++i) {
      if (static_cast<std::size_t>(network_->legs[i].from) == reached) {
        const auto turn = judge_->judge_turn(into, leg(i), question_->depart);
        if (allowed(turn.verdict)) {
          Cost turned = cost;
          turned.decision = cost.decision || turn.verdict == Verdict::restricted;
          enter(leg(i), next_stage, turned, *turn.binding.share);
        }
      }
    }
    used_.erase({into, stage});
  }

  const Network* network_;
  const FakeJudge* judge_;
  const RouteQuestion* question_;
  std::set<std::pair<LegId, std::size_t>> used_;
  std::vector<Cost> ways_;
};

double weighted_time(const Route& route) {
  double weighted = 0.0;
  for (const RouteLeg& one : route.legs) {
    const double share = std::max(*one.judgement.share(), *one.turn_into.binding.share);
    weighted += one.judgement.time.value() *
                rimehaul::passage::share_penalty(share, one.judgement.allowed_share);
  }
  return weighted;
}

void check_joined(const Network& network, const Route& route, const RouteQuestion& question) {
  std::size_t stage = 0;
  std::size_t at = question.stations[0];
  double time = 0.0;
  for (const RouteLeg& one : route.legs) {
    const auto& there = network.legs[static_cast<std::size_t>(one.leg)];
    CHECK(static_cast<std::size_t>(there.from) == at);
    at = static_cast<std::size_t>(there.to);
    stage += at == question.stations[stage + 1] ? 1 : 0;
    time += one.judgement.time.value();
    CHECK(one.judgement.verdict != Verdict::closed);
    CHECK(one.turn_into.verdict != Verdict::closed);
  }
  CHECK(stage + 1 == question.stations.size());
  CHECK(near(route.time.value(), time, 1e-9));
}

struct Case {
  Network network;
  FakeJudge judge;
  RouteQuestion question;
};

/// Holds the network where the judge can point to it.
std::unique_ptr<Case> random_case(std::uint32_t seed) {
  Dice dice{seed};
  Network network = network_of(6, random_edges(dice, 6, 8));
  auto made = std::make_unique<Case>(Case{std::move(network), FakeJudge{Network{}}, {}});
  made->judge = FakeJudge{made->network};
  roll_judgements(dice, made->network, made->judge);
  made->question.depart = Instant{1000};
  made->question.stations =
      dice.one_in(2) ? std::vector<std::size_t>{0, 5} : std::vector<std::size_t>{0, 3, 5};
  if (dice.one_in(2)) {
    made->question.permitted_by = "N. Warden";
  }
  return made;
}

}  // namespace

TEST_CASE("on small random networks the search finds what trying every way finds") {
  std::size_t with_ways = 0;
  std::size_t without = 0;
  std::size_t decided = 0;
  std::size_t spared = 0;
  for (std::uint32_t seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    const auto made = random_case(seed);
    const Enumeration all{made->network, made->judge, made->question};
    for (const Preference prefer :
         {Preference::safest, Preference::quickest, Preference::least_fuel}) {
      made->question.prefer = prefer;
      const RouteAnswer answer = find_routes(made->network, made->judge, made->question);
      REQUIRE(std::holds_alternative<std::vector<Route>>(answer) == !all.ways().empty());
      if (all.ways().empty()) {
        ++without;
        continue;
      }
      ++with_ways;
      const auto& routes = std::get<std::vector<Route>>(answer);
      for (const Route& route : routes) {
        check_joined(made->network, route, made->question);
      }
      CHECK(std::ranges::is_sorted(routes, {}, &Route::needs_permission));
      const Cost& best = all.best(prefer);
      CHECK(routes[0].needs_permission == best.decision);
      decided += best.decision ? 1U : 0U;
      spared += !best.decision && std::ranges::any_of(all.ways(), &Cost::decision) ? 1U : 0U;
      if (prefer == Preference::quickest) {
        CHECK(near(routes[0].time.value(), best.time, 1e-9));
      } else if (prefer == Preference::least_fuel) {
        CHECK(near(routes[0].fuel.value(), best.fuel, 1e-9));
      } else {
        CHECK(routes[0].worst_share == best.worst_share);
        CHECK(near(weighted_time(routes[0]), best.weighted, 1e-9));
      }
    }
  }
  CHECK(with_ways > 300);
  CHECK(without > 100);
  CHECK(decided > 50);
  CHECK(spared > 50);
}

TEST_CASE("tightening what is allowed never makes a route better or newly possible") {
  std::size_t compared = 0;
  std::size_t lost = 0;
  for (std::uint32_t seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    const auto made = random_case(seed);
    for (const Preference prefer :
         {Preference::safest, Preference::quickest, Preference::least_fuel}) {
      made->question.prefer = prefer;
      made->judge.allowed_share = 0.7;
      const RouteAnswer before = find_routes(made->network, made->judge, made->question);
      made->judge.allowed_share = 0.45;
      const RouteAnswer after = find_routes(made->network, made->judge, made->question);
      if (std::holds_alternative<NoRoute>(after)) {
        lost += std::holds_alternative<NoRoute>(before) ? 0U : 1U;
        continue;
      }
      REQUIRE(std::holds_alternative<std::vector<Route>>(before));
      const Route& was = std::get<std::vector<Route>>(before)[0];
      const Route& is = std::get<std::vector<Route>>(after)[0];
      ++compared;
      // A way that asks for a decision may be better in all else: it is taken for want of others.
      CHECK(is.needs_permission >= was.needs_permission);
      if (is.needs_permission != was.needs_permission) {
        continue;
      }
      if (prefer == Preference::quickest) {
        CHECK(is.time >= was.time);
      } else if (prefer == Preference::least_fuel) {
        CHECK(is.fuel.value() >= was.fuel.value() - 1e-9);
      } else {
        CHECK(is.worst_share >= was.worst_share);
      }
    }
  }
  CHECK(compared > 50);
  CHECK(lost > 50);
}

TEST_CASE("when nothing is open, no other way is blocked by fewer") {
  std::size_t blocked = 0;
  for (std::uint32_t seed = 1; seed <= 200; ++seed) {
    CAPTURE(seed);
    const auto made = random_case(seed);
    const RouteAnswer answer = find_routes(made->network, made->judge, made->question);
    const auto* none = std::get_if<NoRoute>(&answer);
    if (none == nullptr || none->obstacles.empty()) {
      continue;
    }
    ++blocked;
    // Opening all that is told opens a way; leaving out any one of them opens none.
    FakeJudge opened = made->judge;
    for (std::size_t kept = 0; kept <= none->obstacles.size(); ++kept) {
      opened = made->judge;
      for (std::size_t i = 0; i < none->obstacles.size(); ++i) {
        const Obstacle& obstacle = none->obstacles[i];
        if (i == kept) {
          continue;
        }
        if (obstacle.turn_from.has_value()) {
          opened.turns[{*obstacle.turn_from, obstacle.leg}] = {.share = 0.0, .refused = false};
        } else {
          opened.legs[static_cast<std::size_t>(obstacle.leg)] = FakeLeg{};
        }
      }
      const RouteAnswer now = find_routes(made->network, opened, made->question);
      const bool all_opened = kept == none->obstacles.size();
      CHECK(std::holds_alternative<std::vector<Route>>(now) == all_opened);
    }
  }
  CHECK(blocked > 30);
}
