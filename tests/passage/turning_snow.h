// Snow that softens and freezes again in the course of a day.
#pragma once

#include <utility>
#include <vector>

#include "snow/snow.h"
#include "snow/turning_moments.h"

namespace rimehaul::testing {

/// Dry until an hour, slush from then on, refrozen from another.
class TurningSnow final : public snow::SnowAt {
 public:
  TurningSnow(snow::DayWeather weather, units::Period slush)
      : weather_{std::move(weather)}, slush_{slush} {}

  [[nodiscard]] std::optional<snow::SnowState> at(const snow::PlaceAndHour& where) const override {
    if (where.when < slush_.from) {
      return snow::SnowState{snow::Wetness::dry, snow::Surface::groomed};
    }
    return where.when <= slush_.to ? snow::SnowState{snow::Wetness::slush, snow::Surface::groomed}
                                   : snow::SnowState{snow::Wetness::dry, snow::Surface::refrozen};
  }
  [[nodiscard]] const snow::DayWeather& weather() const override { return weather_; }
  [[nodiscard]] snow::Told told_by() const override { return {"told for a test", {}}; }
  [[nodiscard]] std::vector<units::Instant> turning_moments(units::Period during) const override {
    std::vector<units::Instant> moments = weather_.site.turning_moments();
    moments.push_back(slush_.from);
    moments.push_back({slush_.to.seconds + 1});
    return snow::in_order_within(std::move(moments), during);
  }

 private:
  snow::DayWeather weather_;
  units::Period slush_;
};

}  // namespace rimehaul::testing
