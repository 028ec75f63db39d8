// The rig sheet as a printed page.
#pragma once

#include "card/printed.h"
#include "card/rig_sheet.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// The rig to scale, then its masses, balance, tip angles, ratings and estimates: a PDF on as many
/// A4 pages as it takes, true to scale; an SVG on one page, longer than A4 where that is needed.
[[nodiscard]] card::Printed rig_page(const card::RigSheet& sheet, Form form);

}  // namespace rimehaul::ports::cairo
