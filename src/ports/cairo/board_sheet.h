// The day board as printed sheets.
#pragma once

#include "card/board_report.h"
#include "card/printed.h"

namespace rimehaul::ports::cairo {

/// A4 on its side, as many pages as it takes. In front a table for every snow, from the stations of
/// its rows to those of its columns; beside and behind them what the board was made for, the day,
/// the reasons, cautions, estimates and inputs. Ten stations in five snows of one surface fit the
/// front and back of one sheet. A verdict is told by its line, colour comes last.
[[nodiscard]] card::Printed draw_board(const card::BoardReport& report);

}  // namespace rimehaul::ports::cairo
