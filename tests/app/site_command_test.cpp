#include <doctest/doctest.h>

#include <nlohmann/json.hpp>

#include "app/tiny_site.h"

namespace rimehaul::app {
namespace {

using nlohmann::json;
using testing::Ran;
using testing::route_words;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("a sound site is usable: 0, with what there is") {
  const TinySite site;
  const Ran ran = run_command({"check", site.folder()});
  CAPTURE(ran.out);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "3 trails"));
  CHECK(says(ran.out, "2 rigs: solo, towing"));
  CHECK(says(ran.out, "0 faults"));
}

TEST_CASE("all faults of a site come in one pass: 1 from check, 3 from route, the same lines") {
  const TinySite site;
  site.change("rigs.toml", {"mass_kg = 620", "mass_kg = \"620\""});
  site.change("rules.toml", {"most_wind_kmh = 60", "most_wind = 60"});
  site.change("stations.geojson", {"\"kind\":\"hut\"", "\"kind\":\"castle\""});
  const Ran checked = run_command({"check", site.folder()});
  CHECK(checked.status == Status::honest_no);
  const Ran routed = run_command(route_words(site));
  CHECK(routed.status == Status::bad_input);
  CHECK(routed.out.empty());
  for (const char* file : {"rigs.toml", "rules.toml", "stations.geojson"}) {
    CAPTURE(file);
    CHECK(says(checked.out, file));
    CHECK(says(routed.err, file));
  }
  CHECK(says(checked.out, "most_wind_kmh"));
}

TEST_CASE("a folder that is no site ends with 3, from every verb, naming site.toml") {
  const TinySite site;
  site.remove("site.toml");
  for (const auto& words : {std::vector<std::string>{"check", site.folder()}, route_words(site)}) {
    const Ran ran = run_command(words);
    CHECK(ran.status == Status::bad_input);
    CHECK(says(ran.err, "site.toml"));
    CHECK(ran.out.empty());
  }
}

TEST_CASE("heights that are not there are one fault, and the rest is still looked at") {
  const TinySite site;
  site.remove("heights.asc");
  site.change("rigs.toml", {"mass_kg = 620", "mass_kg = \"620\""});
  const Ran ran = run_command({"check", site.folder()});
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "heights.asc"));
  CHECK(says(ran.out, "rigs.toml"));
}

TEST_CASE("doubts alone leave a site usable and are told: levels, ratings, holes, old reports") {
  const TinySite site;
  site.change("rigs.toml", {"driver_level = \"seasoned\"", "driver_level = \"visitor\""});
  const Ran level = run_command({"check", site.folder()});
  CHECK(level.status == Status::yes);
  CHECK(says(level.out, "driver level visitor"));
  const Ran old = run_command({"check", site.folder(), "--now", "2026-02-03T09:00:00Z"});
  CHECK(says(old.out, "ran out"));
}

TEST_CASE("check as JSON tells the same, with digests") {
  const TinySite site;
  const Ran ran = run_command({"check", site.folder(), "--json", "-"});
  const json report = json::parse(ran.out);
  CHECK(report["kind"] == "site_check");
  CHECK(report["usable"] == true);
  CHECK(report["inputs"].size() >= 7);
  CHECK(report["inputs"][0]["sha256"].get<std::string>().size() == 64);
}

TEST_CASE("a digest follows its file") {
  const TinySite site;
  const auto digests = [&] {
    return json::parse(run_command({"check", site.folder(), "--json", "-"}).out)["inputs"];
  };
  const json before = digests();
  site.change("rules.toml", {"most_wind_kmh = 60", "most_wind_kmh = 61"});
  CHECK(before != digests());
}

TEST_CASE("a place is explained by trail and metres, and by the point on the map, alike") {
  const TinySite site;
  const std::vector<std::string> common{"explain", site.folder(), "--rig",  "solo",
                                        "--snow",  "dry",         "--json", "-"};
  auto by_trail = common;
  by_trail.insert(by_trail.end(), {"--trail", "Spur", "--at", "100"});
  auto by_point = common;
  by_point.insert(by_point.end(), {"--point", "500003,5100180"});
  const Ran trail = run_command(by_trail);
  const Ran point = run_command(by_point);
  CAPTURE(trail.err);
  CAPTURE(point.err);
  REQUIRE(trail.status == Status::yes);
  REQUIRE(point.status == Status::yes);
  const json one = json::parse(trail.out);
  const json other = json::parse(point.out);
  CHECK(one["trail"] == "Spur");
  CHECK(other["trail"] == "Spur");
  CHECK(std::abs(one["at_m"].get<double>() - other["at_m"].get<double>()) < 0.001);
  CHECK(one["ways"].size() == 2);
  // The plane rises by 6 %, 3.4336 degrees, and the Spur climbs it straight.
  CHECK(std::abs(one["ways"][0]["ground"]["grade_high_deg"].get<double>() - 3.4336) < 0.01);
}

TEST_CASE("explaining a closed place still ends with 0: the explanation is the answer") {
  const TinySite site;
  const Ran ran = run_command({"explain", site.folder(), "--rig", "solo", "--snow", "dry", "--wind",
                               "90", "--trail", "Low Way", "--at", "50", "--direction", "forward"});
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "closed"));
  CHECK(says(ran.out, ">>> wind"));
  CHECK(says(ran.out, "docs/checks/"));
}

TEST_CASE("frost is given as it is said: --temperature -12") {
  const TinySite site;
  const Ran ran = run_command(route_words(site, {"--temperature", "-12"}));
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "-12 deg C"));
}

}  // namespace
}  // namespace rimehaul::app
