// A table whose rows are as high as their texts, drawn row by row so that it may go on elsewhere.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

struct TableColumn {
  std::string title;
  double width_pt = 0.0;
  Align align = Align::left;
};

/// A sign drawn to the right of a spot, in the middle of a line's height.
using CellSign = std::function<void(Canvas& canvas, Spot left)>;
/// Room that a sign takes before its cell's line in bold.
inline constexpr double kSign_pt = 26.0;

/// A cell: a line in bold (empty: none), perhaps behind a sign, over plain text.
struct TableCell {
  std::string strong;
  std::string plain;
  CellSign sign{};
  std::string link{};  ///< the place that a click goes to; empty: none
};

/// One row: a cell for each column, and a note under them from the second column on.
struct TableRow {
  std::vector<TableCell> cells;
  std::string note;
  std::string place{};      ///< the name that links know its first cell by; empty: none
  std::string note_link{};  ///< the place that a click on the note goes to; empty: none
};

class Table {
 public:
  Table(Canvas& canvas, std::vector<TableColumn> columns);

  [[nodiscard]] double width_pt() const;
  [[nodiscard]] double head_height() const;
  [[nodiscard]] double height_of(const TableRow& row) const;
  /// Both draw from an upper left corner on and return the height on the page where they end.
  [[nodiscard]] double write_head(Spot corner) const;
  [[nodiscard]] double write_row(Spot corner, const TableRow& row) const;

 private:
  [[nodiscard]] double cells_height(const TableRow& row) const;
  [[nodiscard]] Paragraph in_column(std::string_view text, const TableColumn& column,
                                    Weight weight) const;
  [[nodiscard]] Paragraph strong_of(const TableCell& cell, const TableColumn& column) const;
  void write_cell(Spot corner, const TableCell& cell, const TableColumn& column) const;
  [[nodiscard]] double note_width() const;

  Canvas& canvas_;
  std::vector<TableColumn> columns_;
};

}  // namespace rimehaul::ports::cairo
