#include "ports/cairo/table.h"

#include <algorithm>
#include <utility>

#include "base/require.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kPadding_pt = 2.0;
constexpr double kText_pt = 8.0;
constexpr double kNote_pt = 8.0;

}  // namespace

Table::Table(Canvas& canvas, std::vector<TableColumn> columns)
    : canvas_{canvas}, columns_{std::move(columns)} {}

double Table::width_pt() const {
  double width = 0.0;
  for (const TableColumn& column : columns_) {
    width += column.width_pt;
  }
  return width;
}

double Table::note_width() const {
  return width_pt() - columns_.front().width_pt - kPadding_pt;
}

Paragraph Table::in_column(std::string_view text, const TableColumn& column, Weight weight) const {
  return {text,
          {.size_pt = kText_pt, .weight = weight, .align = column.align},
          column.width_pt - 2 * kPadding_pt};
}

Paragraph Table::strong_of(const TableCell& cell, const TableColumn& column) const {
  Paragraph paragraph = in_column(cell.strong, column, Weight::bold);
  paragraph.width_pt -= cell.sign ? kSign_pt : 0.0;
  return paragraph;
}

double Table::head_height() const {
  double height = 0.0;
  for (const TableColumn& column : columns_) {
    height = std::max(height, canvas_.height_of(in_column(column.title, column, Weight::bold)));
  }
  return height + 2 * kPadding_pt;
}

double Table::cells_height(const TableRow& row) const {
  base::require(row.cells.size() == columns_.size(), "a table row has a cell for each column");
  double height = 0.0;
  for (std::size_t i = 0; i < row.cells.size(); ++i) {
    const TableCell& cell = row.cells[i];
    double cell_height = 0.0;
    if (!cell.strong.empty()) {
      cell_height += canvas_.height_of(strong_of(cell, columns_[i]));
    }
    if (!cell.plain.empty()) {
      cell_height += canvas_.height_of(in_column(cell.plain, columns_[i], Weight::regular));
    }
    height = std::max(height, cell_height);
  }
  return height;
}

double Table::height_of(const TableRow& row) const {
  double height = cells_height(row) + 2 * kPadding_pt;
  if (!row.note.empty()) {
    height += canvas_.height_of({row.note, {.size_pt = kNote_pt}, note_width()});
  }
  return height;
}

double Table::write_head(Spot corner) const {
  const Canvas::Tag row{canvas_, "TR"};
  double left = corner.x_pt;
  for (const TableColumn& column : columns_) {
    const Canvas::Tag cell{canvas_, "TH"};
    canvas_.write({left + kPadding_pt, corner.y_pt + kPadding_pt},
                  in_column(column.title, column, Weight::bold));
    left += column.width_pt;
  }
  const double bottom = corner.y_pt + head_height();
  canvas_.line({{corner.x_pt, bottom}, {left, bottom}}, {.width_pt = 1.0});
  return bottom;
}

void Table::write_cell(Spot corner, const TableCell& cell, const TableColumn& column) const {
  const Canvas::Tag tag{canvas_, "TD"};
  const Canvas::Tag link = Canvas::Tag::link(canvas_, cell.link);
  if (cell.sign) {
    constexpr double kMiddleOfLine_pt = 5.6;
    cell.sign(canvas_, {corner.x_pt, corner.y_pt + kMiddleOfLine_pt});
  }
  if (!cell.strong.empty()) {
    const double aside = cell.sign ? kSign_pt : 0.0;
    corner.y_pt += canvas_.write({corner.x_pt + aside, corner.y_pt}, strong_of(cell, column));
  }
  if (!cell.plain.empty()) {
    canvas_.write(corner, in_column(cell.plain, column, Weight::regular));
  }
}

double Table::write_row(Spot corner, const TableRow& row) const {
  const Canvas::Tag tag{canvas_, "TR"};
  const double top = corner.y_pt + kPadding_pt;
  double left = corner.x_pt;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const Canvas::Tag place = Canvas::Tag::place(canvas_, i == 0 ? row.place : "");
    write_cell({left + kPadding_pt, top}, row.cells[i], columns_[i]);
    left += columns_[i].width_pt;
  }
  if (!row.note.empty()) {
    const Canvas::Tag note{canvas_, "TD"};
    const Canvas::Tag link = Canvas::Tag::link(canvas_, row.note_link);
    canvas_.write({corner.x_pt + columns_.front().width_pt + kPadding_pt, top + cells_height(row)},
                  {row.note, {.size_pt = kNote_pt}, note_width()});
  }
  const double bottom = corner.y_pt + height_of(row);
  canvas_.line({{corner.x_pt, bottom}, {left, bottom}}, {.width_pt = 0.4, .colour = kHair});
  return bottom;
}

}  // namespace rimehaul::ports::cairo
