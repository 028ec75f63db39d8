// Draws the limits of a rig over the grades of a route, each with its value.
#pragma once

#include "card/grade_profile.h"
#include "ports/cairo/axis.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// Where grades are drawn: distance along, degrees up, as far as `most_deg` either way.
struct GradeFrame {
  Box box;
  Axis along;
  Axis up;
  double most_deg = 0.0;
};

/// Room that the values at the end of the route take to the right of the frame.
inline constexpr double kLimitValues_pt = 66.0;

/// Each limit as a line with ticks on the side that is not driven, and its value, rounded down,
/// once for as many legs as it is the same on: that of the last leg to the right of the frame,
/// others within it. One that lies beyond the frame is told at its edge.
void draw_limits(Canvas& canvas, const GradeFrame& frame, const card::GradeProfile& profile);

}  // namespace rimehaul::ports::cairo
