#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <sstream>

#include "app/desk.h"
#include "app/own_files.h"
#include "app/site_draft.h"
#include "passage/rules.h"
#include "ports/toml/rules_file.h"

namespace rimehaul::app {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::Desk;
using testing::Ran;
using testing::run_command;
using testing::text_in;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// Nothing was made, and one line on standard error says why.
void check_refused(const Desk& desk, const Ran& ran, std::string_view why) {
  CAPTURE(ran.err);
  CHECK(ran.status == Status::bad_input);
  CHECK(ran.out.empty());
  CHECK(std::ranges::count(ran.err, '\n') == 1);
  CHECK(says(ran.err, why));
  CHECK(desk.is_empty());
}

TEST_CASE("a new site holds copies of the files and says what is still to be said") {
  const Desk desk;
  const Ran ran = desk.make({"--stations", desk.given("stations.geojson"), "--name", "Long Fell"});
  CAPTURE(ran.err);
  CAPTURE(ran.out);
  CHECK(ran.status == Status::honest_no);
  CHECK(text_in(desk.path("fell/heights.asc")) == desk.survey().text("heights.asc"));
  CHECK(text_in(desk.path("fell/heights.prj")) == desk.survey().text("heights.prj"));
  CHECK(says(ran.out, "Long Fell"));
  CHECK(says(ran.out, "measured every 10.00 m"));
  CHECK(says(ran.out, "3: Low Way, High Way, Spur"));
  CHECK(says(ran.out, "heights: nobody says who measured them, and when"));
  CHECK_FALSE(says(ran.out, ": ,"));
  for (const char* wanted : {"heights.vertical_datum", "heights.unit", "heights.error", "ratings",
                             "bulletin", "utc_offset_minutes", "who saw the snow"}) {
    CAPTURE(wanted);
    CHECK(says(ran.out, wanted));
  }
  CHECK(says(ran.out, "not usable until the faults are mended"));
  CHECK(says(ran.out, "there is no rig"));
  // Ten-metre cells: a tenth of a cell is 1 m, 6 degrees may hide between them.
  const std::string site = text_in(desk.path("fell/site.toml"));
  CHECK(says(site, "sd_m = 1.00\n"));
  CHECK(says(site, "sub_cell = { deg = 6, standing = \"estimate\""));
}

TEST_CASE("a new site as JSON tells the same") {
  const Desk desk;
  const Ran ran = desk.make({"--json", "-"});
  const json made = json::parse(ran.out);
  CHECK(made["kind"] == "new_site");
  CHECK(made["check"]["usable"] == false);
  CHECK(made["check"]["site"] == "fell");
  CHECK(made["files"].size() == 6);
  CHECK(made["to_say"][0]["key"] == "utc_offset_minutes");
}

TEST_CASE("columns that trails leave out are counted by name, and said to close them") {
  const Desk desk;
  desk.survey().change("trails.geojson", {"\"width_m\":6,", ""});
  const Ran ran = desk.make();
  CHECK(says(ran.out, "width_m: not said of 1 of 3 trails"));
}

TEST_CASE("an empty folder that is there is filled, one with anything in it is left alone") {
  const Desk desk;
  fs::create_directory(desk.path("fell"));
  CHECK(desk.make().status == Status::honest_no);
  const std::string before = text_in(desk.path("fell/site.toml"));
  const Ran again = desk.make({"--name", "Other"});
  CHECK(again.status == Status::bad_input);
  CHECK(says(again.err, "not empty"));
  CHECK(text_in(desk.path("fell/site.toml")) == before);
  CHECK(std::distance(fs::directory_iterator{desk.path("")}, fs::directory_iterator{}) == 1);
}

TEST_CASE("files that are missing, links, folders or of no use make no folder and one line") {
  const Desk desk;
  const std::string heights = desk.given("heights.asc");
  const std::string trails = desk.given("trails.geojson");
  check_refused(desk, desk.make_of(desk.given("none.tif"), trails), "there is no such file");
  check_refused(desk, desk.make_of(heights, desk.given("none.geojson")), "there is no such file");
  check_refused(desk, desk.make_of("/vsicurl/none.tif", trails), "there is no such file");
  check_refused(desk, desk.make_of(desk.survey().folder() + "/.", trails), "no regular file");
  check_refused(desk, desk.make_of("/dev/zero", trails), "no regular file");
  fs::create_symlink(trails, desk.given("link.geojson"));
  check_refused(desk, desk.make_of(heights, desk.given("link.geojson")), "link");
  desk.survey().write("broken.geojson", "{ no json");
  check_refused(desk, desk.make_of(heights, desk.given("broken.geojson")), "broken.geojson");
  check_refused(desk, desk.make_of(trails, trails), "no raster");
}

TEST_CASE("a side-car file that is a link makes no folder") {
  const Desk desk;
  fs::rename(desk.given("heights.prj"), desk.given("elsewhere"));
  fs::create_symlink(desk.given("elsewhere"), desk.given("heights.prj"));
  check_refused(desk, desk.make(), "heights.prj: it is a link");
}

TEST_CASE("names that no site file can carry make no folder and one line") {
  const Desk desk;
  const std::string heights = desk.given("heights.asc");
  const std::string text = desk.survey().text("trails.geojson");
  for (const std::string& name : {std::string{"<trails>.geojson"}, std::string(201, 't')}) {
    desk.survey().write(name, text);
    check_refused(desk, desk.make_of(heights, desk.given(name)), "cannot stand in site.toml");
  }
  for (const char* name :
       {"two\nlines.geojson", "\xff\xfe.geojson", "\xed\xa0\x80.geojson", "bell\a.geojson"}) {
    desk.survey().write(name, text);
    const Ran ran = desk.make_of(heights, desk.given(name));
    CHECK(ran.status == Status::wrong_usage);
    CHECK(says(ran.err, "word 6 of the command"));
    CHECK(desk.is_empty());
    CHECK_FALSE(fits_site_file(name));
  }
  desk.survey().write("snow.toml", text);
  check_refused(desk, desk.make_of(heights, desk.given("snow.toml")), "rename the file");
  check_refused(desk,
                run_command({"new", desk.path(std::string(201, 'f')), "--heights", heights,
                             "--trails", desk.given("trails.geojson")}),
                "no name for a folder");
}

TEST_CASE("quotes, backslashes and letters of other tongues in names are carried as they are") {
  const Desk desk;
  const std::string name = R"(a "b" \n ] ü ..geojson)";
  desk.survey().write(name, desk.survey().text("trails.geojson"));
  const Ran ran = desk.make_of(desk.given("heights.asc"), desk.given(name));
  CAPTURE(ran.out);
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "3: Low Way, High Way, Spur"));
  CHECK(fs::exists(desk.path("fell/" + name)));
  // The check has read the copy by the name in site.toml.
  CHECK_FALSE(says(ran.out, "there is no such file"));
}

TEST_CASE("a folder to lie in that is not there, and a file in the way, are told") {
  const Desk desk;
  const auto refused = [&](const std::string& folder) {
    return run_command({"new", folder, "--heights", desk.given("heights.asc"), "--trails",
                        desk.given("trails.geojson")});
  };
  check_refused(desk, refused(desk.path("none/fell")), "is not there");
  check_refused(desk, refused(desk.given("rigs.toml")), "is no folder");
}

TEST_CASE("heights in degrees are brought into a map in metres, and that is told") {
  const Desk desk;
  std::ostringstream grid;
  grid << "ncols 40\nnrows 40\nxllcorner -153.02\nyllcorner 46.03\ncellsize 0.001\n";
  for (int cell = 0; cell < 1600; ++cell) {
    grid << 1000 + cell % 40 << ' ';
  }
  desk.survey().write("heights.asc", grid.str());
  desk.survey().write("heights.prj",
                      R"(GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",SPHEROID["WGS_1984",6378137.0,)"
                      R"(298.257223563]],PRIMEM["Greenwich",0.0],UNIT["Degree",)"
                      R"(0.0174532925199433]])");
  const Ran ran = desk.make();
  CAPTURE(ran.err);
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "UTM"));
  CHECK(says(ran.out, "bilinear"));
}

TEST_CASE("heights that say no reference system make no folder and one line") {
  const Desk desk;
  desk.survey().remove("heights.prj");
  check_refused(desk, desk.make(), "heights.asc");
}

TEST_CASE("the rules written out as comments are the defaults, every one") {
  const Desk desk;
  std::istringstream draft{std::string{rules_draft()}};
  std::string said;
  int taken = 0;
  for (std::string line; std::getline(draft, line);) {
    const bool is_rule = line.starts_with("# ") && !line.ends_with('=') &&
                         (says(line, " = ") || line.starts_with("# [")) && !line.ends_with('.');
    taken += is_rule ? 1 : 0;
    said += (is_rule ? line.substr(2) : line) + "\n";
  }
  CHECK(taken == 21 + 5 * 4 + 2 * 5 + 2 + 3 + 3);
  desk.survey().write("rules.toml", said);
  const auto read = ports::toml::read_rules({desk.given("rules.toml"), "rules.toml"});
  CHECK(read.faults.empty());
  const passage::Rules& rules = read.data;
  const passage::Rules defaults = passage::default_rules();
  CHECK(rules.allowed_share == defaults.allowed_share);
  CHECK(rules.confidence_k == defaults.confidence_k);
  CHECK(rules.low_side_sinkage == defaults.low_side_sinkage);
  CHECK(rules.setback == defaults.setback);
  CHECK(rules.piece_length == defaults.piece_length);
  CHECK(rules.wettest_towing == defaults.wettest_towing);
  CHECK(rules.bulletin == defaults.bulletin);
  CHECK(rules.driver_levels == defaults.driver_levels);
  CHECK(rules.cornice_setback == defaults.cornice_setback);
  CHECK(rules.closed_in_rain == defaults.closed_in_rain);
  CHECK(rules.wettest_creek_bridge == defaults.wettest_creek_bridge);
  CHECK(rules.strap_check == defaults.strap_check);
  CHECK(rules.overdue == defaults.overdue);
  CHECK(rules.passengers == defaults.passengers);
  CHECK(rules.alone == defaults.alone);
  CHECK(std::abs(rules.articulation.ratio() - defaults.articulation.ratio()) < 1e-12);
  CHECK(std::abs(rules.fuel_reserve - defaults.fuel_reserve) < 1e-12);
  CHECK(std::abs(rules.start_slope_dry.ratio() - defaults.start_slope_dry.ratio()) < 1e-12);
  CHECK(std::abs(rules.start_slope_wet.ratio() - defaults.start_slope_wet.ratio()) < 1e-12);
  CHECK(std::abs(rules.walking_pace.value() - defaults.walking_pace.value()) < 1e-12);
  CHECK(rules.reaction == defaults.reaction);
  CHECK(rules.sight == defaults.sight);
  CHECK(rules.markers_in_sight == defaults.markers_in_sight);
  CHECK(rules.passenger_mass == defaults.passenger_mass);
  CHECK(rules.roll_over_reserve == defaults.roll_over_reserve);
}

TEST_CASE("the proposed error is a tenth of a cell, at least 0.2 m; hidden slope never shrinks") {
  using units::Metres;
  CHECK(height_error_guess(Metres{0.5}) == Metres{0.2});
  CHECK(height_error_guess(Metres{2}) == Metres{0.2});
  CHECK(height_error_guess(Metres{30}).value() == doctest::Approx(3.0));
  CHECK(height_error_guess(Metres{5000}) == Metres{50});
  CHECK(hidden_slope_guess_deg(Metres{1}) == 2.0);
  CHECK(hidden_slope_guess_deg(Metres{1.01}) == 3.0);
  CHECK(hidden_slope_guess_deg(Metres{10}) == 6.0);
  CHECK(hidden_slope_guess_deg(Metres{10.01}) == 10.0);
}

TEST_CASE("a raster whose system has a name of two lines writes no key into site.toml") {
  OwnFacts facts;
  facts.heights.frame.horizontal_name = "Map\nutc_offset_minutes = 0";
  facts.heights.frame.vertical_name = "Level\nunit = \"metres\"";
  facts.heights.says_datum = true;
  facts.heights.widest_step = units::Metres{1};
  const std::string draft = site_draft("fell", {{"heights.tif"}, "trails.gpkg", ""}, facts);
  CHECK_FALSE(says(draft, "\nutc_offset_minutes"));
  CHECK_FALSE(says(draft, "\nunit"));
}

}  // namespace
}  // namespace rimehaul::app
