// `field-check`: angles measured by hand are kept, logged, and held against the heights.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/desk.h"
#include "app/tiny_site.h"
#include "near.h"
#include "ports/gdal/records_file.h"

namespace rimehaul::app {
namespace {

using nlohmann::json;
using testing::near;
using testing::Ran;
using testing::run_command;
using testing::TinySite;
using Words = std::vector<std::string>;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// 6 % up to the north, in degrees: atan 0.06.
constexpr double kClimbDeg = 3.433630;

/// The tiny site with people, whose ground climbs 6 % to the north everywhere.
class CheckedSite {
 public:
  CheckedSite() {
    site_.write("people.toml",
                "schema = 1\n[[person]]\nname = \"P. Example\"\nroles = [\"planner\"]\n"
                "[[person]]\nname = \"D. Example\"\nroles = [\"driver\"]\n");
    site_.change("site.toml",
                 {"snow = \"snow.toml\"", "snow = \"snow.toml\"\npeople = \"people.toml\""});
  }

  [[nodiscard]] const TinySite& files() const { return site_; }

  [[nodiscard]] Ran ask(const Words& more = {}) const {
    Words words{"field-check", site_.folder()};
    words.insert(words.end(), more.begin(), more.end());
    return run_command(words);
  }
  struct Angles {
    std::string grade;
    std::string across;
  };
  [[nodiscard]] Ran measure(const Words& where, const Angles& angles) const {
    Words words{"--as",    "D. Example", "--instrument",  "inclinometer, 1 m board",
                "--grade", angles.grade, "--cross-slope", angles.across};
    words.insert(words.end(), where.begin(), where.end());
    return ask(words);
  }
  [[nodiscard]] json listed() const { return json::parse(ask({"--json", "-"}).out); }

 private:
  TinySite site_;
};

const Words kNorth{"--point", "500000,5100000", "--heading", "0"};
const Words kEast{"--point", "500000,5100000", "--heading", "90"};

void check_one_line(const Ran& ran, std::string_view line) {
  CAPTURE(ran.err);
  CHECK(ran.status == Status::wrong_usage);
  CHECK(ran.out.empty());
  CHECK(std::ranges::count(ran.err, '\n') == 1);
  CHECK(says(ran.err, line));
}

}  // namespace

TEST_CASE("a check is kept with its log entry, and the records hold") {
  const CheckedSite site;
  const Ran kept = site.measure(kNorth, {"3.5", "-0.2"});
  CAPTURE(kept.out);
  CAPTURE(kept.err);
  REQUIRE(kept.status == Status::yes);
  CHECK(says(kept.out, "kept as field check 1\n"));
  CHECK(says(kept.out, "+3.50 deg (+6.1 %) by hand; by the heights +3.43 deg (+6.0 %), up to"));
  CHECK(says(kept.out, "+0.07 deg by hand against the heights: within what is judged by"));
  CHECK(says(kept.out, "-0.20 deg (-0.3 %) by hand; by the heights 0.00 deg (0.0 %)"));
  CHECK(says(kept.out, "D. Example (driver), 2026-02-01 09:00"));
  const auto read = [&] {
    return ports::gdal::read_records({.folder = site.files().folder()})->field_checks();
  };
  const auto checks = read();
  REQUIRE(checks.size() == 1);
  CHECK(near(checks[0].thing.grade.degrees(), 3.5, 1e-9));
  CHECK(near(checks[0].thing.cross_slope.degrees(), -0.2, 1e-9));
  CHECK(checks[0].thing.instrument == "inclinometer, 1 m board");
  const std::string folder = site.files().folder();
  CHECK(says(run_command({"log", folder}).out,
             "keep check: field check 1; grade 3.5 deg, across -0.2 deg, with:"));
  CHECK(run_command({"log", folder, "--verify"}).status == Status::yes);
}

TEST_CASE("facing across the slope its grade is none, and it falls away to the right") {
  const CheckedSite site;
  REQUIRE(site.measure(kNorth, {"3.5", "-0.2"}).status == Status::yes);
  REQUIRE(site.measure(kEast, {"0.1", "3.4"}).status == Status::yes);
  REQUIRE(site.measure(kEast, {"0.0", "-3.4"}).status == Status::yes);
  const json all = site.listed();
  CAPTURE(all["checks"].dump());
  REQUIRE(all["checks"].size() == 3);
  // Closed form: the plane climbs atan 0.06 northward. Heights at 1000 m are kept in single
  // precision, 0.06 mm, over cells of 10 m: 0.0007 degrees at most.
  CHECK(near(all["checks"][0]["grade"]["heights_deg"].get<double>(), kClimbDeg, 1e-3));
  CHECK(near(all["checks"][1]["cross_slope"]["heights_deg"].get<double>(), kClimbDeg, 1e-3));
  CHECK(near(all["checks"][1]["grade"]["heights_deg"].get<double>(), 0.0, 1e-3));
  CHECK(all["checks"][1]["within"] == "yes");
  // A sign the wrong way round is off by twice the slope.
  CHECK(all["checks"][2]["within"] == "no");
  CHECK(all["checks"][2]["grade"]["within"] == "yes");
  CHECK(near(all["checks"][2]["cross_slope"]["off_deg"].get<double>(), -3.4 - kClimbDeg, 1e-3));
  // k sigma and what hides between cells: sigma of 10 m cells, sd 0.05 m alike over 20 m, written
  // in steps of 0.1 m, which count as further 0.1 / sqrt 12 m that no two cells share.
  const double side = std::exp(-0.5);
  const double corner = std::exp(-0.5 * std::sqrt(2.0));
  const double declared = 0.05 * 0.05 * (2.0 * (1.0 - side) + 1.0 - 2.0 * side + corner);
  const double sigma = std::sqrt(declared + 3.0 * 0.1 * 0.1 / 12.0) / 10.0;
  const double degree = 0.017453293;
  const double high = std::atan(0.06 + 1.645 * sigma + std::tan(0.5 * degree)) / degree;
  CHECK(near(all["checks"][0]["grade"]["judged_high_deg"].get<double>(), high, 1e-3));
}

TEST_CASE("those kept are listed with how many are within, their mean and root mean square") {
  const CheckedSite site;
  REQUIRE(site.measure(kNorth, {"4.4336", "0.5"}).status == Status::yes);
  REQUIRE(site.measure(kNorth, {"2.4336", "0.5"}).status == Status::yes);
  REQUIRE(site.measure(kNorth, {"12", "0.5"}).status == Status::yes);
  const Ran list = site.ask({"--csv", site.files().path("checks.csv")});
  CAPTURE(list.out);
  CHECK(list.status == Status::yes);
  CHECK(says(list.out, "2 of 3 are within what is judged by, 1 OUTSIDE, 0 unknown"));
  // Off by 1, -1 and 8.5664: mean 2.8555, root mean square sqrt(75.383 / 3) = 5.0127, rounded up.
  CHECK(says(list.out, "Grade     mean difference +2.86 deg, root mean square 5.02 deg, of 3"));
  CHECK(says(list.out, "Across    mean difference +0.50 deg, root mean square 0.5"));
  CHECK(says(list.out, "check 3, east 500000.0 m, north 5100000.0 m: grade +12.00 deg"));
  CHECK(says(list.out, "at least 30 checks and their"));
  const std::string table = site.files().text("checks.csv");
  CHECK(std::ranges::count(table, '\n') == 4);
  CHECK(says(table, "\r\n3,2026-02-01T09:00:00Z,D. Example,driver,\"inclinometer, 1 m board\","));
  CHECK(says(table, ",12.000,3.434,"));
  CHECK(says(table, ",OUTSIDE,0.500,"));
  std::size_t start = 0;
  while (start < list.out.size()) {
    const std::size_t end = list.out.find('\n', start);
    CHECK(end - start <= 80);
    start = end + 1;
  }
}

TEST_CASE("on a trail it faces as the trail is drawn, unless it is said") {
  const CheckedSite site;
  // Low Way starts towards map east, 300 m over 30 m north: atan2(300, 30) = 84.2894 degrees.
  const Ran along = site.measure({"--trail", "Low Way", "--at", "100"}, {"0.3", "3.4"});
  CAPTURE(along.err);
  REQUIRE(along.status == Status::yes);
  CHECK(says(along.out, "Low Way, 100 m along it as drawn"));
  REQUIRE(site.measure({"--trail", "Low Way", "--at", "100", "--heading", "360"}, {"3.4", "0"})
              .status == Status::yes);
  const json all = site.listed();
  CHECK(near(all["checks"][0]["heading_deg"].get<double>(), 84.2894, 6e-4));
  CHECK(near(all["checks"][1]["heading_deg"].get<double>(), 0.0, 1e-9));
  CHECK(near(all["checks"][0]["east_m"].get<double>(), 499799.504, 1e-2));
}

TEST_CASE("where the heights are not known a check is kept all the same, and never within") {
  const CheckedSite site;
  // On the raster, but within half a cell of its edge.
  const Ran edge = site.measure({"--point", "499002,5100000", "--heading", "0"}, {"3.4", "0"});
  CAPTURE(edge.err);
  REQUIRE(edge.status == Status::yes);
  CHECK(says(edge.out, "the heights are not known here"));
  CHECK(says(edge.out, "unknown whether within what is judged by"));
  const Ran list = site.ask();
  CHECK(says(list.out, "0 of 1 are within what is judged by, 0 OUTSIDE, 1 unknown"));
  CHECK(says(list.out, "no difference is known"));
  const json all = site.listed();
  CHECK(all["checks"][0]["within"] == "unknown");
  CHECK(all["checks"][0]["grade"]["heights_deg"].is_null());
  CHECK(all["summary"]["grade_off"].is_null());
}

TEST_CASE("a check far from every trail is held against the heights there") {
  const CheckedSite site;
  const Ran far = site.measure({"--point", "500900,5099100", "--heading", "0"}, {"3.4", "0"});
  CAPTURE(far.out);
  CHECK(says(far.out, "by the heights +3.43 deg"));
}

TEST_CASE("nothing is kept off the heights, by a stranger, or on no trail") {
  const CheckedSite site;
  check_one_line(site.measure({"--point", "1,2", "--heading", "0"}, {"1", "1"}),
                 "that place lies outside the heights of this site; give metres east and north");
  check_one_line(site.measure({"--trail", "Spurr", "--at", "1"}, {"1", "1"}),
                 "did you mean \"Spur\"?");
  check_one_line(site.measure({"--trail", "Spur", "--at", "9999"}, {"1", "1"}), "give an --at");
  Words stranger{"--as", "D. Exampel", "--instrument", "x", "--grade", "1", "--cross-slope", "1"};
  stranger.insert(stranger.end(), kNorth.begin(), kNorth.end());
  check_one_line(site.ask(stranger), "did you mean \"D. Example\"?");
  CHECK_FALSE(std::filesystem::exists(site.files().path("records.gpkg")));
  const Ran none = site.ask();
  CHECK(none.status == Status::honest_no);
  CHECK(std::ranges::count(none.out, '\n') == 1);
  CHECK(says(none.out, "no field check has been kept of Tiny Fell"));
  CHECK(none.err.empty());
  CHECK_FALSE(std::filesystem::exists(site.files().path("records.gpkg")));
}

TEST_CASE("checks of another map frame are not held against this one") {
  const CheckedSite site;
  REQUIRE(site.measure(kNorth, {"3.5", "-0.2"}).status == Status::yes);
  site.files().change("site.toml", {"EPSG:32605", "EPSG:32604"});
  const Ran ran = site.ask();
  CAPTURE(ran.out);
  CHECK(ran.status == Status::bad_input);
  CHECK(says(ran.err, "its field checks are in the map frame WGS 84 / UTM zone 5N"));
}

}  // namespace rimehaul::app
