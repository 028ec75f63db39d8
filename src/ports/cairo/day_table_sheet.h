// The day board of many rigs as printed sheets.
#pragma once

#include "card/day_table.h"
#include "card/printed.h"

namespace rimehaul::ports::cairo {

enum class BoardPaper { a4, a3 };

/// On its side, as many pages as it takes: a row for each route, a column for each snow or hour, a
/// verdict told by its line, colour last. Behind them who signed, orders, the day, the reasons,
/// cautions, estimates and inputs. A3 holds all hours of a day beside each other.
[[nodiscard]] card::Printed draw_day_table(const card::DayTable& table,
                                           BoardPaper paper = BoardPaper::a4);

}  // namespace rimehaul::ports::cairo
