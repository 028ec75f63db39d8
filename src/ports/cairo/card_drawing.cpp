#include "ports/cairo/card_drawing.h"

#include <cairo.h>
#include <pango/pango.h>

#include "ports/cairo/card_parts.h"

namespace rimehaul::ports::cairo {

card::Printed draw_card(const card::CardSheet& sheet) {
  const std::string made = units::text_of(sheet.card.made_from.made);
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
