// What holds at a site today beside the snow: its marks, its grooming, its people, help.
#pragma once

#include <string>
#include <vector>

#include "passage/scene.h"
#include "snow/snow.h"

namespace rimehaul::card {

/// One line for every mark that needs today's word or has it; then grooming, rain, passengers,
/// driving alone, the tow-out rig, whom to call, and when a rig is overdue.
[[nodiscard]] std::vector<std::string> day_lines(const passage::Scene& scene,
                                                 const snow::DayWeather& weather,
                                                 units::Instant depart);

}  // namespace rimehaul::card
