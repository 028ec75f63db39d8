// What a cell of a board comes to in a spreadsheet.
#pragma once

#include <string>
#include <vector>

#include "card/board_report.h"

namespace rimehaul::card {

/// "verdict", "worst_share", ...: the columns that board_cells fills.
[[nodiscard]] std::vector<std::string> board_cell_heads();
/// Times, lengths, fuel and shares rounded up, what is allowed down; empty where it is not known.
[[nodiscard]] std::vector<std::string> board_cells(const BoardRow& row, double allowed_share);
/// Kilograms on bed and trailer; the latter empty without one.
[[nodiscard]] std::vector<std::string> load_cells(const rig::Load& load,
                                                  const std::string& trailer);

}  // namespace rimehaul::card
