// The drawing of the outlines: axes in degrees and percent, one line for each snow class.
#pragma once

#include "card/limits_report.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// How the outline of a snow class is drawn.
[[nodiscard]] Stroke stroke_of(snow::Wetness wetness);

void draw_envelopes(Canvas& canvas, const Box& box, const card::OutlineSet& set);

}  // namespace rimehaul::ports::cairo
