// Turns what was typed of hours into what is asked of them.
#pragma once

#include <optional>

#include "app/options.h"
#include "app/question.h"
#include "day/departures.h"
#include "passage/remembering_judge.h"

namespace rimehaul::app {

/// Hours as typed.
struct AskedHours {
  units::Instant depart;  ///< or, where the hour of arrival is given, the earliest
  std::optional<units::Instant> arrive_by{};
  units::Period looked_at;  ///< from then to the end of the local day, or to the hour of arrival
};
/// Throws WrongUsage where an hour is none.
[[nodiscard]] AskedHours hours_asked(const RouteOptions& options, const LocalNow& present);

/// The way back as typed.
struct AskedBack {
  rig::Rig rig;
  units::Seconds turn_round;
};
/// Of a rig as it goes out. Nothing where it is not asked for. Throws WrongUsage where the rig
/// cannot be so loaded.
[[nodiscard]] std::optional<AskedBack> way_back_asked(const LoadedSite& site, const RigOptions& out,
                                                      const HoursOptions& hours);
/// How late one may set out.
[[nodiscard]] units::Seconds reserve_asked(const HoursOptions& hours);

/// Judged through the hours of a day by one rig in one snow.
struct JudgedHours {
  const passage::Judge& judge;
  passage::GroundMemory& ground;  ///< of the rig
  search::LegHours& hours;
};
/// The windows of departure, or nothing where nobody asked for them.
[[nodiscard]] std::optional<day::Departures> departures_asked(const RouteOptions& options,
                                                              const JudgedHours& judged,
                                                              const search::RouteQuestion& question,
                                                              const std::optional<AskedBack>& back);

}  // namespace rimehaul::app
