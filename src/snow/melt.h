// What melts and what freezes of the snow's surface in an hour.
#pragma once

#include "units/quantities.h"

namespace rimehaul::snow {

/// Factors of the enhanced temperature index.
struct MeltFactors {
  double per_kelvin = 0.0;  ///< TF, mm / (h K)
  double per_watt = 0.0;    ///< SRF, mm m2 / (h W)
  double albedo = 0.0;      ///< share of the sun's light that the snow throws back
};

/// As Pellicciotti et al. (2005), J. Glaciol. 51, 573-587, fitted them, over old snow.
inline constexpr MeltFactors kFittedMelt{.per_kelvin = 0.05, .per_watt = 0.0094, .albedo = 0.6};

/// Latent heat of fusion of ice, J/kg.
inline constexpr double kFusionHeat = 334'000.0;

/// The bad side of each, by which softening is reckoned: TF 56 % up, which is how far it was found
/// to vary; every watt that is kept melts (3600 s / 334 000 J/kg); the albedo of wet snow, low side
/// (value from memory).
inline constexpr MeltFactors kMostMelt{
    .per_kelvin = 0.078, .per_watt = 3600.0 / kFusionHeat, .albedo = 0.45};

/// The air above which the index knows of melt.
inline constexpr units::Celsius kMeltKnownAbove{1.0};

/// TF T + SRF (1 - albedo) G: Pellicciotti et al. (2005), eq. 4. For air over kMeltKnownAbove. With
/// kMostMelt an upper bound in colder air too, where nothing but light brings heat; air under 0
/// counts as 0.
[[nodiscard]] units::MillimetresPerHour melt_by(const MeltFactors& factors, units::Celsius air,
                                                units::WattsPerSquareMetre sun);

/// The sky over the snow at night.
struct NightSky {
  units::Celsius air;
  units::Percent humidity;
  units::Oktas cloud;
};

/// What a melting surface sends out more than it gets back: 0.98 (sigma 273.15^4 - e sigma T^4), e
/// = 1.24 (vapour pressure / T)^(1/7) (1 - 0.84 n) + 0.84 n: Brutsaert (1975), Water Resour. Res.
/// 11, 742-744, with the cloud's 0.84 (values from memory). Vapour pressure over water by Alduchov
/// and Eskridge (1996). Negative where it gains.
[[nodiscard]] units::WattsPerSquareMetre radiated(const NightSky& sky);

/// Water that so much heat melts in an hour.
[[nodiscard]] units::MillimetresPerHour melted_by(units::WattsPerSquareMetre heat);

}  // namespace rimehaul::snow
