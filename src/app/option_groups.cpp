#include "app/option_groups.h"

#include <CLI/CLI.hpp>
#include <cmath>

namespace rimehaul::app {

CLI::Validator number_within(Bounds bounds) {
  const auto check = [bounds](const std::string& text) -> std::string {
    double value = std::nan("");
    const bool read = CLI::detail::lexical_cast(text, value);
    if (read && value >= bounds.least && value <= bounds.most) {
      return {};
    }
    return "'" + text + "' is not a number from " + CLI::detail::to_string(bounds.least) + " to " +
           CLI::detail::to_string(bounds.most);
  };
  return CLI::Validator{check, "NUMBER"};
}

void add_common(CLI::App& verb, CommonOptions& common) {
  verb.add_option("site", common.site, "Folder that describes the site")->required();
  add_answer(verb, common);
}

void add_answer(CLI::App& verb, CommonOptions& common) {
  verb.add_option("--json", common.json, "Write the answer as JSON to a file, or - for the screen")
      ->type_name("FILE");
  verb.add_option("--now", common.now, "Take this as the present, 2026-02-01T16:00:00Z")
      ->type_name("TIME");
}

void add_snow(CLI::App& verb, SnowOptions& snow) {
  verb.add_option("--snow", snow.wetness,
                  "Snow assumed everywhere: dry, moist, wet, very_wet or slush")
      ->type_name("CLASS");
  verb.add_option("--surface", snow.surface,
                  "Its surface: groomed, fresh, refrozen or ice (groomed)")
      ->type_name("KIND");
  verb.add_option("--snow-report", snow.report, "Snow report to judge by, in place of --snow")
      ->type_name("FILE")
      ->excludes("--snow");
  add_weather(verb, snow);
}

void add_weather(CLI::App& verb, SnowOptions& snow) {
  verb.add_option("--visibility", snow.visibility_m, "How far one sees, metres")
      ->check(number_within({0, 100'000}));
  verb.add_option("--wind", snow.wind_kmh, "Wind, km/h")->check(number_within({0, 400}));
  verb.add_option("--bulletin", snow.bulletin, "Level of the avalanche bulletin, 1 to 5")
      ->check(CLI::Range(1, 5));
  verb.add_option("--new-snow", snow.new_snow_cm, "New snow since the last grooming, cm")
      ->check(number_within({0, 1000}));
  verb.add_option("--rain", snow.rain, "Whether it rains: yes or no")
      ->check(CLI::IsMember({"yes", "no"}));
  verb.add_option("--temperature", snow.temperature_c, "Of the air, degrees Celsius")
      ->check(number_within({-60, 40}));
}

void add_rig(CLI::App& verb, RigOptions& rig) {
  verb.add_option("--rig", rig.name, "Name of the rig")->required()->type_name("NAME");
  add_load(verb, rig);
}

void add_load(CLI::App& verb, RigOptions& rig) {
  verb.add_option("--load", rig.bed_kg, "Load on the carrier's bed, kg")
      ->check(number_within({0, 20'000}));
  verb.add_option("--towed-load", rig.towed_kg, "Load on the trailer, kg")
      ->check(number_within({0, 20'000}));
  verb.add_option("--passengers", rig.passengers, "Passengers beside the driver (0)")
      ->check(CLI::Range(0, 100));
  verb.add_option("--fuel", rig.fuel_l, "Fuel aboard, litres (a full tank)")
      ->check(number_within({0, 1000}));
}

void add_depart(CLI::App& verb, std::optional<std::string>& depart) {
  verb.add_option("--depart", depart,
                  "HH:MM, the site's local time on the day of --now; or an RFC 3339 time (now)")
      ->type_name("TIME");
}

}  // namespace rimehaul::app
