// Text set one piece below the other, so that a sheet grows with what it has to say.
#include "ports/cairo/column.h"

#include <algorithm>

namespace rimehaul::ports::cairo {

namespace {

constexpr double kBetween_pt = 2.0;
constexpr double kCellGap_pt = 6.0;

}  // namespace

void Column::title(std::string_view text) {
  const Canvas::Tag tag{*canvas_, "H1"};
  at_pt_ +=
      canvas_->write({left_pt(), at_pt_}, {.text = text,
                                           .lettering = {.size_pt = 14.0, .weight = Weight::bold},
                                           .width_pt = width_pt()});
  at_pt_ += kBetween_pt;
}

void Column::heading(std::string_view text) {
  const Canvas::Tag tag{*canvas_, "H2"};
  at_pt_ += 3 * kBetween_pt;
  at_pt_ +=
      canvas_->write({left_pt(), at_pt_}, {.text = text,
                                           .lettering = {.size_pt = 10.0, .weight = Weight::bold},
                                           .width_pt = width_pt()});
  at_pt_ += kBetween_pt;
}

void Column::paragraph(std::string_view text, const Lettering& lettering) {
  const Canvas::Tag tag{*canvas_, "P"};
  at_pt_ += canvas_->write({left_pt(), at_pt_},
                           {.text = text, .lettering = lettering, .width_pt = width_pt()});
  at_pt_ += kBetween_pt;
}

void Column::labelled(const Labelled& line, double label_width_pt) {
  const Canvas::Tag tag{*canvas_, "P"};
  const Lettering bold{.size_pt = kSmallest_pt, .weight = Weight::bold};
  const double label_pt = canvas_->write(
      {left_pt(), at_pt_},
      {.text = line.label, .lettering = bold, .width_pt = label_width_pt - kCellGap_pt});
  const double text_pt = canvas_->write({left_pt() + label_width_pt, at_pt_},
                                        {.text = line.text,
                                         .lettering = {.size_pt = kSmallest_pt},
                                         .width_pt = width_pt() - label_width_pt});
  at_pt_ += std::max(label_pt, text_pt) + kBetween_pt;
}

void Column::row(const std::vector<Cell>& cells) {
  const Canvas::Tag row{*canvas_, "TR"};
  double across_pt = left_pt();
  double height_pt = 0.0;
  for (const Cell& cell : cells) {
    const Canvas::Tag data{*canvas_, "TD"};
    height_pt = std::max(
        height_pt, canvas_->write({across_pt, at_pt_}, {.text = cell.text,
                                                        .lettering = cell.lettering,
                                                        .width_pt = cell.width_pt - kCellGap_pt}));
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
