#include "snow/forecast.h"

namespace rimehaul::snow {

units::Celsius air_at(const Forecast& forecast, units::Celsius at_reference, geo::Height height) {
  constexpr double kMetresInKilometre = 1000.0;
  const units::Metres up = height - forecast.reference;
  return at_reference - units::Celsius{forecast.lapse.value() * up.value() / kMetresInKilometre};
}

}  // namespace rimehaul::snow
