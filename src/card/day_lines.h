// What holds at a site today beside the snow: its marks, its grooming, its people, help.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "passage/scene.h"
#include "snow/snow.h"

namespace rimehaul::card {

struct HourOfDay {
  units::Instant depart;
  /// When the site's report ran out, where that is over: nothing of it is known any more.
  std::optional<units::Instant> report_ran_out{};
};

/// One line for every mark that needs today's word or has it; then crossings, grooming, and the
/// site's rules on wind, rain, single lanes, setbacks, passengers and driving alone; the tow-out
/// rig, whom to call, and when a rig is overdue.
[[nodiscard]] std::vector<std::string> day_lines(const passage::Scene& scene,
                                                 const snow::DayWeather& weather,
                                                 const HourOfDay& hour);

}  // namespace rimehaul::card
