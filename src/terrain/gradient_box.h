// All gradients that some ground may have.
#pragma once

#include <array>
#include <optional>

#include "terrain/attitude.h"
#include "terrain/heading_arc.h"
#include "terrain/patch.h"

namespace rimehaul::terrain {

/// The smallest upright box in (east, north) that holds some gradients.
struct GradientBox {
  Gradient low;
  Gradient high;

  [[nodiscard]] GradientBox with(Gradient gradient) const;
  /// Between its far corners: no two gradients in it differ by more.
  [[nodiscard]] units::Slope diameter() const;
  /// Every attitude that a heading of the arc gives on any gradient of the box.
  [[nodiscard]] AttitudeBox attitudes(const HeadingArc& headings) const;
};

/// The four extreme gradients of a part of a patch: its others lie between them.
[[nodiscard]] std::array<Gradient, 4> extremes_of(const GridFrame& frame, const PatchRises& rises);

/// All gradients of the surface under a strip; nothing when a height is missing there.
[[nodiscard]] std::optional<GradientBox> gradients_under(const HeightMap& heights,
                                                         const Strip& strip);

}  // namespace rimehaul::terrain
