// The rig to scale: from above with its support and centres of gravity, and from the side.
#pragma once

#include <string>

#include "card/rig_sheet.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// A whole number that one metre is divided by on paper: 1:25, 1:50, ...
class DrawingScale {
 public:
  /// The largest drawing of the rig that stays within a width.
  DrawingScale(const card::RigSheet& sheet, double width_pt);

  [[nodiscard]] double pt(units::Metres length) const { return length.value() * pt_per_metre_; }
  [[nodiscard]] std::string words() const { return "1:" + std::to_string(one_to_); }
  /// What both views together take.
  [[nodiscard]] double height_pt(const card::RigSheet& sheet) const;

 private:
  int one_to_ = 1000;
  double pt_per_metre_ = 1.0;
};

/// Both views one above the other; the rig heads to the right.
void draw_rig(Canvas& canvas, const Box& box, const card::RigSheet& sheet,
              const DrawingScale& scale);

}  // namespace rimehaul::ports::cairo
