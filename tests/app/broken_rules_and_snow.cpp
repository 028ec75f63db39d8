// rules.toml and snow.toml broken in one way each.
#include "app/broken_input.h"

namespace rimehaul::testing {

namespace {

Break rules(const std::string& more) {
  return written("rules.toml", "schema = 1\n" + more + "\n");
}

Break snow(const std::string& from, const std::string& to) {
  return changed("snow.toml", {from, to});
}

Break forecast(const std::string& said, const std::string& hours) {
  return snow("[[band]]", "[forecast]\n" + said + "\n" + hours + "[[band]]");
}

const std::string kSound = "source = \"test desk\"\nheight_m = 1000";

std::string hour_from(const std::string& time) {
  return "[[forecast.hour]]\nstart = 2026-02-01T" + time +
         ":00Z\ntemperature_c = 2\nrain_mm_h = 0\n";
}

const std::string kHours = hour_from("06:00") + hour_from("07:00");

std::string grip(const std::string& more) {
  return "[[grip]]\nwetness = \"wet\"\nsurface = \"groomed\"\nstanding = \"site_measured\"\n"
         "source = \"pulls\"\nby = \"A. Example\"\ndate = 2026-01-12\n" +
         more;
}

}  // namespace

std::vector<BrokenFile> broken_rules_and_snow() {
  return {
      {"no rules.toml",
       removed("rules.toml"),
       {"rules.toml", "", "does not exist", "write it, or correct its name where it is named"}},
      {"no schema",
       written("rules.toml", "allowed_share = 0.7\n"),
       {"rules.toml", "line N (schema)", "is missing", "add it: schema = 1"}},
      {"a share above 1",
       rules("allowed_share = 1.01"),
       {"rules.toml", "line N (allowed_share)", "1.01 is out of range",
        "write a number above 0, up to 1"}},
      {"less confidence",
       rules("confidence_k = 1.0"),
       {"rules.toml", "line N (confidence_k)", "1 is out of range",
        "write a number from 1.645 to 6"}},
      {"a rule misspelt",
       rules("most_wind = 60"),
       {"rules.toml", "line N (most_wind)", "is no key of this table",
        "did you mean \"most_wind_kmh\"?"}},
      {"a start slope raised",
       rules("start_slope_dry_deg = 31"),
       {"rules.toml", "line N (start_slope_dry_deg)", "31 is out of range",
        "write a number from 15 to 30"}},
      {"a sixth bulletin level",
       rules("[bulletin.level_6]\nkeep_off_m = 1"),
       {"rules.toml", "line N (bulletin.level_6)", "is no key of this table",
        "did you mean \"level_1\"?"}},
      {"a level milder than the one below",
       rules("[bulletin.level_3]\nkeep_off_m = 5"),
       {"rules.toml", "line N (bulletin.level_3)", "is less strict than the level below it",
        "keep off at least as far, and permit no more"}},
      {"a driver who may tow in words",
       rules("[driver.seasoned]\nallowed_share = 0.7\nmay_tow = \"yes\"\nwettest_towing = \"wet\""),
       {"rules.toml", "line N (driver.seasoned.may_tow)", "is text",
        "write true or false, without quotes"}},
      {"grip above 1",
       rules(grip("traction = 1.1")),
       {"rules.toml", "line N (grip.traction)", "1.1 is out of range",
        "write a number above 0, up to 1"}},
      {"grip of nothing",
       rules(grip("")),
       {"rules.toml", "line N (grip)", "gives no number",
        "give traction, another number that was measured, or a trial"}},
      {"resistance the wrong way round",
       rules(grip("carrier_resistance = [0.2, 0.1]")),
       {"rules.toml", "line N (grip.carrier_resistance)", "its low value is above its high value",
        "write [low, high]"}},
      {"no snow.toml",
       removed("snow.toml"),
       {"snow.toml", "", "does not exist", "write it, or correct its name where it is named"}},
      {"no observer",
       snow("observer = \"A. Example\"\n", ""),
       {"snow.toml", "line N (observer)", "is missing", "add it: text in quotes"}},
      {"a moment in quotes",
       snow("observed = 2026-02-01T06:00:00Z", "observed = \"2026-02-01T06:00:00Z\""),
       {"snow.toml", "line N (observed)", "is text",
        "write a moment with its offset and without quotes: 2026-02-01T06:30:00Z"}},
      {"a moment without offset",
       snow("observed = 2026-02-01T06:00:00Z", "observed = 2026-02-01T06:00:00"),
       {"snow.toml", "line N (observed)", "is of another kind",
        "write a moment with its offset and without quotes: 2026-02-01T06:30:00Z"}},
      {"the 30th of February",
       snow("observed = 2026-02-01T06:00:00Z", "observed = 2026-02-30T06:00:00Z"),
       {"snow.toml", "line N, column 22",
        "Error while parsing date: expected day between 1 and 28 (inclusive), saw 30",
        kCorrectToml}},
      {"a report that ends before it begins",
       snow("valid_until = 2026-02-01T14", "valid_until = 2026-02-01T05"),
       {"snow.toml", "line N (valid_until)", "is not after observed", "correct one of them"}},
      {"a bulletin level of 6",
       snow("bulletin_level = 1", "bulletin_level = 6"),
       {"snow.toml", "line N (weather.bulletin_level)", "6 is out of range",
        "write a whole number from 1 to 5"}},
      {"a bulletin of nobody",
       snow("bulletin_source = \"test desk\"\n", ""),
       {"snow.toml", "line N (weather.bulletin_source)", "is missing", "add it: text in quotes"}},
      {"wind in words",
       snow("wind_kmh = 15", "wind_kmh = \"calm\""),
       {"snow.toml", "line N (weather.wind_kmh)", "is text",
        "write a number from 0 to 400, without quotes"}},
      {"no band",
       snow("[[band]]\nwetness = \"dry\"\nsurface = \"groomed\"\n", ""),
       {"snow.toml", "line N (band)", "there is no band", "write what was seen under [[band]]"}},
      {"one band as a table",
       snow("[[band]]", "[band]"),
       {"snow.toml", "line N (band)", "is a table", "write tables under [[band]]"}},
      {"snow of no class",
       snow("wetness = \"dry\"", "wetness = \"powder\""),
       {"snow.toml", "line N (band.wetness)", "\"powder\" is not known here",
        "write one of: dry, moist, wet, very_wet, slush"}},
      {"snow of two classes",
       snow("wetness = \"dry\"", "wetness = [\"dry\", \"moist\"]"),
       {"snow.toml", "line N (band.wetness)", "is a list",
        "write one of: dry, moist, wet, very_wet, slush"}},
      {"a band upside down",
       snow("wetness = \"dry\"", "above_m = 2000\nbelow_m = 1000\nwetness = \"dry\""),
       {"snow.toml", "line N (band.above_m)", "is not below below_m", "correct one of them"}},
      {"cloud over nine eighths of the sky",
       snow("rain = false", "rain = false\ncloud_oktas = 9"),
       {"snow.toml", "line N (weather.cloud_oktas)", "9 is out of range",
        "write a number from 0 to 8"}},
      {"a forecast of nobody",
       forecast("height_m = 1000", kHours),
       {"snow.toml", "line N (forecast.source)", "is missing", "add it: text in quotes"}},
      {"a forecast for no height",
       forecast("source = \"test desk\"", kHours),
       {"snow.toml", "line N (forecast.height_m)", "is missing",
        "add it: a number from -500 to 9000"}},
      {"snow warmer than melting",
       forecast(kSound + "\nsnow_temperature_c = 1", kHours),
       {"snow.toml", "line N (forecast.snow_temperature_c)", "1 is out of range",
        "write a number from -60 to 0"}},
      {"air that cools beyond all bounds",
       forecast(kSound + "\ncolder_c_per_km = 13", kHours),
       {"snow.toml", "line N (forecast.colder_c_per_km)", "13 is out of range",
        "write a number from -15 to 12"}},
      {"a forecast without an hour",
       forecast(kSound, ""),
       {"snow.toml", "line N (forecast.hour)", "there is no hour",
        "write what is forecast under [[forecast.hour]]"}},
      {"an hour that is left out",
       forecast(kSound, hour_from("06:00") + hour_from("08:00")),
       {"snow.toml", "line N (forecast.hour.start)",
        "is not an hour after the start of the hour before",
        "give every hour once, one after the other"}},
      {"a forecast that begins after the snow was seen",
       forecast(kSound, hour_from("07:00")),
       {"snow.toml", "line N (forecast.hour)", "none of them holds the moment of observed",
        "begin with the hour in which the snow was seen"}},
      {"an hour without rain or none",
       forecast(kSound, "[[forecast.hour]]\nstart = 2026-02-01T06:00:00Z\ntemperature_c = 2\n"),
       {"snow.toml", "line N (forecast.hour.rain_mm_h)", "is missing",
        "add it: a number from 0 to 200"}},
      {"an hour without its air",
       forecast(kSound, "[[forecast.hour]]\nstart = 2026-02-01T06:00:00Z\nrain_mm_h = 0\n"),
       {"snow.toml", "line N (forecast.hour.temperature_c)", "is missing",
        "add it: a number from -60 to 40"}},
      {"an hour of no time",
       forecast(kSound, "[[forecast.hour]]\ntemperature_c = 2\nrain_mm_h = 0\n"),
       {"snow.toml", "line N (forecast.hour.start)", "is missing",
        "add it: a moment with its offset and without quotes: 2026-02-01T06:30:00Z"}},
      {"air too dry to be",
       forecast(kSound, hour_from("06:00") + "humidity_percent = 0\n"),
       {"snow.toml", "line N (forecast.hour.humidity_percent)", "0 is out of range",
        "write a number from 5 to 100"}},
      {"an hour with cloud in words",
       forecast(kSound, hour_from("06:00") + "cloud_oktas = \"few\"\n"),
       {"snow.toml", "line N (forecast.hour.cloud_oktas)", "is text",
        "write a number from 0 to 8, without quotes"}},
      {"snow that falls as a forecast",
       forecast(kSound, hour_from("06:00") + "snow_mm_h = 1\n"),
       {"snow.toml", "line N (forecast.hour.snow_mm_h)", "is no key of this table",
        "remove it; docs/site-format.md names the keys"}},
      {"half a sector of aspects",
       snow("wetness = \"dry\"", "aspect_from_deg = 90\nwetness = \"dry\""),
       {"snow.toml", "line N (band)", "gives one side of a sector of aspects",
        "give both aspect_from_deg and aspect_to_deg"}},
  };
}

}  // namespace rimehaul::testing
