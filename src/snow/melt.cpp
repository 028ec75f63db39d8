#include "snow/melt.h"

#include <algorithm>
#include <cmath>

namespace rimehaul::snow {

using units::MillimetresPerHour;
using units::WattsPerSquareMetre;

MillimetresPerHour melt_by(const MeltFactors& factors, units::Celsius air,
                           WattsPerSquareMetre sun) {
  const double warm = air.value() < 0.0 ? 0.0 : air.value();
  return MillimetresPerHour{factors.per_kelvin * warm +
                            factors.per_watt * (1.0 - factors.albedo) * sun.value()};
}

WattsPerSquareMetre radiated(const NightSky& sky) {
  constexpr double kStefanBoltzmann = 5.670374419e-8;  // W / (m2 K4), exact since 2019
  constexpr double kZero = 273.15;                     // K
  constexpr double kSnow = 0.98;                       // emissivity
  constexpr double kCloud = 0.84;
  const double warm = sky.air.value();
  const double kelvin = warm + kZero;
  const double saturated = 6.1094 * std::exp(17.625 * warm / (243.04 + warm));  // hPa
  const double vapour = saturated * sky.humidity.value() / 100.0;
  const double clear = 1.24 * std::pow(vapour / kelvin, 1.0 / 7.0);
  const double overcast = sky.cloud.value() / 8.0;
  const double emissivity = clear * (1.0 - kCloud * overcast) + kCloud * overcast;
  return WattsPerSquareMetre{kSnow * kStefanBoltzmann *
                             (std::pow(kZero, 4) - emissivity * std::pow(kelvin, 4))};
}

MillimetresPerHour melted_by(WattsPerSquareMetre heat) {
  return MillimetresPerHour{heat.value() * 3600.0 / kFusionHeat};
}

}  // namespace rimehaul::snow
