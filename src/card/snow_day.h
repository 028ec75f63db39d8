// The snow of a day at one place as plain data: what was seen, what is likely, what nobody knows.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "card/made_from.h"
#include "snow/calibration.h"
#include "snow/forecast_snow.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// Who says what the snow is like in an hour.
enum class SaidBy { seen, forecast, nobody };

/// An hour of the forecast.
struct SnowHour {
  units::Instant start;
  units::Celsius air;
  snow::SoftHour soft;                    ///< by itself
  std::optional<snow::SnowState> counts;  ///< a rig is judged by it, the worst of the hour
  SaidBy said_by = SaidBy::nobody;
};

/// Where the report lies in the records.
struct ReportKept {
  std::int64_t number = 0;
  bool already = false;  ///< before this was asked for
};

struct SnowDay {
  int schema = 1;
  std::string site;
  std::string trail;                     ///< empty: given as a point
  std::optional<units::Metres> along{};  ///< the trail as drawn
  geo::MapPoint place;
  std::string map_frame;
  geo::Height height;
  std::optional<units::Slope> slope;
  std::optional<units::Bearing> aspect;     ///< none: level
  std::optional<snow::SnowState> observed;  ///< none: the report does not speak of the place
  snow::Told told;
  units::Seconds off = snow::kHoursOff;  ///< how far off a change may be
  std::string forecast_by;               ///< empty: the report has no forecast
  std::optional<units::Instant> valid_until;
  units::LocalClock local_clock{};
  std::vector<SnowHour> hours;
  std::optional<ReportKept> kept{};  ///< none: not asked for
  MadeFrom made_from{};  ///< left to fill in, as are site, trail, map_frame and the offset
};

/// The day at a place; the hour of `where` does not matter.
[[nodiscard]] SnowDay snow_day(const snow::SnowReport& report, const snow::SofteningSite& site,
                               const snow::PlaceAndHour& where);

/// What changes when, in the day's local time: "likely wet from 11:00 +- 2 h". One sentence at
/// least.
[[nodiscard]] std::vector<std::string> sentences_of(const SnowDay& day);

/// The day as text, no line longer than `columns` (76 or more).
[[nodiscard]] std::string text_of(const SnowDay& day, int columns);

/// What a site's record shows of its snow.
struct SnowRecord {
  int schema = 1;
  std::string site;
  int days = 0;  ///< in the record
  int seen = 0;
  std::optional<snow::Calibration> shown;  ///< none: too little, or it does not hold
  MadeFrom made_from{};                    ///< left to fill in
  units::LocalClock local_clock{};
};
[[nodiscard]] std::string text_of(const SnowRecord& record, int columns);

/// "dry groomed"; "very wet or worse, groomed" for what is reckoned over 15 %.
[[nodiscard]] std::string state_text(const std::optional<snow::SnowState>& state, SaidBy said_by);

}  // namespace rimehaul::card
