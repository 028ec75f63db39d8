// The front of the printed card: verdict, map, grades and legs, for driving by.
#include "ports/cairo/card_parts.h"
#include "ports/cairo/flow.h"

namespace rimehaul::ports::cairo {

void draw_front(Canvas& canvas, const card::CardSheet& sheet, const CardPlan& plan, Pages& pages) {
  const Box body = pages.area();
  const double head = write_head(canvas, body, sheet);
  const double legs = write_figures(canvas, {body.left_pt, head}, sheet, plan);
  Flow flow{canvas,
            {.area = {body.left_pt, legs, body.width_pt, body.bottom_pt() - legs}},
            [&pages] { return pages.next(); }};
  std::vector<TableRow> rows;
  for (std::size_t i = 0; i < sheet.card.legs.size(); ++i) {
    rows.push_back(leg_row(sheet.card.legs[i], plan.notes[i]));
  }
  flow.table(leg_columns(body.width_pt), rows);
}

}  // namespace rimehaul::ports::cairo
