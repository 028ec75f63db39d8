#include "ports/cairo/card_drawing.h"

#include <cairo.h>
#include <pango/pango.h>

#include "card/words.h"
#include "ports/cairo/card_parts.h"

namespace rimehaul::ports::cairo {

namespace {

struct Drawn {
  card::Printed printed;
  int pages = 0;
};

Drawn draw(const card::CardSheet& sheet, int of) {
  const std::string made = units::text_of(sheet.card.made);
  Canvas canvas{Form::pdf, {}, {"Route card: " + sheet.card.title, made}};
  CardPages pages{canvas, sheet, of};
  const Minding minding = draw_front(canvas, sheet, pages);
  pages.next();
  draw_back(canvas, sheet, pages, minding);
  const int count = pages.count();
  return {canvas.finish(), count};
}

}  // namespace

CardPages::CardPages(Canvas& canvas, const card::CardSheet& sheet, int of)
    : canvas_{canvas}, sheet_{sheet}, of_{of} {
  write_foot();
}

Box CardPages::area() const {
  return {kCardMargin_pt, 28, canvas_.size().width_pt - 2 * kCardMargin_pt,
          canvas_.size().height_pt - 28 - 40};
}

Box CardPages::next() {
  canvas_.next_page();
  ++page_;
  write_foot();
  return area();
}

void CardPages::write_foot() {
  const Box body = area();
  const double top = body.bottom_pt() + 5;
  canvas_.line({{body.left_pt, top}, {body.right_pt(), top}}, {.width_pt = 0.6});
  const Canvas::Tag tag{canvas_, "P"};
  canvas_.write({body.left_pt, top + 3},
                {card::words::planning_aid(), {.size_pt = 8, .weight = Weight::bold}, 330});
  const std::string page =
      "card " + sheet_.number + "   page " + std::to_string(page_) + " of " + std::to_string(of_);
  canvas_.write({body.left_pt + 250, top + 3},
                {page, {.size_pt = 8, .align = Align::right}, body.width_pt - 250});
}

std::string with_degree_signs(std::string text) {
  for (std::size_t at = text.find(" deg"); at != std::string::npos;
       at = text.find(" deg", at + 1)) {
    const bool whole_word = at + 4 == text.size() || text[at + 4] != 'r';  // not "degrees"
    if (whole_word) {
      const bool celsius = text.compare(at, 6, " deg C") == 0;
      text.replace(at, celsius ? 5 : 4, celsius ? " \u00b0" : "\u00b0");
    }
  }
  return text;
}

card::Printed draw_card(const card::CardSheet& sheet) {
  const int pages = draw(sheet, 0).pages;
  return draw(sheet, pages).printed;
}

std::string library_version() {
  return std::string{"cairo "} + cairo_version_string() + ", Pango " + pango_version_string();
}

}  // namespace rimehaul::ports::cairo
