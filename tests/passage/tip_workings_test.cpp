// The edge that a rig tips over, told so that it can be worked out by hand.
#include <doctest/doctest.h>

#include <map>
#include <string>

#include "any_rig.h"
#include "near.h"
#include "passage/forces.h"
#include "worked_by_hand.h"

namespace rimehaul::passage {

namespace {

using testing::loaded_rig;
using testing::near;
using testing::Numbers;
using testing::RigOnSlope;
using units::Metres;

/// All that is shown of a roll-over, worked out again; requires that it comes out.
Numbers tipped(const Footing& footing, const Finding& finding) {
  Numbers shown;
  testing::work_out(shared_workings(footing), shown);
  const std::vector<Working> edge = roll_over_workings(footing, finding);
  CHECK_FALSE(edge.empty());
  const std::string_view formula = formula_of(finding.check, towing_of(footing.rig));
  CHECK(testing::comes_out_again(finding, {formula, edge}, shown));
  for (const Input& input : finding.inputs.all()) {
    shown[std::string{input.name}] = input.value.value;
  }
  testing::work_out(edge, shown);
  return shown;
}

/// Wider ahead than behind: none of its edges is square to another but two.
std::vector<rig::SupportPoint> six_corners() {
  return {{Metres{0}, Metres{-0.5}},  {Metres{0.9}, Metres{-0.7}}, {Metres{1.5}, Metres{-0.3}},
          {Metres{1.5}, Metres{0.3}}, {Metres{0.9}, Metres{0.7}},  {Metres{0}, Metres{0.5}}};
}

}  // namespace

TEST_CASE("whichever edge a body tips over, its share comes out of the numbers told") {
  testing::Dice dice{20260201};
  std::map<std::string, int> leans;
  std::map<std::string, int> helped;
  for (int trial = 0; trial < 2000; ++trial) {
    RigOnSlope rig = testing::any_rig(dice, 0.2);
    rig.rig.carrier.support = trial % 2 == 0 ? six_corners() : rig.rig.carrier.support;
    rig.rig.trailer->hitch_free_to_roll = trial % 4 < 2;
    if (trial % 3 == 0) {  // so near an edge that it binds though the rig leans the other way
      rig.weighed.carrier.centre.forward = Metres{dice.between(-0.1, 1.5)};
      rig.weighed.carrier.centre.left = Metres{dice.between(-0.65, 0.65)};
      rig.on(dice.between(-0.08, 0.08), dice.between(-0.08, 0.08));
    }
    const bool towing = trial % 5 != 0;
    if (towing) {
      const Footing footing = rig.footing();
      const Numbers shown = tipped(footing, judge_trailer_roll_over(footing));
      CHECK(shown.at("M") == 0.0);
      CHECK(shown.at("n") == shown.at("n_t"));
      CHECK(shown.at("centre_left") == rig.weighed.trailer.centre.left.value());
    } else {
      rig.without_trailer();
    }
    const Footing footing = rig.footing();
    const Numbers shown = tipped(footing, judge_carrier_roll_over(footing));
    CHECK(shown.at("n") == shown.at("n_c"));
    CHECK(shown.at("centre_ahead") == rig.weighed.carrier.centre.forward.value());
    CHECK(shown.count("i_h") == (towing ? 1 : 0));
    leans[std::string{shown.at("G") >= 0 ? "towards" : "off"} +
          (shown.at("K") >= 0 ? " and down" : " and up")] += 1;
    helped[shown.at("M") > 0.0 ? "helped" : "not helped"] += 1;
    helped[shown.at("x") > 0.0 ? "ahead" : "behind"] += 1;
    helped[shown.at("y") > 0.0 ? "left" : "right"] += 1;
  }
  for (const std::string lean :
       {"towards and down", "towards and up", "off and down", "off and up"}) {
    CAPTURE(lean);
    CHECK(leans[lean] > 10);
  }
  for (const std::string way : {"helped", "not helped", "ahead", "behind", "left", "right"}) {
    CAPTURE(way);
    CHECK(helped[way] > 10);
  }
}

TEST_CASE("over its left edge, a carrier of 1.2 m is told its corners, its width and its lean") {
  const RigOnSlope rig = loaded_rig().without_trailer().on(0, -0.3);
  const Footing footing = rig.footing();
  const std::vector<Working> edge = roll_over_workings(footing, judge_carrier_roll_over(footing));
  std::string list;
  for (const Working& working : edge) {
    CAPTURE(working.symbol);
    const bool of_load = working.symbol == "centre_ahead" || working.symbol == "centre_left";
    CHECK(working.origin == (!working.formula.empty() ? Origin::derived
                             : of_load                ? Origin::load
                                                      : Origin::rig_sheet));
    list += working.symbol + " ";
  }
  CHECK(list ==
        "from_ahead from_left to_ahead to_left x y centre_ahead centre_left i corner1_ahead "
        "corner1_left corner2_ahead corner2_left corner3_ahead corner3_left corner4_ahead "
        "corner4_left w A C n M ");
  Numbers shown = tipped(footing, judge_carrier_roll_over(footing));
  CHECK(near(shown.at("y"), 1, 0));
  CHECK(near(shown.at("i"), 0.6, 1e-12));
  CHECK(near(shown.at("w"), 1.2, 1e-12));
  CHECK(near(shown.at("C"), 0.3, 1e-12));
  CHECK(near(shown.at("M"), 0, 0));
  CHECK(near(shown.at("corner2_ahead"), 1.4, 0));
  CHECK(near(shown.at("corner3_left"), 0.6, 0));
}

TEST_CASE("pulled back by its trailer uphill, the moment over the rear edge is worked by hand") {
  RigOnSlope rig = loaded_rig().on(0.3, 0);
  rig.weighed.trailer.centre.up = rig.rig.carrier.hitch_at.up;
  const Footing footing = rig.footing();
  const Numbers shown = tipped(footing, judge_carrier_roll_over(footing));
  // D = 400 g (0.287348 + 0.06 * 0.957826) = 1352.60 N at 0.4 m; V = g (40 + 400 / 2 * 0.06 * 0.4)
  // 0.957826 = 420.81 N at 0.2 m behind the edge.
  CHECK(near(shown.at("x"), -1, 0));
  CHECK(near(shown.at("i_h"), -0.2, 1e-12));
  CHECK(near(shown.at("D"), 1352.60, 5e-2));
  CHECK(near(shown.at("V"), 420.81, 5e-2));
  CHECK(near(shown.at("M"), 0.4 * 1352.60 + 0.2 * 420.81, 5e-2));
}

TEST_CASE("nothing is told of an edge where none was judged") {
  RigOnSlope rig = loaded_rig().on(0.1, 0.1);
  const Footing footing = rig.footing();
  CHECK(roll_over_workings(footing, judge_jackknife(footing)).empty());
  const Finding of_trailer = judge_trailer_roll_over(footing);
  CHECK_FALSE(roll_over_workings(footing, of_trailer).empty());
  rig.without_trailer();
  CHECK(roll_over_workings(rig.footing(), of_trailer).empty());
  CHECK(roll_over_workings(rig.footing(), judge_trailer_roll_over(rig.footing())).empty());
  rig.rig.carrier.support.resize(2);
  const Finding no_polygon = judge_carrier_roll_over(rig.footing());
  CHECK(stand_of(no_polygon, 1.0) == Stand::missing);
  CHECK(roll_over_workings(rig.footing(), no_polygon).empty());
}

TEST_CASE("an edge without length closes, and nothing is told of it") {
  RigOnSlope rig = loaded_rig().without_trailer();
  rig.rig.carrier.support.insert(rig.rig.carrier.support.begin(), rig.rig.carrier.support.front());
  const Finding finding = judge_carrier_roll_over(rig.footing());
  CHECK(stand_of(finding, 1.0) == Stand::missing);
  CHECK(roll_over_workings(rig.footing(), finding).empty());
}

}  // namespace rimehaul::passage
