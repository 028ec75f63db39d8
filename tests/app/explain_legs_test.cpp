// The number that closed a leg is the number that `explain` shows at its place.
#include <doctest/doctest.h>

#include <map>

#include "app/demo_site.h"
#include "card/explanation.h"
#include "passage/stretch_judge.h"

namespace rimehaul::passage {
namespace {

/// How a finding came out, its place aside.
std::string outcome_of(const Finding& finding) {
  return finding.missing + "|" + finding.refused + "|" + finding.asks + "|" +
         (finding.share ? std::to_string(*finding.share) : "none");
}

/// The worst of every check over all pieces of a leg.
std::map<Check, Finding> worst_of_pieces(const Judge& judge, trails::LegId leg,
                                         const HoursOnLeg& hours) {
  const Stretch stretch = judge.stretch_of(leg);
  std::map<Check, Finding> worst;
  for (const Footfall& piece : ground_under(judge.scene(), judge.rig(), stretch)) {
    for (const PlaceFinding& here : judge.findings_at(stretch, piece, hours)) {
      const auto known = worst.find(here.finding.check);
      if (known == worst.end()) {
        worst.emplace(here.finding.check, here.finding);
      } else if (binds_before(here.finding, known->second)) {
        known->second = here.finding;
      }
    }
  }
  return worst;
}

void compare_every_leg(const Judge& judge, units::Instant when) {
  const trails::Network& network = judge.scene().network;
  std::size_t compared = 0;
  for (std::uint32_t i = 0; i < network.legs.size(); ++i) {
    const trails::LegId leg{i};
    CAPTURE(network.trails[network.legs[i].trail].name);
    CAPTURE(i);
    const LegJudgement judged = judge.judge(leg, when);
    const std::map<Check, Finding> worst = worst_of_pieces(judge, leg, judged.hours);
    CHECK(worst.size() == judged.findings.size());
    for (const Finding& finding : judged.findings) {
      CAPTURE(facts_of(finding.check).key);
      REQUIRE(worst.count(finding.check) == 1);
      CHECK(outcome_of(worst.at(finding.check)) == outcome_of(finding));
      ++compared;
    }
  }
  CHECK(compared > 1000);
}

TEST_CASE(
    "of every leg the worst that its pieces show of each check is what the leg was found to be") {
  for (const char* name : {"Longback", "Broadfoot with sled"}) {
    CAPTURE(name);
    const rig::Rig rig = testing::demo_rig(name);
    const snow::ReportedSnow noon = testing::demo_report("snow-noon.toml");
    compare_every_leg(Judge{*testing::demo_site().scene, rig, noon}, testing::demo_noon());
    // Late enough for the report to run out, and hours to end, while rigs are on their way.
    compare_every_leg(Judge{*testing::demo_site().scene, rig, noon},
                      *units::parse_instant("2026-02-02T00:28:00Z"));
  }
}

TEST_CASE("asked for the place at which a leg binds, explain shows the same number") {
  const rig::Rig rig = testing::demo_rig("Broadfoot with sled");
  const snow::ReportedSnow noon = testing::demo_report("snow-noon.toml");
  const Judge judge{*testing::demo_site().scene, rig, noon};
  const trails::Network& network = judge.scene().network;
  for (std::uint32_t i = 0; i < network.legs.size(); ++i) {
    const trails::Leg& leg = network.legs[i];
    const bool drawn = leg.way == trails::Way::as_drawn;
    const Finding bind = judge.judge(trails::LegId{i}, testing::demo_noon()).bind();
    CAPTURE(network.trails[leg.trail].name);
    CAPTURE(i);
    // A hair further on: pieces meet where a place was found.
    const units::Metres at = bind.at + units::Metres{0.01};
    const auto told = card::explain(
        judge, {leg.trail, drawn ? leg.span.from + at : leg.span.to - at},
        drawn ? card::Directions::forward : card::Directions::backward, testing::demo_noon());
    const auto& findings = told.ways.front().findings;
    const auto binds = std::ranges::find(findings, true, &card::ExplainedFinding::binds);
    REQUIRE(binds != findings.end());
    CHECK(facts_of(binds->finding.check).key == facts_of(bind.check).key);
    CHECK(outcome_of(binds->finding) == outcome_of(bind));
  }
}

}  // namespace
}  // namespace rimehaul::passage
