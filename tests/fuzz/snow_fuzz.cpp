// snow.toml of any bytes: with a fault it speaks of no place, without one all it says is in range.
#include "fuzz/expect.h"
#include "fuzz/input_folder.h"
#include "ports/toml/snow_file.h"

namespace {

using namespace rimehaul;
using fuzz::expect;
using fuzz::expect_within;

void look_at_weather(const snow::DayWeather& weather) {
  if (weather.visibility) {
    expect_within(weather.visibility->value(), 0, 100'000, "the visibility");
  }
  if (weather.wind) {
    expect_within(weather.wind->value(), 0, 400 / 3.6, "the wind");
  }
  if (weather.bulletin_level) {
    expect_within(*weather.bulletin_level, 1, 5, "the bulletin level");
    fuzz::expect_name(weather.bulletin_source);
  }
}

void look_at_forecast(const snow::Forecast& forecast) {
  fuzz::expect_name(forecast.source);
  expect(!forecast.hours.empty(), "a forecast has an hour");
  for (std::size_t i = 0; i < forecast.hours.size(); ++i) {
    const snow::ForecastHour& hour = forecast.hours[i];
    expect_within(hour.air.value(), -60, 40, "the air");
    expect_within(hour.rain.value(), 0, 200, "the rain");
    expect(
        i == 0 || hour.start.seconds == forecast.hours[i - 1].start.seconds + snow::kSecondsInHour,
        "the hours follow each other");
  }
}

void look_at(const snow::SnowReport& report, bool has_fault) {
  if (has_fault) {
    expect(report.bands.empty(), "a report with a fault speaks of no place");
    return;
  }
  fuzz::expect_name(report.observer);
  expect(report.observed && report.valid_until, "a report says from when to when it holds");
  expect(*report.observed <= *report.valid_until, "a report ends after it begins");
  expect(!report.bands.empty(), "a report has a band");
  for (const snow::SnowBand& band : report.bands) {
    expect(band.aspect_from.has_value() == band.aspect_to.has_value(),
           "a sector has both its ends");
    expect(!band.above || !band.below || *band.above <= *band.below, "a band is not upside down");
  }
  look_at_weather(report.weather);
  if (report.forecast) {
    look_at_forecast(*report.forecast);
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::InputFolder folder;
  folder.write("snow.toml", fuzz::text_of(bytes, size));
  fuzz::try_to_read(
      [] {
        return ports::toml::read_snow_report({folder.file("snow.toml"), "snow.toml"});
      },
      look_at);
  return 0;
}
