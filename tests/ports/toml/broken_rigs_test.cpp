// rigs.toml broken in one way each: what a person is told, and that nothing opens by it.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "examples.h"
#include "ports/toml/rig_sheets.h"

namespace rimehaul::ports::toml {

namespace {

using testing::Breakage;
using testing::changed;
using testing::TestFolder;
using testing::told_of;

const std::vector<Breakage> kBrokenRigs{
    {"schema = 1\n", "", {"rigs.toml: line 1 (schema): is missing; add it: schema = 1"}},
    {"kind = \"skis_and_tracks\"",
     "kind = \"skis_and_track\"",
     {"rigs.toml: line 4 (carrier.tern.kind): \"skis_and_track\" is not known here; did you mean "
      "\"skis_and_tracks\"?"}},
    {"mass_kg = 380",
     "mass_kg = \"380\"",
     {"rigs.toml: line 7 (carrier.tern.mass_kg): is text; write a number above 0, up to 20000, "
      "without quotes"}},
    {"mass_kg = 380",
     "mass_kg = 0",
     {"rigs.toml: line 7 (carrier.tern.mass_kg): 0 is out of range; write a number above 0, up to "
      "20000"}},
    {"mass_kg = 380\n",
     "",
     {"rigs.toml: line 3 (carrier.tern.mass_kg): is missing; add it: a number above 0, up to "
      "20000"}},
    {"mass_kg = 380",
     "mas_kg = 380",
     {"rigs.toml: line 3 (carrier.tern.mass_kg): is missing; add it: a number above 0, up to 20000",
      "rigs.toml: line 7 (carrier.tern.mas_kg): is no key of this table; did you mean "
      "\"mass_kg\"?"}},
    {"mass_kg = 380",
     "mass_kg = nan",
     {"rigs.toml: line 7 (carrier.tern.mass_kg): nan is out of range; write a number above 0, up "
      "to 20000"}},
    {"centre_m = [0.70, 0.0, 0.50]",
     "centre_m = [0.70, 0.0]",
     {"rigs.toml: line 8 (carrier.tern.centre_m): is a list of 2; write a list of 3 numbers"}},
    {"centre_m = [0.70, 0.0, 0.50]",
     "centre_m = [0.70, 0.0, -0.50]",
     {"rigs.toml: line 8 (carrier.tern.centre_m): -0.5 is out of range; write a number from 0 to "
      "5"}},
    {"centre_m = [0.70, 0.0, 0.50]",
     "centre_m = [0.70, 0.0, \"0.50\"]",
     {"rigs.toml: line 8 (carrier.tern.centre_m): is text; write a number from 0 to 5, without "
      "quotes"}},
    {"driver_kg = 100",
     "driver_kg = 39.9",
     {"rigs.toml: line 9 (carrier.tern.driver_kg): 39.9 is out of range; write a number from 40 to "
      "250"}},
    {"[2.2, -0.5], [2.2, 0.5]",
     "[2.2, 0.5], [2.2, -0.5]",
     {"rigs.toml: line 15 (carrier.tern.support_m): is not a convex polygon, counter-clockwise "
      "seen from above; start at the rear right corner and go forward"}},
    {"support_m = [[0.0, -0.25], [2.2, -0.5],",
     "support_m = [",
     {"rigs.toml: line 15 (carrier.tern.support_m): has 2 corners; give 3 to 12, counter-clockwise "
      "seen from above"}},
    {"contact_area_m2 = 0.7",
     "contact_area_m2 = 7",
     {"rigs.toml: line 20 (carrier.tern.contact_area_m2): is more than contact_length_m times "
      "gauge_m; give it in square metres"}},
    {"gauge_m = 1.1",
     "gauge_m = 1.3",
     {"rigs.toml: line 17 (carrier.tern.gauge_m): is more than width_m; correct one of them"}},
    {"track_weight_share = 0.7",
     "track_weight_share = 70",
     {"rigs.toml: line 21 (carrier.tern.track_weight_share): 70 is out of range; write a number "
      "above 0, up to 1"}},
    {"power_kw = 45",
     "power_kw = 0",
     {"rigs.toml: line 26 (carrier.tern.power_kw): 0 is out of range; write a number above 0, up "
      "to 1000"}},
    {"tank_at_m = [0.7, 0.0, 0.75]\n",
     "",
     {"rigs.toml: line 3 (carrier.tern.tank_at_m): is missing; add it: a list of 3 numbers"}},
    {"top_speed_kmh = 50",
     "top_speed = 50",
     {"rigs.toml: line 3 (carrier.tern.top_speed_kmh): is missing; add it: a number above 0, up to "
      "100",
      "rigs.toml: line 35 (carrier.tern.top_speed): is no key of this table; did you mean "
      "\"top_speed_kmh\"?"}},
    {"climb = { deg = 30, standing = \"maker\", source = \"operator's manual, p. 41\" }",
     "climb = { deg = 30, standing = \"maker\" }",
     {"rigs.toml: line 38 (carrier.tern.ratings.solo_empty.climb.source): is missing; add it: text "
      "in quotes"}},
    {"climb = { deg = 30, standing = \"maker\"",
     "climb = { deg = 30, standing = \"estimate\"",
     {"rigs.toml: line 38 (carrier.tern.ratings.solo_empty.climb.standing): an estimate is no "
      "rating; name the maker's manual, or a site limit with its person and date"}},
    {"climb = { deg = 30",
     "climb = { deg = 60.1",
     {"rigs.toml: line 38 (carrier.tern.ratings.solo_empty.climb.deg): 60.1 is out of range; write "
      "a number above 0, up to 60"}},
    {"climb = { deg = 30, standing = \"maker\", source = \"operator's manual, p. 41\" }",
     "climb = 30",
     {"rigs.toml: line 38 (carrier.tern.ratings.solo_empty.climb): is a whole number; write a "
      "table"}},
    {", date = 2026-01-10",
     "",
     {"rigs.toml: line 43 (carrier.tern.ratings.towing.climb.date): is missing; add it: a day "
      "without quotes: 2026-01-12"}},
    {"date = 2026-01-10",
     "date = \"2026-01-10\"",
     {"rigs.toml: line 43 (carrier.tern.ratings.towing.climb.date): is text; write a day without "
      "quotes: 2026-01-12"}},
    {"[carrier.tern.ratings.towing]",
     "[carrier.tern.ratings.tow]",
     {"rigs.toml: line 42 (carrier.tern.ratings.tow): is no key of this table; remove it; "
      "docs/site-format.md names the keys"}},
    {"tongue_share = 0.10",
     "tongue_share = 10",
     {"rigs.toml: line 53 (trailer.pallet.tongue_share): 10 is out of range; write a number from 0 "
      "to 0.5"}},
    {"hitch_free_to_roll = true",
     "hitch_free_to_roll = \"yes\"",
     {"rigs.toml: line 59 (trailer.pallet.hitch_free_to_roll): is text; write true or false, "
      "without quotes"}},
    {"hitch_free_to_roll = true\n",
     "",
     {"rigs.toml: line 45 (trailer.pallet.hitch_free_to_roll): is missing; add it: true or false, "
      "without quotes"}},
    {"carrier = \"tern\"",
     "carrier = \"terns\"",
     {"rigs.toml: line 63 (rig.tern-pallet.carrier): there is no sheet named \"terns\"; did you "
      "mean \"tern\"?"}},
    {"trailer = \"pallet\"",
     "trailer = \"sledge\"",
     {"rigs.toml: line 64 (rig.tern-pallet.trailer): there is no sheet named \"sledge\"; write its "
      "sheet in this file"}},
    {"driver_level = \"seasoned\"\n",
     "",
     {"rigs.toml: line 62 (rig.tern-pallet.driver_level): is missing; add it: text in quotes"}},
    {"[rig.tern-pallet]",
     "[rgi.tern-pallet]",
     {"rigs.toml: line 1 (rig): there is no rig; write one under [rig.NAME]",
      "rigs.toml: line 62 (rgi): is no key of this table; remove it; docs/site-format.md names the "
      "keys"}},
};

}  // namespace

TEST_CASE("each way to break rigs.toml is told in its own line") {
  const TestFolder folder;
  for (const Breakage& broken : kBrokenRigs) {
    CAPTURE(broken.to);
    const auto file =
        folder.with("rigs.toml", changed(testing::rigs_example(), broken.from, broken.to));
    CHECK(told_of([&] { return read_rigs(file); }) == broken.lines);
  }
}

TEST_CASE("a rig whose carrier or trailer has a fault is left out") {
  const TestFolder folder;
  for (const char* key : {"mass_kg = 380\n", "mass_kg = 90\n"}) {
    const auto file = folder.with("rigs.toml", changed(testing::rigs_example(), key, ""));
    const auto [rigs, faults] = read_rigs(file);
    CHECK(faults.size() == 1);
    CHECK(rigs.empty());
  }
}

TEST_CASE("a carrier's rating with a fault counts as not given, and the rig stays") {
  const TestFolder folder;
  const auto file = folder.with(
      "rigs.toml", changed(testing::rigs_example(), "climb = { deg = 30", "climb = { deg = 300"));
  const auto [rigs, faults] = read_rigs(file);
  CHECK(faults.size() == 1);
  REQUIRE(rigs.size() == 1);
  CHECK_FALSE(rigs.front().carrier.solo_empty.climb.has_value());
  CHECK(rigs.front().carrier.solo_empty.descent.has_value());
}

TEST_CASE("a trailer's own rating with a fault leaves its rigs out: it would have bound") {
  const TestFolder folder;
  const auto file =
      folder.with("rigs.toml", changed(testing::rigs_example(), "[rig.tern-pallet]",
                                       "[trailer.pallet.ratings]\nclimb = { deg = 9 }\n"
                                       "[rig.tern-pallet]"));
  const auto [rigs, faults] = read_rigs(file);
  CHECK(faults.size() == 2);
  CHECK(rigs.empty());
}

}  // namespace rimehaul::ports::toml
