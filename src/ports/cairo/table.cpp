#include "ports/cairo/table.h"

#include <algorithm>
#include <utility>

#include "base/require.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kPadding_pt = 2.0;
constexpr double kText_pt = 8.2;
constexpr double kNote_pt = 8.0;

}  // namespace

Table::Table(Canvas& canvas, double left_pt, std::vector<TableColumn> columns)
    : canvas_{canvas}, left_pt_{left_pt}, columns_{std::move(columns)} {}

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
      cell_height += canvas_.height_of(in_column(cell.strong, columns_[i], Weight::bold));
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

double Table::write_head(double top_pt) {
  const Canvas::Tag row{canvas_, "TR"};
  double left = left_pt_;
  for (const TableColumn& column : columns_) {
    const Canvas::Tag cell{canvas_, "TH"};
    canvas_.write({left + kPadding_pt, top_pt + kPadding_pt},
                  in_column(column.title, column, Weight::bold));
    left += column.width_pt;
  }
  const double bottom = top_pt + head_height();
  canvas_.line({{left_pt_, bottom}, {left_pt_ + width_pt(), bottom}}, {.width_pt = 1.0});
  return bottom;
}

double Table::write_row(double top_pt, const TableRow& row) {
  const Canvas::Tag tag{canvas_, "TR"};
  double left = left_pt_;
  for (std::size_t i = 0; i < columns_.size(); ++i) {
    const Canvas::Tag cell{canvas_, "TD"};
    Spot at{left + kPadding_pt, top_pt + kPadding_pt};
    if (!row.cells[i].strong.empty()) {
      at.y_pt += canvas_.write(at, in_column(row.cells[i].strong, columns_[i], Weight::bold));
    }
    if (!row.cells[i].plain.empty()) {
      canvas_.write(at, in_column(row.cells[i].plain, columns_[i], Weight::regular));
    }
    left += columns_[i].width_pt;
  }
  if (!row.note.empty()) {
    const Canvas::Tag note{canvas_, "TD"};
    canvas_.write({left_pt_ + columns_.front().width_pt + kPadding_pt,
                   top_pt + kPadding_pt + cells_height(row)},
                  {row.note, {.size_pt = kNote_pt}, note_width()});
  }
  const double bottom = top_pt + height_of(row);
  canvas_.line({{left_pt_, bottom}, {left_pt_ + width_pt(), bottom}},
               {.width_pt = 0.4, .colour = kHair});
  return bottom;
}

}  // namespace rimehaul::ports::cairo
