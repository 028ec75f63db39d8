// site.toml broken in one way each: what a person is told, and that nothing opens by it.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "examples.h"
#include "ports/toml/site_file.h"

namespace rimehaul::ports::toml {

namespace {

using testing::Breakage;
using testing::changed;
using testing::TestFolder;
using testing::told_of;

const std::vector<Breakage> kBrokenSites{
    {"schema = 1\n", "", {"site.toml: line 1 (schema): is missing; add it: schema = 1"}},
    {"schema = 1",
     "schema = \"1\"",
     {"site.toml: line 1 (schema): is no schema of ours; write schema = 1"}},
    {"schema = 1",
     "schema = 0",
     {"site.toml: line 1 (schema): is no schema of ours; write schema = 1"}},
    {"name = \"Marrowfell\"",
     "nmae = \"Marrowfell\"",
     {"site.toml: line 1 (name): is missing; add it: text in quotes",
      "site.toml: line 2 (nmae): is no key of this table; did you mean \"name\"?"}},
    {"name = \"Marrowfell\"",
     "name = \"\"",
     {"site.toml: line 2 (name): is empty, longer than 200 bytes, or holds control characters; "
      "write one short line of text"}},
    {"name = \"Marrowfell\"",
     "name = \"Marrow\\nfell\"",
     {"site.toml: line 2 (name): is empty, longer than 200 bytes, or holds control characters; "
      "write one short line of text"}},
    {"utc_offset_minutes = -600",
     "utc_offset_minutes = -721",
     {"site.toml: line 4 (utc_offset_minutes): -721 is out of range; write a whole number from "
      "-720 to 840"}},
    {"utc_offset_minutes = -600",
     "utc_offset_minutes = -600.5",
     {"site.toml: line 4 (utc_offset_minutes): is a number; write a whole number from -720 to "
      "840"}},
    {"utc_offset_minutes = -600\n",
     "",
     {"site.toml: line 1 (utc_offset_minutes): is missing; add it: a whole number from -720 to "
      "840"}},
    {"utc_offset_minutes = -600",
     "utc_offset_minutes = -600\ntime_zone = \"CET\"",
     {"site.toml: line 5 (time_zone): is given beside utc_offset_minutes; take one of the two "
      "out"}},
    {"trails = [\"trails.geojson\"]\n",
     "",
     {"site.toml: line 6 (files.trails): is missing; add it: a list of texts"}},
    {"trails = [\"trails.geojson\"]",
     "trails = []",
     {"site.toml: line 7 (files.trails): is an empty list; name at least one"}},
    {"trails = [\"trails.geojson\"]",
     "trails = \"trails.geojson\"",
     {"site.toml: line 7 (files.trails): is text; write a list of texts"}},
    {"trails = [\"trails.geojson\"]",
     "trails = [\"../trails.geojson\"]",
     {"site.toml: line 7 (files.trails): \"../trails.geojson\" leads out of the site folder; put "
      "the file into the folder and name it from there"}},
    {"snow = \"snow.toml\"",
     "snow = \"/etc/passwd\"",
     {"site.toml: line 11 (files.snow): \"/etc/passwd\" leads out of the site folder; put the file "
      "into the folder and name it from there"}},
    {"unit = \"metres\"",
     "unit = \"meters\"",
     {"site.toml: line 16 (heights.unit): \"meters\" is not known here; did you mean \"metres\"?"}},
    {"sd_m = 0.10",
     "sd_m = 0",
     {"site.toml: line 22 (heights.error.sd_m): 0 is out of range; write a number above 0, up to "
      "50"}},
    {"sd_m = 0.10",
     "sd_m = nan",
     {"site.toml: line 22 (heights.error.sd_m): nan is out of range; write a number above 0, up to "
      "50"}},
    {"correlation_m = 15\n",
     "",
     {"site.toml: line 26 (heights.error.correlation_m): is missing; add it: a number from 0 to "
      "100000"}},
    {"correlation_m = 15",
     "correlation_m = inf",
     {"site.toml: line 28 (heights.error.correlation_m): inf is out of range; write a number from "
      "0 to 100000"}},
    {"deg = 3, ",
     "",
     {"site.toml: line 19 (heights.sub_cell.deg): is missing; add it: a number from 0 to 60"}},
    {"deg = 3",
     "deg = 61",
     {"site.toml: line 19 (heights.sub_cell.deg): 61 is out of range; write a number from 0 to "
      "60"}},
    {"sub_cell = {",
     "sub_cell = 3 #",
     {"site.toml: line 19 (heights.sub_cell): is a whole number; write a table"}},
    {"source = \"invented for the demo\"\n",
     "",
     {"site.toml: line 13 (heights.source): is missing; add it: text in quotes"}},
    {"unit = \"metres\"",
     "lowest_m = 9000",
     {"site.toml: line 16 (heights.lowest_m): is not below highest_m; correct one of them"}},
    {"[heights]\n",
     "[[heights.error]]\nsd_m = 1\n[heights]\n",
     {"site.toml: line 13 (heights.error.correlation_m): is missing; add it: a number from 0 to "
      "100000",
      "site.toml: line 13 (heights.error.source): is missing; add it: text in quotes"}},
    {"[[heights.error]]\nsd_m = 0.10",
     "[heights.error]\nsd_m = 0.10",
     {"site.toml: line 26, column 1: Error while parsing table header: cannot redefine existing "
      "table 'heights.error' as array-of-tables; correct the TOML there: one key = value to a "
      "line, text in quotes"}},
    {"schema = 1",
     "schema = 2",
     {"site.toml: line 1 (schema): schema 2 is newer than this program, which reads schema 1; use "
      "a newer program"}},
    {"utc_offset_minutes = -600",
     "utc_offset_minutes = -600\nsnap_m = 21",
     {"site.toml: line 5 (snap_m): 21 is out of range; write a number from 0 to 20"}},
    {"name = \"Marrowfell\"",
     "name = \"Marrowfell\"\nname = \"Marrowfell\"",
     {"site.toml: line 3, column 8: Error while parsing key-value pair: cannot redefine existing "
      "string 'name'; correct the TOML there: one key = value to a line, text in quotes"}},
    {"name = \"Marrowfell\"",
     "name = Marrowfell",
     {"site.toml: line 2, column 8: Error while parsing value: could not determine value type; "
      "correct the TOML there: one key = value to a line, text in quotes"}},
};

}  // namespace

TEST_CASE("each way to break site.toml is told in its own line") {
  const TestFolder folder;
  for (const Breakage& broken : kBrokenSites) {
    CAPTURE(broken.to);
    (void)folder.with("site.toml", changed(testing::site_example(), broken.from, broken.to));
    CHECK(told_of([&] { return read_site_file(folder.path()); }) == broken.lines);
  }
}

TEST_CASE("a fault in the heights' error leaves no error declared, so that trails are closed") {
  const TestFolder folder;
  (void)folder.with("site.toml", changed(testing::site_example(), "sd_m = 0.20", "sd_m = -0.20"));
  const auto [site, faults] = read_site_file(folder.path());
  CHECK(faults.size() == 1);
  CHECK(site.heights.trust.errors.empty());
  CHECK_FALSE(site.heights.trust.sub_cell.has_value());
}

}  // namespace rimehaul::ports::toml
