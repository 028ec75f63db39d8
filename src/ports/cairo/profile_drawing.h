// Draws how high and how steep a route is from its start to its end.
#pragma once

#include "card/grade_profile.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// Height above, grade below, over one axis of distance. Grades are shaded between the lowest and
/// the highest that the ground may have; the limits of the rig are drawn as steps with ticks on the
/// side that is not driven, and bear their values. What is not known is grey from top to bottom.
void draw_profile(Canvas& canvas, const Box& box, const card::GradeProfile& profile);

}  // namespace rimehaul::ports::cairo
