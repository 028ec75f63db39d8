// How deep tracks sink into snow, and what pressing it down costs.
#pragma once

#include "units/quantities.h"

namespace rimehaul::snow {

/// What a plate pressed into the site's own snow gives: p = (k_c / b + k_phi) z^n, with the plate's
/// smaller side b and the depth z in metres. Bekker (1956, 1969), as in Wong, Theory of Ground
/// Vehicles (2008).
struct SnowStrength {
  double n = 0.0;      ///< above 0
  double k_c = 0.0;    ///< kN / m^(n + 1), not below 0
  double k_phi = 0.0;  ///< kN / m^(n + 2), above 0
};

/// What a carrier's tracks press on the snow with.
struct TrackPrint {
  units::Kilopascals pressure;
  units::Metres width;  ///< of the tracks, all side by side: the wider a plate, the deeper it sinks
  units::Metres length;  ///< on the snow
};

/// z = (p / (k_c / b + k_phi))^(1 / n). NaN where anything is out of range.
[[nodiscard]] units::Metres sinkage_of(const SnowStrength& strength, const TrackPrint& print);

/// Compaction resistance over the weight that presses: b (k_c / b + k_phi) z^(n + 1) / (n + 1) for
/// each track, which comes to z / (length (n + 1)). NaN where anything is out of range.
[[nodiscard]] units::ForceRatio compaction_of(const SnowStrength& strength,
                                              const TrackPrint& print);

/// New snow that lies on firm ground.
struct NewSnow {
  units::Metres depth;
  units::KilogramsPerCubicMetre density;  ///< 0 where nobody has weighed it: the safe side
};

/// Sinkage z = h (1 - density / density when pressed) at pressures up to 210 kPa, where that is
/// 500 kg/m3: Richmond, Shoop and Blaisdell (1995), CRREL Report 95-1. Not below 0. NaN where
/// anything is out of range.
[[nodiscard]] units::Metres sinkage_of(const NewSnow& snow);

}  // namespace rimehaul::snow
