// The verb `audit` from its words to its exit status and files, on the tiny site and on the demo.
#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>

#include "app/load_site.h"
#include "app/tiny_site.h"
#include "audit/slope_audit.h"

namespace rimehaul::app {
namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

std::vector<std::string> audit_words(const TinySite& site,
                                     const std::vector<std::string>& more = {}) {
  std::vector<std::string> words{
      "audit",        site.folder(), "--rig",  "solo",      "--snow",     "dry", "--load",     "50",
      "--visibility", "2000",        "--wind", "10",        "--bulletin", "1",   "--new-snow", "0",
      "--rain",       "no",          "--for",  "A. Officer"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

TEST_CASE("an audit in which nothing exceeds ends with 0 and says for whom it was made") {
  const TinySite site;
  const Ran ran = run_command(audit_words(site));
  CAPTURE(ran.out);
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "PASSED: no exceedance on any of 3 trails"));
  CHECK(says(ran.out, "for A. Officer"));
  CHECK(says(ran.out, "TIGHTEST PLACES"));
  CHECK(says(ran.out, "SHA-256") + says(ran.out, "Input") > 0);
  std::istringstream lines{ran.out};
  for (std::string line; std::getline(lines, line);) {
    CHECK(line.size() <= 80);
  }
}

TEST_CASE("what nobody said of the weather fails the audit: 1, with the option that tells") {
  const TinySite site;
  const Ran ran = run_command({"audit", site.folder(), "--rig", "solo", "--snow", "dry", "--load",
                               "50", "--now", "2030-01-01T12:00:00Z"});
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "FAILED"));
  CHECK(says(ran.out, "--bulletin"));
  CHECK(says(ran.out, "--new-snow"));
}

TEST_CASE("with no load given every rig is judged full and empty, and the report says so") {
  const TinySite site;
  const Ran ran = run_command({"audit", site.folder(), "--snow", "dry", "--visibility", "2000",
                               "--wind", "10", "--bulletin", "1"});
  CHECK(says(ran.out, "solo, full: bed "));
  CHECK(says(ran.out, "solo, empty: bed 0 kg"));
  CHECK(says(ran.out, "towing, full: bed "));
  CHECK(says(ran.out, "no load was asked for"));
}

TEST_CASE("CSV, GeoJSON, JSON and PDF go to the files named") {
  const TinySite site;
  const Ran ran = run_command(audit_words(
      site, {"--snow", "slush", "--csv", site.path("a.csv"), "--geojson", site.path("a.geojson"),
             "--json", site.path("a.json"), "--pdf", site.path("a.pdf")}));
  CAPTURE(ran.err);
  CHECK(site.text("a.csv").starts_with("rig,load,bed_kg,towed_kg,snow,"));
  CHECK(says(site.text("a.geojson"), "\"type\":\"FeatureCollection\""));
  CHECK(says(site.text("a.json"), "\"kind\":\"slope_audit\""));
  CHECK(site.text("a.pdf").starts_with("%PDF-"));
  const bool failed = ran.status == Status::honest_no;
  CHECK(says(site.text("a.json"), failed ? "\"passed\":false" : "\"passed\":true"));
}

TEST_CASE("the same audit at the same --now gives the same bytes, text, JSON and PDF") {
  const TinySite site;
  const Ran one = run_command(audit_words(site, {"--pdf", site.path("1.pdf")}));
  const Ran two = run_command(audit_words(site, {"--pdf", site.path("2.pdf")}));
  CHECK(one.out == two.out);
  CHECK(site.text("1.pdf") == site.text("2.pdf"));
  CHECK(run_command(audit_words(site, {"--json", "-"})).out ==
        run_command(audit_words(site, {"--json", "-"})).out);
}

TEST_CASE("on the demo a leg has exceedances exactly where the judge finds it closed" *
          doctest::test_suite("whole demo")) {
  const LoadedSite site = load_usable_site(std::string{RIMEHAUL_ROOT} + "/routes/marrowfell");
  const passage::Scene& scene = *site.scene;
  const passage::Scene bare = audit::without_errors(scene);
  const snow::ConstantSnow snow{
      {snow::Wetness::moist, snow::Surface::groomed}, site.snow->weather, "assumed for planning"};
  const units::Instant when = *units::parse_instant("2026-02-01T18:00:00Z");
  const units::Metres hair{1e-6};
  std::size_t closed = 0;
  std::size_t open = 0;
  for (const rig::Rig& rig : site.rigs) {
    const passage::Judge judge{scene, rig, snow};
    const passage::Judge as_measured{bare, rig, snow};
    for (std::size_t trail = 0; trail < scene.network.trails.size(); ++trail) {
      for (const trails::Way way : audit::allowed_ways(scene.network.trails[trail])) {
        const audit::MeasuredTrail ground = audit::measure(scene, rig, {trail, way});
        const auto audited = audit::audit_trail(ground, {judge, as_measured}, when);
        const double length = scene.network.trails[trail].line.length().value();
        CHECK(std::abs(audited.lengths.total().value() - length) < 1e-6);
        for (const audit::MeasuredLeg& leg : ground.legs) {
          const bool told =
              std::ranges::any_of(audited.exceedances, [&](const audit::AuditedPlace& place) {
                return place.on == audit::On::trail &&
                       place.span.from < leg.stretch.span.to - hair &&
                       place.span.to > leg.stretch.span.from + hair;
              });
          const bool is_closed = judge.judge(leg.leg, when).verdict == passage::Verdict::closed;
          CAPTURE(scene.network.trails[trail].name);
          CAPTURE(rig.name);
          CHECK(told == is_closed);
          ++(is_closed ? closed : open);
        }
      }
    }
  }
  CHECK(closed > 10);
  CHECK(open > 10);
}

}  // namespace
}  // namespace rimehaul::app
