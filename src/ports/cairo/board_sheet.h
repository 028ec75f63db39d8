// The day board as printed sheets.
#pragma once

#include "card/board_report.h"
#include "card/printed.h"

namespace rimehaul::ports::cairo {

/// A4, as many pages as it takes: what it was made for; by surface and station to leave from a row
/// for every destination and a column for every snow class; then the reasons, cautions, estimates
/// and inputs. On its side where there are more than two snow classes side by side. A verdict is
/// told by its word and by its line, colour comes last.
[[nodiscard]] card::Printed draw_board(const card::BoardReport& report);

}  // namespace rimehaul::ports::cairo
