#include <doctest/doctest.h>

#include <filesystem>
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

/// A site in which something of every file but site.toml is wrong.
void spoil_all_but_heights(const TinySite& site) {
  site.change("rigs.toml", {"mass_kg = 620", "mass_kg = \"620\""});
  site.change("stations.geojson", {"\"kind\":\"hut\"", "\"kind\":\"castle\""});
  std::string trails = site.text("trails.geojson");
  for (std::size_t at = trails.find("\"both\""); at != std::string::npos;
       at = trails.find("\"both\"")) {
    trails.replace(at, 6, "\"sideways\"");
  }
  site.write("trails.geojson", trails);
}

TEST_CASE("heights that are not there are one fault, and all the rest is still looked at") {
  const TinySite site;
  site.remove("heights.asc");
  spoil_all_but_heights(site);
  const Ran ran = run_command({"check", site.folder()});
  CAPTURE(ran.out);
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "fault: heights.asc: there is no such file"));
  CHECK(says(ran.out, "rigs.toml"));
  CHECK(says(ran.out, "castle"));
  for (const char* trail : {"Low Way", "High Way", "Spur"}) {
    CHECK(says(ran.out, std::string{"fault: trails.geojson: trail "} + trail +
                            ": direction is \"sideways\""));
  }
  CHECK_FALSE(says(ran.out, "not looked at"));
}

TEST_CASE(
    "heights that nobody names, or that are damaged, keep nothing else from being looked at") {
  const TinySite unnamed;
  unnamed.change("site.toml", {"files = [\"heights.asc\"]\n", ""});
  const TinySite damaged;
  damaged.write("heights.asc", "no heights at all");
  for (const TinySite* site : {&unnamed, &damaged}) {
    spoil_all_but_heights(*site);
    const Ran ran = run_command({"check", site->folder()});
    CAPTURE(ran.out);
    CHECK(ran.status == Status::honest_no);
    CHECK(says(ran.out, "trail Spur: direction is \"sideways\""));
    CHECK_FALSE(says(ran.out, "not looked at"));
  }
}

TEST_CASE("a snow report that names no trail of the site is a fault even without heights") {
  const TinySite site;
  site.remove("heights.asc");
  site.write("snow.toml", site.text("snow.toml") +
                              "\n[[groomed]]\ntrails = [\"Low Wya\"]\nfinished = "
                              "2026-02-01T04:00:00Z\n");
  CHECK(says(run_command({"check", site.folder()}).out, "did you mean 'Low Way'?"));
}

TEST_CASE("without heights and without a map frame the trails cannot be read, and that is told") {
  const TinySite site;
  site.remove("heights.asc");
  site.change("site.toml", {"map_frame = \"EPSG:32605\"\n", ""});
  const Ran none = run_command({"check", site.folder()});
  CHECK(says(none.out, "fault: heights.asc: there is no such file"));
  CHECK(says(none.out, "not looked at, because neither heights nor map_frame give a map"));
}

TEST_CASE("a map frame that is none is told even without heights, once") {
  for (const char* frame : {"EPSG:4326", "EPSG:nonsense"}) {
    const TinySite site;
    site.remove("heights.asc");
    site.change("site.toml", {"EPSG:32605", frame});
    const std::string told = run_command({"check", site.folder()}).out;
    CAPTURE(told);
    const std::size_t first = told.find("site.toml: map_frame");
    REQUIRE(first != std::string::npos);
    CHECK(told.find("site.toml: map_frame", first + 1) == std::string::npos);
    CHECK(says(told, "not looked at"));
  }
}

TEST_CASE("faults of heights name their file with its folder, as the site writes it") {
  const TinySite site;
  site.change("site.toml", {"[heights]\n", "[heights]\nfolder = \"ground\"\n"});
  std::filesystem::create_directory(site.path("ground"));
  CHECK(says(run_command({"check", site.folder()}).out,
             "fault: ground/heights.asc: there is no such file"));
  site.write("ground/heights.asc", "no heights at all");
  const Ran damaged = run_command({"check", site.folder()});
  CAPTURE(damaged.out);
  CHECK(says(damaged.out, "fault: ground/heights.asc: this is no raster of a known kind"));
  site.write("ground/heights.asc", site.text("heights.asc"));
  site.write("ground/heights.prj", site.text("heights.prj"));
  const Ran sound = run_command({"check", site.folder()});
  CAPTURE(sound.out);
  CHECK(sound.status == Status::yes);
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

TEST_CASE("names in letters that no font here has are a doubt, one line for all of them") {
  const TinySite site;
  CHECK_FALSE(says(run_command({"check", site.folder()}).out, "letters"));
  const std::string strange = "\xf4\x8a\xaf\x8d Way";  // U+10ABCD, for private use: in no font
  site.change("trails.geojson", {"Low Way", strange});
  site.change("stations.geojson", {"\"Hut\"", "\"\xf4\x8a\xaf\x8d\""});
  const Ran ran = run_command({"check", site.folder(), "--json", "-"});
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "no font here has all letters of \\\"" + strange + "\\\", \\\"\xf4\x8a"));
  CHECK(ran.out.find("no font here") == ran.out.rfind("no font here"));
}

TEST_CASE("a card with such a name says so beside it, and is printed all the same") {
  const TinySite site;
  site.change("trails.geojson", {"Low Way", "\xf4\x8a\xaf\x8d Way"});
  const Ran ran = run_command(testing::route_words(site, {"--card", site.path("card.pdf")}));
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.err, "no font here has all letters of"));
  CHECK(site.text("card.pdf").starts_with("%PDF"));
}

/// By what, from what and when: the end of every answer.
void check_made_from(const json& answer) {
  CHECK(answer.at("made_utc").get<std::string>().ends_with("Z"));
  CHECK(answer.at("versions").at(0).get<std::string>().starts_with("rimehaul "));
  REQUIRE(answer.at("inputs").size() >= 4);
  for (const json& input : answer.at("inputs")) {
    CHECK(input.at("sha256").get<std::string>().size() == 64);
  }
}

TEST_CASE("an explanation and a refusal tell what they were made from, as a card does") {
  const TinySite site;
  const Ran explained = run_command({"explain", site.folder(), "--rig", "solo", "--snow", "dry",
                                     "--trail", "Spur", "--at", "100", "--json", "-"});
  REQUIRE(explained.status == Status::yes);
  check_made_from(json::parse(explained.out));
  const Ran refused = run_command(testing::route_words(site, {"--wind", "300", "--json", "-"}));
  REQUIRE(refused.status == Status::honest_no);
  check_made_from(json::parse(refused.out));
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
