#include "snow/softening.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace rimehaul::snow {

using units::Celsius;
using units::Millimetres;
using units::MillimetresPerHour;

namespace {

constexpr double kSecondsAnHour = 3600.0;

/// Water content at which each class ends, mm in the layer.
constexpr std::array<double, kWetnessCount> kMostOfClass{0.0, 3.0, 8.0, 15.0, 30.0};

Millimetres in(MillimetresPerHour rate, units::Seconds lasting) {
  return Millimetres{rate.value() * lasting.value() / kSecondsAnHour};
}

MillimetresPerHour most(const SnowWeather& weather) {
  return melt_by(kMostMelt, weather.air, weather.sun);
}

bool is_dark(const SnowWeather& weather) {
  return weather.sun.value() == 0.0;
}

/// Air that brings no heat, and sun and sky that cannot outdo what the snow sends out.
bool surely_stays_frozen(const SnowWeather& weather) {
  return weather.air <= Celsius{0} && weather.most_gain <= units::WattsPerSquareMetre{0};
}

}  // namespace

Millimetres cold_content(Celsius snow) {
  constexpr double kHeatOfIce = 2100.0;  // J / (kg K)
  return Millimetres{kLayerDensity.value() * kLayer.value() * kHeatOfIce * -snow.value() /
                     kFusionHeat};
}

std::optional<Wetness> class_of(Millimetres water) {
  const double mm = water.value();
  if (!(mm >= 0.0)) {
    return std::nullopt;
  }
  if (mm == 0.0) {
    return Wetness::dry;
  }
  if (mm < 3.0) {
    return Wetness::moist;
  }
  if (mm < 8.0) {
    return Wetness::wet;
  }
  return mm <= 15.0 ? Wetness::very_wet : Wetness::slush;
}

Millimetres most_water_of(Wetness wetness) {
  return Millimetres{kMostOfClass.at(static_cast<std::size_t>(wetness))};
}

const char* words_for(Blind blind) {
  switch (blind) {
    case Blind::to_sun:
      return "unknown: sun on the snow with the air at or under 1 degree C";
    case Blind::since_sun:
      return "unknown: what the sun may have melted in cold air has not surely frozen again";
    case Blind::no_forecast:
      return "unknown: no forecast";
    default:
      return "known";
  }
}

SnowLayer::SnowLayer(SnowState observed, std::optional<Celsius> temperature, double melt)
    : observed_{observed}, melt_{melt}, water_{most_water_of(observed.wetness)} {
  if (temperature && observed.wetness == Wetness::dry) {
    cold_ = cold_content(*temperature);
  }
}

void SnowLayer::gain(Millimetres water) {
  const Millimetres frozen = std::min(water, cold_);
  cold_ -= frozen;
  water_ += water - frozen;
}

void SnowLayer::lose(Millimetres ice, Celsius air) {
  const Millimetres frozen = std::min(water_, ice);
  water_ -= frozen;
  if (frozen > Millimetres{0}) {
    crust_ = std::max(crust_, Surface::refrozen);
  }
  const Millimetres coldest = air < Celsius{0} ? cold_content(air) : Millimetres{0};
  cold_ = std::max(cold_, std::min(cold_ + (ice - frozen), coldest));
  if (water_ == Millimetres{0} && blind_ == Blind::since_sun) {
    blind_ = Blind::no;
  }
}

void SnowLayer::pass(const SnowWeather& weather, units::Seconds lasting) {
  gain(in(weather.rain, lasting));
  if (weather.rain > MillimetresPerHour{0} && weather.air <= kMeltKnownAbove) {
    crust_ = Surface::ice;
  }
  blind_ = blind_ == Blind::to_sun ? Blind::since_sun : blind_;
  if (is_dark(weather)) {
    const MillimetresPerHour loss =
        melted_by(radiated({weather.air, weather.humidity, weather.cloud})) - most(weather);
    if (loss > MillimetresPerHour{0}) {
      lose(in(loss, lasting), weather.air);
    } else {
      gain(in(-loss, lasting));
    }
  } else if (weather.air > kMeltKnownAbove) {
    gain(in(most(weather) * melt_, lasting));
  } else if (!surely_stays_frozen(weather)) {
    // No fit of a site's melt reaches into air that cold: only a greater one counts.
    gain(in(most(weather) * std::max(melt_, 1.0), lasting));
    blind_ = Blind::to_sun;
  }
  if (!std::isfinite(water_.value()) || !std::isfinite(cold_.value())) {
    blind_ = Blind::no_forecast;
  }
}

void SnowLayer::drain() {
  water_ = std::min(water_, kHeldWater);
}

std::optional<SnowState> SnowLayer::state_with(Millimetres most_water) const {
  const std::optional<Wetness> wetness = class_of(most_water);
  if (blind_ != Blind::no || !wetness) {
    return std::nullopt;
  }
  SnowState state{.wetness = *wetness, .surface = std::max(observed_.surface, crust_)};
  if (crust_ != Surface::groomed) {
    state.wetness = std::max(state.wetness, Wetness::moist);
  }
  return state;
}

}  // namespace rimehaul::snow
