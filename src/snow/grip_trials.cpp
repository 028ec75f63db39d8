#include "snow/grip_trials.h"

#include <algorithm>
#include <cmath>

#include "units/rounding.h"

namespace rimehaul::snow {

namespace {

using units::ForceRatio;
using units::Slope;

/// The angle of a slope's tangent.
double angle_of(Slope slope) {
  return std::atan(slope.ratio());
}

/// Each of a trial's numbers on ground of some angle.
template <class RatioOn>
std::optional<units::Spread> spread_over(const TrialGround& ground, const RatioOn& ratios_on) {
  const double angle = angle_of(ground.grade);
  const double error = angle_of(ground.error);
  auto spread = units::spread_of(ratios_on(angle));
  for (const double off : {error, -error}) {
    const auto there = units::spread_of(ratios_on(angle + off));
    if (!spread || !there) {
      return std::nullopt;
    }
    spread->low = std::min(spread->low, there->low);
    spread->high = std::max(spread->high, there->high);
  }
  return spread;
}

}  // namespace

std::optional<units::Spread> ratio_of(const Pulls& pulls) {
  const double weight = units::weight_of(pulls.mass).value();
  const bool is_drawbar = pulls.what == Pulled::drawbar;
  return spread_over(pulls.ground, [&](double angle) {
    const double along = weight * std::sin(angle);
    const double normal = weight * std::cos(angle);
    std::vector<double> ratios;
    ratios.reserve(pulls.read.size());
    for (const units::Newtons pull : pulls.read) {
      ratios.push_back(is_drawbar ? (pull.value() + along) / (normal * pulls.track_share)
                                  : (pull.value() - along) / normal);
    }
    return ratios;
  });
}

std::optional<units::Spread> ratio_of(const Stops& stops) {
  return spread_over(stops.ground, [&](double angle) {
    std::vector<double> ratios;
    ratios.reserve(stops.stops.size());
    for (const Stop& stop : stops.stops) {
      const double v = stop.speed.value();
      const double slowing = v * v / (2.0 * stop.distance.value()) / units::kGravity;
      ratios.push_back((slowing - std::sin(angle)) / (std::cos(angle) * stops.track_share));
    }
    return ratios;
  });
}

std::optional<ForceRatio> ratio_of(const Holds& holds) {
  constexpr std::size_t kFewestHeld = 3;
  if (holds.held.size() < kFewestHeld) {
    return std::nullopt;
  }
  std::optional<double> steepest;
  for (const Slope held : holds.held) {
    const bool proven = std::ranges::all_of(
        holds.slid, [&](Slope slid) { return angle_of(held) < angle_of(slid); });
    if (proven) {
      steepest = std::max(steepest.value_or(0.0), angle_of(held));
    }
  }
  if (!steepest) {
    return std::nullopt;
  }
  return ForceRatio{std::tan(*steepest - angle_of(holds.error)) / holds.track_share};
}

std::string words_for(const units::Spread& spread, const char* trials) {
  using units::Round;
  return std::to_string(spread.count) + " " + trials + ", " +
         units::text_of(spread.mean, 3, Round::nearest) + " +- " +
         units::text_of(spread.deviation, 3, Round::nearest) + ", the next between " +
         units::text_of(spread.low, 3, Round::down) + " and " +
         units::text_of(spread.high, 3, Round::up);
}

}  // namespace rimehaul::snow
