// A board judged on several cores is the one judged on one, and a fault of any of them is told.
#include "app/board_on_cores.h"

#include <doctest/doctest.h>

#include <atomic>
#include <list>

#include "base/require.h"
#include "card/board_report.h"
#include "passage/demo_scene.h"
#include "ports/json/board_json.h"

namespace rimehaul::app {
namespace {

/// A rig on the rolling ground in every snow class.
struct AllClasses {
  passage::Scene scene = testing::scene_of({.ground = testing::rolling()}, testing::two_ways());
  rig::Rig rig = testing::solo_rig();
  std::list<snow::ConstantSnow> snows;
  std::list<passage::Judge> judges;
  std::vector<day::BoardSnow> columns;
  day::BoardQuestion question{.rows = {}, .depart = testing::mid_morning()};

  AllClasses() {
    const std::vector<day::Stops> pairs = day::all_pairs(scene.network);
    question.rows.assign(pairs.begin(), pairs.end());
    rig.load.bed = rig.carrier.bed_rating + units::Kilograms{1};
    for (int i = 0; i < snow::kWetnessCount; ++i) {
      const auto wetness = static_cast<snow::Wetness>(i);
      snows.push_back(testing::snow_of(wetness));
      judges.emplace_back(scene, rig, snows.back());
      columns.push_back({snow::SnowState{.wetness = wetness}, judges.back()});
    }
  }

  [[nodiscard]] std::string told(const day::DayBoard& board) const {
    return ports::json::board_json(card::board_report(board, scene, rig));
  }
};

/// Counts, as one that several workers tell.
class Counted final : public base::Watcher {
 public:
  void parts_to_come(std::size_t parts) override { wanted += parts; }
  void part_done() override { ++done; }
  std::size_t wanted = 0;
  std::atomic<std::size_t> done{0};
};

audit::Rewalk finds_fault(const passage::Scene& /*scene*/, const rig::Rig& /*rig*/,
                          const snow::SnowAt& /*snow*/,
                          const std::vector<audit::PromisedLeg>& /*promise*/) {
  return {.discrepancies = {{0, "climb traction comes to 0.8, promised 0.6"}},
          .worst_share = 0.8,
          .places_judged = 10};
}

TEST_CASE("a board judged on all cores is told as the one judged on one, whatever the classes" *
          doctest::test_suite("whole demo")) {
  AllClasses asked;
  for (std::size_t classes = asked.columns.size(); classes > 0; --classes) {
    const std::span<const day::BoardSnow> columns{asked.columns.data(), classes};
    Counted watcher;
    asked.question.watcher = &watcher;
    const std::string on_all = asked.told(board_on_cores(columns, asked.question));
    CHECK(watcher.wanted == classes * asked.question.rows.size());
    CHECK(watcher.done == watcher.wanted);
    asked.question.watcher = nullptr;
    CHECK(on_all == asked.told(day::board_of(columns, asked.question)));
  }
}

TEST_CASE("a way that is worse when walked again withholds the board on all cores too") {
  AllClasses asked;
  asked.question.rewalk = finds_fault;
  CHECK_THROWS_AS(static_cast<void>(board_on_cores(asked.columns, asked.question)), base::OurFault);
}

}  // namespace
}  // namespace rimehaul::app
