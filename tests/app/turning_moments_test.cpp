// The demo's day: between two turning moments nothing that is found of a leg or a turn changes.
#include <doctest/doctest.h>

#include <algorithm>

#include "app/load_site.h"
#include "app/question.h"
#include "passage/remembering_judge.h"
#include "search/leg_hours.h"
#include "search/outlook.h"
#include "search/steady_judge.h"

namespace rimehaul::app {

namespace {

using trails::LegId;
using units::Instant;

const std::string kDemo{RIMEHAUL_ROOT "/routes/marrowfell"};

SnowOptions by_the_report() {
  SnowOptions options;
  options.report = RIMEHAUL_ROOT "/routes/marrowfell/snow-day.toml";
  return options;
}

/// The rig without a sled on the demo's warm day, whose snow softens by the hour.
struct Day {
  LoadedSite site = load_usable_site(kDemo);
  rig::Rig rig =
      rig_as_loaded(site, {.name = "Broadfoot", .bed_kg = 60.0, .towed_kg = {}, .fuel_l = {}});
  Instant depart = *units::parse_instant("2026-02-01T19:00:00Z");
  ChosenSnow snow = snow_to_judge_by(site, by_the_report(), depart);
  passage::Judge judge{*site.scene, rig, *snow.snow};
  passage::GroundMemory ground;
  units::Period day{depart, {depart.seconds + 12 * 3'600}};
};

/// The piece that an entry lies in.
template <class Pieces>
const auto& around(const Pieces& pieces, Instant entry) {
  return *std::ranges::find_if(pieces, [&](const auto& piece) {
    return piece.entries.from <= entry && entry <= piece.entries.to;
  });
}

}  // namespace

TEST_CASE("a day of the demo, asked every nine minutes, is what its pieces say" *
          doctest::test_suite("whole demo")) {
  Day demo;
  const trails::Network& network = demo.site.scene->network;
  passage::RememberingJudge remembering{demo.judge, demo.ground};
  const search::SteadyJudge steady{remembering, demo.day};
  search::LegHours hours{remembering, demo.day};
  std::size_t changes = 0;
  for (std::uint32_t i = 0; i < network.legs.size(); i += 7) {
    const LegId leg{i};
    const auto pieces = hours.of(leg);
    changes += pieces.size() - 1;
    for (Instant entry = demo.day.from; entry <= demo.day.to; entry.seconds += 541) {
      CAPTURE(network.trails[network.legs[i].trail].name);
      CAPTURE(units::text_of(entry));
      const search::LegFacts fresh = search::facts_of(remembering.judge(leg, entry));
      CHECK(search::are_same(around(pieces, entry).facts, fresh));
      CHECK(search::are_same(search::facts_of(steady.judge(leg, entry)), fresh));
    }
  }
  const std::vector<search::Turn> turns = search::turns_of(network);
  for (std::size_t i = 0; i < turns.size(); i += 23) {
    const auto pieces = hours.of(turns[i]);
    changes += pieces.size() - 1;
    for (Instant entry = demo.day.from; entry <= demo.day.to; entry.seconds += 1'801) {
      const auto fresh =
          search::facts_of(remembering.judge_turn(turns[i].from, turns[i].to, entry));
      CHECK(search::are_same(around(pieces, entry).facts, fresh));
      CHECK(search::are_same(search::facts_of(steady.judge_turn(turns[i].from, turns[i].to, entry)),
                             fresh));
    }
  }
  CHECK(changes > 10);  // the day does turn
}

}  // namespace rimehaul::app
