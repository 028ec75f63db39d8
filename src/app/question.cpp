#include "app/question.h"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <vector>

#include "app/input_files.h"
#include "app/names.h"
#include "app/names_meant.h"
#include "app/softening.h"
#include "app/status.h"
#include "app/value_kinds.h"
#include "ports/toml/snow_file.h"
#include "units/rounding.h"

namespace rimehaul::app {

namespace {

/// Writes what the options tell over what is known already.
void overlay(const SnowOptions& options, snow::DayWeather& weather) {
  if (options.visibility_m) {
    weather.visibility = units::Metres{*options.visibility_m};
  }
  if (options.wind_kmh) {
    weather.wind = units::MetresPerSecond{*options.wind_kmh / 3.6};
  }
  if (options.new_snow_cm) {
    weather.new_snow = units::Metres{*options.new_snow_cm / 100.0};
    weather.new_snow_density.reset();  // nobody weighed this snow
  }
  if (options.temperature_c) {
    weather.temperature = units::Celsius{*options.temperature_c};
  }
  if (options.rain) {
    weather.rain = *options.rain == "yes";
  }
  if (options.bulletin) {
    weather.bulletin_level = *options.bulletin;
    weather.bulletin_source = "as given on the command line";
  }
}

ChosenSnow assumed_snow(const LoadedSite& site, const SnowOptions& options, units::Instant depart) {
  snow::DayWeather weather;
  snow::Told told{"assumed for planning", {}};
  ChosenSnow chosen;
  if (site.snow && holds_at(*site.snow, depart)) {
    weather = site.snow->weather;
    weather.site.end_by(*site.snow->valid_until);
    told = snow::observed_by(*site.snow);
    told.words = "assumed for planning; weather, where not given, " + told.words;
    chosen.valid_until = site.snow->valid_until;
  } else if (site.snow && site.snow->valid_until && *site.snow->valid_until < depart) {
    chosen.ran_out = site.snow->valid_until;
  }
  overlay(options, weather);
  chosen.snow = std::make_unique<snow::ConstantSnow>(
      snow::SnowState{wetness_typed(*options.wetness), surface_typed(options.surface)}, weather,
      told, chosen.valid_until);
  return chosen;
}

std::unique_ptr<snow::SnowAt> as_softened(const LoadedSite& site, snow::SnowReport report) {
  if (!report.forecast) {
    return std::make_unique<snow::ReportedSnow>(std::move(report));
  }
  return std::make_unique<snow::ForecastSnow>(std::move(report), softening_of(site));
}

}  // namespace

snow::SnowReport report_in(const std::string& path, const trails::Network& network) {
  base::Reading<snow::SnowReport> reading = ports::toml::read_snow_report({path, path});
  std::vector<base::Fault>& faults = reading.faults;
  std::ranges::move(unknown_names(reading.data, path, network), std::back_inserter(faults));
  std::erase_if(faults,
                [](const base::Fault& fault) { return fault.weight != base::Weight::fault; });
  if (!faults.empty()) {
    throw UnfitInput{std::move(faults)};
  }
  return std::move(reading.data);
}

namespace {

template <class Kind, class Typed>
std::vector<Kind> kinds_typed(const std::vector<std::string>& keys, int count, Typed typed) {
  std::vector<Kind> named;
  std::ranges::transform(keys, std::back_inserter(named), typed);
  std::vector<Kind> in_order;
  for (int i = 0; i < count; ++i) {
    const Kind kind = static_cast<Kind>(i);
    if (named.empty() || std::ranges::find(named, kind) != named.end()) {
      in_order.push_back(kind);
    }
  }
  return in_order;
}

}  // namespace

search::Preference preference_typed(const std::string& name) {
  if (name == "quickest") {
    return search::Preference::quickest;
  }
  return name == "least-fuel" ? search::Preference::least_fuel : search::Preference::safest;
}

bool holds_at(const snow::SnowReport& report, units::Instant when) {
  return report.observed && report.valid_until && *report.observed <= when &&
         when <= *report.valid_until;
}

std::size_t station_named(const trails::Network& network, const std::string& name) {
  const auto station = network.station_named(name);
  if (!station) {
    throw WrongUsage{no_such({"station", names_of(network.stations)}, name)};
  }
  if (!network.junction_of(*station)) {
    throw WrongUsage{"no trail reaches the station \"" + name +
                     "\"; see what `rimehaul check` says of it"};
  }
  return *station;
}

std::size_t trail_named(const trails::Network& network, const std::string& name) {
  const auto trail = network.trail_named(name);
  if (!trail) {
    throw WrongUsage{no_such({"trail", names_of(network.trails)}, name)};
  }
  return *trail;
}

snow::Wetness wetness_typed(const std::string& key) {
  const auto wetness = snow::wetness_named(key);
  if (!wetness) {
    throw WrongUsage{no_such({"snow class", words_of(Value::snow_class)}, key)};
  }
  return *wetness;
}

snow::Surface surface_typed(const std::string& key) {
  const auto surface = snow::surface_named(key);
  if (!surface) {
    throw WrongUsage{no_such({"surface", words_of(Value::surface)}, key)};
  }
  return *surface;
}

std::vector<snow::Wetness> classes_typed(const std::vector<std::string>& keys) {
  return kinds_typed<snow::Wetness>(keys, snow::kWetnessCount, wetness_typed);
}

std::vector<snow::Surface> surfaces_typed(const std::vector<std::string>& keys) {
  return kinds_typed<snow::Surface>(keys, snow::kSurfaceCount, surface_typed);
}

rig::Rig rig_as_loaded(const LoadedSite& site, const RigOptions& options) {
  for (const rig::Rig& known : site.rigs) {
    if (known.name != options.name) {
      continue;
    }
    if (known.trailer && !options.towed_kg) {
      throw WrongUsage{"the rig " + known.name + " tows " + known.trailer->name +
                       "; say --towed-load KG (0 when it is empty)"};
    }
    if (!known.trailer && options.towed_kg.value_or(0.0) > 0.0) {
      throw WrongUsage{"the rig " + known.name + " tows nothing; leave out --towed-load"};
    }
    rig::Rig rig = known;
    rig.load = {.bed = units::Kilograms{options.bed_kg.value_or(0.0)},
                .towed = units::Kilograms{options.towed_kg.value_or(0.0)},
                .passengers = options.passengers,
                .passenger_mass = site.scene->rules.passenger_mass,
                .fuel = options.fuel_l ? units::Litres{*options.fuel_l} : rig.carrier.tank};
    rig.accompanied = options.accompanied;
    if (!(rig.load.fuel <= rig.carrier.tank)) {
      throw WrongUsage{"the tank of " + rig.carrier.name + " does not hold so much --fuel; give " +
                       units::text_of(rig.carrier.tank.value(), 1, units::Round::down) +
                       " litres at most"};
    }
    return rig;
  }
  throw WrongUsage{no_such({"rig", names_of(site.rigs)}, options.name)};
}

units::Instant departure(const std::optional<std::string>& text, const LocalNow& present,
                         const std::string& option) {
  if (!text) {
    return present.now;
  }
  if (const auto instant = units::parse_instant(*text)) {
    return *instant;
  }
  const auto time = units::parse_time_of_day(*text);
  if (!time) {
    throw WrongUsage{option + " " + *text +
                     " is no time; write 08:30 or 2026-02-01T08:30:00-10:00"};
  }
  const auto moment = present.local_clock.on_day_of(present.now, *time);
  if (const auto* none = std::get_if<units::NoOneMoment>(&moment)) {
    const std::string wrong = *none == units::NoOneMoment::never ? " is skipped" : " comes twice";
    throw WrongUsage{option + " " + *text + wrong +
                     " today, as the clocks are changed; write it "
                     "with its offset from UTC, as 2026-02-01T08:30:00-10:00"};
  }
  return std::get<units::Instant>(moment);
}

ChosenSnow snow_to_judge_by(const LoadedSite& site, const SnowOptions& options,
                            units::Instant depart) {
  if (options.wetness) {
    return assumed_snow(site, options, depart);
  }
  ChosenSnow chosen;
  snow::SnowReport report;
  if (options.report) {
    report = report_in(*options.report, site.scene->network);
    chosen.file = snow_report_file(*options.report, report);
  } else if (site.snow) {
    report = *site.snow;
  } else {
    throw WrongUsage{
        "what is the snow like? Say --snow CLASS or --snow-report FILE; site.toml "
        "names no report"};
  }
  if (!holds_at(report, depart)) {
    // Yesterday's word says nothing of the weather or of what stands on the trails.
    chosen.ran_out =
        report.valid_until && *report.valid_until < depart ? report.valid_until : std::nullopt;
    report.weather = {};
  }
  overlay(options, report.weather);
  chosen.valid_until = report.valid_until;
  chosen.snow = as_softened(site, std::move(report));
  return chosen;
}

std::vector<card::InputFile> inputs_judged_by(const LoadedSite& site, const ChosenSnow& snow) {
  std::vector<card::InputFile> inputs = site.inputs;
  if (snow.file) {
    std::erase_if(inputs,
                  [&](const card::InputFile& input) { return input.what == snow.file->what; });
    inputs.push_back(*snow.file);
  }
  return inputs;
}

search::RouteQuestion question_of(const WayOptions& way, const trails::Network& network,
                                  units::Instant depart) {
  search::RouteQuestion question;
  question.stations.push_back(station_named(network, way.from));
  for (const std::string& via : way.via) {
    question.stations.push_back(station_named(network, via));
  }
  question.stations.push_back(station_named(network, way.to));
  for (std::size_t i = 1; i < question.stations.size(); ++i) {
    if (question.stations[i] == question.stations[i - 1]) {
      throw WrongUsage{"the way would go from " + network.stations[question.stations[i]].name +
                       " to itself; name another station, or leave one out"};
    }
  }
  question.most_alternatives = 0;
  question.prefer = preference_typed(way.prefer);
  question.depart = depart;
  question.permitted_by = way.permitted_by;
  return question;
}

}  // namespace rimehaul::app
