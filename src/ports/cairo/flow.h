// Text blocks that flow down columns and on to further pages, so that none is ever cut.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// A heading with lines under it, each opened by a mark.
enum class ItemMark { none, tick_box, dash, warning };

struct TextBlock {
  std::string heading;
  ItemMark mark = ItemMark::none;
  std::vector<std::string> items;
};

/// Columns of equal width on a page.
struct Columns {
  Box area{};
  int count = 1;
  double gap_pt = 16.0;
};

/// Writes blocks one after another down the columns. A heading stays with its first item. When the
/// last column is full `next_page` is asked for more and gives the area of the new page.
class Flow {
 public:
  Flow(Canvas& canvas, const Columns& columns, std::function<Box()> next_page);

  void write(const TextBlock& block);
  /// Keeps room of a height free at the foot of the present column, or of the next one; returns it.
  [[nodiscard]] Box keep(double height_pt);

 private:
  [[nodiscard]] double column_width() const;
  [[nodiscard]] Spot corner() const;
  void make_room(double height_pt);
  void next_column();
  void write_item(const std::string& item, ItemMark mark);
  [[nodiscard]] double item_height(const std::string& item) const;

  Canvas& canvas_;
  Columns columns_;
  std::function<Box()> next_page_;
  int column_ = 0;
  double y_pt_;
};

}  // namespace rimehaul::ports::cairo
