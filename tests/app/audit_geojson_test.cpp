// The audit's GeoJSON as another program reads it, against the trails it speaks of.
#include <doctest/doctest.h>

#include <algorithm>
#include <sstream>

#include "app/tiny_site.h"
#include "told.h"

namespace rimehaul::app {
namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;
using testing::told_by;

const std::string kDemo = std::string{RIMEHAUL_ROOT} + "/routes/marrowfell";

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// The number behind a word at the start of a line; -1 where there is none.
double number_after(const std::string& told, const std::string& word) {
  std::istringstream lines{told};
  for (std::string line; std::getline(lines, line);) {
    if (line.starts_with(word + " ")) {
      return std::stod(line.substr(word.size()));
    }
  }
  return -1.0;
}

}  // namespace

TEST_CASE("GDAL finds every exceedance of the demo on its own trail, as long as it is said to be") {
  const TinySite scratch;
  const std::string geojson = scratch.path("audit.geojson");
  const Ran ran =
      run_command({"audit", kDemo, "--rig", "Broadfoot", "--snow", "wet", "--load", "100", "--now",
                   "2026-02-01T18:00:00Z", "--geojson", geojson, "--csv", scratch.path("a.csv")});
  REQUIRE(ran.status == Status::honest_no);
  const std::string rows = scratch.text("a.csv");
  const auto records = static_cast<double>(std::count(rows.begin(), rows.end(), '\n')) - 1;
  const std::string told =
      told_by("/usr/bin/python3 '" RIMEHAUL_ROOT "/tests/app/read_exceedances.py' '" + geojson +
              "' '" + kDemo + "/trails.geojson' EPSG:32605 2>&1");
  CAPTURE(told);
  CHECK(records > 10);
  CHECK(number_after(told, "count") == records);
  CHECK(says(told, "kinds LINESTRING"));
  CHECK(says(told, "crs 4326"));
  for (const char* field :
       {"field rig String", "field snow String", "field trail String", "field direction String",
        "field from_m Real", "field to_m Real", "field check String", "field stand String",
        "field outcome String", "field share_up_to Real"}) {
    CAPTURE(field);
    CHECK(says(told, field));
  }
  // Degrees are written to 7 decimals, a centimetre. Trails that were joined to each other at a
  // junction have moved by up to the site's snap distance of 2 m.
  const double farthest = number_after(told, "farthest_m");
  CHECK(farthest >= 0.0);
  CHECK(farthest <= 2.0);
  const double off_length = number_after(told, "off_length_m");
  CHECK(off_length >= 0.0);
  CHECK(off_length <= 0.05);
}

TEST_CASE("ogrinfo opens the audit's GeoJSON without a complaint") {
  const TinySite site;
  const std::string geojson = site.path("a.geojson");
  const Ran ran = run_command({"audit", site.folder(), "--rig", "solo", "--snow", "slush", "--load",
                               "50", "--geojson", geojson});
  CHECK(ran.status == Status::honest_no);
  const std::string told = told_by("ogrinfo -ro -al -so '" + geojson + "' 2>&1");
  CAPTURE(told);
  CHECK(says(told, "using driver `GeoJSON' successful"));
  CHECK(says(told, "WGS 84"));
  CHECK_FALSE(says(told, "ERROR"));
  CHECK_FALSE(says(told, "Warning"));
}

}  // namespace rimehaul::app
