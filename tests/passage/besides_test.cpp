// What single checks work with beside their inputs: the sight, the hitch's arm, the trail's width.
#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <optional>
#include <string>

#include "passage/demo_scene.h"
#include "passage/judge.h"
#include "passage/site_rules.h"
#include "passage/stretch_judge.h"
#include "worked_by_hand.h"

namespace rimehaul::passage {

namespace {

using testing::Numbers;
using trails::AllowedDirection;
using trails::LegId;
using trails::Trail;
using units::Metres;

const snow::SnowState kDry{snow::Wetness::dry, snow::Surface::groomed};

Finding of_check(Check check) {
  Finding finding;
  finding.check = check;
  return finding;
}

/// A judge of one rig on one trail, of which a test changes what it speaks of.
struct Place {
  explicit Place(const rig::Rig& driven = testing::towing_rig()) : rig{driven} {}

  /// What stands beside a finding of no check's own numbers, without any ground.
  [[nodiscard]] std::vector<Working> beside(Check check) const {
    const snow::ConstantSnow snow{kDry, weather, "assumed for planning"};
    const Judge judge{scene, rig, snow};
    const Course course = course_of(judge, trail, {});
    return besides(of_check(check), {course, trail, weather, {}});
  }

  Scene scene = testing::scene_of({.ground = testing::rolling()}, testing::straight_trail(0));
  rig::Rig rig;
  snow::DayWeather weather = testing::plain_weather();
  Trail trail = testing::plain_trail("Straight", {testing::place(0, 0), testing::place(0, 300)});
};

/// Symbols in order, each with its formula or, of a given one, its origin and value.
std::string text_of(const std::vector<Working>& workings) {
  const std::map<Origin, std::string> origins{{Origin::trail, "trail"},
                                              {Origin::rules, "rules"},
                                              {Origin::snow_report, "report"},
                                              {Origin::rig_sheet, "rig"}};
  std::string text;
  for (const Working& working : workings) {
    text += working.symbol + " = ";
    text += working.formula.empty()
                ? std::to_string(working.value.value) + " " + origins.at(working.origin)
                : working.formula;
    text += "; ";
  }
  Numbers shown;
  testing::work_out(workings, shown);
  return text;
}

double last_of(const std::vector<Working>& workings) {
  return workings.empty() ? std::nan("") : workings.back().value.value;
}

}  // namespace

TEST_CASE("the sight is the trail's own, or the site's, and no more than is seen today") {
  Place here;
  here.trail.sight = Metres{60};
  here.weather.visibility = Metres{2'000};
  CHECK(text_of(here.beside(Check::stopping)) ==
        "sight_here = 60.000000 trail; seen = 2000.000000 report; sight = min(sight_here, seen); ");
  CHECK(last_of(here.beside(Check::stopping)) == 60);
  here.weather.visibility = Metres{45};
  CHECK(last_of(here.beside(Check::stopping)) == 45);
  here.trail.sight.reset();
  here.scene.rules.sight = Metres{30};
  here.weather.visibility.reset();
  CHECK(text_of(here.beside(Check::stopping)) ==
        "sight_here = 30.000000 rules; sight = sight_here; ");
  CHECK(last_of(here.beside(Check::stopping)) == 30);
}

TEST_CASE("where others may come towards it on the only lane the sight is halved") {
  Place here;
  here.trail.sight = Metres{60};
  here.trail.lanes = 1;
  CHECK(text_of(here.beside(Check::stopping)) ==
        "sight_here = 60.000000 trail; seen = 2000.000000 report; "
        "sight = min(sight_here, seen) / 2; ");
  CHECK(last_of(here.beside(Check::stopping)) == 30);
  here.weather.visibility.reset();
  CHECK(text_of(here.beside(Check::stopping)) ==
        "sight_here = 60.000000 trail; sight = sight_here / 2; ");
  for (const AllowedDirection one_way : {AllowedDirection::forward, AllowedDirection::backward}) {
    here.trail.direction = one_way;
    CHECK(last_of(here.beside(Check::stopping)) == 60);
  }
  here.trail.direction.reset();  // nobody said: counted as both ways
  CHECK(last_of(here.beside(Check::stopping)) == 30);
}

TEST_CASE("a sight that is no number stays none") {
  Place here;
  here.trail.sight = Metres{std::nan("")};
  const std::vector<Working> sight = here.beside(Check::stopping);
  CHECK(sight.back().symbol == "sight");
  CHECK(std::isnan(last_of(sight)));
}

TEST_CASE("with a trailer the hitch's arm is told, by the symbol of each check") {
  const Place here;  // 1.8 m of contact, the hitch 0.3 m behind it: 0.9 + 0.3
  for (const auto& [check, symbol] :
       {std::pair{Check::jackknife, "d_h"}, std::pair{Check::turning, "e"}}) {
    const std::vector<Working> arm = here.beside(check);
    CHECK(text_of(arm) ==
          std::string{"l = 1.800000 rig; x_h = -0.300000 rig; "} + symbol + " = l / 2 - x_h; ");
    CHECK(testing::agree(last_of(arm), 1.2));
    CHECK(arm.back().page == facts_of(check).page);
  }
  CHECK(Place{testing::solo_rig()}.beside(Check::jackknife).empty());
  CHECK(Place{testing::solo_rig()}.beside(Check::turning).empty());
}

TEST_CASE("width in bends is told with the trail's width, where somebody said it") {
  Place here;
  here.trail.width = Metres{5.5};
  CHECK(text_of(here.beside(Check::off_tracking)) ==
        "l = 1.800000 rig; x_h = -0.300000 rig; e = l / 2 - x_h; width = 5.500000 trail; ");
  Place alone{testing::solo_rig()};
  alone.trail.width = Metres{5.5};
  CHECK(text_of(alone.beside(Check::off_tracking)) == "width = 5.500000 trail; ");
  alone.trail.width.reset();
  CHECK(alone.beside(Check::off_tracking).empty());
}

TEST_CASE("other checks take nothing beside, and where no ground is known none of it is told") {
  const Place here;
  for (const Check check : {Check::climb_traction, Check::payload, Check::hours, Check::mark}) {
    CHECK(here.beside(check).empty());
  }
  CHECK(here.beside(Check::carrier_roll_over).empty());
  CHECK(here.beside(Check::trailer_roll_over).empty());
  CHECK(here.beside(Check::stopping).size() == 3);  // the sight alone
}

namespace {

/// All that a judge finds on a leg, worked out again; of each check how often.
void work_through(const Judge& judge, LegId leg, std::map<Check, int>& again) {
  const Stretch stretch = judge.stretch_of(leg);
  const Trail& trail = judge.scene().network.trails[stretch.trail];
  const Course course = course_of(judge, trail, {});
  const HoursOnLeg hours = judge.judge(leg, testing::mid_morning()).hours;
  for (const Footfall& footfall : ground_under(judge.scene(), judge.rig(), stretch)) {
    for (const PlaceFinding& found : judge.findings_at(stretch, footfall, hours)) {
      const std::optional<Footing> footing =
          footing_at(course, footfall, {found.snow, found.when}, found.finding.tank);
      Numbers shown;
      if (footing) {
        testing::work_out(shared_workings(*footing), shown);
      }
      const std::vector<Working> beside =
          besides(found.finding, {course, trail, judge.snow().weather(), footing});
      const std::string_view formula = found.finding.formula.empty()
                                           ? formula_of(found.finding.check, towing_of(judge.rig()))
                                           : found.finding.formula;
      again[found.finding.check] +=
          testing::comes_out_again(found.finding, {formula, beside}, shown) ? 1 : 0;
    }
  }
}

}  // namespace

TEST_CASE("at every place of a leg each demand and capacity comes out of what is told beside it") {
  testing::TestTrails all = testing::two_ways();
  all.trails.front().lanes = 1;
  const Scene scene = testing::scene_of({.ground = testing::rolling()}, all);
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    const snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
    const Judge judge{scene, rig, snow};
    std::map<Check, int> again;
    for (const LegId leg : {LegId{0}, LegId{5}}) {
      work_through(judge, leg, again);
    }
    for (const Check check : {Check::stopping, Check::carrier_roll_over, Check::turning,
                              Check::off_tracking, Check::carrier_side_slip, Check::descent_hold}) {
      CAPTURE(facts_of(check).key);
      CHECK(again[check] > 20);
    }
    for (const Check check : {Check::jackknife, Check::trailer_roll_over}) {
      CAPTURE(facts_of(check).key);
      CHECK((again[check] > 20) == rig.trailer.has_value());
    }
  }
}

}  // namespace rimehaul::passage
