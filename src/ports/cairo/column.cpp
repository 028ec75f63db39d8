// Text set one piece below the other, so that a sheet grows with what it has to say.
#include "ports/cairo/column.h"

#include <algorithm>

namespace rimehaul::ports::cairo {

namespace {

constexpr double kBetween_pt = 2.0;
constexpr double kCellGap_pt = 6.0;

}  // namespace

Paragraph Column::in_width(std::string_view text, const Lettering& lettering) const {
  return {.text = text, .lettering = lettering, .width_pt = width_pt()};
}

void Column::make_room(double height_pt) {
  if (place_.bottom_pt && at_pt_ > place_.corner.y_pt && at_pt_ + height_pt > *place_.bottom_pt) {
    canvas_->next_page();
    at_pt_ = place_.corner.y_pt;
  }
}

void Column::title(std::string_view text) {
  const Canvas::Tag tag{*canvas_, "H1"};
  at_pt_ += canvas_->write({left_pt(), at_pt_},
                           in_width(text, {.size_pt = 14.0, .weight = Weight::bold}));
  at_pt_ += kBetween_pt;
}

void Column::heading(std::string_view text) {
  constexpr double kWithItsFirstLines_pt = 50.0;
  make_room(kWithItsFirstLines_pt);
  const Canvas::Tag tag{*canvas_, "H2"};
  at_pt_ += 3 * kBetween_pt;
  at_pt_ += canvas_->write({left_pt(), at_pt_},
                           in_width(text, {.size_pt = 10.0, .weight = Weight::bold}));
  at_pt_ += kBetween_pt;
}

void Column::paragraph(std::string_view text, const Lettering& lettering) {
  const Paragraph paragraph = in_width(text, lettering);
  make_room(canvas_->height_of(paragraph));
  const Canvas::Tag tag{*canvas_, "P"};
  at_pt_ += canvas_->write({left_pt(), at_pt_}, paragraph) + kBetween_pt;
}

void Column::labelled(const Labelled& line, double label_width_pt) {
  const Paragraph label{.text = line.label,
                        .lettering = {.size_pt = kSmallest_pt, .weight = Weight::bold},
                        .width_pt = label_width_pt - kCellGap_pt};
  const Paragraph text{.text = line.text,
                       .lettering = {.size_pt = kSmallest_pt},
                       .width_pt = width_pt() - label_width_pt};
  const double height_pt = std::max(canvas_->height_of(label), canvas_->height_of(text));
  make_room(height_pt);
  const Canvas::Tag tag{*canvas_, "P"};
  canvas_->write({left_pt(), at_pt_}, label);
  canvas_->write({left_pt() + label_width_pt, at_pt_}, text);
  at_pt_ += height_pt + kBetween_pt;
}

void Column::row(const std::vector<Cell>& cells) {
  const auto paragraph_of = [](const Cell& cell) {
    return Paragraph{
        .text = cell.text, .lettering = cell.lettering, .width_pt = cell.width_pt - kCellGap_pt};
  };
  double height_pt = 0.0;
  for (const Cell& cell : cells) {
    height_pt = std::max(height_pt, canvas_->height_of(paragraph_of(cell)));
  }
  make_room(height_pt);
  const Canvas::Tag row{*canvas_, "TR"};
  double across_pt = left_pt();
  for (const Cell& cell : cells) {
    const Canvas::Tag data{*canvas_, "TD"};
    canvas_->write({across_pt, at_pt_}, paragraph_of(cell));
    across_pt += cell.width_pt;
  }
  at_pt_ += height_pt + kBetween_pt;
}

void Column::rule() {
  at_pt_ += kBetween_pt / 2;
  canvas_->line({{left_pt(), at_pt_}, {left_pt() + width_pt(), at_pt_}},
                {.width_pt = 0.6, .colour = kHair});
  at_pt_ += kBetween_pt;
}

}  // namespace rimehaul::ports::cairo
