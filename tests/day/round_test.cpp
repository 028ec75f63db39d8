// What a round of errands comes to before anything is judged: stops, what comes before what, and
// what is aboard.
#include "day/round.h"

#include <doctest/doctest.h>

#include "passage/demo_scene.h"

namespace rimehaul::day {

namespace {

using search::StopSet;
using units::Kilograms;

/// Stations with a trail to each, but for one that no trail reaches.
trails::Network stations() {
  const geo::MapPoint fork = testing::place(0, 0);
  testing::TestTrails all;
  int number = 0;
  for (const char* name : {"Depot", "Lodge", "Hut", "Ford", "Yard"}) {
    const geo::MapPoint end = testing::place(100.0 * (++number), 200);
    all.trails.push_back(testing::plain_trail(std::string{"To "} + name, {fork, end}));
    all.stations.push_back(testing::plain_station(name, end));
  }
  all.stations.push_back(testing::plain_station("Island", testing::place(900, 900)));
  return testing::network_of(all);
}

std::string why_unfit(const Round& round) {
  const auto stops = stops_of(round, stations());
  const auto* unfit = std::get_if<UnfitRound>(&stops);
  return unfit == nullptr ? "" : unfit->problem + "; " + unfit->remedy;
}

const Round kRound{
    .start = "Depot",
    .end = "Depot",
    .errands = {{.what = "gas", .from = "Depot", .to = "Hut", .bed = Kilograms{60}},
                {.what = "sacks", .from = "Hut", .to = "Depot", .bed = Kilograms{25}},
                {.what = "a guest", .from = "Hut", .to = "Lodge", .passengers = 1},
                {.what = "beams", .from = "Depot", .to = "Ford", .towed = Kilograms{90}}}};

}  // namespace

TEST_CASE("stops are what errands name beside start and end, each once") {
  const RoundStops stops = std::get<RoundStops>(stops_of(kRound, stations()));
  CHECK(stops.start == 0);
  CHECK(stops.end == 0);
  CHECK(stops.stations == std::vector<std::size_t>{2, 1, 3});
  CHECK(stops.after == std::vector<StopSet>{0, 0b001, 0});
  CHECK(stops.departed({}) == 0);
  CHECK(stops.departed({.called = 1, .from = 0, .to = 1}) == 2);
  CHECK(stops.reached({.called = 1, .from = 0, .to = 1}) == 1);
  CHECK(stops.reached({}) == 0);
}

TEST_CASE("what is aboard follows from the stops called at alone") {
  const Round& asked = kRound;
  const RoundStops stops = std::get<RoundStops>(stops_of(asked, stations()));
  rig::Rig stays = testing::towing_rig();
  stays.load = {
      .bed = Kilograms{10}, .towed = Kilograms{5}, .passengers = 0, .fuel = units::Litres{20}};
  const auto load = [&](StopSet called) { return rig_with(stays, asked, stops, called).load; };
  CHECK(load(0b000) ==
        rig::Load{.bed = Kilograms{70}, .towed = Kilograms{95}, .fuel = units::Litres{20}});
  CHECK(load(0b001) == rig::Load{.bed = Kilograms{35},
                                 .towed = Kilograms{95},
                                 .passengers = 1,
                                 .fuel = units::Litres{20}});
  CHECK(load(0b101) == rig::Load{.bed = Kilograms{35},
                                 .towed = Kilograms{5},
                                 .passengers = 1,
                                 .fuel = units::Litres{20}});
  CHECK(load(0b111) ==
        rig::Load{.bed = Kilograms{35}, .towed = Kilograms{5}, .fuel = units::Litres{20}});
}

TEST_CASE("what waits for what waits for something waits for that too") {
  const Round chain{.start = "Depot",
                    .end = "",
                    .errands = {{.what = "c", .from = "Lodge", .to = "Yard", .bed = Kilograms{1}},
                                {.what = "b", .from = "Ford", .to = "Lodge", .bed = Kilograms{1}},
                                {.what = "a", .from = "Hut", .to = "Ford", .bed = Kilograms{1}}}};
  const RoundStops stops = std::get<RoundStops>(stops_of(chain, stations()));
  CHECK(stops.stations == std::vector<std::size_t>{1, 4, 3, 2});
  CHECK(stops.after == std::vector<StopSet>{0b1100, 0b1101, 0b1000, 0});
  CHECK_FALSE(stops.end.has_value());
}

TEST_CASE("what is brought back to a start where the round does not end makes it a stop") {
  const Round back{
      .start = "Depot",
      .end = "Lodge",
      .errands = {{.what = "keys", .from = "Hut", .to = "Depot", .bed = Kilograms{1}}}};
  const RoundStops stops = std::get<RoundStops>(stops_of(back, stations()));
  CHECK(stops.stations == std::vector<std::size_t>{2, 0});
  CHECK(stops.after == std::vector<StopSet>{0, 0b01});
}

TEST_CASE("a round that cannot be ordered is told why, and what to do") {
  Round crossed = kRound;
  crossed.errands = {{.what = "gas", .from = "Hut", .to = "Lodge", .bed = Kilograms{1}},
                     {.what = "sacks", .from = "Lodge", .to = "Hut", .bed = Kilograms{1}}};
  CHECK(why_unfit(crossed).find("called at before itself") != std::string::npos);
  CHECK(why_unfit(crossed).find("make two rounds") != std::string::npos);

  Round island = kRound;
  island.errands = {{.what = "gas", .from = "Depot", .to = "Island", .bed = Kilograms{1}}};
  CHECK(why_unfit(island).find("no trail reaches Island") == 0);

  Round at_end{.start = "Depot",
               .end = "Hut",
               .errands = {{.what = "gas", .from = "Hut", .to = "Lodge", .bed = Kilograms{1}}}};
  CHECK(why_unfit(at_end).find("gas would be taken on at Hut, where the round ends") == 0);
  at_end.start = "Hut";
  CHECK(why_unfit(at_end).empty());
}

TEST_CASE("more stops than can be ordered are refused, ten are not") {
  const geo::MapPoint fork = testing::place(0, 0);
  testing::TestTrails all;
  Round many{.start = "S0", .end = "", .errands = {}};
  for (int number = 0; number < 12; ++number) {
    const std::string name = "S" + std::to_string(number);
    const geo::MapPoint end = testing::place(50.0 * number + 50.0, 200);
    all.trails.push_back(testing::plain_trail("To " + name, {fork, end}));
    all.stations.push_back(testing::plain_station(name, end));
    if (number > 0) {
      many.errands.push_back({.what = "a", .from = "S0", .to = name, .bed = Kilograms{1}});
    }
  }
  const trails::Network network = testing::network_of(all);
  const auto eleven = stops_of(many, network);
  REQUIRE(std::holds_alternative<UnfitRound>(eleven));
  CHECK(std::get<UnfitRound>(eleven).problem == "11 stops are more than can be ordered");
  many.errands.pop_back();
  CHECK(std::holds_alternative<RoundStops>(stops_of(many, network)));
}

}  // namespace rimehaul::day
