// The demo site, read once, with the day's conditions under which its features are asked for.
#pragma once

#include <algorithm>
#include <string>

#include "app/load_site.h"
#include "app/question.h"
#include "passage/demo_scene.h"
#include "ports/toml/snow_file.h"

namespace rimehaul::testing {

inline const app::LoadedSite& demo_site() {
  static const app::LoadedSite site = app::load_usable_site(RIMEHAUL_ROOT "/routes/marrowfell");
  return site;
}

/// A rig of the demo; a load of 40 kg, of 60 kg behind, and one passenger.
inline rig::Rig demo_rig(const std::string& name) {
  const auto& rigs = demo_site().rigs;
  const bool tows = std::ranges::find(rigs, name, &rig::Rig::name)->trailer.has_value();
  return app::rig_as_loaded(
      demo_site(),
      {.name = name, .bed_kg = 40, .towed_kg = tows ? 60.0 : 0.0, .passengers = 1, .fuel_l = {}});
}

/// A reporter's word for the demo, `snow.toml` or `snow-noon.toml`.
inline snow::ReportedSnow demo_report(const std::string& file) {
  const std::string path = std::string{RIMEHAUL_ROOT "/routes/marrowfell/"} + file;
  return snow::ReportedSnow{ports::toml::read_snow_report({path, path}).data};
}

/// One class of snow everywhere, the weather of the morning's report.
inline snow::ConstantSnow demo_snow(snow::Wetness wetness) {
  snow::DayWeather weather = demo_report("snow.toml").weather();
  weather.site.end_by(units::Instant{*units::parse_instant("2026-02-01T21:00:00Z")});
  return {{wetness, snow::Surface::groomed}, weather, "told for a test"};
}

/// 07:00 there, when the morning's report holds and all that was groomed has set.
inline units::Instant demo_morning() {
  return *units::parse_instant("2026-02-01T17:00:00Z");
}
/// 12:00 there, by the noon report.
inline units::Instant demo_noon() {
  return *units::parse_instant("2026-02-01T22:00:00Z");
}

}  // namespace rimehaul::testing
