// Questions that share what they are found by, against each of them asked alone.
#include "search/route_finder.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

#include "base/require.h"
#include "search/fake_judge.h"

using namespace rimehaul::search;
using namespace rimehaul::testing;
using rimehaul::base::OurFault;
using rimehaul::trails::JunctionId;
using rimehaul::trails::LegId;
using rimehaul::trails::Network;
using rimehaul::units::Instant;

namespace {

/// All that an answer says of its routes, in numbers.
using Told = std::vector<std::vector<double>>;

Told told_routes(const std::vector<Route>& routes) {
  Told told;
  for (const Route& route : routes) {
    std::vector<double>& numbers = told.emplace_back();
    for (const RouteLeg& one : route.legs) {
      numbers.push_back(static_cast<double>(one.leg));
      numbers.push_back(static_cast<double>(one.entry.seconds));
    }
    numbers.insert(numbers.end(), {route.worst_share, route.time.value(), route.fuel.value(),
                                   route.length.value(), route.needs_permission ? 1.0 : 0.0});
  }
  return told;
}

/// The same of a refusal: its way, then each obstacle.
Told told_refusal(const NoRoute& none) {
  Told told{{}};
  for (const LegId one : none.way) {
    told.front().push_back(static_cast<double>(one));
  }
  for (const Obstacle& obstacle : none.obstacles) {
    const auto from = obstacle.turn_from.value_or(leg(1'000'000));
    told.push_back({static_cast<double>(obstacle.leg), static_cast<double>(from),
                    static_cast<double>(obstacle.entry.seconds),
                    static_cast<double>(obstacle.finding.check)});
  }
  return told;
}

struct Answer {
  std::string why;
  Told told;

  friend bool operator==(const Answer&, const Answer&) = default;
};

Answer answer_of(const RouteAnswer& answer) {
  if (const auto* none = std::get_if<NoRoute>(&answer)) {
    return {.why = none->why, .told = told_refusal(*none)};
  }
  return {.why = "", .told = told_routes(std::get<std::vector<Route>>(answer))};
}

/// Every pair of stations, by what it prefers and with and without a decision, in random order.
std::vector<RouteQuestion> all_questions(Dice& dice, const Network& network) {
  std::vector<RouteQuestion> questions;
  for (std::size_t from = 0; from < network.stations.size(); ++from) {
    for (std::size_t to = 0; to < network.stations.size(); ++to) {
      RouteQuestion question;
      question.stations = {from, to};
      question.depart = Instant{1000};
      question.prefer = std::array{Preference::safest, Preference::quickest,
                                   Preference::least_fuel}[dice.below(3)];
      question.permitted_by = dice.one_in(2) ? "N. Warden" : "";
      question.most_alternatives = dice.one_in(6) ? 2 : 0;
      questions.push_back(question);
      std::swap(questions.back(),
                questions[dice.below(static_cast<std::uint32_t>(questions.size()))]);
    }
  }
  return questions;
}

Between everywhere(const Network& network) {
  Between between;
  for (std::uint32_t i = 0; i < network.junctions.size(); ++i) {
    between.from.push_back(JunctionId{i});
  }
  between.to = between.from;
  return between;
}

/// Junctions, some of them joined by trails over many junctions where nothing else meets.
Network random_chains(Dice& dice, std::uint32_t junctions, std::size_t trails) {
  std::vector<Edge> edges;
  for (const Edge& edge : random_edges(dice, junctions, trails)) {
    std::uint32_t at = edge.from;
    for (std::uint32_t i = dice.below(5); i > 0; --i) {
      edges.push_back({at, junctions});
      at = junctions++;
    }
    edges.push_back({at, edge.to});
  }
  return network_of(junctions, edges);
}

}  // namespace

TEST_CASE("questions that share ways are answered to the last digit as each is alone") {
  std::size_t found = 0;
  std::size_t refused = 0;
  std::size_t late = 0;
  for (std::uint32_t seed = 1; seed <= 40; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    const Network network = random_chains(dice, 7, 11);
    FakeJudge judge{network};
    roll_judgements(dice, network, judge);
    judge.hopeful = std::array{std::nan(""), 0.0, 0.5, 1.0}[dice.below(4)];
    for (FakeLeg& one : judge.legs) {
      one.fuel_l += 0.25;
      one.untold = dice.one_in(30);
      one.closes_s = dice.one_in(10) ? 1050 : one.closes_s;
      if (dice.one_in(2)) {
        one.time_s *= 1.0 / 3;
      }
    }
    const JunctionWays shared = ways_between(network, everywhere(network));
    RouteFinder finder{network, judge, Instant{1000}, shared};
    for (const RouteQuestion& question : all_questions(dice, network)) {
      CAPTURE(question.stations.front());
      CAPTURE(question.stations.back());
      const Answer alone = answer_of(find_routes(network, judge, question));
      CHECK(answer_of(finder.routes(question)) == alone);
      found += alone.why.empty() ? 1U : 0U;
      refused += alone.why.empty() ? 0U : 1U;
      late += alone.why.find("too late") != std::string::npos ? 1U : 0U;
    }
  }
  CHECK(found > 2000);
  CHECK(refused > 2000);
  CHECK(late > 20);
}

TEST_CASE(
    "a way past stations in order, and one from where no ways are shared, are found as well") {
  const Network network = network_of(4, {{0, 1}, {1, 2}, {2, 3}, {3, 0}});
  const FakeJudge judge{network};
  const JunctionWays shared =
      ways_between(network, {.from = {JunctionId{0}}, .to = {JunctionId{2}}});
  RouteFinder finder{network, judge, Instant{0}, shared};
  for (const std::vector<std::size_t>& stations :
       {std::vector<std::size_t>{0, 2}, {0, 1, 2}, {1, 2}, {0, 3}, {2, 2}, {0}, {0, 9}}) {
    RouteQuestion question;
    question.stations = stations;
    question.most_alternatives = 0;
    CHECK(answer_of(finder.routes(question)) == answer_of(find_routes(network, judge, question)));
  }
}

TEST_CASE("a question for another hour than the finder's is our fault") {
  const Network network = network_of(2, {{0, 1}});
  const FakeJudge judge{network};
  RouteFinder finder{network, judge, Instant{0}};
  RouteQuestion question;
  question.stations = {0, 1};
  CHECK(std::holds_alternative<std::vector<Route>>(finder.routes(question)));
  question.depart = Instant{1};
  CHECK_THROWS_AS(static_cast<void>(finder.routes(question)), OurFault);
}
