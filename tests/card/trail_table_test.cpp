// The day board of trails: what its rows share is told once, and where on a trail it binds.
#include <doctest/doctest.h>

#include <array>

#include "card/day_table.h"
#include "card/day_table_words.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {

namespace {

std::size_t times(const std::string& text, const std::string& part) {
  std::size_t count = 0;
  for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
    ++count;
  }
  return count;
}

DayRow row_along(const std::string& trail, std::vector<std::string> places) {
  DayRow row{.name = trail + ", from " + places.front() + " to " + places.back(),
             .by_way_of = std::move(places),
             .rig = "Hare",
             .trailer = "",
             .driver_level = "seasoned",
             .load = testing::solo_rig().load};
  row.trail = trail;
  row.cells.push_back({.from = "", .to = "", .snow = {}});
  return row;
}

DayTable two_trails() {
  DayTable table;
  table.columns = {{.snow = {}, .depart = testing::mid_morning()}};
  table.weather = testing::plain_weather();
  table.rows = {row_along("Low", {"Base", "Top"}),
                row_along("High", {"Base", "junction 2", "Top"})};
  return table;
}

}  // namespace

TEST_CASE("one rig for all trails is told once, at the head; rigs that differ on every row") {
  DayTable table = two_trails();
  CHECK(basis_of(table).front().label == "Rig");
  CHECK(times(text_of(table, 80), "driver level seasoned") == 1);
  table.rows[1].load.bed = units::Kilograms{10};
  CHECK(rig_of_all(table).empty());
  CHECK(times(text_of(table, 80), "driver level seasoned") == 2);
}

TEST_CASE("the places along a trail are told where there are more than its ends") {
  const std::string text = text_of(two_trails(), 80);
  CHECK(times(text, "Base - junction 2 - Top") == 1);
  CHECK(times(text, "Base - Top") == 0);
}

TEST_CASE("a table of routes tells each row's rig and way, were they all the same") {
  DayTable table = two_trails();
  for (DayRow& row : table.rows) {
    row.trail.clear();
  }
  CHECK_FALSE(is_of_trails(table));
  CHECK(basis_of(table).front().label == "Leave");
  const std::string text = text_of(table, 80);
  CHECK(times(text, "driver level seasoned") == 2);
  CHECK(times(text, "Base - Top") == 1);
  CHECK(meanings_of(table).front().text.find("by the safest way") != std::string::npos);
  CHECK(meanings_of(two_trails()).front().text.find("all along the trail") != std::string::npos);
}

TEST_CASE("what closes a trail of several legs is told with the junctions between which it lies") {
  using testing::place;
  testing::TestTrails all = testing::two_ways();
  all.zones = {{.name = "Nursery",
                .kind = trails::ZoneKind::forbidden,
                .region = {{{place(400, 100), place(500, 100), place(500, 160), place(400, 160),
                             place(400, 100)}}},
                .speed = {},
                .file = "zones.gpkg"}};
  const passage::Scene scene = testing::scene_of({testing::rolling()}, all);
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  const passage::Judge judge{scene, rig, snow};
  const std::array columns{day::BoardSnow{{}, judge}};
  const std::vector<search::FixedWay> ways = day::marked_trails(scene.network);
  const day::BoardQuestion question{.rows = {ways[0], ways[1], ways[6], day::Stops{{0, 1}}},
                                    .depart = testing::mid_morning()};
  const BoardReport report = board_report(day::board_of(columns, question), scene, rig);
  REQUIRE(report.rows.size() == 4);
  CHECK(report.rows[0].from == "Depot");
  CHECK(report.rows[0].where_on_trail == "from junction 2 to Lodge");
  CHECK(reason_of(report.rows[0]) == "zone on Lower Way, from junction 2 to Lodge");
  CHECK(report.rows[1].where_on_trail == "from Lodge to junction 2");
  CHECK(report.rows[2].where_on_trail.empty());  // the Hut Spur is one leg
  CHECK(report.rows[3].where_on_trail.empty());  // the best way between two stations
}

}  // namespace rimehaul::card
