// Answers never go over what a command reads, nor over each other; "-" is standard output.
#include "app/output_places.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>

#include "app/desk.h"
#include "app/one_file.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using testing::Desk;
using testing::Ran;
using testing::run_command;
using testing::text_in;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

using Words = std::vector<std::string>;

Words with(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

/// Ends with 2 and one line that says so, and leaves the file as it was.
void check_refused(const Words& words, const std::string& kept, std::string_view why) {
  CAPTURE(words);
  const std::string before = text_in(kept);
  const Ran ran = run_command(words);
  CAPTURE(ran.err);
  CHECK(ran.status == Status::wrong_usage);
  CHECK(ran.out.empty());
  CHECK(std::ranges::count(ran.err, '\n') == 1);
  CHECK(says(ran.err, why));
  CHECK(text_in(kept) == before);
}

TEST_CASE("no answer goes over a file of the site, whichever option would write it") {
  const TinySite site;
  const std::string trails = site.path("trails.geojson");
  const std::string rules = site.path("rules.toml");
  const std::string why = ", which this command reads; name another file";
  const Words rig{"--rig", "solo", "--load", "20"};
  check_refused(testing::route_words(site, {"--card", trails}), trails,
                "--card would be written over " + trails + why);
  check_refused(testing::route_words(site, {"--gpx", site.path("heights.prj")}),
                site.path("heights.prj"), why);
  check_refused({"audit", site.folder(), "--csv", rules}, rules,
                "--csv would be written over " + rules + why);
  check_refused({"audit", site.folder(), "--geojson", site.path("site.toml")},
                site.path("site.toml"), why);
  check_refused(with({"board", site.folder(), "--pdf", site.path("rigs.toml")}, rig),
                site.path("rigs.toml"), why);
  check_refused(with({"limits", site.folder(), "--svg", rules}, rig), rules, why);
  check_refused(with({"rig", site.folder(), "--pdf", rules}, rig), rules, why);
  check_refused({"check", site.folder(), "--json", rules}, rules, why);
  check_refused(with({"explain", site.folder(), "--trail", "Spur", "--at", "1", "--snow", "dry",
                      "--json", site.path("stations.geojson")},
                     rig),
                site.path("stations.geojson"), why);
}

TEST_CASE("rasters of slopes are held to the same, by the names that they will have") {
  const TinySite site;
  fs::copy_file(site.path("trails.geojson"), site.path("slope.tif"));
  site.change("site.toml", {"\"trails.geojson\"", "\"slope.tif\""});
  check_refused(
      {"slopes", site.folder(), "--into", site.folder()}, site.path("slope.tif"),
      "--into would be written over " + site.path("slope.tif") + ", which this command reads");
  const Desk desk;
  check_refused(
      {"slopes", site.folder(), "--into", desk.path("s"), "--json", desk.path("s/aspect.tif")},
      site.path("slope.tif"), " would both be written to ");
  CHECK(desk.is_empty());
}

TEST_CASE("the record beside a card is held to the same") {
  const TinySite site;
  fs::copy_file(site.path("trails.geojson"), site.path("card.record.json"));
  site.change("site.toml", {"\"trails.geojson\"", "\"card.record.json\""});
  check_refused(testing::route_words(site, {"--card", site.path("card")}),
                site.path("card.record.json"), "card.record.json, which this command reads");
}

TEST_CASE("a file of the site is known by any spelling, link or second name") {
  const TinySite site;
  const Desk desk;
  const std::string rules = site.path("rules.toml");
  fs::create_symlink(rules, desk.path("link"));
  fs::create_symlink(desk.path("link"), desk.path("link-to-link"));
  fs::create_hard_link(rules, desk.path("second-name"));
  fs::create_directory_symlink(site.folder(), desk.path("site"));
  const std::string name = fs::path{site.folder()}.filename().string();
  for (const std::string& spelt :
       {site.folder() + "/./rules.toml", site.folder() + "/../" + name + "/rules.toml",
        desk.path("link"), desk.path("link-to-link"), desk.path("second-name"),
        desk.path("site/rules.toml")}) {
    check_refused({"check", site.folder(), "--json", spelt}, rules, "which this command reads");
  }
  check_refused({"check", desk.path("site"), "--json", rules}, rules, "which this command reads");
}

TEST_CASE("what a broken site names is kept too") {
  const TinySite site;
  site.write("rules.toml", "no rules");
  check_refused({"check", site.folder(), "--json", site.path("rules.toml")},
                site.path("rules.toml"), "which this command reads");
  site.write("site.toml", "no site");
  check_refused({"check", site.folder(), "--json", site.path("site.toml")}, site.path("site.toml"),
                "which this command reads");
}

TEST_CASE("a report given beside the site, and the files of a new site, are kept") {
  const TinySite site;
  const Desk desk;
  fs::copy_file(site.path("snow.toml"), desk.path("today.toml"));
  check_refused({"route", site.folder(), "--rig", "solo", "--load", "20", "--snow-report",
                 desk.path("today.toml"), "--from", "Base", "--to", "Top", "--json",
                 desk.path("./today.toml")},
                desk.path("today.toml"), "which this command reads");
  const Words make{"new",       desk.path("fell"),
                   "--heights", desk.given("heights.asc"),
                   "--trails",  desk.given("trails.geojson"),
                   "--json"};
  check_refused(with(make, {desk.given("heights.prj")}), desk.given("heights.prj"),
                "which this command reads");
  for (const char* made : {"fell", "fell/site.toml", "fell/heights.prj", "./fell/trails.geojson"}) {
    check_refused(with(make, {desk.path(made)}), desk.given("heights.asc"),
                  "which this command makes");
  }
  CHECK_FALSE(fs::exists(desk.path("fell")));
}

TEST_CASE("two answers of one command need two places") {
  const TinySite site;
  const Desk desk;
  const auto audit = [&](const std::string& csv, const std::string& geojson) {
    return Words{"audit", site.folder(), "--csv", csv, "--geojson", geojson};
  };
  const std::string why = "--csv and --geojson would both be written to ";
  fs::create_symlink(desk.path("one"), desk.path("link"));
  check_refused(audit(desk.path("one"), desk.path("./one")), desk.path("one"), why);
  check_refused(audit(desk.path("one"), desk.path("link")), desk.path("one"), why);
  check_refused(
      testing::route_words(site, {"--card", desk.path("a"), "--gpx", desk.path("a.record.json")}),
      desk.path("a"), "--card and --gpx would both be written to ");
  check_refused(audit("-", "-"), desk.path("one"), "cannot both go to standard output");
  CHECK(desk.is_empty() == false);
  CHECK_FALSE(fs::exists(desk.path("one")));
}

TEST_CASE("two answers may go down one device, and be lost there") {
  CHECK_FALSE(are_one_file("/dev/null", "/dev/null"));
  const TinySite site;
  CHECK(run_command({"check", site.folder(), "--json", "/dev/null"}).status == Status::yes);
  // But no record can lie beside a device.
  CHECK(run_command(testing::route_words(site, {"--card", "/dev/null"})).status ==
        Status::wrong_usage);
}

TEST_CASE("a dash is standard output for every answer that stands in one file") {
  const TinySite site;
  const Words board{"board", site.folder(), "--rig", "solo", "--load", "20", "--snow", "dry"};
  CHECK(run_command(with(board, {"--csv", "-"})).out.starts_with("rig,bed_kg,"));
  const Words audit{"audit", site.folder(), "--rig", "solo", "--snow", "dry"};
  CHECK(run_command(with(audit, {"--csv", "-"})).out.starts_with("rig,"));
  CHECK(run_command(with(audit, {"--geojson", "-"})).out.starts_with("{\""));
  CHECK(run_command(with(audit, {"--pdf", "-"})).out.starts_with("%PDF-"));
  CHECK(run_command(testing::route_words(site, {"--gpx", "-"})).out.starts_with("<?xml"));
  CHECK_FALSE(fs::exists("-"));
  check_refused(testing::route_words(site, {"--card", "-"}), site.path("rules.toml"),
                "--card needs the name of a file");
}

}  // namespace
}  // namespace rimehaul::app
