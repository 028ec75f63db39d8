// rules.toml broken in one way each: what a person is told, and that nothing opens by it.
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "examples.h"
#include "ports/toml/rules_file.h"

namespace rimehaul::ports::toml {

namespace {

using testing::Breakage;
using testing::changed;
using testing::TestFolder;
using testing::told_of;

const std::vector<Breakage> kBrokenRules{
    {"grooming_set_min = 120",
     "grooming_set_min = 2000",
     {"rules.toml: line 5 (grooming_set_min): 2000 is out of range; write a number from 0 to "
      "1440"}},
    {"single_lane_m = 1500",
     "cornice_setback_m = 2",
     {"rules.toml: line 6 (cornice_setback_m): is less than the setback from drops; give at least "
      "setback_m"}},
    {"wettest = \"wet\"",
     "wettest = \"soggy\"",
     {"rules.toml: line 11 (passengers.wettest): \"soggy\" is not known here; write one of: dry, "
      "moist, wet, very_wet, slush"}},
    {"longest_dead_zone_m = 800",
     "longest_dead_zone_km = 0.8",
     {"rules.toml: line 16 (alone.longest_dead_zone_km): is no key of this table; did you mean "
      "\"longest_dead_zone_m\"?"}},
    {"must_be_ready = true\n",
     "",
     {"rules.toml: line 18 (tow_out.must_be_ready): is missing; add it: true or false, without "
      "quotes"}},
    {"allowed_share = 0.65",
     "allowed_share = 1.01",
     {"rules.toml: line 2 (allowed_share): 1.01 is out of range; write a number above 0, up to 1"}},
    {"allowed_share = 0.65",
     "allowed_share = 0",
     {"rules.toml: line 2 (allowed_share): 0 is out of range; write a number above 0, up to 1"}},
    {"allowed_share = 0.65",
     "allowed_share = nan",
     {"rules.toml: line 2 (allowed_share): nan is out of range; write a number above 0, up to 1"}},
    {"allowed_share = 0.65",
     "confidence_k = 1.6",
     {"rules.toml: line 2 (confidence_k): 1.6 is out of range; write a number from 1.645 to 6"}},
    {"reaction_s = 2.5",
     "reaction = 2.5",
     {"rules.toml: line 3 (reaction): is no key of this table; did you mean \"reaction_s\"?"}},
    {"reaction_s = 2.5",
     "start_slope_dry_deg = 31",
     {"rules.toml: line 3 (start_slope_dry_deg): 31 is out of range; write a number from 15 to "
      "30"}},
    {"keep_off_m = 50",
     "keep_off_m = 5",
     {"rules.toml: line 22 (bulletin.level_2): is less strict than the level below it; keep off at "
      "least as far, and permit no more"}},
    {"keep_off_m = 50",
     "keep_off_m = 101",
     {"rules.toml: line 22 (bulletin.level_3): is less strict than the level below it; keep off at "
      "least as far, and permit no more"}},
    {"[bulletin.level_2]",
     "[bulletin.level_6]",
     {"rules.toml: line 22 (bulletin.level_6): is no key of this table; did you mean "
      "\"level_1\"?"}},
    {"may_tow = false",
     "may_tow = 0",
     {"rules.toml: line 28 (driver.new.may_tow): is a whole number; write true or false, without "
      "quotes"}},
    {"may_tow = false\n",
     "",
     {"rules.toml: line 26 (driver.new.may_tow): is missing; add it: true or false, without "
      "quotes"}},
    {"allowed_share = 0.5\n",
     "allowed_share = 0.66\n",
     {"rules.toml: line 27 (driver.new.allowed_share): is above the site's 0.65; lower it to that "
      "at most"}},
    {"wettest_towing = \"dry\"",
     "wettest_towing = \"dry\"\ndrives_from = \"8 o'clock\"",
     {"rules.toml: line 30 (driver.new.drives_from): \"8 o'clock\" is no time of day; write it "
      "like "
      "\"08:00\""}},
    {"wettest_towing = \"dry\"",
     "wettest_towing = \"dry\"\ndrives_to = \"16:00\"",
     {"rules.toml: line 30 (driver.new.drives_to): gives one end of the hours; give both "
      "drives_from and drives_to"}},
    {"wettest_towing = \"dry\"",
     "wettest_towing = \"dry\"\ndrives_from = \"16:00\"\ndrives_to = \"08:00\"",
     {"rules.toml: line 31 (driver.new.drives_to): is not later than drives_from; correct one of "
      "them"}},
    {"wettest_towing = \"dry\"",
     "wettest_towing = \"damp\"",
     {"rules.toml: line 29 (driver.new.wettest_towing): \"damp\" is not known here; write one of: "
      "dry, moist, wet, very_wet, slush"}},
    {"wetness = \"wet\"",
     "wetness = \"very wet\"",
     {"rules.toml: line 38 (grip.wetness): \"very wet\" is not known here; did you mean "
      "\"very_wet\"?"}},
    {"by = \"A. Example\"\n",
     "",
     {"rules.toml: line 37 (grip.by): is missing; add it: text in quotes"}},
    {"date = 2026-01-12",
     "date = 2026-01-12T09:00:00",
     {"rules.toml: line 43 (grip.date): is of another kind; write a day without quotes: "
      "2026-01-12"}},
    {"traction = 0.24\nbrake = 0.22\n",
     "",
     {"rules.toml: line 37 (grip): gives no number; give traction, another number that was "
      "measured, or a trial"}},
    {"traction = 0.24\nbrake = 0.22\n",
     "traction = 0.24\n[grip.strength]\nn = 1.6\nk_c = -4\nk_phi = 196\n",
     {"rules.toml: line 47 (grip.strength.k_c): -4 is out of range; write a number from 0 to "
      "10000"}},
    {"traction = 0.24\nbrake = 0.22\n",
     "traction = 0.24\n[grip.strength]\nn = 1.6\nk_c = 4\n",
     {"rules.toml: line 45 (grip.strength.k_phi): is missing; add it: a number above 0, up to "
      "100000"}},
    {"standing = \"site_measured\"",
     "standing = \"published\"\nstrength = {n = 1.6, k_c = 4.37, k_phi = 196.72}",
     {"rules.toml: line 41 (grip.strength): is not measured by the site; measure it here, or leave "
      "it out: snow differs too much"}},
    {"traction = 0.24",
     "traction = 24",
     {"rules.toml: line 44 (grip.traction): 24 is out of range; write a number above 0, up to 1"}},
    {"brake = 0.22",
     "trailer_resistance = [0.2, 0.1]",
     {"rules.toml: line 45 (grip.trailer_resistance): its low value is above its high value; write "
      "[low, high]"}},
    {"[[grip]]\n",
     "[[grip]]\nwetness = \"dry\"\nsurface = \"groomed\"\nstanding = \"site_measured\"\n"
     "source = \"pulls\"\nby = \"B\"\ndate = 2026-01-12\ntraction = 0.23\n\n[[grip]]\n",
     {"rules.toml: line 53 (grip.traction): wet groomed snow would grip more than dry; measure "
      "again, or lower the wetter one"}},
    {"[[grip]]\n",
     "[[grip]]\nwetness = \"wet\"\nsurface = \"groomed\"\nstanding = \"site_measured\"\n"
     "source = \"pulls\"\nby = \"B\"\ndate = 2026-01-12\ntraction = 0.23\n\n[[grip]]\n",
     {"rules.toml: line 46 (grip): is a second entry for the same wetness and surface; keep one of "
      "them"}},
};

}  // namespace

TEST_CASE("each way to break rules.toml is told in its own line, and nothing is allowed by it") {
  const TestFolder folder;
  for (const Breakage& broken : kBrokenRules) {
    CAPTURE(broken.to);
    const auto file =
        folder.with("rules.toml", changed(testing::rules_example(), broken.from, broken.to));
    CHECK(told_of([&] { return read_rules(file); }) == broken.lines);
    CHECK_FALSE(passage::allowed_share_for(read_rules(file).data, "seasoned").has_value());
  }
}

TEST_CASE("all faults of a file are told in one pass, in the order of its lines") {
  const TestFolder folder;
  std::string text = testing::rules_example();
  text = changed(text, "traction = 0.24", "traction = 24");
  text = changed(text, "reaction_s = 2.5", "reaction_s = 0.5");
  text = changed(text, "may_tow = false", "may_tow = \"no\"");
  const auto faults = read_rules(folder.with("rules.toml", text)).faults;
  REQUIRE(faults.size() == 3);
  CHECK(faults[0].place == "line 3 (reaction_s)");
  CHECK(faults[1].place == "line 28 (driver.new.may_tow)");
  CHECK(faults[2].place == "line 44 (grip.traction)");
}

}  // namespace rimehaul::ports::toml
