// The day board against single questions, in snow that nobody knows, and with too heavy a load.
#include "day/day_board.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "base/require.h"
#include "day/other_rewalks.h"
#include "passage/demo_scene.h"

using namespace rimehaul;

namespace {

/// Snow of which nobody has said anything.
class UnknownSnow final : public snow::SnowAt {
 public:
  [[nodiscard]] std::optional<snow::SnowState> at(const snow::PlaceAndHour&) const override {
    return std::nullopt;
  }
  [[nodiscard]] const snow::DayWeather& weather() const override { return weather_; }
  [[nodiscard]] snow::Told told_by() const override { return {"nobody", {}}; }
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period) const override {
    return {};
  }

 private:
  snow::DayWeather weather_ = testing::plain_weather();
};

passage::Scene demo() {
  return testing::scene_of({.ground = testing::rolling()}, testing::two_ways());
}

day::BoardQuestion question_about(const passage::Scene& scene) {
  const std::vector<day::Stops> pairs = day::all_pairs(scene.network);
  return {.rows = {pairs.begin(), pairs.end()}, .depart = testing::mid_morning()};
}

/// Six places drawn at random, joined in a ring and now and then across, with a
/// station at each of four.
testing::TestTrails trails_at_random(std::uint32_t seed) {
  std::mt19937 engine{seed};
  std::vector<geo::MapPoint> places;
  for (int i = 0; i < 6; ++i) {
    const auto east = static_cast<double>(50 + engine() % 600);
    places.push_back(testing::place(east, static_cast<double>(50 + engine() % 500)));
  }
  testing::TestTrails all;
  for (std::size_t i = 0; i < 9; ++i) {
    const std::size_t from = i < 6 ? i : engine() % 3;
    const std::size_t to = i < 6 ? (i + 1) % 6 : engine() % 6;
    if (from != to) {
      all.trails.push_back(
          testing::plain_trail("Trail " + std::to_string(i), {places[from], places[to]}));
    }
  }
  for (std::size_t i = 0; i < 4; ++i) {
    all.stations.push_back(testing::plain_station("Station " + std::to_string(i), places[i]));
  }
  return all;
}

/// The very numbers of the same question asked alone, and the very legs.
void check_as_alone(const day::BoardCell& cell, const passage::Judge& judge,
                    units::Instant depart) {
  search::RouteQuestion alone;
  alone.stations = std::get<day::Stops>(cell.trip).stations;
  alone.depart = depart;
  alone.most_alternatives = 0;
  const auto answer = search::find_routes(judge.scene().network, judge, alone);
  const auto* routes = std::get_if<std::vector<search::Route>>(&answer);
  CHECK((cell.verdict == passage::Verdict::open) == (routes != nullptr));
  if (routes == nullptr) {
    CHECK(cell.why == std::get<search::NoRoute>(answer).why);
    return;
  }
  std::vector<trails::LegId> legs;
  for (const search::RouteLeg& part : routes->front().legs) {
    legs.push_back(part.leg);
  }
  CHECK(cell.way == legs);
  CHECK(cell.worst_share == routes->front().worst_share);
  CHECK(cell.time == routes->front().time);
  CHECK(cell.length == routes->front().length);
  CHECK(cell.fuel == routes->front().fuel);
  REQUIRE(cell.binding.has_value());
  CHECK(cell.binding->share == cell.worst_share);
}

}  // namespace

TEST_CASE("a cell of the board is what the same question alone is answered, to the last digit") {
  const passage::Scene scene = demo();
  const rig::Rig rig = testing::solo_rig();
  const day::BoardQuestion question = question_about(scene);
  REQUIRE(question.rows.size() >= 2);
  for (const auto wetness : {snow::Wetness::dry, snow::Wetness::slush}) {
    const snow::ConstantSnow snow = testing::snow_of(wetness);
    const passage::Judge judge{scene, rig, snow};
    const std::array columns{day::BoardSnow{snow::SnowState{.wetness = wetness}, judge}};
    const day::DayBoard board = day::board_of(columns, question);
    REQUIRE(board.cells.size() == question.rows.size());
    for (const day::BoardCell& cell : board.cells) {
      check_as_alone(cell, judge, question.depart);
    }
  }
}

TEST_CASE("on trails drawn at random each cell is what the same question alone is answered") {
  std::size_t open = 0;
  std::size_t closed = 0;
  for (const std::uint32_t seed : {1U, 2U, 3U}) {
    CAPTURE(seed);
    const testing::Surface steeper = [](double east_m, double north_m) {
      return 1200.0 + 0.09 * north_m + 5.0 * std::sin(east_m / 90.0);
    };
    const passage::Scene scene = testing::scene_of({.ground = steeper}, trails_at_random(seed));
    const rig::Rig rig = testing::solo_rig();
    const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::moist);
    const passage::Judge judge{scene, rig, snow};
    const std::array columns{
        day::BoardSnow{snow::SnowState{.wetness = snow::Wetness::moist}, judge}};
    const day::BoardQuestion question = question_about(scene);
    for (const day::BoardCell& cell : day::board_of(columns, question).cells) {
      check_as_alone(cell, judge, question.depart);
      ++(cell.verdict == passage::Verdict::open ? open : closed);
    }
  }
  CHECK(open > 8);
  CHECK(closed > 8);
}

TEST_CASE("a board of two rigs says of each what a board of it alone says") {
  const passage::Scene scene = demo();
  const rig::Rig solo = testing::solo_rig();
  const rig::Rig towing = testing::towing_rig();
  const snow::ConstantSnow dry = testing::snow_of(snow::Wetness::dry);
  const snow::ConstantSnow wet = testing::snow_of(snow::Wetness::wet);
  const passage::Judge solo_dry{scene, solo, dry};
  const passage::Judge towing_dry{scene, towing, dry};
  const passage::Judge solo_wet{scene, solo, wet};
  const std::array all{day::BoardSnow{snow::SnowState{.wetness = snow::Wetness::dry}, solo_dry},
                       day::BoardSnow{snow::SnowState{.wetness = snow::Wetness::dry}, towing_dry},
                       day::BoardSnow{snow::SnowState{.wetness = snow::Wetness::wet}, solo_wet}};
  const day::BoardQuestion question = question_about(scene);
  const day::DayBoard together = day::board_of(all, question);
  REQUIRE(together.cells.size() == all.size() * question.rows.size());
  for (std::size_t column = 0; column < all.size(); ++column) {
    const day::DayBoard alone = day::board_of(std::span{all}.subspan(column, 1), question);
    for (std::size_t pair = 0; pair < question.rows.size(); ++pair) {
      const day::BoardCell& cell = together.cells[pair * all.size() + column];
      CHECK(cell.verdict == alone.cells[pair].verdict);
      CHECK(cell.way == alone.cells[pair].way);
      CHECK(cell.worst_share == alone.cells[pair].worst_share);
      CHECK(cell.time == alone.cells[pair].time);
      CHECK(cell.fuel == alone.cells[pair].fuel);
      CHECK(cell.loads == alone.cells[pair].loads);
      CHECK(cell.why == alone.cells[pair].why);
    }
  }
}

TEST_CASE(
    "where nobody knows the snow every pair is closed, and the board says that it is missing") {
  const passage::Scene scene = demo();
  const rig::Rig rig = testing::solo_rig();
  const UnknownSnow snow;
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  const day::DayBoard board = day::board_of(columns, question);
  REQUIRE(!board.cells.empty());
  for (const day::BoardCell& cell : board.cells) {
    CHECK(cell.verdict == passage::Verdict::closed);
    REQUIRE(cell.binding.has_value());
    CHECK(cell.stand == passage::Stand::missing);
    CHECK(!cell.loads.any());
  }
}

TEST_CASE("with more on the bed than it is rated for, the board tells the loads that open a pair") {
  const passage::Scene scene = demo();
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = rig.carrier.bed_rating + units::Kilograms{1};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  std::size_t restricted = 0;
  for (const day::BoardCell& cell : day::board_of(columns, question).cells) {
    if (cell.verdict != passage::Verdict::restricted) {
      continue;
    }
    ++restricted;
    REQUIRE(cell.loads.bed.size() == 1);
    // Both ends, driven alone, are open.
    for (const units::Kilograms load : {cell.loads.bed[0].from, cell.loads.bed[0].to}) {
      rig::Rig other = rig;
      other.load.bed = load;
      const passage::Judge judge_of_other{scene, other, snow};
      const std::array alone{day::BoardSnow{{}, judge_of_other}};
      day::BoardQuestion one = question;
      one.rows = {cell.trip};
      CHECK(day::board_of(alone, one).cells.front().verdict == passage::Verdict::open);
    }
  }
  CHECK(restricted > 0);
}

TEST_CASE("too little fuel for the way and the reserve closes a pair that is open otherwise") {
  const passage::Scene scene = demo();
  rig::Rig rig = testing::solo_rig();
  rig.load.fuel = rig.carrier.tank * scene.rules.fuel_reserve;
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  const day::DayBoard board = day::board_of(columns, question_about(scene));
  REQUIRE(!board.cells.empty());
  std::size_t short_of_fuel = 0;
  for (const day::BoardCell& cell : board.cells) {
    CHECK(cell.verdict == passage::Verdict::closed);
    short_of_fuel += cell.fuel_to_spare.has_value() ? 1 : 0;
  }
  CHECK(short_of_fuel > 0);
}

TEST_CASE("every open way of the board is walked again, and places are told") {
  const passage::Scene scene = demo();
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  question.rewalk = testing::counted;
  testing::walks = 0;
  std::size_t open = 0;
  for (const day::BoardCell& cell : day::board_of(columns, question).cells) {
    open += cell.verdict == passage::Verdict::open ? 1 : 0;
    CHECK((cell.places_rewalked > 0) == (cell.verdict == passage::Verdict::open));
  }
  CHECK(open > 0);
  CHECK(testing::walks == open);
}

TEST_CASE("a way that is worse when walked again withholds the board") {
  const passage::Scene scene = demo();
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  question.rewalk = testing::finds_fault;
  CHECK_THROWS_AS(static_cast<void>(day::board_of(columns, question)), base::OurFault);
}

namespace {

/// A trail beside steep ground, for which a named person has to decide at level 1.
passage::Scene beside_a_bank() {
  const testing::Surface bank = [](double east_m, double /*north_m*/) {
    return 1000.0 + (east_m < 7.0 ? 0.0 : std::min(east_m - 7.0, 60.0) * 0.84);
  };
  return testing::scene_of({.ground = bank, .cell_m = 2.0}, testing::straight_trail(0));
}

std::vector<day::BoardCell> cells_beside_a_bank(const rig::Rig& rig, audit::WalkAgain rewalk) {
  const passage::Scene scene = beside_a_bank();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  question.rewalk = rewalk;
  return day::board_of(columns, question).cells;
}

}  // namespace

TEST_CASE("a pair that waits for a decision alone is restricted, and its way is walked again") {
  testing::walks = 0;
  const auto cells = cells_beside_a_bank(testing::solo_rig(), testing::counted);
  REQUIRE(cells.size() == 2);
  for (const day::BoardCell& cell : cells) {
    CHECK(cell.verdict == passage::Verdict::restricted);
    CHECK(!cell.decision.empty());
    CHECK(cell.stand == passage::Stand::asks);
    CHECK(cell.time > units::Seconds{0});
    CHECK(cell.places_rewalked > 0);
  }
  CHECK(testing::walks == 2);
}

TEST_CASE("no decision opens a pair for which there is too little fuel") {
  rig::Rig rig = testing::solo_rig();
  rig.load.fuel = rig.carrier.tank * passage::default_rules().fuel_reserve;
  testing::walks = 0;
  for (const day::BoardCell& cell : cells_beside_a_bank(rig, testing::counted)) {
    CHECK(cell.verdict == passage::Verdict::closed);
    CHECK(cell.fuel_to_spare.has_value());
    CHECK(!cell.binding.has_value());
    CHECK(cell.decision.empty());
  }
  CHECK(testing::walks == 0);
}

TEST_CASE("no load opens a pair for which there is too little fuel") {
  const passage::Scene scene = demo();
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = rig.carrier.bed_rating + units::Kilograms{1};
  rig.load.fuel = rig.carrier.tank * scene.rules.fuel_reserve;
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  for (const day::BoardCell& cell : day::board_of(columns, question).cells) {
    CHECK(cell.verdict == passage::Verdict::closed);
    CHECK(!cell.loads.any());
  }
}

TEST_CASE("the ends of every load interval told are walked again") {
  const passage::Scene scene = demo();
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = rig.carrier.bed_rating + units::Kilograms{1};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  question.rewalk = testing::counted;
  testing::walks = 0;
  std::size_t intervals = 0;
  for (const day::BoardCell& cell : day::board_of(columns, question).cells) {
    intervals += cell.loads.bed.size();
    CHECK((cell.places_rewalked > 0) == cell.loads.any());
  }
  CHECK(intervals > 0);
  CHECK(testing::walks >= 2 * intervals);
}

namespace {

/// One way past steep ground that asks for a decision, and perhaps another that keeps away from it.
enum class Around { no, yes };

std::vector<day::BoardCell> overloaded_past_a_bank(Around around) {
  const testing::Surface bank = [](double east_m, double /*north_m*/) {
    return 1000.0 + (east_m < 107.0 ? 0.0 : std::min(east_m - 107.0, 60.0) * 0.84);
  };
  testing::TestTrails trails;
  trails.trails = {
      testing::plain_trail("Past", {testing::place(0, 0), testing::place(100, 150),
                                    testing::place(100, 250), testing::place(0, 400)})};
  if (around == Around::yes) {
    trails.trails.push_back(
        testing::plain_trail("Out", {testing::place(0, 0), testing::place(-100, 200)}));
    trails.trails.push_back(
        testing::plain_trail("Back", {testing::place(-100, 200), testing::place(0, 400)}));
  }
  trails.stations = {testing::plain_station("Start", testing::place(0, 0)),
                     testing::plain_station("End", testing::place(0, 400))};
  const passage::Scene scene = testing::scene_of({.ground = bank, .cell_m = 2.0}, trails);
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = rig.carrier.bed_rating + units::Kilograms{1};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  day::BoardQuestion question = question_about(scene);
  return day::board_of(columns, question).cells;
}

}  // namespace

TEST_CASE("a load that opens a way without a decision is told before one that needs it") {
  for (const day::BoardCell& cell : overloaded_past_a_bank(Around::no)) {
    CHECK(cell.verdict == passage::Verdict::restricted);
    CHECK(cell.and_decision);
  }
  for (const day::BoardCell& cell : overloaded_past_a_bank(Around::yes)) {
    CHECK(cell.verdict == passage::Verdict::restricted);
    CHECK_FALSE(cell.and_decision);
    CHECK(cell.way.size() == 2);
  }
}
