// Trails as rows of the day board: against judging each leg by hand, in every direction alone.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "base/require.h"
#include "day/day_board.h"
#include "day/other_rewalks.h"
#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::day {

namespace {

using passage::Verdict;
using search::FixedWay;
using testing::place;
using trails::LegId;

BoardQuestion question_about(const passage::Scene& scene) {
  const std::vector<FixedWay> ways = marked_trails(scene.network);
  return {.rows = {ways.begin(), ways.end()}, .depart = testing::mid_morning()};
}

std::vector<BoardCell> cells_of(const passage::Scene& scene, const rig::Rig& rig,
                                const snow::SnowAt& snow) {
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{BoardSnow{{}, judge}};
  return board_of(columns, question_about(scene)).cells;
}

/// Five trails between places drawn at random on steep, rolling ground; the first is crossed by
/// the second, so that both have legs and turns.
passage::Scene at_random(std::uint32_t seed) {
  std::mt19937 engine{seed};
  const auto somewhere = [&engine] {
    const auto east = static_cast<double>(50 + engine() % 600);
    return place(east, static_cast<double>(50 + engine() % 500));
  };
  const geo::MapPoint meeting = somewhere();
  testing::TestTrails all;
  for (int i = 0; i < 5; ++i) {
    std::vector<geo::MapPoint> points{somewhere(), somewhere()};
    if (i < 3) {
      points.insert(points.begin() + 1, meeting);
    }
    all.trails.push_back(testing::plain_trail("Trail " + std::to_string(i), points));
  }
  const testing::Surface steep = [](double east_m, double north_m) {
    return 1200.0 + 0.08 * north_m + 4.0 * std::sin(east_m / 90.0);
  };
  return testing::scene_of({.ground = steep}, all);
}

/// What a loop over the legs comes to, each judged by itself when the one before it is driven.
struct ByHand {
  Verdict verdict = Verdict::open;
  double worst_share = 0.0;
  double time_s = 0.0;
  double fuel_l = 0.0;
};

ByHand by_hand(const passage::Judge& judge, const FixedWay& way) {
  ByHand sum;
  const auto take = [&](Verdict verdict, std::optional<double> share) {
    sum.verdict = std::max(sum.verdict, verdict);
    sum.worst_share = std::max(sum.worst_share, share.value_or(9.0));
  };
  for (std::size_t i = 0; i < way.legs.size(); ++i) {
    const units::Instant entry = units::after(testing::mid_morning(), units::Seconds{sum.time_s});
    const passage::LegJudgement leg = judge.judge(way.legs[i], entry);
    take(leg.verdict, leg.share());
    if (i > 0) {
      const auto turn = judge.judge_turn(way.legs[i - 1], way.legs[i], entry);
      take(turn.verdict, turn.binding.share);
    }
    sum.time_s += leg.time.value();
    sum.fuel_l += leg.fuel.value();
  }
  return sum;
}

/// The leg or turn where a cell says that it binds is what the cell says.
void check_place(const BoardCell& cell, const passage::Judge& judge) {
  REQUIRE(cell.binding.has_value());
  REQUIRE(cell.leg.has_value());
  const auto& legs = std::get<FixedWay>(cell.trip).legs;
  CHECK(std::ranges::find(legs, *cell.leg) != legs.end());
  const auto share = cell.binding->share;
  if (cell.turn_from) {
    CHECK(judge.judge_turn(*cell.turn_from, *cell.leg, cell.depart).binding.share == share);
    return;
  }
  const auto leg = judge.judge(*cell.leg, cell.depart);
  CHECK(std::ranges::any_of(leg.findings, [&](const passage::Finding& finding) {
    return finding.check == cell.binding->check && finding.share == share;
  }));
}

}  // namespace

TEST_CASE("every marked trail is a row each way it may be driven, both where nobody said which") {
  testing::TestTrails all;
  for (const std::string name : {"Both", "Forward", "Backward", "Untold", "Open ground"}) {
    const double east = 100.0 * static_cast<double>(all.trails.size());
    all.trails.push_back(testing::plain_trail(name, {place(east, 0), place(east, 200)}));
  }
  all.trails[1].direction = trails::AllowedDirection::forward;
  all.trails[2].direction = trails::AllowedDirection::backward;
  all.trails[3].direction.reset();
  all.trails[4].marked = false;
  const trails::Network network = testing::network_of(all);
  std::vector<std::pair<std::size_t, trails::Way>> rows;
  for (const FixedWay& way : marked_trails(network)) {
    REQUIRE(way.legs.size() == 1);
    const trails::Leg& leg = network.legs[static_cast<std::size_t>(way.legs[0])];
    rows.emplace_back(leg.trail, leg.way);
  }
  using enum trails::Way;
  CHECK(rows ==
        std::vector<std::pair<std::size_t, trails::Way>>{
            {0, as_drawn}, {0, against}, {1, as_drawn}, {2, against}, {3, as_drawn}, {3, against}});
}

TEST_CASE("a trail of which nobody said which way it may be driven is closed both ways") {
  testing::TestTrails all = testing::straight_trail(0);
  all.trails[0].direction.reset();
  const passage::Scene scene = testing::scene_of({.ground = testing::rolling()}, all);
  const auto cells = cells_of(scene, testing::solo_rig(), testing::snow_of(snow::Wetness::dry));
  REQUIRE(cells.size() == 2);
  for (const BoardCell& cell : cells) {
    CHECK(cell.verdict == Verdict::closed);
    CHECK(cell.stand == passage::Stand::missing);
  }
}

TEST_CASE("a trail's cell is the worst of its legs and turns, and the sum of what they take") {
  std::size_t open = 0;
  std::size_t closed = 0;
  std::size_t one_way_only = 0;
  for (std::uint32_t seed = 1; seed <= 4; ++seed) {
    const passage::Scene scene = at_random(seed);
    const rig::Rig rig = testing::solo_rig();
    for (const auto wetness : {snow::Wetness::dry, snow::Wetness::wet, snow::Wetness::slush}) {
      CAPTURE(seed);
      const snow::ConstantSnow snow = testing::snow_of(wetness);
      const passage::Judge judge{scene, rig, snow};
      Verdict before = Verdict::open;
      const auto cells = cells_of(scene, rig, snow);
      for (std::size_t row = 0; row < cells.size(); ++row) {
        const BoardCell& cell = cells[row];
        const FixedWay& way = std::get<FixedWay>(cell.trip);
        const ByHand wanted = by_hand(judge, way);
        CHECK(cell.way == way.legs);
        check_place(cell, judge);
        one_way_only += row % 2 == 1 && cell.verdict != before ? 1 : 0;
        before = cell.verdict;
        REQUIRE((cell.verdict == Verdict::open) == (wanted.verdict == Verdict::open));
        if (cell.verdict != Verdict::open) {
          ++closed;
          continue;
        }
        ++open;
        CHECK(cell.worst_share == wanted.worst_share);
        CHECK(cell.binding->share == wanted.worst_share);
        CHECK(testing::near(cell.time.value(), wanted.time_s, 1e-9));
        CHECK(testing::near(cell.fuel.value(), wanted.fuel_l, 1e-12));
        CHECK(cell.fuel <= rig.load.fuel - rig.carrier.tank * scene.rules.fuel_reserve);
        CHECK(cell.places_rewalked > 0);
      }
    }
  }
  CHECK(open > 20);
  CHECK(closed > 20);
  CHECK(one_way_only > 3);
}

TEST_CASE("a trail with a closed leg is closed, were there a way round that is open") {
  testing::TestTrails all;
  const geo::MapPoint west = place(0, 0);
  const geo::MapPoint east = place(300, 0);
  const geo::MapPoint far = place(500, 0);
  all.trails = {testing::plain_trail("Straight", {west, east, far}),
                testing::plain_trail("Round", testing::rounded({west, place(150, 200), east}))};
  all.stations = {testing::plain_station("West", west), testing::plain_station("East", east)};
  all.zones = {{.name = "Nursery",
                .kind = trails::ZoneKind::forbidden,
                .region = {{{place(100, -20), place(200, -20), place(200, 20), place(100, 20),
                             place(100, -20)}}},
                .speed = {},
                .file = "zones.gpkg"}};
  const passage::Scene scene = testing::scene_of({.ground = testing::rolling()}, all);
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{BoardSnow{{}, judge}};
  BoardQuestion question = question_about(scene);
  question.rows.emplace_back(Stops{{0, 1}});
  const std::vector<BoardCell> cells = board_of(columns, question).cells;
  REQUIRE(cells.size() == 5);
  for (const std::uint32_t straight : {0U, 1U}) {
    CHECK(cells[straight].verdict == Verdict::closed);
    REQUIRE(cells[straight].binding.has_value());
    CHECK(cells[straight].binding->check == passage::Check::zone);
    CHECK(cells[straight].leg == LegId{straight});  // not the open leg to the far end
  }
  CHECK(cells[2].verdict == Verdict::open);
  CHECK(cells[4].verdict == Verdict::open);  // from station to station a way leads round
}

TEST_CASE("the loads that open a trail are told, and with both ends it is open by itself") {
  const passage::Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  rig::Rig rig = testing::solo_rig();
  rig.load.bed = rig.carrier.bed_rating + units::Kilograms{1};
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  std::size_t restricted = 0;
  for (const BoardCell& cell : cells_of(scene, rig, snow)) {
    if (cell.verdict != Verdict::restricted) {
      continue;
    }
    ++restricted;
    REQUIRE(cell.loads.bed.size() == 1);
    CHECK(cell.places_rewalked > 0);
    for (const units::Kilograms load : {cell.loads.bed[0].from, cell.loads.bed[0].to}) {
      rig::Rig other = rig;
      other.load.bed = load;
      const passage::Judge judge{scene, other, snow};
      CHECK(by_hand(judge, std::get<FixedWay>(cell.trip)).verdict == Verdict::open);
    }
    rig::Rig heavier = rig;
    heavier.load.bed = cell.loads.bed[0].to + units::Kilograms{1};
    const passage::Judge judge{scene, heavier, snow};
    CHECK(by_hand(judge, std::get<FixedWay>(cell.trip)).verdict == Verdict::closed);
  }
  CHECK(restricted > 4);
}

TEST_CASE("a trail with too little fuel for it and the reserve is closed, and opened by no load") {
  const passage::Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  rig::Rig rig = testing::solo_rig();
  rig.load.fuel = rig.carrier.tank * scene.rules.fuel_reserve;
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  for (const BoardCell& cell : cells_of(scene, rig, snow)) {
    CHECK(cell.verdict == Verdict::closed);
    CHECK(cell.fuel_to_spare.has_value());
  }
  rig.load.bed = rig.carrier.bed_rating + units::Kilograms{1};
  for (const BoardCell& cell : cells_of(scene, rig, snow)) {
    CHECK(cell.verdict == Verdict::closed);
    CHECK_FALSE(cell.loads.any());
  }
}

TEST_CASE("a trail that waits for a decision alone is restricted by it, and is walked again") {
  const testing::Surface bank = [](double east_m, double /*north_m*/) {
    return 1000.0 + (east_m < 7.0 ? 0.0 : std::min(east_m - 7.0, 60.0) * 0.84);
  };
  const passage::Scene scene =
      testing::scene_of({.ground = bank, .cell_m = 2.0}, testing::straight_trail(0));
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{BoardSnow{{}, judge}};
  BoardQuestion question = question_about(scene);
  question.rewalk = testing::counted;
  testing::walks = 0;
  const std::vector<BoardCell> cells = board_of(columns, question).cells;
  REQUIRE(cells.size() == 2);
  for (const BoardCell& cell : cells) {
    CHECK(cell.verdict == Verdict::restricted);
    CHECK_FALSE(cell.decision.empty());
    CHECK(cell.stand == passage::Stand::asks);
    CHECK(cell.time > units::Seconds{0});
  }
  CHECK(testing::walks == 2);
}

TEST_CASE("a trail that is worse when walked again withholds the board") {
  const passage::Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{BoardSnow{{}, judge}};
  BoardQuestion question = question_about(scene);
  question.rewalk = testing::finds_fault;
  CHECK_THROWS_AS(static_cast<void>(board_of(columns, question)), base::OurFault);
}

}  // namespace rimehaul::day
