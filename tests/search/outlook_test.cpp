// A search that judges only what it needs finds what a search that judged everything finds.
#include "search/outlook.h"

#include <doctest/doctest.h>

#include <cmath>
#include <map>

#include "search/fake_judge.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::passage::LegJudgement;
using rimehaul::trails::JunctionId;
using rimehaul::trails::LegId;
using rimehaul::trails::Network;
using rimehaul::units::Instant;

namespace {

/// Counts how often every leg is judged for the departure.
class CountingJudge : public FakeJudge {
 public:
  using FakeJudge::FakeJudge;

  [[nodiscard]] LegJudgement judge(LegId leg, Instant entry) const override {
    ++times_judged[{leg, entry}];
    return FakeJudge::judge(leg, entry);
  }

  mutable std::map<std::pair<LegId, Instant>, int> times_judged;
};

RouteQuestion random_question(Dice& dice) {
  RouteQuestion question;
  question.depart = Instant{1000};
  question.stations =
      dice.one_in(2) ? std::vector<std::size_t>{0, 7} : std::vector<std::size_t>{0, 3, 7};
  question.permitted_by = dice.one_in(2) ? "N. Warden" : "";
  return question;
}

std::vector<LegId> legs_of_best(const RouteAnswer& answer) {
  std::vector<LegId> legs;
  if (const auto* routes = std::get_if<std::vector<Route>>(&answer)) {
    for (const RouteLeg& leg : routes->front().legs) {
      legs.push_back(leg.leg);
    }
  }
  return legs;
}

std::vector<LegId> obstacles_of(const RouteAnswer& answer) {
  std::vector<LegId> legs;
  if (const auto* none = std::get_if<NoRoute>(&answer)) {
    for (const Obstacle& obstacle : none->obstacles) {
      legs.push_back(obstacle.leg);
    }
  }
  return legs;
}

/// A row of junctions 0 to `last`, and side trails from each that lead far away from the goal.
Network row_with_side_trails(std::uint32_t last) {
  std::vector<Edge> edges;
  for (std::uint32_t i = 0; i < last; ++i) {
    edges.push_back({i, i + 1});
    edges.push_back({i, last + 1 + i});
  }
  return network_of(2 * last + 1, edges);
}

}  // namespace

TEST_CASE("judging only what is needed finds the same best way and the same obstacles") {
  std::size_t found = 0;
  std::size_t refused = 0;
  for (std::uint32_t seed = 1; seed <= 300; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    const Network network = network_of(8, random_edges(dice, 8, 12));
    FakeJudge judge{network};
    roll_judgements(dice, network, judge);
    for (FakeLeg& leg : judge.legs) {
      leg.fuel_l += 0.25;  // ways that differ by legs that cost nothing are one as good as another
    }
    RouteQuestion question = random_question(dice);
    for (const Preference prefer :
         {Preference::safest, Preference::quickest, Preference::least_fuel}) {
      question.prefer = prefer;
      question.most_alternatives = 3;  // judges everything
      const RouteAnswer full = find_routes(network, judge, question);
      question.most_alternatives = 0;
      for (const double hopeful : {std::nan(""), 0.0, 0.5, 1.0}) {
        CAPTURE(hopeful);
        judge.hopeful = hopeful;
        const RouteAnswer best = find_routes(network, judge, question);
        CHECK(legs_of_best(best) == legs_of_best(full));
        CHECK(obstacles_of(best) == obstacles_of(full));
      }
      found += legs_of_best(full).empty() ? 0U : 1U;
      refused += obstacles_of(full).empty() ? 0U : 1U;
    }
  }
  CHECK(found > 200);
  CHECK(refused > 100);
}

TEST_CASE("where guessing does not end, everything is judged and the best way is the same") {
  std::size_t found = 0;
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    const Network network = network_of(120, random_edges(dice, 120, 300));
    FakeJudge judge{network};
    roll_judgements(dice, network, judge);
    judge.hopeful = 0.0;
    RouteQuestion question;
    question.stations = {0, 7};
    question.permitted_by = "N. Warden";
    const RouteAnswer full = find_routes(network, judge, question);
    question.most_alternatives = 0;
    CHECK(legs_of_best(find_routes(network, judge, question)) == legs_of_best(full));
    found += legs_of_best(full).empty() ? 0U : 1U;
  }
  CHECK(found > 10);
}

TEST_CASE("legs that cannot be part of the best way are not judged, and none is judged twice") {
  const Network network = row_with_side_trails(6);
  const CountingJudge judge{network};
  RouteQuestion question;
  question.stations = {0, 6};
  question.most_alternatives = 0;
  Outlook outlook{network, judge, question.depart};
  const std::vector<JunctionId> stops{JunctionId{0}, JunctionId{6}};
  const LegGraph legs = make_leg_graph(network, stops, outlook.turns());
  const auto path = best_judged(legs, outlook, [&] {
    Prices prices;
    for (const Step& step : legs.steps) {
      prices.push_back(step.leg.has_value() ? outlook.leg(*step.leg).time_s : 0.0);
    }
    return cheapest_way(legs, prices);
  });
  REQUIRE(path.has_value());
  CHECK(legs_of(legs, *path).size() == 6);
  CHECK(judge.times_judged.size() == 6);
  for (const auto& [leg, times] : judge.times_judged) {
    CHECK(times == 1);
  }
  outlook.judge_all();
  CHECK(judge.times_judged.size() == network.legs.size());
  for (const auto& [leg, times] : judge.times_judged) {
    CHECK(times == 1);
  }
}

TEST_CASE(
    "before it is judged a leg is open, asks for nothing and takes what the judge answers for") {
  const Network network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.legs[0] = {.share = 0.6, .time_s = 40.0, .fuel_l = 2.0};
  judge.hopeful = 0.25;
  const Outlook outlook{network, judge, Instant{0}};
  CHECK(may_drive(outlook.leg(LegId{0}), Permission::nobody));
  CHECK(outlook.leg(LegId{0}).share == 0.0);
  CHECK(outlook.leg(LegId{0}).time_s == 10.0);
  CHECK(outlook.leg(LegId{0}).fuel_l == 0.5);

  judge.hopeful = std::nan("");
  const Outlook unknown{network, judge, Instant{0}};
  CHECK(may_drive(unknown.leg(LegId{0}), Permission::nobody));
  CHECK(unknown.leg(LegId{0}).time_s < 1e-300);
  CHECK(unknown.leg(LegId{0}).fuel_l == 0.0);
}
