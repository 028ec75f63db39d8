// Whatever `explain` shows of a place of the demo can be worked out again from what it shows.
#include <doctest/doctest.h>

#include <cmath>
#include <map>
#include <string>

#include "app/demo_site.h"
#include "card/explanation.h"
#include "worked_by_hand.h"

namespace rimehaul::card {
namespace {

using passage::Check;
using testing::Numbers;
using testing::work_out;

/// Checks that were worked out by hand, of each how often.
using Worked = std::map<Check, int>;

void check_finding(const ExplainedFinding& explained, const Numbers& shown, Worked& worked) {
  const passage::Finding& finding = explained.finding;
  CAPTURE(passage::facts_of(finding.check).key);
  CHECK_FALSE(explained.source.empty());
  const bool numbers = std::isfinite(finding.demand.value) && std::isfinite(finding.capacity.value);
  if (explained.stand == passage::Stand::passes) {
    CHECK((numbers || !finding.how.empty()));
  }
  if (testing::comes_out_again(finding, {explained.formula, explained.besides}, shown)) {
    ++worked[finding.check];
  }
}

void check_way(const ExplainedWay& way, Worked& worked) {
  for (const ExplainedFinding& explained : way.findings) {
    Numbers shown;
    for (const SharedNumbers& shared : way.shared) {
      if (explained.snow == shared.snow && explained.finding.tank == shared.tank) {
        work_out(shared.numbers, shown);
      }
    }
    check_finding(explained, shown, worked);
  }
}

/// Every trail at a few places, both ways.
Worked work_through(const passage::Judge& judge, units::Instant when) {
  Worked worked;
  const auto& trails = testing::demo_site().scene->network.trails;
  for (std::size_t trail = 0; trail < trails.size(); ++trail) {
    for (const double share : {0.03, 0.37, 0.71}) {
      CAPTURE(trails[trail].name);
      CAPTURE(share);
      const Explanation explanation =
          explain(judge, {trail, trails[trail].line.length() * share}, Directions::both, when);
      for (const ExplainedWay& way : explanation.ways) {
        check_way(way, worked);
      }
    }
  }
  return worked;
}

}  // namespace

TEST_CASE("every demand and capacity comes out again from the formula and the numbers shown") {
  for (const char* name :
       {"Broadfoot", "Longback", "Broadfoot with sled", "Broadfoot with cabin"}) {
    CAPTURE(name);
    rig::Rig rig = testing::demo_rig(name);
    if (rig.trailer) {
      rig.trailer->climb = rig::Rating{units::Slope::from_degrees(20), {}};
      rig.trailer->cross = rig::Rating{units::Slope::from_degrees(11), {}};
    }
    const snow::ConstantSnow snow = testing::demo_snow(snow::Wetness::moist);
    const passage::Judge judge{*testing::demo_site().scene, rig, snow};
    Worked worked = work_through(judge, testing::demo_morning());
    for (const Check check :
         {Check::climb_rating, Check::descent_rating, Check::cross_rating, Check::climb_traction,
          Check::engine_power, Check::descent_hold, Check::parking_hold, Check::stopping,
          Check::carrier_roll_over, Check::carrier_side_slip, Check::payload, Check::turning,
          Check::off_tracking, Check::seats, Check::visibility, Check::single_lane,
          Check::avalanche, Check::grooming}) {
      CAPTURE(passage::facts_of(check).key);
      CHECK(worked[check] > 20);
    }
    for (const Check check :
         {Check::trailer_rating, Check::trailer_roll_over, Check::trailer_side_slip,
          Check::jackknife, Check::hitch_vertical, Check::towed_mass, Check::trailer_payload}) {
      CAPTURE(passage::facts_of(check).key);
      CHECK((worked[check] > 20) == rig.trailer.has_value());
    }
  }
}

TEST_CASE("where snow changes under a rig each number comes out again in the snow it is told for") {
  const rig::Rig rig = testing::demo_rig("Broadfoot with sled");
  const snow::ReportedSnow snow = testing::demo_report("snow-noon.toml");
  const passage::Judge judge{*testing::demo_site().scene, rig, snow};
  const Worked worked = work_through(judge, testing::demo_noon());
  CHECK(worked.size() > 20);
}

TEST_CASE("nothing that passes is told with an unknown number") {
  const rig::Rig rig = testing::demo_rig("Broadfoot with sled");
  const snow::ConstantSnow snow = testing::demo_snow(snow::Wetness::moist);
  const passage::Judge judge{*testing::demo_site().scene, rig, snow};
  const auto& trails = testing::demo_site().scene->network.trails;
  const auto climb = testing::demo_site().scene->network.trail_named("Birk Climb");
  REQUIRE(climb.has_value());
  const std::string text = text_of(explain(judge, {*climb, trails[*climb].line.length() * 0.5},
                                           Directions::both, testing::demo_morning()),
                                   120);
  CAPTURE(text);
  CHECK(text.find("unknown") == std::string::npos);
  CHECK(text.find("maker's rating") == std::string::npos);
  CHECK(text.find("source    limit set by the site: R. Example, chief of operations (invented), "
                  "2026-01-04") != std::string::npos);
  CHECK(text.find("capacity  at least 30.000 m") != std::string::npos);
  CHECK(text.find("distance = at least 30.000 m (heights)") != std::string::npos);
}

}  // namespace rimehaul::card
