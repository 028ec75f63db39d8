// The day board as tables of stations by stations, one for each snow: short marks for one sheet.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "card/board_words.h"

namespace rimehaul::card {

/// A pair in one snow, in the fewest signs that tell it.
struct MatrixCell {
  std::string figure;                         ///< as figure_of says it
  int note = 0;                               ///< number of its note
  std::optional<passage::Verdict> verdict{};  ///< how its line is drawn; nothing: not known
};

/// One snow: from the stations of its rows to those of its columns.
struct BoardMatrix {
  snow::SnowState snow;
  std::vector<std::size_t> from;  ///< as indices into BoardTables::stations
  std::vector<std::size_t> to;
  std::vector<std::optional<MatrixCell>> cells;  ///< row by row; nothing: no such pair

  // As a matrix is read. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
  [[nodiscard]] const std::optional<MatrixCell>& at(std::size_t row, std::size_t column) const {
    return cells.at(row * to.size() + column);
  }
};

/// The most rows and columns for which there is room on a sheet; above 0.
struct MatrixRoom {
  std::size_t rows = 1;
  std::size_t columns = 1;
};

struct BoardTables {
  std::vector<std::string> stations;  ///< as the board first names them
  std::vector<BoardMatrix> matrices;  ///< by surface, part of the stations, snow class
};

/// The board's pairs in parts for which there is room; notes are numbered as they are met.
[[nodiscard]] BoardTables tables_of(const BoardReport& report, const MatrixRoom& room,
                                    BoardNotes& notes);

/// What heads a station's column: "A" to "Z", then "AA" and on.
[[nodiscard]] std::string letters_of(std::size_t station);

/// "62": the share of the limit in per cent, as share_in_cell has it; "kg": another load opens what
/// a rule closes; "?": something is not known; "no": a rule says no, or there is no way, or too
/// little fuel.
[[nodiscard]] std::string figure_of(const BoardRow& row);

}  // namespace rimehaul::card
