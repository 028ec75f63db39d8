// The demo site has what it is there to show: each feature is found again by asking for it.
#include <doctest/doctest.h>

#include <algorithm>

#include "app/demo_site.h"
#include "card/explanation.h"
#include "passage/judge.h"

namespace rimehaul::passage {
namespace {

using testing::demo_morning;
using testing::demo_noon;
using testing::demo_report;
using testing::demo_site;

const trails::Network& network() {
  return demo_site().scene->network;
}

const trails::Trail& trail_called(const std::string& name) {
  const auto index = network().trail_named(name);
  REQUIRE(index.has_value());
  return network().trails[*index];
}

/// A rig of the demo with little on it.
rig::Rig lightly(const std::string& name) {
  rig::Rig rig = testing::demo_rig(name);
  rig.load.bed = units::Kilograms{30};
  rig.load.towed = units::Kilograms{rig.trailer ? 30.0 : 0.0};
  rig.load.passengers = 0;
  return rig;
}

/// Everything found on all legs of a trail, driven one way.
std::vector<LegJudgement> judged(const Judge& judge, const std::string& trail, trails::Way way,
                                 units::Instant when) {
  std::vector<LegJudgement> legs;
  for (std::uint32_t i = 0; i < network().legs.size(); ++i) {
    const trails::Leg& leg = network().legs[i];
    if (network().trails[leg.trail].name == trail && leg.way == way) {
      legs.push_back(judge.judge(trails::LegId{i}, when));
    }
  }
  REQUIRE_FALSE(legs.empty());
  return legs;
}

/// Whether some leg is closed by a check.
bool closed_by(const std::vector<LegJudgement>& legs, Check check) {
  return std::ranges::any_of(legs, [&](const LegJudgement& leg) {
    return std::ranges::any_of(leg.findings, [&](const Finding& finding) {
      const Stand stand = stand_of(finding, leg.allowed_share);
      return finding.check == check && stand != Stand::passes && stand != Stand::asks;
    });
  });
}

bool all_open(const std::vector<LegJudgement>& legs) {
  return std::ranges::all_of(legs,
                             [](const LegJudgement& leg) { return leg.verdict == Verdict::open; });
}

bool any_closed(const std::vector<LegJudgement>& legs) {
  return std::ranges::any_of(
      legs, [](const LegJudgement& leg) { return leg.verdict == Verdict::closed; });
}

constexpr std::array kBothWays{trails::Way::as_drawn, trails::Way::against};

}  // namespace

TEST_CASE(
    "the demo's switchback lets a rig alone through, both ways, and is too tight for a trailer") {
  const snow::ReportedSnow snow = demo_report("snow.toml");
  for (const char* name : {"Broadfoot", "Longback"}) {
    CAPTURE(name);
    const rig::Rig rig = lightly(name);
    const Judge judge{*demo_site().scene, rig, snow};
    for (const trails::Way way : kBothWays) {
      const auto legs = judged(judge, "Crow Zigzag", way, demo_morning());
      for (const LegJudgement& leg : legs) {
        CAPTURE(facts_of(leg.bind().check).key);
        CAPTURE(leg.bind().at.value());
        CHECK(leg.verdict != Verdict::closed);
        for (const Finding& finding : leg.findings) {
          // Higher up it comes near ground that may release; nothing else keeps a rig away.
          CHECK((stand_of(finding, leg.allowed_share) == Stand::passes ||
                 finding.check == Check::avalanche));
        }
      }
    }
  }
  for (const char* name : {"Broadfoot with sled", "Broadfoot with cabin"}) {
    CAPTURE(name);
    const rig::Rig rig = lightly(name);
    const Judge judge{*demo_site().scene, rig, snow};
    for (const trails::Way way : kBothWays) {
      CHECK(closed_by(judged(judge, "Crow Zigzag", way, demo_morning()), Check::off_tracking));
    }
  }
}

TEST_CASE("no other trail of the demo is too tight for any of its rigs") {
  const snow::ReportedSnow snow = demo_report("snow.toml");
  for (const rig::Rig& known : demo_site().rigs) {
    CAPTURE(known.name);
    const rig::Rig rig = lightly(known.name);
    const Judge judge{*demo_site().scene, rig, snow};
    for (const trails::Trail& trail : network().trails) {
      CAPTURE(trail.name);
      const bool is_switchback = trail.name == "Crow Zigzag";
      const auto legs = judged(judge, trail.name, trails::Way::as_drawn, demo_morning());
      CHECK_FALSE(closed_by(legs, Check::turning));
      CHECK((is_switchback || !closed_by(legs, Check::off_tracking)));
    }
  }
}

TEST_CASE("the demo's sidehill trail is closed by its cross-slope, and by no other slope so much") {
  const snow::ReportedSnow snow = demo_report("snow.toml");
  const rig::Rig rig = lightly("Broadfoot");
  const Judge judge{*demo_site().scene, rig, snow};
  const auto across_on = [&](const std::string& trail) {
    double steepest = 0.0;
    for (const LegJudgement& leg : judged(judge, trail, trails::Way::as_drawn, demo_morning())) {
      steepest = std::max(steepest, leg.steepest_across->found.ratio());
    }
    return steepest;
  };
  CHECK(closed_by(judged(judge, "Sidehill", trails::Way::as_drawn, demo_morning()),
                  Check::cross_rating));
  for (const trails::Trail& trail : network().trails) {
    CAPTURE(trail.name);
    if (trail.name != "Sidehill" && trail.name != "Void Cut") {
      CHECK(across_on(trail.name) < across_on("Sidehill"));
    }
  }
}

TEST_CASE(
    "a trail of the demo runs under a release area: in its runout, where a decision is asked") {
  const auto& zones = demo_site().scene->network.zones;
  const auto of_kind = [&](trails::ZoneKind kind) {
    return std::ranges::any_of(zones, [&](const trails::Zone& zone) {
      return zone.kind == kind &&
             !geo::spans_inside(zone.region, trail_called("Crag Foot").line).empty();
    });
  };
  CHECK(of_kind(trails::ZoneKind::runout));
  CHECK_FALSE(of_kind(trails::ZoneKind::release_area));
  CHECK(std::ranges::any_of(
      zones, [](const trails::Zone& zone) { return zone.kind == trails::ZoneKind::release_area; }));
  const snow::ReportedSnow snow = demo_report("snow.toml");
  const rig::Rig rig = lightly("Broadfoot");
  const auto legs = judged(Judge{*demo_site().scene, rig, snow}, "Crag Foot", trails::Way::as_drawn,
                           demo_morning());
  CHECK_FALSE(any_closed(legs));
  int asked = 0;
  const trails::Trail& trail = trail_called("Crag Foot");
  for (const trails::Zone& zone : zones) {
    if (zone.kind != trails::ZoneKind::runout) {
      continue;
    }
    for (const geo::Span& span : geo::spans_inside(zone.region, trail.line)) {
      const card::Explanation there =
          card::explain(Judge{*demo_site().scene, rig, snow},
                        {*network().trail_named("Crag Foot"), (span.from + span.to) / 2.0},
                        card::Directions::forward, demo_morning());
      for (const card::ExplainedFinding& explained : there.ways.at(0).findings) {
        if (explained.finding.check == Check::avalanche) {
          CHECK(explained.finding.asks == "to drive in a runout");
          ++asked;
        }
      }
    }
  }
  CHECK(asked > 0);
}

TEST_CASE("a trail of the demo is open in the morning and has gone to slush by noon") {
  const rig::Rig rig = lightly("Broadfoot");
  const snow::ReportedSnow morning = demo_report("snow.toml");
  const snow::ReportedSnow noon = demo_report("snow-noon.toml");
  const snow::SnowState slush{snow::Wetness::slush, snow::Surface::groomed};
  const auto meets = [&](const std::vector<LegJudgement>& legs) {
    return std::ranges::any_of(legs, [&](const LegJudgement& leg) {
      return std::ranges::find(leg.snow, slush) != leg.snow.end();
    });
  };
  const auto early = judged(Judge{*demo_site().scene, rig, morning}, "Noon Run",
                            trails::Way::as_drawn, demo_morning());
  CHECK(all_open(early));
  CHECK_FALSE(meets(early));
  // After the report, and in time to be off it before its hours end at noon.
  const units::Instant late{demo_noon().seconds - 1740};
  const auto later =
      judged(Judge{*demo_site().scene, rig, noon}, "Noon Run", trails::Way::as_drawn, late);
  CHECK(meets(later));
  CHECK_FALSE(all_open(later));
  CHECK(closed_by(later, Check::climb_traction));
  CHECK_FALSE(closed_by(later, Check::hours));
}

TEST_CASE("two trails of the demo are a one-way pair: up the one and down the other") {
  const trails::Trail& up = trail_called("Cable Up");
  const trails::Trail& down = trail_called("Cable Down");
  CHECK(up.direction == trails::AllowedDirection::forward);
  CHECK(down.direction == trails::AllowedDirection::forward);
  const units::Metres near{20};
  CHECK(geo::distance(up.line.points().front(), down.line.points().back()) < near);
  CHECK(geo::distance(up.line.points().back(), down.line.points().front()) < near);
  const rig::Rig rig = lightly("Broadfoot");
  const snow::ReportedSnow snow = demo_report("snow.toml");
  const Judge judge{*demo_site().scene, rig, snow};
  for (const char* name : {"Cable Up", "Cable Down"}) {
    CHECK(all_open(judged(judge, name, trails::Way::as_drawn, demo_morning())));
    CHECK(closed_by(judged(judge, name, trails::Way::against, demo_morning()), Check::direction));
  }
}

TEST_CASE(
    "a bridge of the demo carries a trail over a ravine that no heights could be driven through") {
  const auto& marks = network().marks;
  const auto bridge = std::ranges::find(marks, trails::MarkKind::bridge, &trails::Mark::kind);
  REQUIRE(bridge != marks.end());
  passage::Scene without = *demo_site().scene;
  std::erase_if(without.network.marks,
                [](const trails::Mark& mark) { return mark.kind == trails::MarkKind::bridge; });
  const rig::Rig rig = lightly("Broadfoot");
  const snow::ReportedSnow snow = demo_report("snow.toml");
  CHECK_FALSE(any_closed(judged(Judge{*demo_site().scene, rig, snow}, bridge->trail,
                                trails::Way::as_drawn, demo_morning())));
  CHECK(closed_by(
      judged(Judge{without, rig, snow}, bridge->trail, trails::Way::as_drawn, demo_morning()),
      Check::climb_rating));
}

TEST_CASE("the demo's heights have a hole, and the trail over it is closed for that") {
  const rig::Rig rig = lightly("Broadfoot");
  const snow::ReportedSnow snow = demo_report("snow.toml");
  const Judge judge{*demo_site().scene, rig, snow};
  for (const trails::Trail& trail : network().trails) {
    CAPTURE(trail.name);
    const auto legs = judged(judge, trail.name, trails::Way::as_drawn, demo_morning());
    CHECK(closed_by(legs, Check::heights_known) == (trail.name == "Void Cut"));
  }
}

}  // namespace rimehaul::passage
