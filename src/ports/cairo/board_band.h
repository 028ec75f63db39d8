// Tables of the day board drawn side by side, rows of stations shared between them.
#pragma once

#include <span>

#include "card/board_matrix.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// Tables of the same stations, as many as stand beside each other.
class BoardBand {
 public:
  /// Holds references: canvas, stations and tables must outlive it.
  BoardBand(Canvas& canvas, const std::vector<std::string>& stations,
            std::span<const card::BoardMatrix> tables);

  [[nodiscard]] double width() const;
  [[nodiscard]] double height() const;
  /// Where the table of that index would begin, also one more than there are.
  [[nodiscard]] double left_of(std::size_t table) const;
  void draw(Spot corner) const;

 private:
  void write_heads(Spot corner) const;
  void write_row(Spot corner, std::size_t row) const;
  [[nodiscard]] std::string name_of(std::size_t row) const;

  Canvas& canvas_;
  const std::vector<std::string>& stations_;
  std::span<const card::BoardMatrix> tables_;
};

/// How many rows and columns of one table there is room for in a page's area, whichever of these
/// stations they are.
[[nodiscard]] card::MatrixRoom room_in(const Canvas& canvas, const Box& area,
                                       const std::vector<std::string>& stations);
/// How many tables with so many columns stand beside each other in a width; 1 at least.
[[nodiscard]] std::size_t tables_across(double width_pt, std::size_t columns);

/// A verdict's line, short: solid, long dashes, double with cross ticks, grey dots.
void draw_row_line(Canvas& canvas, Spot left, std::optional<passage::Verdict> verdict);

}  // namespace rimehaul::ports::cairo
