// The documented examples read without a fault, and every value lands where it belongs.
#include <doctest/doctest.h>

#include <optional>
#include <string>

#include "examples.h"
#include "near.h"
#include "passage/estimates.h"
#include "ports/toml/rig_sheets.h"
#include "ports/toml/rules_file.h"
#include "ports/toml/site_file.h"
#include "ports/toml/snow_file.h"

namespace rimehaul::ports::toml {

namespace {

using testing::lines_of;
using testing::near;
using testing::near_degrees;
using testing::TestFolder;
using units::ForceRatio;
using units::Kilograms;
using units::Metres;
using units::MetresPerSecond;

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("the example of site.toml reads without a fault") {
  const TestFolder folder;
  (void)folder.with("site.toml", testing::site_example());
  const auto [site, faults] = read_site_file(folder.path());
  CHECK(lines_of(faults) == Lines{});
  CHECK(site.name == "Marrowfell");
  CHECK(site.folder == folder.path());
  CHECK(site.map_frame == "EPSG:32605");
  CHECK(site.utc_offset_minutes == -600);
  CHECK(site.snap == Metres{2});
  CHECK(site.trails == Lines{"trails.geojson"});
  CHECK(site.marks == Lines{"marks.geojson"});
  CHECK(site.rigs == "rigs.toml");
  CHECK(site.snow == "snow.toml");
  CHECK(site.heights.files == Lines{"heights.tif"});
  CHECK(site.heights.unit == HeightUnit::metres);
  CHECK(site.heights.date == "2026");
  CHECK(site.heights.lowest == Metres{-500});
  REQUIRE(site.heights.trust.errors.size() == 2);
  CHECK(site.heights.trust.errors[1].standard_deviation == Metres{0.2});
  CHECK(site.heights.trust.errors[1].correlation_length == Metres{15});
  CHECK(site.heights.error_sources == Lines{"survey of the ground", "snow on top of the ground"});
  REQUIRE(site.heights.trust.sub_cell.has_value());
  CHECK(near_degrees(*site.heights.trust.sub_cell, 3, 1e-9));
  CHECK(site.heights.trust.sub_cell_is_estimate);
}

TEST_CASE("heights alone may lie in a folder outside the site's, and their files stay in it") {
  const TestFolder folder;
  (void)folder.with("site.toml", testing::changed(testing::site_example(), "[heights]\n",
                                                  "[heights]\nfolder = \"../../dem-samples\"\n"));
  const auto shared = read_site_file(folder.path());
  CHECK(lines_of(shared.faults) == Lines{});
  CHECK(shared.data.heights.folder == "../../dem-samples");
  (void)folder.with("site.toml",
                    testing::changed(testing::site_example(), "heights.tif", "../heights.tif"));
  CHECK(
      lines_of(read_site_file(folder.path()).faults) ==
      Lines{"site.toml: line 14 (heights.files): \"../heights.tif\" leads out of the site folder; "
            "put the file into the folder and name it from there"});
}

TEST_CASE("the example of rigs.toml reads without a fault, kilowatts and km/h turned into SI") {
  const TestFolder folder;
  const auto [rigs, faults] = read_rigs(folder.with("rigs.toml", testing::rigs_example()));
  CHECK(lines_of(faults) == Lines{});
  REQUIRE(rigs.size() == 1);
  const rig::Rig& rig = rigs.front();
  CHECK(rig.name == "tern-pallet");
  CHECK(rig.driver_level == "seasoned");
  CHECK(rig.load.fuel == units::Litres{40});
  CHECK(rig.load.bed == Kilograms{0});
  CHECK(rig.carrier.name == "tern");
  CHECK(rig.carrier.kind == rig::CarrierKind::skis_and_tracks);
  CHECK(rig.carrier.empty.mass == Kilograms{380});
  CHECK(rig.carrier.empty.at.up == Metres{0.5});
  CHECK(rig.carrier.seats.size() == 1);
  CHECK(rig.carrier.support.size() == 4);
  CHECK(rig.carrier.tank_at.up == Metres{0.75});
  CHECK(near(rig.carrier.engine_power, units::Watts{45'000}, units::Watts{1e-9}));
  CHECK(near(rig.carrier.top_speed, MetresPerSecond{50 / 3.6}, MetresPerSecond{1e-12}));
  REQUIRE(rig.carrier.solo_empty.climb.has_value());
  CHECK(near_degrees(rig.carrier.solo_empty.climb->steepest, 30, 1e-9));
  CHECK(rig.carrier.solo_empty.climb->provenance.source == "operator's manual, p. 41");
  CHECK_FALSE(rig.carrier.solo_loaded.climb.has_value());
  REQUIRE(rig.carrier.towing.climb.has_value());
  CHECK(rig.carrier.towing.climb->provenance.standing == rig::Standing::site_limit);
  CHECK(rig.carrier.towing.climb->provenance.source ==
        "R. Example, chief of operations, 2026-01-10");
  CHECK_FALSE(rig.carrier.towing.descent.has_value());
  REQUIRE(rig.trailer.has_value());
  CHECK(rig.trailer->name == "pallet");
  CHECK(rig.trailer->tongue_share == 0.1);
  CHECK(rig.trailer->hitch_free_to_roll);
  CHECK_FALSE(rig.trailer->climb.has_value());
}

TEST_CASE("five fills and more make the fuel reckoned what the next one will not exceed") {
  const TestFolder folder;
  const auto carrier_with = [&](const std::string& fills) {
    return read_rigs(
        folder.with("rigs.toml", testing::changed(testing::rigs_example(), "idle_l_per_h = 1.0",
                                                  "idle_l_per_h = 1.0\nfills_l = " + fills)));
  };
  const auto [rigs, faults] = carrier_with("[[10, 12], [10, 12], [20, 24], [5, 6], [10, 12]]");
  CHECK(lines_of(faults) == Lines{});
  const rig::Carrier& carrier = rigs.at(0).carrier;
  REQUIRE(carrier.fuel_log.has_value());
  CHECK(carrier.fuel_log->fills == 5);
  CHECK(near(carrier.fuel_log->factor, 1.2, 1e-12));  // no spread at all
  const auto [plain, none] = read_rigs(folder.with("rigs.toml", testing::rigs_example()));
  CHECK(near(carrier.consumption.value(), plain.at(0).carrier.consumption.value() * 1.2, 1e-9));
  CHECK(near(carrier.idle_consumption.value(), 1.0 * 1.2, 1e-12));
  // 1.0, 1.1, 1.2, 1.3, 1.4: mean 1.2, s = 0.1581, t = 2.132 (NIST table), sqrt(1.2) = 1.0954.
  const auto spread = carrier_with("[[10, 10], [10, 11], [10, 12], [10, 13], [10, 14]]").data;
  CHECK(near(spread.at(0).carrier.fuel_log->factor, 1.2 + 2.132 * 0.158114 * 1.095445, 1e-3));
  const auto odd = lines_of(carrier_with("[[10, 12], [10, 0], [20, 24], [5, 6], [10, 12]]").faults);
  REQUIRE(odd.size() == 1);  // and not that the rest are too few
  CHECK(odd.front().find("fills_l") != std::string::npos);
  const auto few = lines_of(carrier_with("[[10, 12], [10, 12]]").faults);
  REQUIRE(few.size() == 1);
  CHECK(few.front().find("are too few to tell by; log five fills or more") != std::string::npos);
}

TEST_CASE("the example of rules.toml reads without a fault and lies over the defaults") {
  const TestFolder folder;
  const auto [rules, faults] = read_rules(folder.with("rules.toml", testing::rules_example()));
  CHECK(lines_of(faults) == Lines{});
  CHECK(rules.allowed_share == 0.65);
  CHECK(rules.reaction == units::Seconds{2.5});
  REQUIRE(rules.most_wind.has_value());
  CHECK(near(*rules.most_wind, MetresPerSecond{60 / 3.6}, MetresPerSecond{1e-12}));
  CHECK(rules.bulletin.at(1).keep_off == Metres{50});
  CHECK(rules.bulletin.at(2).keep_off == passage::default_rules().bulletin.at(2).keep_off);
  REQUIRE(rules.driver_levels.size() == 2);
  CHECK(passage::allowed_share_for(rules, "new") == 0.5);
  CHECK_FALSE(rules.driver_levels[0].may_carry_passengers);
  CHECK(rules.driver_levels[1].may_carry_passengers);
  CHECK(rules.grooming_set == units::Seconds{7'200});
  CHECK(rules.longest_single_lane == Metres{1'500});
  CHECK(rules.control == "Fell Control, channel 3");
  CHECK(rules.passengers.with_trailer);
  CHECK(rules.passengers.who.size() == 1);
  CHECK(rules.alone.longest_dead_zone == Metres{800});
  CHECK(rules.tow_out.rig == "tern-pallet");
  CHECK(rules.tow_out.must_be_ready);
  CHECK(rules.closed_in_rain);
  const auto row = rules.grip.row({snow::Wetness::wet, snow::Surface::groomed},
                                  {units::Kilopascals{6}, Metres{1}, Metres{1.4}});
  REQUIRE(row.has_value());
  CHECK(row->traction == ForceRatio{0.24});
  CHECK(row->source.starts_with(
      "five pulls with a spring scale, lowest taken, A. Example, 2026-01-12; rest: "));
}

TEST_CASE("rules.toml with its schema alone is the defaults") {
  const TestFolder folder;
  const auto [rules, faults] = read_rules(folder.with("rules.toml", "schema = 1\n"));
  CHECK(lines_of(faults) == Lines{});
  CHECK(passage::estimates_in({rules}) == passage::estimates_in({passage::default_rules()}));
  CHECK(rules.allowed_share == 0.7);
  CHECK(rules.start_slope_wet == passage::default_rules().start_slope_wet);
}

TEST_CASE("what rules.toml says is known as said, tables too") {
  const TestFolder folder;
  const auto [rules, faults] = read_rules(folder.with(
      "rules.toml", "schema = 1\ncornice_setback_m = 10\n[passengers]\nwettest = \"wet\"\n"));
  CHECK(lines_of(faults) == Lines{});
  CHECK(rules.said == Lines{"cornice_setback_m", "passengers", "passengers.wettest", "schema"});
}

TEST_CASE("the example of snow.toml reads without a fault, moments in UTC") {
  const TestFolder folder;
  const auto [report, faults] = read_snow_report(folder.with("snow.toml", testing::snow_example()));
  CHECK(lines_of(faults) == Lines{});
  CHECK(report.observer == "A. Example");
  CHECK(report.observed == units::parse_instant("2026-02-01T16:30:00Z"));
  CHECK(report.valid_until == units::parse_instant("2026-02-02T04:00:00Z"));
  CHECK(report.weather.bulletin_level == 2);
  REQUIRE(report.weather.new_snow.has_value());
  CHECK(near(*report.weather.new_snow, Metres{0.05}, Metres{1e-12}));
  REQUIRE(report.weather.wind.has_value());
  CHECK(near(*report.weather.wind, MetresPerSecond{15 / 3.6}, MetresPerSecond{1e-12}));
  CHECK(report.weather.rain == false);
  CHECK(report.weather.site.tow_out_ready == true);
  CHECK(report.weather.site.last_weather == units::parse_instant("2026-01-31T06:00:00Z"));
  REQUIRE(report.weather.site.marks.size() == 1);
  CHECK(report.weather.site.marks[0].mark == "Fell Winch");
  CHECK(report.weather.site.marks[0].clear);
  CHECK(report.weather.site.marks[0].until == units::parse_instant("2026-02-02T03:00:00Z"));
  CHECK(report.weather.site.groomed("Shed Lane") == units::parse_instant("2026-02-01T13:40:00Z"));
  CHECK_FALSE(report.weather.site.groomed("Drum Lane").has_value());
  REQUIRE(report.bands.size() == 3);
  CHECK(report.bands[0].above == geo::Height{1500});
  CHECK_FALSE(report.bands[0].aspect_from.has_value());
  CHECK(report.bands[1].state == snow::SnowState{snow::Wetness::moist, snow::Surface::groomed});
  CHECK(report.bands[1].aspect_to == units::Bearing::from_degrees(270));
}

TEST_CASE("a sector from 0 to 360 is all aspects") {
  const TestFolder folder;
  const std::string round = testing::changed(
      testing::changed(testing::snow_example(), "aspect_from_deg = 90", "aspect_from_deg = 0"),
      "aspect_to_deg = 270", "aspect_to_deg = 360");
  const auto [report, faults] = read_snow_report(folder.with("snow.toml", round));
  CHECK(lines_of(faults) == Lines{});
  CHECK_FALSE(report.bands[1].aspect_from.has_value());
}

TEST_CASE("weather that nobody gave stays unknown") {
  const TestFolder folder;
  const auto [report, faults] =
      read_snow_report(folder.with("snow.toml",
                                   "schema = 1\nobserver = \"A\"\nobserved = 2026-02-01T06:30:00Z\n"
                                   "valid_until = 2026-02-01T06:30:01Z\n"
                                   "[[band]]\nwetness = \"dry\"\nsurface = \"ice\"\n"));
  CHECK(lines_of(faults) == Lines{});
  CHECK_FALSE(report.weather.visibility.has_value());
  CHECK_FALSE(report.weather.wind.has_value());
  CHECK_FALSE(report.weather.bulletin_level.has_value());
  CHECK_FALSE(report.weather.rain.has_value());
}

TEST_CASE("heights whose error nobody declared are read, with a doubt that says what follows") {
  const TestFolder folder;
  const std::string text = testing::site_example();
  (void)folder.with("site.toml", text.substr(0, text.find("[[heights.error]]")));
  const auto [site, faults] = read_site_file(folder.path());
  CHECK(site.heights.trust.errors.empty());
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().weight == base::Weight::doubt);
  CHECK(base::line_of(faults.front()) ==
        "site.toml: line 13 (heights): says nothing of the heights' error, so every trail is "
        "closed; declare it under [[heights.error]]");
}

}  // namespace rimehaul::ports::toml
