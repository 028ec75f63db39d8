// Reads snow.toml.
#include "ports/toml/snow_file.h"

#include <utility>

#include "ports/toml/forecast_reader.h"
#include "ports/toml/snow_words.h"
#include "ports/toml/status_reader.h"
#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

using units::Bearing;
using units::Metres;

snow::DayWeather read_weather(TableReader in) {
  constexpr double kKilometresPerHour = 3.6;  // of one metre per second
  constexpr double kCentimetres = 100.0;      // of one metre
  snow::DayWeather weather;
  weather.visibility = in.may<Metres>("visibility_m", {.from = 0, .to = 100'000});
  weather.wind = in.may<units::MetresPerSecond>("wind_kmh", {.from = 0, .to = 400});
  if (weather.wind) {
    weather.wind = *weather.wind / kKilometresPerHour;
  }
  weather.bulletin_level = in.whole("bulletin_level", {.from = 1, .to = 5}, Presence::may);
  const Presence source = weather.bulletin_level ? Presence::must : Presence::may;
  weather.bulletin_source = in.text("bulletin_source", source).value_or("");
  weather.new_snow = in.may<Metres>("new_snow_cm", {.from = 0, .to = 1'000});
  if (weather.new_snow) {
    weather.new_snow = *weather.new_snow / kCentimetres;
  }
  weather.new_snow_density =
      in.may<units::KilogramsPerCubicMetre>("new_snow_kg_m3", {.from = 10, .to = 500});
  weather.rain = in.yes_no("rain", Presence::may);
  weather.temperature = in.may<units::Celsius>("temperature_c", {.from = -60, .to = 40});
  weather.cloud = in.may<units::Oktas>("cloud_oktas", {.from = 0, .to = 8});
  in.refuse_rest();
  return weather;
}

/// The sector of a band: none is all aspects, and so is 0 to 360.
struct Sector {
  std::optional<Bearing> from;
  std::optional<Bearing> to;
};

Sector read_sector(TableReader& in) {
  constexpr Range kCircle{.from = 0, .to = 360};
  const auto from_deg = in.may<double>("aspect_from_deg", kCircle);
  const auto to_deg = in.may<double>("aspect_to_deg", kCircle);
  if (in.has("aspect_from_deg") != in.has("aspect_to_deg")) {
    in.fault(
        {"gives one side of a sector of aspects", "give both aspect_from_deg and aspect_to_deg"});
  }
  if (!from_deg || !to_deg || (*from_deg == 0 && *to_deg == 360)) {
    return {};
  }
  const Sector sector{.from = Bearing::from_degrees(*from_deg),
                      .to = Bearing::from_degrees(*to_deg)};
  if (sector.from == sector.to) {
    in.fault("aspect_to_deg", {"is the same direction as aspect_from_deg",
                               "widen the sector, or leave both out for all aspects"});
  }
  return sector;
}

snow::SnowBand read_band(TableReader in) {
  constexpr Range kHeights{.from = -500, .to = 9000};
  snow::SnowBand band;
  band.above = in.may<geo::Height>("above_m", kHeights);
  band.below = in.may<geo::Height>("below_m", kHeights);
  if (band.above && band.below && !(*band.above < *band.below)) {
    in.fault("above_m", {"is not below below_m", "correct one of them"});
  }
  const Sector sector = read_sector(in);
  band.aspect_from = sector.from;
  band.aspect_to = sector.to;
  band.state = read_snow_state(in).value_or(snow::SnowState{});
  in.refuse_rest();
  return band;
}

}  // namespace

base::Reading<snow::SnowReport> read_snow_report(const TextFile& file) {
  FaultLog log{file.shown};
  const Node root = parse_file(file);
  TableReader top{root, "", log};
  top.expect_schema();

  snow::SnowReport report;
  report.observer = top.text("observer").value_or("");
  report.observed = top.moment("observed");
  report.valid_until = top.moment("valid_until");
  if (report.observed && report.valid_until && !(*report.observed < *report.valid_until)) {
    top.fault("valid_until", {"is not after observed", "correct one of them"});
  }
  report.weather = read_weather(top.table("weather"));
  report.weather.site = read_site_status(top, report.observed);
  report.forecast = read_forecast(top, report);
  const std::size_t faults_before = log.count();
  for (TableReader& band : top.tables("band")) {
    report.bands.push_back(read_band(band));
  }
  if (report.bands.empty() && log.count() == faults_before) {
    top.fault("band", {"there is no band", "write what was seen under [[band]]"});
  }
  top.refuse_rest();
  if (log.count() > 0) {
    report.bands.clear();
  }
  return {.data = std::move(report), .faults = log.in_order()};
}

}  // namespace rimehaul::ports::toml
