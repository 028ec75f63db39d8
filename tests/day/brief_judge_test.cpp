// What is said in short of legs and turns against all that the judge says of them.
#include "day/brief_judge.h"

#include <doctest/doctest.h>

#include "passage/demo_scene.h"
#include "search/usable.h"

namespace rimehaul::day {

using trails::LegId;

TEST_CASE("in short is said by what ways are found, the same as in full, and little else") {
  const passage::Scene scene =
      testing::scene_of({.ground = testing::rolling()}, testing::two_ways());
  const units::Instant entry = testing::mid_morning();
  std::size_t closed = 0;
  std::size_t open = 0;
  for (const snow::Wetness wetness : {snow::Wetness::dry, snow::Wetness::slush}) {
    const snow::ConstantSnow snow = testing::snow_of(wetness);
    const rig::Rig rig = testing::solo_rig();
    const passage::Judge judge{scene, rig, snow};
    passage::GroundMemory ground;
    const BriefJudge brief{judge, ground};
    for (std::uint32_t leg = 0; leg < scene.network.legs.size(); ++leg) {
      CAPTURE(leg);
      const passage::LegJudgement whole = judge.judge(LegId{leg}, entry);
      const passage::LegJudgement told = brief.judge(LegId{leg}, entry);
      CHECK(search::are_same(search::facts_of(told), search::facts_of(whole)));
      CHECK(told.bind().check == whole.bind().check);
      CHECK(told.hours.asked == whole.hours.asked);
      CHECK(search::blocking_finding(told).check == search::blocking_finding(whole).check);
      CHECK(told.findings.size() < whole.findings.size());
      CHECK(told.pieces.empty());
      CHECK(brief.at_best(LegId{leg}).time == judge.at_best(LegId{leg}).time);
      (whole.verdict == passage::Verdict::closed ? closed : open) += 1;
    }
    for (const search::Turn& turn : search::turns_of(scene.network)) {
      CHECK(search::are_same(search::facts_of(brief.judge_turn(turn.from, turn.to, entry)),
                             search::facts_of(judge.judge_turn(turn.from, turn.to, entry))));
    }
  }
  CHECK(closed > 0);
  CHECK(open > 0);
}

}  // namespace rimehaul::day
