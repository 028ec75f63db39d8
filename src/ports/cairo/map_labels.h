// Finds free room for names on a map, so that none lies on another.
#pragma once

#include <optional>
#include <vector>

#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// Width and height of a name.
struct LabelSize {
  double width_pt = 0.0;
  double height_pt = 0.0;
};

[[nodiscard]] Box box_around(Spot middle, LabelSize size);
[[nodiscard]] Spot middle_of(const Box& box);

/// Boxes that are taken within an area.
class LabelRoom {
 public:
  explicit LabelRoom(const Box& within) : within_{within} {}

  void take(const Box& box) { taken_.push_back(box); }
  /// Takes the box unless it lies over another or over the edge; whether it did.
  bool take_if_free(const Box& box);
  /// Takes the first free box beside a spot: right, left, above, below, then the corners, and the
  /// same farther and farther off. Nothing when there is none within so far.
  std::optional<Box> place_beside(Spot spot, LabelSize size, double farthest_pt = 24.0);

  [[nodiscard]] bool is_free(const Box& box) const;

 private:
  Box within_;
  std::vector<Box> taken_;
};

}  // namespace rimehaul::ports::cairo
