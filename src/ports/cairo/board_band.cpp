#include "ports/cairo/board_band.h"

#include <algorithm>

#include "card/words.h"
#include "ports/cairo/way_line.h"

namespace rimehaul::ports::cairo {

namespace {

using card::BoardMatrix;
using card::MatrixCell;

constexpr double kName_pt = 62.0;
constexpr double kCell_pt = 29.2;
constexpr double kBetween_pt = 8.0;
constexpr double kHead_pt = 10.5;
constexpr double kRow_pt = 13.4;
constexpr double kLine_pt = 26.0;
/// Of a cell, where the middle of its line lies.
constexpr double kLineAt_pt = 10.1;

constexpr Lettering kFigure{.size_pt = 8.0, .weight = Weight::bold};
constexpr Lettering kNote{.size_pt = 8.0};
constexpr Lettering kStation{.size_pt = 8.0};
constexpr Lettering kHeadLetters{.size_pt = 8.0, .weight = Weight::bold};

double table_width(std::size_t columns) {
  return static_cast<double>(columns) * kCell_pt;
}

/// Station to itself, or a pair that is not asked for.
void draw_no_pair(Canvas& canvas, Spot corner) {
  canvas.box({corner.x_pt, corner.y_pt + 1, kLine_pt, kRow_pt - 3}, kIce);
}

void write_cell(Canvas& canvas, Spot corner, const MatrixCell& cell) {
  constexpr double kRaised_pt = 1.2;
  draw_row_line(canvas, {corner.x_pt, corner.y_pt + kLineAt_pt}, cell.verdict);
  const double width = canvas.width_of(cell.figure, kFigure) + 0.5;
  const double top = corner.y_pt - 0.6;
  canvas.write({corner.x_pt, top}, {cell.figure, kFigure, width});
  const std::string note = std::to_string(cell.note);
  canvas.write({corner.x_pt + width + 1.0, top - kRaised_pt},
               {note, kNote, canvas.width_of(note, kNote) + 0.5});
}

std::string row_name(const std::vector<std::string>& stations, std::size_t station) {
  return card::letters_of(station) + " " + stations.at(station);
}

double row_height(const Canvas& canvas, const std::string& name) {
  constexpr double kBelow_pt = 2.0;
  return std::max(kRow_pt, canvas.height_of({name, kStation, kName_pt - 3}) + kBelow_pt);
}

}  // namespace

BoardBand::BoardBand(Canvas& canvas, const std::vector<std::string>& stations,
                     std::span<const BoardMatrix> tables)
    : canvas_{canvas}, stations_{stations}, tables_{tables} {}

double BoardBand::left_of(std::size_t table) const {
  return kName_pt +
         static_cast<double>(table) * (table_width(tables_.front().to.size()) + kBetween_pt);
}

double BoardBand::width() const {
  return left_of(tables_.size()) - kBetween_pt;
}

std::string BoardBand::name_of(std::size_t row) const {
  return row_name(stations_, tables_.front().from.at(row));
}

double BoardBand::height() const {
  double height = 2 * kHead_pt;
  for (std::size_t row = 0; row < tables_.front().from.size(); ++row) {
    height += row_height(canvas_, name_of(row));
  }
  return height;
}

void BoardBand::write_heads(Spot corner) const {
  const Canvas::Tag row{canvas_, "TR"};
  {
    const Canvas::Tag cell{canvas_, "TH"};
    canvas_.write({corner.x_pt, corner.y_pt + kHead_pt}, {"from, to", kStation, kName_pt});
  }
  for (std::size_t table = 0; table < tables_.size(); ++table) {
    const BoardMatrix& matrix = tables_[table];
    const double left = corner.x_pt + left_of(table);
    const std::string title = card::words::snow_state(matrix.snow);
    {
      const Canvas::Tag cell{canvas_, "TH"};
      canvas_.write({left, corner.y_pt}, {title, kHeadLetters, table_width(matrix.to.size())});
    }
    for (std::size_t column = 0; column < matrix.to.size(); ++column) {
      const Canvas::Tag cell{canvas_, "TH"};
      canvas_.write({left + static_cast<double>(column) * kCell_pt, corner.y_pt + kHead_pt},
                    {card::letters_of(matrix.to[column]), kHeadLetters, kCell_pt});
    }
    const double y = corner.y_pt + 2 * kHead_pt - 1.5;
    canvas_.line({{left, y}, {left + table_width(matrix.to.size()) - 3, y}}, {.width_pt = 0.8});
  }
}

void BoardBand::write_row(Spot corner, std::size_t row) const {
  const Canvas::Tag tag{canvas_, "TR"};
  {
    const Canvas::Tag cell{canvas_, "TH"};
    canvas_.write({corner.x_pt, corner.y_pt - 0.6}, {name_of(row), kStation, kName_pt - 3});
  }
  for (std::size_t table = 0; table < tables_.size(); ++table) {
    const BoardMatrix& matrix = tables_[table];
    for (std::size_t column = 0; column < matrix.to.size(); ++column) {
      const Spot at{corner.x_pt + left_of(table) + static_cast<double>(column) * kCell_pt,
                    corner.y_pt};
      const Canvas::Tag cell{canvas_, "TD"};
      if (const std::optional<MatrixCell>& pair = matrix.at(row, column)) {
        write_cell(canvas_, at, *pair);
      } else {
        draw_no_pair(canvas_, at);
      }
    }
  }
}

void BoardBand::draw(Spot corner) const {
  const Canvas::Tag tag{canvas_, "Table"};
  write_heads(corner);
  double y = corner.y_pt + 2 * kHead_pt;
  for (std::size_t row = 0; row < tables_.front().from.size(); ++row) {
    write_row({corner.x_pt, y}, row);
    y += row_height(canvas_, name_of(row));
  }
}

card::MatrixRoom room_in(const Canvas& canvas, const Box& area,
                         const std::vector<std::string>& stations) {
  double row = kRow_pt;
  for (std::size_t station = 0; station < stations.size(); ++station) {
    row = std::max(row, row_height(canvas, row_name(stations, station)));
  }
  const auto whole = [](double value) { return static_cast<std::size_t>(std::max(value, 1.0)); };
  return {.rows = whole((area.height_pt - 2 * kHead_pt) / row),
          .columns = whole((area.width_pt - kName_pt) / kCell_pt)};
}

std::size_t tables_across(double width_pt, std::size_t columns) {
  const double each = table_width(columns) + kBetween_pt;
  return static_cast<std::size_t>(std::max((width_pt - kName_pt + kBetween_pt) / each, 1.0));
}

void draw_row_line(Canvas& canvas, Spot left, std::optional<passage::Verdict> verdict) {
  draw_way(canvas, {left, {left.x_pt + kLine_pt, left.y_pt}}, verdict, LineRoom::row);
}

}  // namespace rimehaul::ports::cairo
