// The outlines of allowed grade and cross-slope as a printed sheet.
#pragma once

#include "card/limits_report.h"
#include "card/printed.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// One page: cross-slope to the right, climb up and descent down, degrees with percent beside; one
/// outline for each snow class, told apart by its name on it and its line first, colour second.
/// Below it the limits of every class in figures. The page is A4, or longer where its words need
/// more.
[[nodiscard]] card::Printed envelope_sheet(const card::LimitsReport& report, Form form);

}  // namespace rimehaul::ports::cairo
