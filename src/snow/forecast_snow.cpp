#include "snow/forecast_snow.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/require.h"
#include "snow/turning_moments.h"

namespace rimehaul::snow {

using geo::Height;
using units::Instant;
using units::Millimetres;
using units::WattsPerSquareMetre;

namespace {

constexpr double kHeightStepM = 50.0;
constexpr double kSlopeStepDeg = 2.5;
constexpr double kAspectStepDeg = 15.0;
constexpr double kSiteSpreadDeg = 1.0;  ///< by which north and sun may differ over a site

Height end_of(int step) {
  return Height{step * kHeightStepM};
}

/// Both must be known, and the worse counts.
// Of a kind: which is which matters to the words for blindness alone.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
SoftHour worse_of(const SoftHour& lower, const SoftHour& upper) {
  SoftHour worse = lower;
  worse.sun = std::max(lower.sun, upper.sun);
  worse.water = std::max(lower.water, upper.water);
  worse.blind = lower.blind != Blind::no ? lower.blind : upper.blind;
  worse.state = lower.state && upper.state ? std::optional{lower.state->worst_with(*upper.state)}
                                           : std::nullopt;
  return worse;
}

Instant later(Instant moment, units::Seconds by) {
  return {moment.seconds + static_cast<std::int64_t>(std::ceil(by.value()))};
}

}  // namespace

ForecastSnow::ForecastSnow(SnowReport report, SofteningSite site)
    : report_{std::move(report)}, reported_{report_}, site_{std::move(site)} {
  base::require(site_.melt > 0.0 && site_.off >= kHoursOff,
                "melt is above 0, and no forecast is sharper than two hours");
  if (!report_.forecast) {
    return;
  }
  for (const ForecastHour& hour : report_.forecast->hours) {
    sun_.push_back(sun_steps(site_.sun, hour));
  }
  if (report_.observed) {
    first_ = hour_holding(report_.forecast->hours, *report_.observed);
  }
}

std::optional<SnowState> ForecastSnow::at(const PlaceAndHour& where) const {
  const std::optional<SnowState> observed = reported_.at(where);
  const bool is_as_observed = !report_.forecast || !observed ||
                              where.when.seconds < report_.observed->seconds + kSecondsInHour;
  if (is_as_observed) {
    return observed;
  }
  if (!first_) {
    return std::nullopt;
  }
  const Instant until = later(where.when, site_.off);
  const Instant since = later(where.when, -site_.off);
  const Hours hours = hours_of(ground_of(where, *observed), where);
  if (hours->back().start.seconds + kSecondsInHour <= until.seconds) {
    return std::nullopt;
  }
  SnowState worst = *observed;
  for (const SoftHour& hour : *hours) {
    const bool counts = hour.start <= until && since.seconds < hour.start.seconds + kSecondsInHour;
    if (counts && !hour.state) {
      return std::nullopt;
    }
    worst = counts ? worst.worst_with(*hour.state) : worst;
  }
  return worst;
}

Told ForecastSnow::told_by() const {
  Told told = reported_.told_by();
  if (report_.forecast) {
    told.words += "; an hour later on softened by a forecast of " + report_.forecast->source;
  }
  return told;
}

std::vector<Instant> ForecastSnow::turning_moments(units::Period during) const {
  std::vector<Instant> moments = reported_.turning_moments(during);
  if (report_.forecast && report_.observed) {
    moments.push_back({report_.observed->seconds + kSecondsInHour});
    for (const ForecastHour& hour : report_.forecast->hours) {
      for (const Instant edge : {hour.start, Instant{hour.start.seconds + kSecondsInHour}}) {
        moments.push_back(later(edge, site_.off));
        moments.push_back(later(edge, -site_.off));
      }
    }
  }
  return in_order_within(std::move(moments), during);
}

std::vector<SoftHour> ForecastSnow::hours_at(const PlaceAndHour& where) const {
  PlaceAndHour when_observed = where;
  when_observed.when = report_.observed.value_or(where.when);
  const std::optional<SnowState> observed = reported_.at(when_observed);
  return observed && first_ ? *hours_of(ground_of(where, *observed), where)
                            : std::vector<SoftHour>{};
}

ForecastSnow::Ground ForecastSnow::ground_of(const PlaceAndHour& where, SnowState observed) const {
  Ground ground;
  ground.height = static_cast<int>(std::floor(where.height.above_datum_m() / kHeightStepM));
  if (where.aspect) {
    ground.aspect = static_cast<int>(std::lround(where.aspect->degrees() / kAspectStepDeg));
  }
  if (where.slope) {
    ground.slopes =
        Steps{.least = static_cast<int>(std::floor(where.slope->least.degrees() / kSlopeStepDeg)),
              .most = static_cast<int>(std::ceil(where.slope->most.degrees() / kSlopeStepDeg))};
  }
  if (site_.horizons && where.place) {
    ground.pixel = site_.horizons->pixel_of(*where.place);
  }
  ground.observed = observed;
  return ground;
}

ForecastSnow::Hours ForecastSnow::hours_of(const Ground& ground, const PlaceAndHour& where) const {
  const std::scoped_lock locked{guard_};
  const auto known = hours_.find(ground);
  if (known != hours_.end()) {
    return known->second;
  }
  const Shades shades = shades_of({ground.pixel, ground.height}, where);
  std::vector<SoftHour> hours = soften(ground, end_of(ground.height), *shades);
  const std::vector<SoftHour> above = soften(ground, end_of(ground.height + 1), *shades);
  for (std::size_t i = 0; i < hours.size(); ++i) {
    hours[i] = worse_of(hours[i], above[i]);
  }
  return hours_.emplace(ground, std::make_shared<const std::vector<SoftHour>>(std::move(hours)))
      .first->second;
}

/// Where the sun stands behind the ground around, step by step, seen from the upper end.
ForecastSnow::Shades ForecastSnow::shades_of(const Spot& spot, const PlaceAndHour& where) const {
  const auto known = shades_.find(spot);
  if (known != shades_.end()) {
    return known->second;
  }
  std::vector<Shade> shades;
  for (const std::vector<SunStep>& hour : sun_) {
    for (const SunStep& step : hour) {
      const double top_deg = 90.0 - step.sun.apparent_zenith_deg + kSunRadiusDeg;
      const bool hidden =
          spot.pixel && top_deg > 0.0 &&
          top_deg < site_.horizons->hidden_up_to_deg(
                        {.from = *where.place,
                         .height = end_of(spot.height + 1),
                         .towards = units::Bearing::from_degrees(step.sun.true_azimuth_deg -
                                                                 site_.sun.convergence_deg)});
      shades.push_back(hidden ? Shade::in_shadow : Shade::none);
    }
  }
  return shades_.emplace(spot, std::make_shared<const std::vector<Shade>>(std::move(shades)))
      .first->second;
}

std::vector<SoftHour> ForecastSnow::soften(const Ground& ground, Height height,
                                           const std::vector<Shade>& shades) const {
  SnowLayer layer{ground.observed, report_.forecast->snow_temperature, site_.melt};
  std::vector<SoftHour> hours;
  for (std::size_t i = *first_; i < report_.forecast->hours.size(); ++i) {
    hours.push_back(pass_hour(layer, ground, i, shades, height));
  }
  return hours;
}

SoftHour ForecastSnow::pass_hour(SnowLayer& layer, const Ground& ground, std::size_t hour,
                                 const std::vector<Shade>& shades, Height height) const {
  const ForecastHour& forecast = report_.forecast->hours[hour];
  LitGround lit{.ground = {}, .height = height, .shade = Shade::none};
  if (ground.slopes) {
    const auto slope = [](int steps) {
      return units::Slope::from_degrees(std::clamp(steps * kSlopeStepDeg, 0.0, 89.0));
    };
    lit.ground.slope =
        SlopeRange{.least = slope(ground.slopes->least), .most = slope(ground.slopes->most)};
  }
  if (ground.aspect) {
    lit.ground.aspect =
        AspectSpan{.middle_deg = *ground.aspect * kAspectStepDeg + site_.sun.convergence_deg,
                   .half_width_deg = kAspectStepDeg / 2.0 + kSiteSpreadDeg};
  }
  SnowWeather weather;
  weather.air = air_at(*report_.forecast, forecast.air, height);
  weather.humidity = forecast.humidity.value_or(units::Percent{100});
  weather.cloud = forecast.cloud.value_or(units::Oktas{8});
  weather.rain = forecast.rain;
  SoftHour told{.start = forecast.start, .sun = {}, .water = layer.water(), .state = {}};
  Blind blind = layer.blind();
  for (std::size_t i = 0; i < sun_[hour].size(); ++i) {
    const Instant end{forecast.start.seconds +
                      static_cast<std::int64_t>((static_cast<double>(i) + 1.0) * kStep.value())};
    if (hour == *first_ && end <= *report_.observed) {
      continue;
    }
    lit.shade = shades[hour * kStepsInHour + i];
    const LightOn light =
        light_on(sun_[hour][i], lit, {weather.air, weather.humidity, weather.cloud});
    weather.sun = light.sun;
    weather.most_gain = light.most_gain;
    layer.pass(weather, kStep);
    told.sun += light.sun / static_cast<double>(kStepsInHour);
    told.water = std::max(told.water, layer.water());
    blind = layer.blind() == Blind::no ? blind : layer.blind();
  }
  told.state = blind == Blind::no ? layer.state_with(told.water) : std::nullopt;
  told.blind = blind;
  layer.drain();
  return told;
}

}  // namespace rimehaul::snow
