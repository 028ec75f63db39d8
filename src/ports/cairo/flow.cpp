#include "ports/cairo/flow.h"

#include <algorithm>
#include <limits>
#include <optional>
#include <utility>

namespace rimehaul::ports::cairo {

namespace {

constexpr Lettering kHeading{.size_pt = 9.2, .weight = Weight::bold};
constexpr Lettering kItem{.size_pt = 8.0};
constexpr double kIndent_pt = 13.0;
constexpr double kAfterItem_pt = 0.9;
constexpr double kBeforeHeading_pt = 5.0;
constexpr double kAfterHeading_pt = 2.0;
constexpr double kAfterLine_pt = 1.5;
/// What comes first under a heading is at least so high.
constexpr double kUnderHeading_pt = 24.0;

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

void Flow::next_page() {
  column_ = columns_.count - 1;
  next_column();
}

void Flow::make_room(double height_pt) {
  const auto may_go_on = [this] {
    return y_pt_ > columns_.area.top_pt || columns_.area.height_pt < columns_.whole_pt;
  };
  while (y_pt_ + height_pt > columns_.area.bottom_pt() && may_go_on()) {
    next_column();
  }
}

double Flow::item_height(const std::string& item) const {
  return canvas_.height_of({item, kItem, column_width() - kIndent_pt}) + kAfterItem_pt;
}

void Flow::item(const TiedItem& item, ItemMark mark) {
  make_room(item_height(item.text));
  const Canvas::Tag tag{canvas_, "P"};
  const Canvas::Tag place = Canvas::Tag::place(canvas_, item.place);
  const Canvas::Tag link = Canvas::Tag::link(canvas_, item.link);
  draw_mark(canvas_, corner(), mark);
  const double indent_pt = mark == ItemMark::none ? 0.0 : kIndent_pt;
  const Spot at{corner().x_pt + indent_pt, y_pt_};
  y_pt_ += canvas_.write(at, {item.text, kItem, column_width() - indent_pt}) + kAfterItem_pt;
}

void Flow::title(std::string_view text) {
  const Paragraph paragraph{text, {.size_pt = 14.0, .weight = Weight::bold}, column_width()};
  make_room(canvas_.height_of(paragraph));
  const Canvas::Tag tag{canvas_, "H1"};
  y_pt_ += canvas_.write(corner(), paragraph) + kAfterHeading_pt;
}

void Flow::heading(std::string_view text) {
  const Paragraph paragraph{text, kHeading, column_width()};
  const double height_pt = canvas_.height_of(paragraph);
  make_room(kBeforeHeading_pt + height_pt + kUnderHeading_pt);
  if (y_pt_ > columns_.area.top_pt) {
    y_pt_ += kBeforeHeading_pt;
  }
  {
    const Canvas::Tag tag{canvas_, "H2"};
    y_pt_ += canvas_.write(corner(), paragraph);
  }
  canvas_.line({corner(), {corner().x_pt + column_width(), y_pt_}},
               {.width_pt = 0.6, .colour = kInk});
  y_pt_ += kAfterHeading_pt;
}

void Flow::paragraph(std::string_view text, const Lettering& lettering) {
  const Paragraph paragraph{text, lettering, column_width()};
  make_room(canvas_.height_of(paragraph));
  const Canvas::Tag tag{canvas_, "P"};
  y_pt_ += canvas_.write(corner(), paragraph) + kAfterLine_pt;
}

void Flow::labelled(const Labelled& line, double label_width_pt) {
  constexpr double kBetween_pt = 6.0;
  Lettering bold = kRunning;
  bold.weight = Weight::bold;
  const Paragraph label{line.label, bold, label_width_pt - kBetween_pt};
  const Paragraph text{line.text, kRunning, column_width() - label_width_pt};
  const double height_pt = std::max(canvas_.height_of(label), canvas_.height_of(text));
  make_room(height_pt);
  const Canvas::Tag tag{canvas_, "P"};
  canvas_.write(corner(), label);
  canvas_.write({corner().x_pt + label_width_pt, y_pt_}, text);
  y_pt_ += height_pt + kAfterLine_pt;
}

void Flow::write(const TextBlock& block) {
  if (block.items.empty()) {
    return;
  }
  make_room(kBeforeHeading_pt + canvas_.height_of({block.heading, kHeading, column_width()}) +
            item_height(block.items.front()));
  heading(block.heading);
  for (const std::string& text : block.items) {
    item({.text = text}, block.mark);
  }
}

void Flow::table(const std::vector<TableColumn>& columns, const std::vector<TableRow>& rows) {
  const Table table{canvas_, columns};
  make_room(table.head_height() + (rows.empty() ? 0.0 : table.height_of(rows.front())));
  std::optional<Canvas::Tag> tag{std::in_place, canvas_, "Table"};
  y_pt_ = table.write_head(corner());
  for (const TableRow& row : rows) {
    if (y_pt_ + table.height_of(row) > columns_.area.bottom_pt()) {
      tag.reset();  // each part is a table by itself, and a page's foot is in none
      next_column();
      tag.emplace(canvas_, "Table");
      y_pt_ = table.write_head(corner());
    }
    y_pt_ = table.write_row(corner(), row);
  }
}

Box Flow::keep(double height_pt) {
  make_room(height_pt + kBeforeHeading_pt);
  y_pt_ += kBeforeHeading_pt;
  const Box box{corner().x_pt, y_pt_, column_width(), height_pt};
  y_pt_ += height_pt;
  return box;
}

Box endless(Spot corner, double width_pt) {
  return {corner.x_pt, corner.y_pt, width_pt, std::numeric_limits<double>::infinity()};
}

}  // namespace rimehaul::ports::cairo
