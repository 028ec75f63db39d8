// The built-in grip: published traction where there is some, cautious estimates for all else.
#include "snow/built_in_grip.h"

#include <algorithm>
#include <array>
#include <cstddef>

#include "snow/crrel.h"

namespace rimehaul::snow {

namespace {

using units::ForceRatio;
using units::Kilopascals;

/// One number for each wetness class, dry to slush.
using ByWetness = std::array<double, kWetnessCount>;

/// tan 28 degrees: mean angle of friction under four light tracked snow vehicles, Diamond and
/// Bader, SIPRE Report 35 part 1. Caps the law for undisturbed snow, which was found at some 50 kPa
/// and gives more than this at the pressure of light tracks.
constexpr double kLightTracksOnFreshSnow = 0.531709;

/// Passenger cars on packed snow and on bare ice, Navin, Macnabb and Nicolletti (1996, SAE). Rubber
/// tyres and no tracks, so what is made of them is an estimate.
constexpr double kCarBrakeOnPackedSnow = 0.35;
constexpr double kCarLateralOnPackedSnow = 0.38;
constexpr double kCarOnBareIce = 0.09;

/// Share of the dry grip left on groomed or fresh snow. Estimates: snow loses strength with liquid
/// water, sharply past 6 to 8 % (Brun and Rey 1987, value from memory); wet over dry is 0.20 /
/// 0.30.
constexpr ByWetness kWetSnowShare{1.0, 5.0 / 6.0, 2.0 / 3.0, 0.55, 0.40};

/// The same on ice and on refrozen crust, where any water film halves the grip. Estimates.
constexpr ByWetness kWetIceShare{1.0, 0.5, 0.5, 0.4, 0.3};

/// How much harder the rig goes at most, over the dry value. Estimates; slush doubles it.
constexpr ByWetness kWetDrag{1.0, 1.0, 1.25, 1.5, 2.0};

/// The same for runners: Colbeck (1992), CRREL Monograph 92-2, gives up to 0.30 when soaked against
/// 0.10 in the cold (values from memory).
constexpr ByWetness kWetRunnerDrag{1.0, 1.0, 1.5, 2.0, 3.0};
constexpr ByWetness kWetRunnerStart{1.0, 1.0, 1.0, 1.0, 2.0};

/// Estimates of what soft grooming and fresh snow come to at most. Compaction alone comes to 0.036
/// to 0.064 of the weight of a light track in the three snows of Wong's table (Theory of Ground
/// Vehicles, 2008) by Bekker's formula; twice that is added for fresh snow.
constexpr double kGroomedHigh = 0.08;
constexpr double kFreshHigh = 0.18;

/// Runners on a thin film of water slide easiest; on cold snow and from standing hardest. Colbeck
/// (1992), CRREL Monograph 92-2, values from memory. Soft snow adds half (estimate).
constexpr double kRunnersLow = 0.02;
constexpr double kRunnersHigh = 0.10;
constexpr double kRunnersHighOnFreshSnow = 0.15;
constexpr double kRunnersStart = 0.30;

/// Runners hold sideways half as well as tracks. Estimate.
constexpr double kRunnerLateralShare = 0.5;

bool is_hard(Surface surface) {
  return surface == Surface::refrozen || surface == Surface::ice;
}

/// Dry traction. Fresh snow counts for no more than prepared snow, and a refrozen crust for no more
/// than ice, until a site has measured its own: estimates.
double dry_traction(Surface surface, Kilopascals pressure) {
  const double prepared = traction_on_prepared_snow(pressure) / pressure;
  const double undisturbed = traction_on_undisturbed_snow(pressure) / pressure;
  const double fresh = std::min({undisturbed, kLightTracksOnFreshSnow, prepared});
  if (surface == Surface::groomed) {
    return prepared;
  }
  return is_hard(surface) ? std::min(traction_on_ice(pressure) / pressure, fresh) : fresh;
}

/// Grip in a dry state: no track brakes or holds sideways better than it pulls.
struct DryGrip {
  double traction;
  double brake;
  double lateral;
};

DryGrip dry_grip(Surface surface, Kilopascals pressure) {
  const double traction = dry_traction(surface, pressure);
  const bool bare_ice = surface == Surface::ice;
  return {.traction = traction,
          .brake = std::min(traction, bare_ice ? kCarOnBareIce : kCarBrakeOnPackedSnow),
          .lateral = std::min(traction, bare_ice ? kCarOnBareIce : kCarLateralOnPackedSnow)};
}

/// Slush holds no better than dry ice on any surface.
DryGrip derated(DryGrip grip, SnowState state, Kilopascals pressure) {
  const auto wetness = static_cast<std::size_t>(state.wetness);
  const double share =
      is_hard(state.surface) ? kWetIceShare.at(wetness) : kWetSnowShare.at(wetness);
  grip = {grip.traction * share, grip.brake * share, grip.lateral * share};
  if (state.wetness == Wetness::slush) {
    const DryGrip ice = dry_grip(Surface::ice, pressure);
    grip = {.traction = std::min(grip.traction, ice.traction),
            .brake = std::min(grip.brake, ice.brake),
            .lateral = std::min(grip.lateral, ice.lateral)};
  }
  return grip;
}

double dry_drag_high(Surface surface) {
  if (is_hard(surface)) {
    return kHardGroundResistance.high.value();
  }
  return surface == Surface::fresh ? kFreshHigh : kGroomedHigh;
}

}  // namespace

GripRow built_in_grip(SnowState state, Kilopascals pressure) {
  const auto wetness = static_cast<std::size_t>(state.wetness);
  const DryGrip grip = derated(dry_grip(state.surface, pressure), state, pressure);
  const double runners_high =
      state.surface == Surface::fresh ? kRunnersHighOnFreshSnow : kRunnersHigh;
  return {.traction = ForceRatio{grip.traction},
          .brake = ForceRatio{grip.brake},
          .lateral = ForceRatio{grip.lateral},
          .trailer_lateral = ForceRatio{grip.lateral * kRunnerLateralShare},
          .carrier_resistance = {.low = kHardGroundResistance.low,
                                 .high = ForceRatio{dry_drag_high(state.surface) *
                                                    kWetDrag.at(wetness)}},
          .trailer_resistance = {.low = ForceRatio{kRunnersLow},
                                 .high = ForceRatio{runners_high * kWetRunnerDrag.at(wetness)}},
          .trailer_start = ForceRatio{kRunnersStart * kWetRunnerStart.at(wetness)},
          .standing = GripStanding::estimate,
          .source = "traction after CRREL Report 95-1, all else estimates"};
}

}  // namespace rimehaul::snow
