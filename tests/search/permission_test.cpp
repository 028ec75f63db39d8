// Ways that wait for a named person's decision: when they are driven, and when they are not.
#include <doctest/doctest.h>

#include "search/fake_judge.h"

using namespace rimehaul::search;
using rimehaul::testing::FakeJudge;
using rimehaul::testing::leg;
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

TEST_CASE("what waits for a decision is driven only when a named person permits it") {
  const Network network = network_of(2, {{0, 1}});
  FakeJudge judge{network};
  judge.legs[0].asks = true;
  RouteQuestion question = question_of({0, 1});
  const NoRoute none = none_of(find_routes(network, judge, question));
  REQUIRE(none.obstacles.size() == 1);
  CHECK(none.obstacles[0].decision == "may the runout be crossed");
  CHECK(none.obstacles[0].finding.check == rimehaul::passage::Check::avalanche);
  question.permitted_by = "N. Warden";
  const auto routes = routes_of(find_routes(network, judge, question));
  CHECK(routes[0].needs_permission);
}

TEST_CASE("an open way comes before any that a named person would have to decide about") {
  const Network network = two_ways();
  FakeJudge judge{network};
  judge.legs[0] = {.share = 0.05, .time_s = 10, .fuel_l = 0.1, .asks = true};  // better in all else
  judge.legs[2] = {.share = 0.05, .time_s = 10, .fuel_l = 0.1};
  RouteQuestion question = question_of({0, 3});
  question.permitted_by = "N. Warden";
  for (const Preference prefer :
       {Preference::safest, Preference::quickest, Preference::least_fuel}) {
    question.prefer = prefer;
    question.most_alternatives = 0;
    const auto best = routes_of(find_routes(network, judge, question));
    REQUIRE(best.size() == 1);
    CHECK(legs_of(best[0]) == std::vector<LegId>{leg(4), leg(6)});
    CHECK_FALSE(best[0].needs_permission);
    question.most_alternatives = 3;
    const auto routes = routes_of(find_routes(network, judge, question));
    REQUIRE(routes.size() == 2);
    CHECK_FALSE(routes[0].needs_permission);
    CHECK(legs_of(routes[1]) == std::vector<LegId>{leg(0), leg(2)});
    CHECK(routes[1].needs_permission);
  }
}

TEST_CASE("a way whose open leg closes by the hour it is reached gives way to a decision") {
  const Network network = two_ways();
  FakeJudge judge{network};
  judge.legs[0].asks = true;
  judge.legs[6].closes_s = 1030;  // it is reached at 1060
  for (const std::size_t alternatives : {0U, 3U}) {
    RouteQuestion question = question_of({0, 3});
    question.most_alternatives = alternatives;
    CHECK(none_of(find_routes(network, judge, question)).obstacles.size() == 1);
    question.permitted_by = "N. Warden";
    const auto routes = routes_of(find_routes(network, judge, question));
    REQUIRE(routes.size() == 1);
    CHECK(legs_of(routes[0]) == std::vector<LegId>{leg(0), leg(2)});
    CHECK(routes[0].needs_permission);
  }
}
