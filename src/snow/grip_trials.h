// Trials on a site's own snow: pulls, stops and holds that turn into numbers of a grip entry.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "snow/grip.h"
#include "units/slope.h"
#include "units/spread.h"

namespace rimehaul::snow {

/// The ground that a trial was made on, along the pull or the drive: above 0 where that leads up.
struct TrialGround {
  units::Slope grade;
  units::Slope error;  ///< of the grade, either way; not below 0
};

/// What is pulled, and what its resistance stands for.
enum class Pulled {
  drawbar,          ///< the carrier itself pulls at the scale until its tracks spin
  carrier_rolling,  ///< towed at walking pace
  trailer_rolling,  ///< the same
  trailer_start,    ///< the most that it takes to get a trailer going that has stood
  carrier_side,     ///< pulled across until it slides
  trailer_side,     ///< the same
};

/// Pulls at a spring scale, along the ground.
struct Pulls {
  Pulled what = Pulled::drawbar;
  units::Kilograms mass;     ///< of what is pulled; for `drawbar` of the carrier
  double track_share = 1.0;  ///< part of that on the driven tracks; for `drawbar` alone
  TrialGround ground;
  std::vector<units::Newtons> read;
};

/// From the brake taking hold to standing.
struct Stop {
  units::MetresPerSecond speed;
  units::Metres distance;
};

/// Stops on the straight, as hard as the snow lets the braked tracks.
struct Stops {
  double track_share = 1.0;  ///< part of the mass on the braked tracks
  TrialGround ground;
  std::vector<Stop> stops;
};

/// Slopes on which the rig stood on its brake, and others on which it slid.
struct Holds {
  double track_share = 1.0;
  units::Slope error;
  std::vector<units::Slope> held;  ///< not below 0
  std::vector<units::Slope> slid;
};

/// Tangential over normal force, at the bad side of the grade's error for each of its limits.
/// Nothing when there are too few pulls.
///   resistance of what is pulled: (F - m g sin t) / (m g cos t)
///   gross traction of the tracks: (F + m g sin t) / (m g cos t phi), the carrier's own motion
///   resistance left out, which errs low
[[nodiscard]] std::optional<units::Spread> ratio_of(const Pulls& pulls);
/// Of braked tracks, drag included: (v^2 / (2 d g) - sin t) / (cos t phi).
[[nodiscard]] std::optional<units::Spread> ratio_of(const Stops& stops);
/// The steepest slope held that is gentler than all on which it slid: tan t / phi, at the bad side
/// of the error. Nothing when it held on fewer than three, or on none that is gentler.
[[nodiscard]] std::optional<units::ForceRatio> ratio_of(const Holds& holds);

/// "6 pulls, 0.241 +- 0.012, the next between 0.212 and 0.270".
[[nodiscard]] std::string words_for(const units::Spread& spread, const char* trials);

}  // namespace rimehaul::snow
