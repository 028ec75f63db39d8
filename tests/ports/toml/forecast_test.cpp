// The forecast of the demo's warm day, and a record of past days, as they are read.
#include <doctest/doctest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "ports/toml/snow_file.h"
#include "ports/toml/wetness_record.h"

namespace rimehaul::ports::toml {

namespace {

namespace fs = std::filesystem;

const fs::path kDemo{RIMEHAUL_ROOT "/routes/marrowfell"};

/// A folder of its own, gone when the test has ended.
class Folder {
 public:
  Folder() : path_{fs::temp_directory_path() / ("rimehaul-record-" + std::to_string(::getpid()))} {
    fs::create_directories(path_);
    fs::copy_file(kDemo / "snow-day.toml", path_ / "day.toml",
                  fs::copy_options::overwrite_existing);
    fs::copy_file(kDemo / "snow.toml", path_ / "bare.toml", fs::copy_options::overwrite_existing);
  }
  ~Folder() { fs::remove_all(path_); }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  [[nodiscard]] base::Reading<std::vector<snow::SeenDay>> record(const std::string& text) const {
    std::ofstream{path_ / "record.toml"} << "schema = 1\n" << text;
    return read_wetness_record({(path_ / "record.toml").string(), "record.toml"});
  }

 private:
  fs::path path_;
};

constexpr const char* kDay = "[[day]]\nreport = \"day.toml\"\n";
constexpr const char* kSeen =
    "[[day.seen]]\nwhen = 2026-02-01T11:30:00-10:00\nheight_m = 940\naspect_deg = 180\n"
    "slope_deg = 15\nwetness = \"wet\"\n";

}  // namespace

TEST_CASE("the demo's warm day has a forecast of sixteen hours, without fault or doubt") {
  const std::string path = (kDemo / "snow-day.toml").string();
  const auto reading = read_snow_report({path, "snow-day.toml"});
  CHECK(reading.faults.empty());
  REQUIRE(reading.data.forecast.has_value());
  const snow::Forecast& forecast = *reading.data.forecast;
  CHECK(forecast.reference == geo::Height{1000});
  CHECK(forecast.lapse == snow::kStandardLapse);
  CHECK(forecast.snow_temperature == units::Celsius{-4});
  REQUIRE(forecast.hours.size() == 16);
  CHECK(forecast.hours.front().start == units::parse_instant("2026-02-01T18:00:00Z"));
  CHECK(forecast.hours[5].air == units::Celsius{8.5});
  CHECK(forecast.hours[0].cloud == units::Oktas{1});
  CHECK(forecast.hours[0].humidity == units::Percent{50});
  CHECK(forecast.hours[0].rain.value() == 0.0);
  CHECK(reading.data.weather.cloud == units::Oktas{1});
}

TEST_CASE("a record has what was seen on each day, with its report") {
  const Folder folder;
  const auto reading = folder.record(std::string{kDay} + kSeen);
  CHECK(reading.faults.empty());
  REQUIRE(reading.data.size() == 1);
  REQUIRE(reading.data[0].seen.size() == 1);
  const snow::SeenWetness& seen = reading.data[0].seen[0];
  CHECK(seen.wetness == snow::Wetness::wet);
  CHECK(seen.where.height == geo::Height{940});
  CHECK(seen.where.aspect == units::Bearing::from_degrees(180));
  CHECK(seen.where.slope->most == units::Slope::from_degrees(15));
  CHECK(seen.where.when == units::parse_instant("2026-02-01T21:30:00Z"));
  CHECK(reading.data[0].report.forecast.has_value());
}

TEST_CASE("what is wrong in a record is told with its line, or with the report's file") {
  const Folder folder;
  const auto said = [&](const std::string& text) {
    const auto reading = folder.record(text);
    REQUIRE(reading.faults.size() == 1);
    return base::line_of(reading.faults.front());
  };
  CHECK(said("[[day]]\nreport = \"../day.toml\"\n") ==
        "record.toml: line 3 (day.report): \"../day.toml\" leads out of the record's folder; put "
        "the report into the folder and name it from there");
  CHECK(said("[[day]]\nreport = \"bare.toml\"\n") ==
        "record.toml: line 3 (day.report): \"bare.toml\" has no forecast; leave out this day");
  CHECK(said("[[day]]\n") ==
        "record.toml: line 2 (day.report): is missing; add it: text in quotes");
  CHECK(said(std::string{kDay} +
             "[[day.seen]]\nwhen = 2026-02-01T11:30:00-10:00\nwetness = \"wet\"\n") ==
        "record.toml: line 4 (day.seen.height_m): is missing; add it: a number from -500 to 9000");
  CHECK_THROWS_AS((void)folder.record("[[day]]\nreport = \"none.toml\"\n"), base::BadInput);
}

}  // namespace rimehaul::ports::toml
