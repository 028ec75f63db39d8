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
  REQUIRE(both.ways[0].ground.has_value());
  REQUIRE(both.ways[1].ground.has_value());
  CHECK(testing::near(both.ways[0].ground->grade_low.ratio(), 0.1, 1e-9));
  CHECK(testing::near(both.ways[1].ground->grade_high.ratio(), -0.1, 1e-9));
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
      if (finding.share && finding.demand.value > 0) {
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
  CHECK(explanation.ways[0].verdict == passage::Verdict::closed);
  CHECK(text_of(explanation, 80).find("heights") != std::string::npos);
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
