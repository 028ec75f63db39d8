// The snow of a day as text: who says so, a table of hours with a bar of water, the sentences.
#include <algorithm>
#include <cmath>

#include "card/figures.h"
#include "card/layout.h"
#include "card/snow_day.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

using units::Round;

constexpr int kLabelWidth = 10;
constexpr double kLongestBar = 15.0;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

/// One "#" for each per cent of water that began, a "+" at the end of what is more than 15 %.
std::string bar_of(const SnowHour& hour) {
  if (!hour.soft.state) {
    return "?";
  }
  const double percent = std::ceil(hour.soft.water.value());
  return std::string(static_cast<std::size_t>(std::min(percent, kLongestBar)), '#') +
         (percent > kLongestBar ? "+" : "");
}

const char* words_for(SaidBy said_by) {
  switch (said_by) {
    case SaidBy::seen:
      return "seen";
    case SaidBy::forecast:
      return "forecast";
    case SaidBy::nobody:
      break;
  }
  return "nobody";
}

std::string line_of(const SnowHour& hour, const units::LocalClock& local_clock) {
  const std::string water =
      hour.soft.state ? units::text_of(hour.soft.water.value(), 1, Round::up) : "?";
  return filled(units::text_of(local_clock.time_of_day(hour.start)), 6) +
         set_right(units::text_of(hour.air.value(), 1, Round::nearest), 6) +
         set_right(units::text_of(hour.soft.sun.value(), 0, Round::up), 6) + set_right(water, 7) +
         "  " + filled(bar_of(hour), 17) + filled(state_text(hour.counts, hour.said_by), 25) +
         words_for(hour.said_by);
}

std::string place_text(const SnowDay& day) {
  const std::string at = "east " + units::text_of(day.place.east.value(), 1, Round::nearest) +
                         " m, north " + units::text_of(day.place.north.value(), 1, Round::nearest) +
                         " m";
  return day.along ? day.trail + ", " + distance_text(*day.along) + " along it as drawn; " + at
                   : at;
}

std::string ground_text(const SnowDay& day) {
  std::string ground =
      units::text_of(day.height.above_datum_m(), 0, Round::nearest) + " m above the datum";
  if (day.slope) {
    ground += "; slope " + units::text_of(day.slope->degrees(), 1, Round::up) + " deg";
  }
  return ground + (day.aspect ? ", falling towards " + bearing_text(*day.aspect) : ", level");
}

}  // namespace

std::string text_of(const SnowDay& day, int columns) {
  Sheet sheet{columns};
  sheet.heading("Snow of the day, " + day.site);
  item(sheet, "Place", place_text(day));
  item(sheet, "Ground", ground_text(day));
  item(sheet, "Seen",
       state_text(day.observed, SaidBy::seen) + ", " + told_text(day.told, day.local_clock));
  if (day.valid_until) {
    item(sheet, "Holds", "until " + local_and_zone_text(*day.valid_until, day.local_clock));
  }
  item(sheet, "Forecast", day.forecast_by.empty() ? "none in the report" : day.forecast_by);
  sheet.heading("Likely");
  sheet.list("- ", sentences_of(day));
  if (!day.hours.empty()) {
    sheet.heading("By the hour");
    sheet.as_it_stands("hour   air C   sun  water  # = 1 %          judged as                who");
    for (const SnowHour& hour : day.hours) {
      sheet.as_it_stands(line_of(hour, day.local_clock));
    }
    sheet.blank();
    sheet.paragraph(
        "Sun: W/m2 on this ground. Water: per cent by volume of the top 10 cm, before it drains. "
        "Judged as: the worst within the hours told above, and never better than what was seen. An "
        "estimate: no number here was ever checked on this mountain.");
  }
  sheet.blank();
  sheet.paragraph("Made from " + made_from_in_short(day.made_from, day.local_clock));
  if (day.kept) {
    sheet.paragraph((day.kept->already ? "kept already as report " : "kept as report ") +
                    std::to_string(day.kept->number) +
                    (day.kept->already ? ", and not kept twice" : ""));
  }
  return sheet.text();
}

std::string text_of(const SnowRecord& record, int columns) {
  Sheet sheet{columns};
  sheet.heading("How the snow softened, " + record.site);
  item(sheet, "Record",
       std::to_string(record.seen) + " observations on " + std::to_string(record.days) + " days");
  if (record.shown) {
    const snow::Calibration& shown = *record.shown;
    item(sheet, "Known",
         std::to_string(shown.seen) +
             " of them in hours that the forecast speaks "
             "of, on " +
             std::to_string(shown.days) + " days; " + std::to_string(shown.met) +
             " in the class that it tells");
    sheet.heading("For site.toml");
    sheet.as_it_stands("[softening]");
    sheet.as_it_stands("melt_factor = " + units::text_of(shown.melt, 3, Round::up));
    sheet.as_it_stands("off_h = " + units::text_of(shown.off.value() / 3600.0, 0, Round::up));
    sheet.blank();
    sheet.paragraph("Add source, who saw it, and date.");
  } else {
    sheet.blank();
    sheet.paragraph("Nothing is made of it: there are fewer than " +
                    std::to_string(snow::kFewestSeen) +
                    " observations in hours that the forecast "
                    "speaks of, fewer than " +
                    std::to_string(snow::kFewestWet) + " of them moist or wetter, or fewer than " +
                    std::to_string(snow::kFewestDays) +
                    " days; or snow was wetter than six hours to either side would explain.");
  }
  sheet.blank();
  sheet.paragraph("Made from " + made_from_in_short(record.made_from, record.local_clock));
  return sheet.text();
}

}  // namespace rimehaul::card
