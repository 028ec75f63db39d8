#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "base/require.h"
#include "card/explanation.h"
#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {
namespace {

/// A straight trail up a plane of 10 %, explained 100 m along.
struct OnAPlane {
  passage::Scene scene = testing::scene_of({testing::plane(0.0, 0.1)}, testing::straight_trail(0));
  rig::Rig rig = testing::solo_rig();
  snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  passage::Judge judge{scene, rig, snow};

  [[nodiscard]] Explanation at(double metres, Directions directions) const {
    return explain(judge, {0, units::Metres{metres}}, directions, testing::mid_morning());
  }
};

const ExplainedFinding* finding_of(const ExplainedWay& way, passage::Check check) {
  const auto found = std::ranges::find_if(way.findings, [&](const ExplainedFinding& explained) {
    return explained.finding.check == check;
  });
  return found == way.findings.end() ? nullptr : &*found;
}

TEST_CASE("a place is explained both ways: what climbs one way falls the other") {
  const OnAPlane site;
  const Explanation both = site.at(100, Directions::both);
  REQUIRE(both.ways.size() == 2);
  CHECK(both.ways[0].way == trails::Way::as_drawn);
  CHECK(testing::near(both.ways[0].at, units::Metres{100}, units::Metres{1e-9}));
  CHECK(testing::near(both.ways[1].at, units::Metres{200}, units::Metres{1e-9}));
  REQUIRE(both.ways[0].ground.carrier.has_value());
  REQUIRE(both.ways[1].ground.carrier.has_value());
  CHECK(testing::near(both.ways[0].ground.carrier->found.grade_low.ratio(), 0.1, 1e-9));
  CHECK(testing::near(both.ways[1].ground.carrier->found.grade_high.ratio(), -0.1, 1e-9));
  CHECK(site.at(100, Directions::forward).ways.size() == 1);
  CHECK(site.at(100, Directions::backward).ways[0].way == trails::Way::against);
}

TEST_CASE("findings stand in the order of checks and exactly one binds, no other before it") {
  const Explanation explanation = OnAPlane{}.at(100, Directions::forward);
  const auto& findings = explanation.ways[0].findings;
  REQUIRE(findings.size() > 10);
  const ExplainedFinding* binding = nullptr;
  for (const ExplainedFinding& explained : findings) {
    if (explained.binds) {
      CHECK(binding == nullptr);
      binding = &explained;
    }
  }
  REQUIRE(binding != nullptr);
  for (std::size_t i = 0; i < findings.size(); ++i) {
    CHECK_FALSE(passage::binds_before(findings[i].finding, binding->finding));
    CHECK((i == 0 || findings[i - 1].finding.check <= findings[i].finding.check));
  }
}

TEST_CASE("a share can be worked out again from the demand and capacity shown") {
  const Explanation explanation = OnAPlane{}.at(100, Directions::both);
  std::size_t worked = 0;
  for (const ExplainedWay& way : explanation.ways) {
    for (const ExplainedFinding& explained : way.findings) {
      const passage::Finding& finding = explained.finding;
      if (finding.measure == passage::Measure::share && finding.share && finding.demand.value > 0) {
        CAPTURE(passage::facts_of(finding.check).title);
        CHECK(testing::near(*finding.share, finding.demand.value / finding.capacity.value, 1e-12));
        ++worked;
      }
    }
  }
  CHECK(worked > 5);
}

TEST_CASE("the climb rating's demand is the plane's grade with the tolerance shown added") {
  const Explanation explanation = OnAPlane{}.at(100, Directions::forward);
  const ExplainedFinding* climb = finding_of(explanation.ways[0], passage::Check::climb_rating);
  REQUIRE(climb != nullptr);
  REQUIRE(explanation.tolerance.has_value());
  CHECK(testing::near(climb->finding.demand.value, 0.1 + explanation.tolerance->ratio(), 1e-9));
}

TEST_CASE("where the rig sheet's ratings and the grip come from is told") {
  const Explanation explanation = OnAPlane{}.at(100, Directions::forward);
  const auto told = [&](const char* part) {
    return std::ranges::any_of(explanation.sources, [&](const std::string& source) {
      return source.find(part) != std::string::npos;
    });
  };
  CHECK(told("operator's manual, page 41"));
  CHECK(told("grip of dry, groomed"));
}

TEST_CASE("both ends of a trail can be explained, and a place beyond it is our fault") {
  const OnAPlane site;
  CHECK(site.at(0, Directions::both).ways.size() == 2);
  CHECK(site.at(300, Directions::both).ways.size() == 2);
  CHECK_THROWS_AS((void)site.at(301, Directions::both), base::OurFault);
}

TEST_CASE("where heights are missing the explanation says so and the place is closed") {
  OnAPlane site;
  const auto hole = testing::with_void(
      testing::plane(0.0, 0.1), [](double, double north) { return north > 80 && north < 120; });
  const passage::Scene scene = testing::scene_of({hole}, testing::straight_trail(0));
  const passage::Judge judge{scene, site.rig, site.snow};
  const Explanation explanation =
      explain(judge, {0, units::Metres{100}}, Directions::forward, testing::mid_morning());
  CHECK_FALSE(explanation.height.has_value());
  CHECK(explanation.snow == "unknown");
  CHECK(explanation.ways[0].verdict.verdict == passage::Verdict::closed);
  CHECK(explanation.ways[0].leg.verdict.verdict == passage::Verdict::closed);
  CHECK_FALSE(explanation.ways[0].leg.verdict.loads.any());
  CHECK(text_of(explanation, 80).find("heights") != std::string::npos);
}

TEST_CASE("a place and its leg that another load opens are restricted to it, in kilograms") {
  OnAPlane site;
  site.rig.load.bed = units::Kilograms{240};  // of 250, and 0.7 is allowed
  const Explanation explanation = site.at(100, Directions::forward);
  const ExplainedWay& way = explanation.ways[0];
  for (const ExplainedVerdict& told : {way.verdict, way.leg.verdict}) {
    CHECK(told.verdict == passage::Verdict::restricted);
    CHECK(told.decision.empty());
    REQUIRE(told.loads.bed.size() == 1);
    CHECK(told.loads.bed[0].to == units::Kilograms{175});
  }
  CHECK(way.leg.binding.check == passage::Check::payload);
  const std::string text = text_of(explanation, 200);
  CHECK(text.find(": restricted\n") != std::string::npos);
  CHECK(text.find("Opens by  bed load from ") != std::string::npos);
  CHECK(text.find(" to 175 kg\n") != std::string::npos);
  // The search drives no leg on the strength of a load that the rig does not carry.
  CHECK(site.judge.judge(trails::LegId{0}, testing::mid_morning()).verdict ==
        passage::Verdict::closed);
}

TEST_CASE("the leg can be closed where the place is open: both are told") {
  // Gentle for 200 m, then far too steep.
  const auto bent = [](double, double north) {
    return 1000.0 + (north < 200 ? 0.02 * north : 4.0 + 0.6 * (north - 200));
  };
  const passage::Scene scene = testing::scene_of({bent}, testing::straight_trail(0));
  const OnAPlane site;
  const passage::Judge judge{scene, site.rig, site.snow};
  const Explanation explanation =
      explain(judge, {0, units::Metres{50}}, Directions::forward, testing::mid_morning());
  CHECK(explanation.ways[0].verdict.verdict == passage::Verdict::open);
  CHECK(explanation.ways[0].leg.verdict.verdict == passage::Verdict::closed);
  CHECK(explanation.ways[0].leg.binding.at > units::Metres{180});
  CHECK(text_of(explanation, 200).find("Leg       closed over its 300 m; binds: ") !=
        std::string::npos);
}

TEST_CASE("a place that waits for a decision is restricted and names it") {
  const auto bank = [](double east_m, double) {
    return 1000.0 + (east_m < 7.0 ? 0.0 : std::min(east_m - 7.0, 60.0) * 0.84);
  };
  const passage::Scene scene =
      testing::scene_of({.ground = bank, .cell_m = 2.0}, testing::straight_trail(0));
  OnAPlane site;
  const auto told_for = [&](const rig::Rig& rig) {
    const passage::Judge judge{scene, rig, site.snow};
    return explain(judge, {0, units::Metres{100}}, Directions::forward, testing::mid_morning())
        .ways[0]
        .leg.verdict;
  };
  const ExplainedVerdict asking = told_for(site.rig);
  CHECK(asking.verdict == passage::Verdict::restricted);
  CHECK_FALSE(asking.decision.empty());
  CHECK_FALSE(asking.loads.any());
  site.rig.load.bed = units::Kilograms{240};
  const ExplainedVerdict both = told_for(site.rig);
  CHECK(both.verdict == passage::Verdict::restricted);
  CHECK(both.decision == asking.decision);
  CHECK(both.loads.any());
}

TEST_CASE("the text names every finding with formula, inputs, source and page") {
  const Explanation explanation = OnAPlane{}.at(100, Directions::forward);
  const std::string text = text_of(explanation, 200);
  for (const ExplainedFinding& explained : explanation.ways[0].findings) {
    const passage::CheckFacts& facts = passage::facts_of(explained.finding.check);
    CAPTURE(facts.title);
    CHECK(text.find(std::string{facts.title} + ": ") != std::string::npos);
    CHECK(text.find(std::string{facts.page}) != std::string::npos);
    for (const passage::Input& input : explained.finding.inputs.all()) {
      CHECK(text.find(std::string{input.name} + " = ") != std::string::npos);
    }
  }
  CHECK(text.find(">>>") != std::string::npos);
}

}  // namespace
}  // namespace rimehaul::card
