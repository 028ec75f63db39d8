#include "snow/sun_table.h"

#include <algorithm>
#include <cstddef>
#include <limits>

namespace rimehaul::snow {

using units::Oktas;
using units::WattsPerSquareMetre;

namespace {

Sunlight light_under(Oktas cloud, double zenith_deg, WattsPerSquareMetre outside) {
  return split(clear_sky(zenith_deg) * share_through(cloud), zenith_deg, outside);
}

/// Under more cloud there is less light and less beam, and a greater share of it is diffuse.
// Clearer first, as the name says.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
Sunlight most_between(const Sunlight& clearer, const Sunlight& cloudier) {
  Sunlight most = clearer;
  if (cloudier.level > WattsPerSquareMetre{0}) {
    most.diffuse = clearer.level *
                   std::max(clearer.diffuse / clearer.level, cloudier.diffuse / cloudier.level);
  }
  most.beam = std::max(clearer.beam, cloudier.beam);
  return most;
}

}  // namespace

std::vector<SunStep> sun_steps(const SunSite& site, const ForecastHour& hour) {
  std::vector<SunStep> steps;
  for (int i = 0; i < kStepsInHour; ++i) {
    const units::Instant middle{hour.start.seconds +
                                static_cast<std::int64_t>((i + 0.5) * kStep.value())};
    SunStep step;
    step.sun = sun_at(site.at, middle);
    const WattsPerSquareMetre outside = above_the_air(middle);
    const double zenith = step.sun.apparent_zenith_deg;
    step.light = light_under(hour.cloud.value_or(Oktas{0}), zenith, outside);
    for (std::size_t okta = 0; okta < step.most_by_cloud.size(); ++okta) {
      const auto cloud = static_cast<double>(okta);
      step.most_by_cloud[okta] = most_between(light_under(Oktas{cloud}, zenith, outside),
                                              light_under(Oktas{cloud + 1.0}, zenith, outside));
    }
    steps.push_back(step);
  }
  return steps;
}

LightOn light_on(const SunStep& step, const LitGround& ground, const NightSky& sky) {
  const double higher =
      1.0 + kMoreLightPerKilometre * std::max(0.0, ground.height.above_datum_m() / 1000.0);
  const auto on_ground = [&](const Sunlight& light) {
    return most_on(ground.ground, light, step.sun, ground.shade) * higher;
  };
  LightOn lit{.sun = on_ground(step.light),
              .most_gain = WattsPerSquareMetre{-std::numeric_limits<double>::infinity()}};
  NightSky over = sky;
  for (std::size_t okta = 0; okta < step.most_by_cloud.size(); ++okta) {
    over.cloud = Oktas{static_cast<double>(okta) + 1.0};
    const WattsPerSquareMetre kept =
        on_ground(step.most_by_cloud[okta]) * (1.0 - kMostMelt.albedo) - radiated(over);
    lit.most_gain = lit.most_gain >= kept ? lit.most_gain : kept;
  }
  return lit;
}

}  // namespace rimehaul::snow
