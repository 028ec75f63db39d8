// How far a slope of this scene may be off under one rig.
#include "passage/scene.h"

#include <cmath>

namespace rimehaul::passage {

std::optional<units::Slope> slope_tolerance(const Scene& scene, units::Metres gauge) {
  const std::optional<units::Slope> sigma =
      terrain::gradient_sigma(scene.heights.frame(), scene.trust);
  if (!sigma.has_value()) {
    return std::nullopt;
  }
  const double error = scene.rules.confidence_k * sigma->ratio();
  double hidden = 0.0;
  // A raster brought from another map is finer than what was measured, and knows no more for it.
  const bool cells_see_the_gauge =
      scene.heights.frame().larger_step() <= gauge && scene.trust.measured_step <= gauge;
  if (!cells_see_the_gauge) {
    if (!scene.trust.sub_cell.has_value()) {
      return std::nullopt;
    }
    hidden = scene.trust.sub_cell->ratio();
  }
  // Neither may take anything off the other.
  const bool known = error >= 0.0 && hidden >= 0.0 && std::isfinite(error + hidden);
  return known ? std::optional{units::Slope::from_ratio(error + hidden)} : std::nullopt;
}

}  // namespace rimehaul::passage
