// snow.toml broken in one way each: what a person is told, and that nothing opens by it.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "examples.h"
#include "ports/toml/snow_file.h"

namespace rimehaul::ports::toml {

namespace {

using testing::Breakage;
using testing::changed;
using testing::TestFolder;
using testing::told_of;

const std::vector<Breakage> kBrokenSnow{
    {"observer = \"A. Example\"\n",
     "",
     {"snow.toml: line 1 (observer): is missing; add it: text in quotes"}},
    {"observed = 2026-02-01T06:30:00-10:00",
     "observed = \"2026-02-01T06:30:00-10:00\"",
     {"snow.toml: line 3 (observed): is text; write a moment with its offset and without quotes: "
      "2026-02-01T06:30:00Z"}},
    {"observed = 2026-02-01T06:30:00-10:00",
     "observed = 2026-02-01T06:30:00",
     {"snow.toml: line 3 (observed): is of another kind; write a moment with its offset and "
      "without quotes: 2026-02-01T06:30:00Z"}},
    {"valid_until = 2026-02-01T18:00:00-10:00\n",
     "",
     {"snow.toml: line 1 (valid_until): is missing; add it: a moment with its offset and without "
      "quotes: 2026-02-01T06:30:00Z"}},
    {"valid_until = 2026-02-01T18:00:00-10:00",
     "valid_until = 2026-02-01T06:30:00-10:00",
     {"snow.toml: line 4 (valid_until): is not after observed; correct one of them"}},
    {"last_weather = 2026-01-30T20:00:00-10:00",
     "last_weather = 2026-02-01T06:30:01-10:00",
     {"snow.toml: line 5 (last_weather): is later than the report was observed; correct one of "
      "them"}},
    {"last_weather = 2026-01-30T20:00:00-10:00",
     "last_weather = \"yesterday\"",
     {"snow.toml: line 5 (last_weather): is text; write a moment with its offset and without "
      "quotes: 2026-02-01T06:30:00Z"}},
    {"clear = true\n",
     "",
     {"snow.toml: line 17 (status.clear): is missing; add it: true or false, without quotes"}},
    {"mark = \"Fell Winch\"",
     "mark = 7",
     {"snow.toml: line 18 (status.mark): is a whole number; write text in quotes"}},
    {"until = 2026-02-01T17:00:00-10:00",
     "untill = 2026-02-01T17:00:00-10:00",
     {"snow.toml: line 20 (status.untill): is no key of this table; did you mean \"until\"?"}},
    {"[[groomed]]\n",
     "[[status]]\nmark = \"Fell Winch\"\nclear = false\n[[groomed]]\n",
     {"snow.toml: line 23 (status.mark): 'Fell Winch' has a status already; keep one of them"}},
    {"finished = 2026-02-01T03:40:00-10:00",
     "finished = 2026-02-01T09:40:00-10:00",
     {"snow.toml: line 24 (groomed.finished): is later than the report was observed; correct one "
      "of them"}},
    {"trails = [\"Birk Way\", \"Shed Lane\"]",
     "trails = []",
     {"snow.toml: line 23 (groomed.trails): is an empty list; name at least one"}},
    {"bulletin_level = 2",
     "bulletin_level = 6",
     {"snow.toml: line 11 (weather.bulletin_level): 6 is out of range; write a whole number from 1 "
      "to 5"}},
    {"bulletin_level = 2",
     "bulletin_level = 2.5",
     {"snow.toml: line 11 (weather.bulletin_level): is a number; write a whole number from 1 to "
      "5"}},
    {"bulletin_source = \"Marrowfell avalanche desk, 2026-02-01\"\n",
     "",
     {"snow.toml: line 8 (weather.bulletin_source): is missing; add it: text in quotes"}},
    {"visibility_m = 2000",
     "visibility_m = 2000\nnew_snow_kg_m3 = 900",
     {"snow.toml: line 10 (weather.new_snow_kg_m3): 900 is out of range; write a number from 10 to "
      "500"}},
    {"visibility_m = 2000",
     "visibility_km = 2",
     {"snow.toml: line 9 (weather.visibility_km): is no key of this table; did you mean "
      "\"visibility_m\"?"}},
    {"visibility_m = 2000",
     "visibility_m = -1",
     {"snow.toml: line 9 (weather.visibility_m): -1 is out of range; write a number from 0 to "
      "100000"}},
    {"wetness = \"dry\"",
     "wetness = \"dri\"",
     {"snow.toml: line 28 (band.wetness): \"dri\" is not known here; did you mean \"dry\"?"}},
    {"surface = \"groomed\"\n",
     "",
     {"snow.toml: line 26 (band.surface): is missing; add it: one of: groomed, fresh, refrozen, "
      "ice"}},
    {"surface = \"groomed\"",
     "surface = 1",
     {"snow.toml: line 29 (band.surface): is a whole number; write one of: groomed, fresh, "
      "refrozen, ice"}},
    {"aspect_to_deg = 270\n",
     "",
     {"snow.toml: line 31 (band): gives one side of a sector of aspects; give both aspect_from_deg "
      "and aspect_to_deg"}},
    {"aspect_to_deg = 270",
     "aspect_to_deg = 90",
     {"snow.toml: line 34 (band.aspect_to_deg): is the same direction as aspect_from_deg; widen "
      "the sector, or leave both out for all aspects"}},
    {"aspect_to_deg = 270",
     "aspect_to_deg = 361",
     {"snow.toml: line 34 (band.aspect_to_deg): 361 is out of range; write a number from 0 to "
      "360"}},
    {"above_m = 1500",
     "above_m = 1500\nbelow_m = 1500",
     {"snow.toml: line 27 (band.above_m): is not below below_m; correct one of them"}},
    {"[[band]]\nabove_m = 1500",
     "[bands]\nabove_m = 1500",
     {"snow.toml: line 26 (bands): is no key of this table; did you mean \"band\"?"}},
    {"[weather]\n",
     "weather = 3\n[whether]\n",
     {"snow.toml: line 8 (weather): is a whole number; write a table",
      "snow.toml: line 9 (whether): is no key of this table; did you mean \"weather\"?"}},
};

}  // namespace

TEST_CASE("each way to break snow.toml is told in its own line, and it speaks of no place then") {
  const TestFolder folder;
  for (const Breakage& broken : kBrokenSnow) {
    CAPTURE(broken.to);
    const auto file =
        folder.with("snow.toml", changed(testing::snow_example(), broken.from, broken.to));
    CHECK(told_of([&] { return read_snow_report(file); }) == broken.lines);
    CHECK(read_snow_report(file).data.bands.empty());
  }
}

}  // namespace rimehaul::ports::toml
