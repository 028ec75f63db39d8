// Routes: what is found, in which order, what is timed, and what is said when there is none.
#include "search/route.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <set>

#include "near.h"
#include "search/fake_judge.h"

using namespace rimehaul::search;
using rimehaul::testing::FakeJudge;
using rimehaul::testing::leg;
using rimehaul::testing::near;
using rimehaul::testing::network_of;
using rimehaul::trails::LegId;
using rimehaul::trails::Network;
using rimehaul::units::Instant;

namespace {

RouteQuestion question_of(std::vector<std::size_t> stations) {
  RouteQuestion question;
  question.stations = std::move(stations);
  question.depart = Instant{1000};
  return question;
}

std::vector<Route> routes_of(const RouteAnswer& answer) {
  REQUIRE(std::holds_alternative<std::vector<Route>>(answer));
  return std::get<std::vector<Route>>(answer);
}

NoRoute none_of(const RouteAnswer& answer) {
  REQUIRE(std::holds_alternative<NoRoute>(answer));
  return std::get<NoRoute>(answer);
}

std::vector<LegId> legs_of(const Route& route) {
  std::vector<LegId> legs;
  for (const RouteLeg& one : route.legs) {
    legs.push_back(one.leg);
  }
  return legs;
}

/// 0 to 3 by 1 (legs 0, 2) or by 2 (legs 4, 6).
Network two_ways() {
  return network_of(4, {{0, 1}, {1, 3}, {0, 2}, {2, 3}});
}

}  // namespace

TEST_CASE("the quickest, the safest and the leanest way can be three different ones") {
  const Network network = network_of(5, {{0, 1}, {1, 4}, {0, 2}, {2, 4}, {0, 3}, {3, 4}});
  FakeJudge judge{network};
  judge.legs[0].time_s = 10;  // by 1: quick, steep
  judge.legs[0].share = 0.6;
  judge.legs[4].fuel_l = 0.1;  // by 2: lean
  judge.legs[4].share = 0.5;
  judge.legs[8].share = 0.05;  // by 3: safe
  RouteQuestion question = question_of({0, 4});
  question.most_alternatives = 0;

  question.prefer = Preference::quickest;
  const auto quickest = routes_of(find_routes(network, judge, question));
  REQUIRE(quickest.size() == 1);
  CHECK(legs_of(quickest[0]) == std::vector<LegId>{leg(0), leg(2)});
  CHECK(quickest[0].time.value() == 70);

  question.prefer = Preference::least_fuel;
  const auto leanest = routes_of(find_routes(network, judge, question));
  CHECK(legs_of(leanest[0]) == std::vector<LegId>{leg(4), leg(6)});
  CHECK(near(leanest[0].fuel.value(), 0.6, 1e-12));

  question.prefer = Preference::safest;
  const auto safest = routes_of(find_routes(network, judge, question));
  CHECK(legs_of(safest[0]) == std::vector<LegId>{leg(8), leg(10)});
  CHECK(safest[0].worst_share == 0.1);
}

TEST_CASE(
    "the safest way takes any detour for a lower worst share, and no detour for an equal one") {
  const Network network = two_ways();
  FakeJudge judge{network};
  RouteQuestion question = question_of({0, 3});
  judge.legs[4].time_s = 6000;
  judge.legs[0].share = 0.1 + 1e-9;  // a hair above the detour's
  CHECK(legs_of(routes_of(find_routes(network, judge, question))[0]) ==
        std::vector<LegId>{leg(4), leg(6)});
  judge.legs[0].share = 0.1;
  CHECK(legs_of(routes_of(find_routes(network, judge, question))[0]) ==
        std::vector<LegId>{leg(0), leg(2)});
}

TEST_CASE("a steep turn counts like a steep leg") {
  const Network network = two_ways();
  FakeJudge judge{network};
  judge.turns[{leg(0), leg(2)}] = {.share = 0.4, .refused = false};
  const auto safest = routes_of(find_routes(network, judge, question_of({0, 3})));
  CHECK(legs_of(safest[0]) == std::vector<LegId>{leg(4), leg(6)});
  REQUIRE(safest.size() == 2);
  CHECK(safest[1].worst_share == 0.4);
}

TEST_CASE("time weighted by the penalty on share decides among ways of the same worst share") {
  const Network network = network_of(5, {{0, 4}, {4, 1}, {1, 3}, {4, 2}, {2, 3}});
  FakeJudge judge{network};
  judge.legs[0].share = 0.6;  // shared by both, so the worst share is the same
  judge.legs[2].share = 0.6;
  judge.legs[6].share = 0.0;
  judge.legs[6].time_s = 80;  // slower, but 80 + 60 beats 60 x 1.58 + 60
  const auto safest = routes_of(find_routes(network, judge, question_of({0, 3})));
  CHECK(legs_of(safest[0]) == std::vector<LegId>{leg(0), leg(6), leg(8)});
}

TEST_CASE(
    "a leg at the allowed share is driven, a hair above it is not, nor one of unknown share") {
  const Network network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.legs[0].share = 0.7;
  CHECK(routes_of(find_routes(network, judge, question_of({0, 1}))).size() == 1);
  judge.legs[0].share = std::nextafter(0.7, 1.0);
  CHECK(none_of(find_routes(network, judge, question_of({0, 1}))).obstacles.size() == 1);
  judge.legs[0].share = std::nan("");
  CHECK(none_of(find_routes(network, judge, question_of({0, 1}))).obstacles.size() == 1);
}

TEST_CASE("a leg whose time or fuel nobody can tell is not driven") {
  const Network network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.legs[0].fuel_l = std::nan("");
  const NoRoute no_fuel = none_of(find_routes(network, judge, question_of({0, 1})));
  REQUIRE(no_fuel.obstacles.size() == 1);
  CHECK_FALSE(no_fuel.obstacles[0].finding.missing.empty());
  judge.legs[0].fuel_l = 0.5;
  judge.legs[0].time_s = std::nan("");
  CHECK(none_of(find_routes(network, judge, question_of({0, 1}))).obstacles.size() == 1);
}

TEST_CASE("a one-way trail is never driven against its direction") {
  const Network network = network_of(3, {{1, 0}, {0, 2}, {2, 1}});
  FakeJudge judge{network};
  judge.legs[1].refused = true;  // from 0 to 1, against the first trail
  judge.legs[1].time_s = 1;
  for (const Preference prefer :
       {Preference::safest, Preference::quickest, Preference::least_fuel}) {
    RouteQuestion question = question_of({0, 1});
    question.prefer = prefer;
    const auto routes = routes_of(find_routes(network, judge, question));
    REQUIRE(routes.size() == 1);
    CHECK(legs_of(routes[0]) == std::vector<LegId>{leg(2), leg(4)});
  }
}

TEST_CASE("a forbidden turn forces another way round, and a rig may only turn back where it can") {
  const Network network = network_of(4, {{0, 1}, {1, 2}, {1, 3}});
  FakeJudge judge{network};
  judge.turns[{leg(0), leg(2)}] = {.share = 0.0, .refused = true};
  const RouteQuestion question = question_of({0, 2});
  CHECK(none_of(find_routes(network, judge, question)).obstacles.size() == 1);
  judge.turns[{leg(4), leg(5)}] = {.share = 0.0, .refused = false};  // room to turn at 3
  CHECK(legs_of(routes_of(find_routes(network, judge, question))[0]) ==
        std::vector<LegId>{leg(0), leg(4), leg(5), leg(2)});
}

TEST_CASE("a station on the way is passed in order, with the turns that the rig can make there") {
  // 1 is a dead end beside the way from 0 to 2.
  const Network network = network_of(4, {{0, 3}, {3, 1}, {3, 2}});
  FakeJudge judge{network};
  const RouteQuestion question = question_of({0, 1, 2});
  CHECK(none_of(find_routes(network, judge, question)).obstacles.size() == 1);
  judge.turns[{leg(2), leg(3)}] = {.share = 0.2, .refused = false};
  const auto routes = routes_of(find_routes(network, judge, question));
  CHECK(legs_of(routes[0]) == std::vector<LegId>{leg(0), leg(2), leg(3), leg(4)});
  CHECK(routes[0].worst_share == 0.2);
}

TEST_CASE("there and back again drives the same trail twice") {
  const Network network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.turns[{leg(0), leg(1)}] = {.share = 0.0, .refused = false};
  CHECK(legs_of(routes_of(find_routes(network, judge, question_of({0, 1, 0})))[0]) ==
        std::vector<LegId>{leg(0), leg(1)});
}

TEST_CASE("every leg is entered when the legs before it have been driven, rounded up") {
  const Network network = network_of(3, {{0, 1}, {1, 2}});
  FakeJudge judge{network};
  judge.legs[0].time_s = 60.25;
  const auto routes = routes_of(find_routes(network, judge, question_of({0, 2})));
  CHECK(routes[0].legs[0].entry == Instant{1000});
  CHECK(routes[0].legs[1].entry == Instant{1061});
  CHECK(routes[0].time.value() == 120.25);
  CHECK(routes[0].fuel.value() == 1.0);
  CHECK(routes[0].length.value() ==
        (network.legs[0].line.length() + network.legs[2].line.length()).value());
  CHECK(routes[0].legs[0].turn_into.verdict == rimehaul::passage::Verdict::open);
  CHECK(routes[0].legs[0].turn_into.binding.share == 0.0);
}

TEST_CASE("a leg that closes before it is reached sends the rig another way") {
  const Network network = two_ways();
  FakeJudge judge{network};
  RouteQuestion question = question_of({0, 3});
  question.prefer = Preference::quickest;
  judge.legs[4].time_s = 100;
  judge.legs[2].closes_s = 1061;  // reached at 1060
  CHECK(legs_of(routes_of(find_routes(network, judge, question))[0]) ==
        std::vector<LegId>{leg(0), leg(2)});
  judge.legs[2].closes_s = 1060;
  const auto routes = routes_of(find_routes(network, judge, question));
  REQUIRE(routes.size() == 1);
  CHECK(legs_of(routes[0]) == std::vector<LegId>{leg(4), leg(6)});
}

TEST_CASE("a detour far from the best is found although all the best ways are closed by the hour") {
  // A ladder of 6 rungs whose last leg closes early, and a long way round.
  std::vector<rimehaul::testing::Edge> edges;
  for (std::uint32_t i = 0; i < 6; ++i) {
    edges.push_back({i, i + 1});  // legs 4i
    edges.push_back({i, i + 1});  // legs 4i + 2
  }
  edges.push_back({6, 8});  // leg 24
  edges.push_back({0, 7});
  edges.push_back({7, 8});
  const Network network = network_of(9, edges);
  FakeJudge judge{network};
  judge.legs[24].closes_s = 1010;
  judge.legs[26].time_s = 10'000;
  for (const Preference prefer : {Preference::quickest, Preference::safest}) {
    RouteQuestion question = question_of({0, 8});
    question.prefer = prefer;
    CHECK(legs_of(routes_of(find_routes(network, judge, question))[0]) ==
          std::vector<LegId>{leg(26), leg(28)});
  }
}

TEST_CASE("alternatives share at most 70 % with any better route and none is asked in vain") {
  const Network network = network_of(5, {{0, 1}, {1, 4}, {0, 2}, {2, 4}, {0, 3}, {3, 4}, {1, 2}});
  FakeJudge judge{network};
  RouteQuestion question = question_of({0, 4});
  question.prefer = Preference::quickest;
  judge.legs[0].time_s = 50;
  const auto routes = routes_of(find_routes(network, judge, question));
  REQUIRE(routes.size() >= 3);
  CHECK(routes.size() <= 4);
  for (std::size_t i = 1; i < routes.size(); ++i) {
    CHECK(routes[i - 1].time <= routes[i].time);
    for (std::size_t better = 0; better < i; ++better) {
      const auto known = legs_of(routes[better]);
      double shared = 0;
      for (const LegId one : legs_of(routes[i])) {
        if (std::find(known.begin(), known.end(), one) != known.end()) {
          shared += network.legs[static_cast<std::size_t>(one)].line.length().value();
        }
      }
      CHECK(shared <= 0.7 * routes[i].length.value());
    }
  }
  question.most_alternatives = 1;
  CHECK(routes_of(find_routes(network, judge, question)).size() == 2);
}

TEST_CASE("driving out of the way and back is no alternative") {
  const Network network = network_of(4, {{0, 1}, {1, 2}, {1, 3}});
  FakeJudge judge{network};
  judge.turns[{leg(4), leg(5)}] = {.share = 0.0, .refused = false};
  CHECK(routes_of(find_routes(network, judge, question_of({0, 2}))).size() == 1);
}

TEST_CASE("all of the best way with a detour beyond a station on it is no alternative") {
  const Network network = network_of(4, {{0, 1}, {1, 2}, {1, 3}});
  FakeJudge judge{network};
  judge.turns[{leg(2), leg(3)}] = {.share = 0.0, .refused = false};
  const auto routes = routes_of(find_routes(network, judge, question_of({0, 1, 3})));
  CHECK(routes.size() == 1);
  CHECK(legs_of(routes[0]) == std::vector<LegId>{leg(0), leg(4)});
}

TEST_CASE("the same question gets the same answer") {
  rimehaul::testing::Dice dice{11};
  const Network network = network_of(8, rimehaul::testing::random_edges(dice, 8, 20));
  FakeJudge judge{network};  // all legs alike: nothing but ties
  const auto first = routes_of(find_routes(network, judge, question_of({0, 5})));
  const auto second = routes_of(find_routes(network, judge, question_of({0, 5})));
  REQUIRE(first.size() == second.size());
  for (std::size_t i = 0; i < first.size(); ++i) {
    CHECK(legs_of(first[i]) == legs_of(second[i]));
  }
}
