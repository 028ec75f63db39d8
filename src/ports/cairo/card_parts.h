// The parts of the printed card, front and back.
#pragma once

#include <string>
#include <vector>

#include "card/card_sheet.h"
#include "ports/cairo/pages.h"
#include "ports/cairo/table.h"

namespace rimehaul::ports::cairo {

/// How much of what is to be minded on a leg stands below it in front. The rest stands behind, as a
/// note of the leg's number to which the leg's row points.
enum class LegNotes { in_front, warnings_in_front, behind };

/// How map and grades stand on the front: the grades below a map as wide as the sheet, or to the
/// right of a narrower one.
enum class FigurePlace { one_below_the_other, side_by_side };

/// How a card shares out the front of its sheet.
struct CardPlan {
  std::vector<LegNotes> notes;  ///< by leg
  FigurePlace figures = FigurePlace::one_below_the_other;
  double map_pt = 0.0;  ///< height of the map; its width goes by its place
};

[[nodiscard]] double map_width_pt(FigurePlace place);

/// As many notes in front as there is room for, warnings before all else, the map being as low as
/// it may be; then the map takes what is left. A card of more than 12 legs takes more sheets
/// whatever is done, so all its notes stand with their legs. All of the sheet but the map is asked.
[[nodiscard]] CardPlan plan_card(const card::CardSheet& sheet);

/// Title, verdict and facts; returns where they end.
double write_head(Canvas& canvas, const Box& body, const card::CardSheet& sheet);
/// Map and grades with what their signs mean; returns where they end.
double write_figures(Canvas& canvas, Spot corner, const card::CardSheet& sheet,
                     const CardPlan& plan);
/// What they take beside the height of the map.
[[nodiscard]] double figures_beside_map_pt(Canvas& trial, const card::CardSheet& sheet,
                                           FigurePlace place);

[[nodiscard]] std::vector<TableColumn> leg_columns(double width_pt);
[[nodiscard]] TableRow leg_row(const card::CardLeg& leg, LegNotes notes);
/// What stands behind of a leg; empty: nothing.
[[nodiscard]] std::string note_behind(const card::CardLeg& leg, LegNotes notes);
/// What links call a leg's row and its note.
[[nodiscard]] std::string row_place(const card::CardLeg& leg);
[[nodiscard]] std::string note_place(const card::CardLeg& leg);

void draw_front(Canvas& canvas, const card::CardSheet& sheet, const CardPlan& plan, Pages& pages);
void draw_back(Canvas& canvas, const card::CardSheet& sheet, const CardPlan& plan, Pages& pages);

}  // namespace rimehaul::ports::cairo
