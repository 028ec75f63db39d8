#include "app/option_groups.h"

#include <CLI/CLI.hpp>

#include "app/value_kinds.h"

namespace rimehaul::app {

void add_common(CLI::App& verb, CommonOptions& common) {
  takes(verb.add_option("SITE", common.site, "Folder that describes the site"), Value::folder)
      ->required();
  add_answer(verb, common);
}

void add_answer(CLI::App& verb, CommonOptions& common) {
  add_file(verb, common.json, {"--json", "Write the answer as JSON too"});
  takes(verb.add_option("--now", common.now, "Take this as the present, as 2026-02-01T16:00:00Z"),
        Value::time)
      ->group(kAnswerGroup);
}

void add_snow(CLI::App& verb, SnowOptions& snow) {
  takes(verb.add_option(
            "--snow", snow.wetness,
            "Snow taken to lie everywhere: " + words_listed(Value::snow_class) + " (the report)"),
        Value::snow_class)
      ->group(kSnowGroup);
  takes(verb.add_option("--surface", snow.surface,
                        "Its surface: " + words_listed(Value::surface) + " (groomed)"),
        Value::surface)
      ->group(kSnowGroup);
  takes(verb.add_option("--snow-report", snow.report,
                        "Observer's report to judge by, in place of --snow (the site's own)"),
        Value::file)
      ->group(kSnowGroup)
      ->excludes("--snow");
  add_weather(verb, snow);
}

void add_classes(CLI::App& verb, std::vector<std::string>& wetness) {
  again(takes(verb.add_option("--snow", wetness,
                              "Snow taken to lie everywhere: " + words_listed(Value::snow_class) +
                                  "; may be given again (all)"),
              Value::snow_class))
      ->group(kSnowGroup);
}

void add_weather(CLI::App& verb, SnowOptions& snow) {
  takes_number(verb.add_option("--visibility", snow.visibility_m, "How far one sees"), "METRES",
               {0, 100'000})
      ->group(kSnowGroup);
  takes_number(verb.add_option("--wind", snow.wind_kmh, "Wind, km/h"), "KMH", {0, 400})
      ->group(kSnowGroup);
  takes_whole_number(
      verb.add_option("--bulletin", snow.bulletin, "Level of the avalanche bulletin, 1 to 5"),
      "LEVEL", {1, 5})
      ->group(kSnowGroup);
  takes_number(verb.add_option("--new-snow", snow.new_snow_cm, "New snow since the last grooming"),
               "CM", {0, 1000})
      ->group(kSnowGroup);
  takes(verb.add_option("--rain", snow.rain, "Whether it rains"), Value::yes_or_no)
      ->group(kSnowGroup);
  takes_number(verb.add_option("--temperature", snow.temperature_c, "Of the air, degrees Celsius"),
               "C", {-60, 40})
      ->group(kSnowGroup);
}

void add_rig(CLI::App& verb, RigOptions& rig) {
  takes(verb.add_option("--rig", rig.name, "Rig of the site"), Value::rig)
      ->required()
      ->group(kRigGroup);
  add_load(verb, rig);
}

void add_load(CLI::App& verb, RigOptions& rig) {
  takes_number(verb.add_option("--load", rig.bed_kg, "On the carrier's bed"), "KG", {0, 20'000})
      ->group(kRigGroup);
  takes_number(verb.add_option("--towed-load", rig.towed_kg, "On the trailer"), "KG", {0, 20'000})
      ->group(kRigGroup);
  takes_whole_number(verb.add_option("--passengers", rig.passengers, "Beside the driver (0)"), "N",
                     {0, 100})
      ->group(kRigGroup);
  takes_number(verb.add_option("--fuel", rig.fuel_l, "Aboard (a full tank)"), "LITRES", {0, 1000})
      ->group(kRigGroup);
}

void add_company(CLI::App& verb, RigOptions& rig) {
  verb.add_flag("--accompanied", rig.accompanied,
                "A second rig or a second trained person goes with it")
      ->group(kRigGroup);
}

void add_way(CLI::App& verb, WayOptions& way) {
  takes(verb.add_option("--from", way.from, "Station to leave from"), Value::station)
      ->required()
      ->group(kWayGroup);
  takes(verb.add_option("--to", way.to, "Station to arrive at"), Value::station)
      ->required()
      ->group(kWayGroup);
  again(takes(verb.add_option("--via", way.via, "Station to pass; may be given again, in order"),
              Value::station))
      ->group(kWayGroup);
  add_choice(verb, {way.prefer, way.depart, way.permitted_by});
}

void add_choice(CLI::App& verb, ChoiceOptions choice) {
  takes(verb.add_option("--prefer", choice.prefer,
                        "What counts: " + words_listed(Value::preference) + " (safest)"),
        Value::preference)
      ->group(kWayGroup);
  add_depart(verb, choice.depart);
  takes(verb.add_option("--permitted-by", choice.permitted_by,
                        "Person who takes the decisions that the site's rules ask for"),
        Value::name)
      ->group(kWayGroup);
}

void add_hours(CLI::App& verb, HoursOptions& hours) {
  verb.add_flag("--windows", hours.windows, "Tell the windows of departure too")
      ->group(kHoursGroup);
  takes(verb.add_option("--arrive-by", hours.arrive_by,
                        "Leave as late as one may to arrive by this hour, as --depart"),
        Value::time)
      ->group(kHoursGroup)
      ->excludes("--depart");
  add_way_back(verb, hours);
}

void add_way_back(CLI::App& verb, HoursOptions& hours) {
  takes_number(verb.add_option("--late", hours.late_min,
                               "How late one may set out and still arrive, in every window (15)"),
               "MINUTES", {0, 720})
      ->group(kHoursGroup);
  takes_number(verb.add_option("--turn-round", hours.turn_round_min,
                               "Come back too, setting out so long after arriving or later"),
               "MINUTES", {0, 720})
      ->group(kHoursGroup);
  takes_number(verb.add_option("--return-load", hours.back_bed_kg,
                               "On the carrier's bed on the way back (as --load)"),
               "KG", {0, 20'000})
      ->group(kHoursGroup)
      ->needs("--turn-round");
  takes_number(verb.add_option("--return-towed-load", hours.back_towed_kg,
                               "On the trailer on the way back (as --towed-load)"),
               "KG", {0, 20'000})
      ->group(kHoursGroup)
      ->needs("--turn-round");
}

void add_place(CLI::App& verb, PlaceOptions& place, const std::string& point) {
  CLI::Option* trail =
      takes(verb.add_option("--trail", place.trail, "Trail that the place is on"), Value::trail);
  CLI::Option* at = takes_number(
      verb.add_option("--at", place.at_m, "How far along the trail as drawn"), "METRES", {0, 1e7});
  trail->needs(at)->group(kPlaceGroup);
  at->needs(trail)->group(kPlaceGroup);
  takes_number(verb.add_option("--point", place.point_m, point), "EAST,NORTH", {-1e8, 1e8})
      ->delimiter(',')
      ->expected(2)
      ->group(kPlaceGroup)
      ->excludes(trail);
}

CLI::Option* add_person(CLI::App& verb, std::string& person, const std::string& means) {
  return takes(verb.add_option("--as", person, means), Value::person);
}

CLI::Option* add_depart(CLI::App& verb, std::optional<std::string>& depart) {
  return takes(
             verb.add_option("--depart", depart,
                             "Hour to judge for: 08:30, the site's local time on the day of --now; "
                             "or as --now (now)"),
             Value::time)
      ->group(kWayGroup);
}

void add_file(CLI::App& verb, std::optional<std::string>& path, FileOption option) {
  takes(verb.add_option(option.name, path, option.means), Value::file)->group(kAnswerGroup);
}

CLI::Option* again(CLI::Option* option) {
  return option->expected(1)->take_all();
}

}  // namespace rimehaul::app
