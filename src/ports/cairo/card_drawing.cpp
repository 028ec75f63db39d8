#include "ports/cairo/card_drawing.h"

#include <cairo.h>
#include <pango/pango.h>

#include "ports/cairo/card_parts.h"

namespace rimehaul::ports::cairo {

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
  const std::string made = units::text_of(sheet.card.made);
  const CardPlan plan = plan_card(sheet);
  return draw_counted([&](int of) {
    Canvas canvas{Form::pdf, {}, {"Route card: " + sheet.card.title, made}};
    Pages pages{canvas, "card " + sheet.number, of};
    draw_front(canvas, sheet, plan, pages);
    pages.next();
    draw_back(canvas, sheet, plan, pages);
    const int count = pages.close();
    return DrawnPages{canvas.finish(), count};
  });
}

std::string library_version() {
  return std::string{"cairo "} + cairo_version_string() + ", Pango " + pango_version_string();
}

}  // namespace rimehaul::ports::cairo
