#include "search/obstacles.h"

#include <utility>

namespace rimehaul::search {

using passage::Judge;
using passage::LoadPlace;
using passage::Verdict;

namespace {

constexpr units::Kilograms kLoadStep{25};

bool opens(const Judge& judge, const Obstacle& obstacle) {
  const Verdict verdict =
      obstacle.turn_from.has_value()
          ? judge.judge_turn(*obstacle.turn_from, obstacle.leg, obstacle.entry).verdict
          : judge.judge(obstacle.leg, obstacle.entry).verdict;
  return verdict == Verdict::open;
}

void try_loads(Obstacle& obstacle, const Judge& judge) {
  if (obstacle.turn_from.has_value()) {
    return;
  }
  obstacle.open_bed_loads =
      passage::open_loads(judge, obstacle.leg, LoadPlace::bed, kLoadStep, obstacle.entry);
  if (judge.rig().trailer.has_value()) {
    obstacle.open_towed_loads =
        passage::open_loads(judge, obstacle.leg, LoadPlace::towed, kLoadStep, obstacle.entry);
  }
}

/// The same machine and bed load, with the trailer and what it carries left behind.
rig::Rig without_trailer(rig::Rig rig) {
  rig.trailer.reset();
  rig.load.towed = units::Kilograms{0};
  return rig;
}

}  // namespace

NoRoute explain_obstacles(NoRoute none, const Judge& judge) {
  for (Obstacle& obstacle : none.obstacles) {
    try_loads(obstacle, judge);
  }
  if (judge.rig().trailer.has_value()) {
    const rig::Rig alone = without_trailer(judge.rig());
    const Judge judge_alone = judge.with_rig(alone);
    for (Obstacle& obstacle : none.obstacles) {
      obstacle.open_without_trailer = opens(judge_alone, obstacle);
    }
  }
  for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
    for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
      const snow::SnowState state{.wetness = static_cast<snow::Wetness>(wetness),
                                  .surface = static_cast<snow::Surface>(surface)};
      const snow::ConstantSnow snow{state, judge.snow().weather(), "assumed for comparison"};
      const Judge judge_there = judge.with_snow(snow);
      for (Obstacle& obstacle : none.obstacles) {
        if (opens(judge_there, obstacle)) {
          obstacle.open_in.push_back(state);
        }
      }
    }
  }
  return none;
}

}  // namespace rimehaul::search
