#include "ports/cairo/flow.h"

#include <utility>

namespace rimehaul::ports::cairo {

namespace {

const Lettering kHeading{.size_pt = 9.2, .weight = Weight::bold};
const Lettering kItem{.size_pt = 8.0};
constexpr double kIndent_pt = 13.0;
constexpr double kAfterItem_pt = 0.9;
constexpr double kBeforeHeading_pt = 5.0;
constexpr double kAfterHeading_pt = 2.0;

void draw_mark(Canvas& canvas, Spot at, ItemMark mark) {
  switch (mark) {
    case ItemMark::none:
      return;
    case ItemMark::tick_box:
      canvas.box({at.x_pt, at.y_pt + 1.6, 7.5, 7.5}, kPaper, {.width_pt = 0.8, .colour = kInk});
      return;
    case ItemMark::dash:
      canvas.line({{at.x_pt + 1, at.y_pt + 5.4}, {at.x_pt + 7, at.y_pt + 5.4}}, {.width_pt = 1.0});
      return;
    case ItemMark::warning:
      canvas.area(
          {{at.x_pt + 4, at.y_pt + 1.2}, {at.x_pt + 8, at.y_pt + 9}, {at.x_pt, at.y_pt + 9}},
          kPaper, {.width_pt = 0.9});
      canvas.line({{at.x_pt + 4, at.y_pt + 4}, {at.x_pt + 4, at.y_pt + 6.6}}, {.width_pt = 0.9});
      canvas.disc({at.x_pt + 4, at.y_pt + 7.7}, 0.5, kInk);
      return;
  }
}

}  // namespace

Flow::Flow(Canvas& canvas, const Columns& columns, std::function<Box()> next_page)
    : canvas_{canvas},
      columns_{columns},
      next_page_{std::move(next_page)},
      y_pt_{columns.area.top_pt} {}

double Flow::column_width() const {
  return (columns_.area.width_pt - columns_.gap_pt * (columns_.count - 1)) / columns_.count;
}

Spot Flow::corner() const {
  return {columns_.area.left_pt + column_ * (column_width() + columns_.gap_pt), y_pt_};
}

void Flow::next_column() {
  ++column_;
  if (column_ == columns_.count) {
    columns_.area = next_page_();
    column_ = 0;
  }
  y_pt_ = columns_.area.top_pt;
}

void Flow::make_room(double height_pt) {
  const bool at_top = y_pt_ <= columns_.area.top_pt;
  if (!at_top && y_pt_ + height_pt > columns_.area.bottom_pt()) {
    next_column();
  }
}

double Flow::item_height(const std::string& item) const {
  return canvas_.height_of({item, kItem, column_width() - kIndent_pt}) + kAfterItem_pt;
}

void Flow::write_item(const std::string& item, ItemMark mark) {
  make_room(item_height(item));
  const Canvas::Tag tag{canvas_, "P"};
  draw_mark(canvas_, corner(), mark);
  const double indent_pt = mark == ItemMark::none ? 0.0 : kIndent_pt;
  const Spot at{corner().x_pt + indent_pt, y_pt_};
  y_pt_ += canvas_.write(at, {item, kItem, column_width() - indent_pt}) + kAfterItem_pt;
}

void Flow::write(const TextBlock& block) {
  if (block.items.empty()) {
    return;
  }
  const double heading_pt = canvas_.height_of({block.heading, kHeading, column_width()});
  make_room(kBeforeHeading_pt + heading_pt + item_height(block.items.front()));
  if (y_pt_ > columns_.area.top_pt) {
    y_pt_ += kBeforeHeading_pt;
  }
  {
    const Canvas::Tag tag{canvas_, "H2"};
    y_pt_ += canvas_.write(corner(), {block.heading, kHeading, column_width()});
  }
  canvas_.line({corner(), {corner().x_pt + column_width(), y_pt_}},
               {.width_pt = 0.6, .colour = kInk});
  y_pt_ += kAfterHeading_pt;
  for (const std::string& item : block.items) {
    write_item(item, block.mark);
  }
}

Box Flow::keep(double height_pt) {
  make_room(height_pt + kBeforeHeading_pt);
  y_pt_ += kBeforeHeading_pt;
  const Box box{corner().x_pt, y_pt_, column_width(), height_pt};
  y_pt_ += height_pt;
  return box;
}

}  // namespace rimehaul::ports::cairo
