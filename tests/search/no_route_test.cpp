// What is said when there is no route: why, what stands in the way, and in which order.
#include <doctest/doctest.h>

#include "search/fake_judge.h"

using namespace rimehaul::search;
using rimehaul::testing::FakeJudge;
using rimehaul::testing::leg;
using rimehaul::testing::network_of;
using rimehaul::trails::Network;
using rimehaul::units::Instant;

namespace {

RouteQuestion question_of(std::vector<std::size_t> stations) {
  RouteQuestion question;
  question.stations = std::move(stations);
  question.depart = Instant{1000};
  return question;
}

NoRoute none_of(const RouteAnswer& answer) {
  REQUIRE(std::holds_alternative<NoRoute>(answer));
  return std::get<NoRoute>(answer);
}

}  // namespace

TEST_CASE("a question without an answer is told why in one line") {
  Network network = network_of(4, {{0, 1}, {2, 3}});
  const FakeJudge judge{network};
  CHECK(none_of(find_routes(network, judge, question_of({0}))).why ==
        "a route needs a station to start from and one to reach");
  CHECK(none_of(find_routes(network, judge, question_of({0, 9}))).why ==
        "there is no station number 9 at this site");
  CHECK(none_of(find_routes(network, judge, question_of({1, 1}))).why ==
        "the way to Station 1 starts where it ends");
  CHECK(none_of(find_routes(network, judge, question_of({0, 1, 3}))).why ==
        "no trails lead from Station 0 by Station 1 to Station 3, open or closed");
  network.junctions[3].station.reset();
  CHECK(none_of(find_routes(network, judge, question_of({0, 3}))).why ==
        "no trail reaches Station 3");
}

TEST_CASE(
    "when all ways are blocked, the one with the fewest closed legs is told, then the mildest") {
  const Network network = network_of(5, {{0, 1}, {1, 4}, {0, 2}, {2, 4}, {0, 3}, {3, 4}});
  FakeJudge judge{network};
  judge.legs[0].share = 0.71;  // by 1: two that are hardly closed
  judge.legs[2].share = 0.71;
  judge.legs[4].share = 1.5;  // by 2: one far above
  judge.legs[8].share = 0.9;  // by 3: one above
  const NoRoute none = none_of(find_routes(network, judge, question_of({0, 4})));
  REQUIRE(none.obstacles.size() == 1);
  CHECK(none.obstacles[0].leg == leg(8));
  CHECK(none.obstacles[0].finding.share == 0.9);
  CHECK(none.obstacles[0].entry == Instant{1000});
  CHECK(
      none.why ==
      "no open way from Station 0 to Station 4: 1 leg blocks even the way that is nearest to open");
  CHECK(none.way == std::vector{leg(8), leg(10)});
  judge.legs[8].refused = true;  // unknown is farther than far above
  CHECK(none_of(find_routes(network, judge, question_of({0, 4}))).obstacles[0].leg == leg(4));
}

TEST_CASE(
    "a way of which somebody has only to tell the day comes before one that is over a limit") {
  const Network network = network_of(4, {{0, 1}, {1, 3}, {0, 2}, {2, 3}});
  FakeJudge judge{network};
  judge.legs[0].untold = true;  // by 1: two legs nobody spoke of, which ask for a decision too
  judge.legs[2].untold = true;
  judge.legs[2].asks = true;
  judge.legs[4].share = 0.71;  // by 2: hardly closed
  const NoRoute told = none_of(find_routes(network, judge, question_of({0, 3})));
  CHECK(told.way == std::vector{leg(0), leg(2)});
  REQUIRE(told.obstacles.size() == 2);
  CHECK(told.obstacles[0].finding.check == rimehaul::passage::Check::mark);
  // Once something that is known stands in the same way too, words alone do not open it.
  judge.legs[0].share = 0.72;
  CHECK(none_of(find_routes(network, judge, question_of({0, 3}))).way ==
        std::vector{leg(4), leg(6)});
  // A decision alone is nearer still.
  judge.legs[0].share = 0.1;
  judge.legs[4].share = 0.1;
  judge.legs[4].asks = true;
  judge.legs[6].asks = true;
  CHECK(none_of(find_routes(network, judge, question_of({0, 3}))).way ==
        std::vector{leg(4), leg(6)});
}

TEST_CASE("obstacles are told nearest to open first: decisions, lower shares, refusals") {
  const Network network = network_of(4, {{0, 1}, {1, 2}, {2, 3}});
  FakeJudge judge{network};
  judge.legs[0].refused = true;
  judge.legs[2].share = 0.8;
  judge.legs[4].asks = true;
  judge.turns[{leg(0), leg(2)}] = {.share = 0.75, .refused = false};
  const NoRoute none = none_of(find_routes(network, judge, question_of({0, 3})));
  REQUIRE(none.obstacles.size() == 4);
  CHECK(none.obstacles[0].leg == leg(4));
  CHECK(none.obstacles[1].leg == leg(2));
  CHECK(none.obstacles[1].turn_from == leg(0));
  CHECK(none.obstacles[2].leg == leg(2));
  CHECK_FALSE(none.obstacles[2].turn_from.has_value());
  CHECK(none.obstacles[3].leg == leg(0));
}

TEST_CASE("when every way closes before it is reached, the answer says where and when") {
  const Network network = network_of(4, {{0, 1}, {1, 3}, {0, 2}, {2, 3}});
  FakeJudge judge{network};
  judge.legs[2].closes_s = 1060;
  judge.legs[6].closes_s = 1060;
  const NoRoute none = none_of(find_routes(network, judge, question_of({0, 3})));
  CHECK(none.why.find("stays open until it is reached") != std::string::npos);
  REQUIRE(none.obstacles.size() == 2);
  CHECK(none.obstacles[0].entry == Instant{1060});
}

TEST_CASE("the wrong way of a trail is no way to open, however many closed legs go round it") {
  const Network network = network_of(4, {{0, 3}, {0, 1}, {1, 2}, {2, 3}});
  FakeJudge judge{network};
  judge.legs[0].refused = true;  // one-way, the other way
  for (const std::size_t closed : {2U, 4U, 6U}) {
    judge.legs[closed].share = 0.9;
  }
  const NoRoute none = none_of(find_routes(network, judge, question_of({0, 3})));
  CHECK(none.obstacles.size() == 3);
  CHECK(none.way == std::vector{leg(2), leg(4), leg(6)});
  judge.turns[{leg(2), leg(4)}] = {.share = 0.75, .refused = false};
  CHECK(none_of(find_routes(network, judge, question_of({0, 3}))).why.find("3 legs and 1 turn") !=
        std::string::npos);
}
