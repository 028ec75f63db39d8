#include "ports/cairo/map_labels.h"

#include <algorithm>
#include <array>

namespace rimehaul::ports::cairo {

namespace {

/// Which way from the spot a name lies: -1, 0 or 1 along each axis.
struct Side {
  double right = 0.0;
  double down = 0.0;
};

constexpr std::array<Side, 8> kSides{Side{1, 0},  Side{-1, 0}, Side{0, -1},  Side{0, 1},
                                     Side{1, -1}, Side{1, 1},  Side{-1, -1}, Side{-1, 1}};

Box box_beside(Spot spot, Side side, double gap_pt, LabelSize size) {
  const double middle_x = spot.x_pt + side.right * (gap_pt + size.width_pt / 2);
  const double middle_y = spot.y_pt + side.down * (gap_pt + size.height_pt / 2);
  return box_around({middle_x, middle_y}, size);
}

}  // namespace

Box box_around(Spot middle, LabelSize size) {
  return {middle.x_pt - size.width_pt / 2, middle.y_pt - size.height_pt / 2, size.width_pt,
          size.height_pt};
}

Spot middle_of(const Box& box) {
  return {box.left_pt + box.width_pt / 2, box.top_pt + box.height_pt / 2};
}

bool LabelRoom::is_free(const Box& box) const {
  const bool inside = box.left_pt >= within_.left_pt && box.right_pt() <= within_.right_pt() &&
                      box.top_pt >= within_.top_pt && box.bottom_pt() <= within_.bottom_pt();
  return inside && std::ranges::none_of(taken_, [&](const Box& other) { return box.meets(other); });
}

bool LabelRoom::take_if_free(const Box& box) {
  if (!is_free(box)) {
    return false;
  }
  take(box);
  return true;
}

std::optional<Box> LabelRoom::place_beside(Spot spot, LabelSize size, double farthest_pt) {
  double gap_pt = 5.0;
  while (gap_pt <= farthest_pt) {
    for (const Side side : kSides) {
      const Box box = box_beside(spot, side, gap_pt, size);
      if (take_if_free(box)) {
        return box;
      }
    }
    gap_pt *= 1.5;
  }
  return std::nullopt;
}

}  // namespace rimehaul::ports::cairo
