#include "ports/toml/forecast_reader.h"

#include <utility>

namespace rimehaul::ports::toml {

namespace {

using snow::ForecastHour;
using snow::kSecondsInHour;
using units::Celsius;

constexpr Range kAir{.from = -60, .to = 40};

ForecastHour read_hour(TableReader& in) {
  ForecastHour hour;
  hour.start = in.moment("start").value_or(units::Instant{});
  hour.air = in.must<Celsius>("temperature_c", kAir);
  hour.cloud = in.may<units::Oktas>("cloud_oktas", {.from = 0, .to = 8});
  hour.rain = in.must<units::MillimetresPerHour>("rain_mm_h", {.from = 0, .to = 200});
  hour.humidity = in.may<units::Percent>("humidity_percent", {.from = 5, .to = 100});
  in.refuse_rest();
  return hour;
}

std::vector<ForecastHour> read_hours(TableReader& in) {
  std::vector<ForecastHour> hours;
  const std::size_t faults_before = in.faults();
  for (TableReader& table : in.tables("hour")) {
    const ForecastHour hour = read_hour(table);
    const bool follows =
        hours.empty() || hour.start.seconds == hours.back().start.seconds + kSecondsInHour;
    if (!follows && in.faults() == faults_before) {
      table.fault("start", {"is not an hour after the start of the hour before",
                            "give every hour once, one after the other"});
    }
    hours.push_back(hour);
  }
  if (hours.empty() && in.faults() == faults_before) {
    in.fault("hour", {"there is no hour", "write what is forecast under [[forecast.hour]]"});
  }
  return hours;
}

/// Faults and doubts about the hours as a whole.
void check_reach(TableReader& in, const std::vector<ForecastHour>& hours,
                 const snow::SnowReport& report) {
  if (!report.observed || !report.valid_until) {
    return;
  }
  const units::Instant end{hours.back().start.seconds + kSecondsInHour};
  if (*report.observed < hours.front().start || end <= *report.observed) {
    in.fault("hour", {"none of them holds the moment of observed",
                      "begin with the hour in which the snow was seen"});
  } else if (end.seconds < report.valid_until->seconds + 2 * kSecondsInHour) {
    in.doubt({"it ends less than two hours after valid_until, so that the snow is unknown before",
              "give hours up to two hours after valid_until"});
  }
}

}  // namespace

std::optional<snow::Forecast> read_forecast(TableReader& top, const snow::SnowReport& report) {
  std::optional<TableReader> in = top.table_if_there("forecast");
  if (!in) {
    return std::nullopt;
  }
  const std::size_t faults_before = in->faults();
  snow::Forecast forecast;
  forecast.source = in->text("source").value_or("");
  forecast.reference = in->must<geo::Height>("height_m", {.from = -500, .to = 9000});
  forecast.lapse = in->may<units::CelsiusPerKilometre>("colder_c_per_km", {.from = -15, .to = 12})
                       .value_or(snow::kStandardLapse);
  forecast.snow_temperature = in->may<Celsius>("snow_temperature_c", {.from = -60, .to = 0});
  forecast.hours = read_hours(*in);
  in->refuse_rest();
  if (in->faults() == faults_before) {
    check_reach(*in, forecast.hours, report);
  }
  return forecast;
}

}  // namespace rimehaul::ports::toml
