// A table whose rows are as high as their texts, drawn row by row so that it may go on elsewhere.
#pragma once

#include <string>
#include <vector>

#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

struct TableColumn {
  std::string title;
  double width_pt = 0.0;
  Align align = Align::left;
};

/// A cell: a line in bold (empty: none) over plain text.
struct TableCell {
  std::string strong;
  std::string plain;
};

/// One row: a cell for each column, and a note under them from the second column on.
struct TableRow {
  std::vector<TableCell> cells;
  std::string note;
};

class Table {
 public:
  Table(Canvas& canvas, double left_pt, std::vector<TableColumn> columns);

  [[nodiscard]] double width_pt() const;
  [[nodiscard]] double head_height() const;
  [[nodiscard]] double height_of(const TableRow& row) const;
  /// Both draw from a height on the page down and return the height where they end.
  double write_head(double top_pt);
  double write_row(double top_pt, const TableRow& row);

 private:
  [[nodiscard]] double cells_height(const TableRow& row) const;
  [[nodiscard]] Paragraph in_column(std::string_view text, const TableColumn& column,
                                    Weight weight) const;
  [[nodiscard]] double note_width() const;

  Canvas& canvas_;
  double left_pt_;
  std::vector<TableColumn> columns_;
};

}  // namespace rimehaul::ports::cairo
