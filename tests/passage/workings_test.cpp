// What the ground checks share: each number comes out of those before it, and is what the checks
// themselves worked with.
#include "passage/workings.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>

#include "any_rig.h"
#include "near.h"
#include "passage/forces.h"
#include "worked_by_hand.h"

namespace rimehaul::passage {

namespace {

using testing::kNoNumber;
using testing::loaded_rig;
using testing::near;
using testing::Numbers;
using testing::RigOnSlope;
using units::ForceRatio;
using units::Kilograms;
using units::Metres;

Numbers numbers_of(const Footing& footing) {
  Numbers shown;
  testing::work_out(shared_workings(footing), shown);
  return shown;
}

/// Symbols and origins of what is given, in order; of what is worked out the symbol alone.
std::string list_of(const std::vector<Working>& workings) {
  const std::map<Origin, std::string> origins{
      {Origin::heights, "heights"}, {Origin::rig_sheet, "rig"}, {Origin::load, "load"},
      {Origin::grip, "grip"},       {Origin::rules, "rules"},   {Origin::physics, "physics"}};
  std::string list;
  for (const Working& working : workings) {
    CHECK(working.formula.empty() == (working.origin != Origin::derived));
    list += list.empty() ? "" : " ";
    list += working.symbol;
    list += working.formula.empty() ? ":" + origins.at(working.origin) : "";
  }
  return list;
}

}  // namespace

TEST_CASE("every number that the ground checks share comes out of those before it") {
  testing::Dice dice{20261126};
  std::map<std::string, int> above_zero;
  std::map<std::string, int> zero;
  for (int trial = 0; trial < 2000; ++trial) {
    RigOnSlope rig = testing::any_rig(dice, 0.4);
    if (trial % 4 == 0) {
      rig.without_trailer();
    }
    for (const auto& [symbol, value] : numbers_of(rig.footing())) {
      above_zero[symbol] += value > 0.0 ? 1 : 0;
      zero[symbol] += value == 0.0 ? 1 : 0;
    }
  }
  // Each way out of every max(0, ...) was taken.
  for (const std::string symbol :
       {"G_c_gentle", "K_c_gentle", "G_t_gentle", "K_t_gentle", "U", "D", "P", "u_hold"}) {
    CAPTURE(symbol);
    CHECK(above_zero[symbol] > 20);
    CHECK(zero[symbol] > 20);
  }
}

TEST_CASE("what is shared is the very number that each check worked with") {
  // By other symbols than the pages of the checks: there G_c is whichever end counts.
  const std::set<std::string_view> of_one_check{"m", "v", "i", "h", "x", "y", "G", "K",
                                                "A", "C", "M", "n", "w", "d", "r"};
  testing::Dice dice{7};
  std::map<std::string, int> met;
  for (int trial = 0; trial < 300; ++trial) {
    RigOnSlope rig = testing::any_rig(dice, 0.25);
    if (trial % 3 == 0) {
      rig.without_trailer();
    }
    const Numbers shown = numbers_of(rig.footing());
    for (const Finding& finding : judge_ground(rig.footing())) {
      CAPTURE(facts_of(finding.check).key);
      for (const Input& input : finding.inputs.all()) {
        const auto there = shown.find(std::string{input.name});
        if (there != shown.end()) {
          CAPTURE(input.name);
          CHECK(there->second == input.value.value);
          ++met[there->first];
        }
      }
    }
  }
  std::string symbols;
  for (const auto& [symbol, times] : met) {
    CHECK(times >= 200);
    symbols += symbol + " ";
  }
  CHECK(symbols ==
        "L P S U V Y f_c f_t f_t_low h_h h_t m_c m_h m_t mu mu_b n_c n_c_most n_t n_t_most phi "
        "u_climb "
        "u_hold ");
}

TEST_CASE("demand and capacity of every ground check come out of what is shown") {
  testing::Dice dice{11};
  std::map<Check, int> again;
  for (int trial = 0; trial < 300; ++trial) {
    RigOnSlope rig = testing::any_rig(dice, 0.25);
    if (trial % 3 == 0) {
      rig.without_trailer();
    }
    const Footing footing = rig.footing();
    const Numbers shown = numbers_of(footing);
    for (const Finding& finding : judge_ground(footing)) {
      std::vector<Working> besides = roll_over_workings(footing, finding);
      if (finding.check ==
          Check::jackknife) {  // its arm is told beside it where the trail is known
        besides = {{"d_h", number_of(finding, "d_h"), Origin::rig_sheet, "", "page"}};
      }
      const std::string_view formula = formula_of(finding.check, towing_of(rig.rig));
      again[finding.check] += testing::comes_out_again(finding, {formula, besides}, shown) ? 1 : 0;
    }
  }
  for (const auto& of_check : again) {
    CAPTURE(facts_of(of_check.first).key);
    CHECK(of_check.second >= 150);
  }
  CHECK(again.size() == 14);
}

TEST_CASE("the forces asked and given are those of the checks of climbing and holding") {
  testing::Dice dice{13};
  for (int trial = 0; trial < 200; ++trial) {
    RigOnSlope rig = testing::any_rig(dice, 0.25);
    if (trial % 2 == 0) {
      rig.without_trailer();
    }
    const Numbers shown = numbers_of(rig.footing());
    const Finding climb = judge_climb_traction(rig.footing());
    CHECK(shown.at("F_climb") == climb.demand.value);
    CHECK(shown.at("C_climb") == climb.capacity.value);
    CHECK(shown.at("u_climb") == *climb.share);
    const Finding hold = judge_descent_hold(rig.footing());
    CHECK(shown.at("F_hold") == hold.demand.value);
    CHECK(smaller(shown.at("C_hold"), shown.at("B_brake")) == hold.capacity.value);
    CHECK(shown.at("B_brake") == rig.rig.carrier.brake_force.value());
  }
}

TEST_CASE(
    "what a rig with a trailer shares is told in order, and where the given numbers are from") {
  CHECK(list_of(shared_workings(loaded_rig().footing())) ==
        "g:physics m_c:load phi:rig "
        "G_c_low:heights G_c_high:heights K_c_low:heights K_c_high:heights "
        "G_c_steep G_c_gentle K_c_steep K_c_gentle n_c n_c_most "
        "m_t:load m_h:load h_t:load h_h:rig L:rig f_t:grip f_t_low:grip "
        "G_t_low:heights G_t_high:heights K_t_low:heights K_t_high:heights "
        "G_t_steep G_t_gentle K_t_steep K_t_gentle n_t n_t_most V U D P "
        "mu:grip f_c:grip F_climb C_climb u_climb mu_b:grip B_brake:rig F_hold C_hold u_hold Y S");
}

TEST_CASE("without a trailer nothing of one is told") {
  CHECK(list_of(shared_workings(loaded_rig().without_trailer().footing())) ==
        "g:physics m_c:load phi:rig "
        "G_c_low:heights G_c_high:heights K_c_low:heights K_c_high:heights "
        "G_c_steep G_c_gentle K_c_steep K_c_gentle n_c n_c_most "
        "mu:grip f_c:grip F_climb C_climb u_climb mu_b:grip B_brake:rig F_hold C_hold u_hold S");
}

TEST_CASE("each number is told on a page that there is") {
  for (const Working& working : shared_workings(loaded_rig().footing())) {
    CAPTURE(working.symbol);
    std::ifstream page{std::filesystem::path{RIMEHAUL_ROOT} / working.page};
    const std::string text{std::istreambuf_iterator<char>{page}, {}};
    CHECK_FALSE(text.empty());
  }
}

TEST_CASE("on 30 percent across and level along a carrier of 700 kg is pulled sideways by 1973 N") {
  // sin(atan(0.3)) = 0.287348; n = cos(atan(0.3)) = 0.957826; g 700 kg = 6864.655 N.
  const Numbers shown = numbers_of(loaded_rig().without_trailer().on(0, 0.3).footing());
  CHECK(near(shown.at("n_c"), 0.957826, 5e-7));
  CHECK(near(shown.at("S"), 1972.54, 5e-3));
  CHECK(near(shown.at("F_climb"), 0.05 * 6864.655 * 0.957826, 5e-3));
  CHECK(near(shown.at("C_climb"), 0.45 * 6864.655 * 0.957826, 5e-3));
  CHECK(near(shown.at("F_hold"), 0, 0));
  CHECK(near(shown.at("C_hold"), 0.35 * 6864.655 * 0.957826, 5e-3));
}

TEST_CASE("what rests on an unknown number is not known") {
  RigOnSlope rig = loaded_rig().on(-0.1, 0.1);
  rig.grip.brake = ForceRatio{kNoNumber};
  const Numbers no_brake = numbers_of(rig.footing());
  for (const std::string symbol : {"mu_b", "F_hold", "C_hold", "u_hold"}) {
    CAPTURE(symbol);
    CHECK(std::isnan(no_brake.at(symbol)));
  }
  CHECK(std::isfinite(no_brake.at("u_climb")));

  rig = loaded_rig().on(-0.1, 0.1);
  rig.weighed.tongue_mass = Kilograms{401};  // more on the hitch than the trailer weighs
  const Numbers no_hitch = numbers_of(rig.footing());
  for (const std::string symbol :
       {"V", "U", "D", "P", "F_climb", "C_climb", "u_climb", "F_hold", "C_hold", "u_hold"}) {
    CAPTURE(symbol);
    CHECK(std::isnan(no_hitch.at(symbol)));
  }

  rig = loaded_rig().on(kNoNumber, 0.1);
  const Numbers no_ground = numbers_of(rig.footing());
  for (const std::string symbol : {"n_c", "n_t", "n_c_most", "V", "u_climb", "u_hold", "S"}) {
    CAPTURE(symbol);
    CHECK(std::isnan(no_ground.at(symbol)));
  }
}

TEST_CASE("where the hitch lifts the tracks off the snow no share of their grip is told") {
  RigOnSlope rig = loaded_rig().on(0.5, 0);
  rig.weighed.trailer.centre.up = Metres{9};
  const Numbers shown = numbers_of(rig.footing());
  CHECK(shown.at("C_climb") < 0);
  CHECK(shown.at("C_hold") < 0);
  CHECK(std::isnan(shown.at("u_climb")));
  CHECK(std::isnan(shown.at("u_hold")));
}

TEST_CASE("an input of a finding is found by its name, else it is no number") {
  Finding finding;
  finding.inputs.add("a", units::amount(Metres{3}), Origin::trail)
      .add("b", units::count_of(4), Origin::rules);
  CHECK(number_of(finding, "a") == units::amount(Metres{3}));
  CHECK(number_of(finding, "b") == units::count_of(4));
  CHECK(std::isnan(number_of(finding, "c").value));
  CHECK(std::isnan(number_of(Finding{}, "a").value));
}

}  // namespace rimehaul::passage
