// Draws the printed card: driving in front; checks, parking, cautions and inputs behind.
#pragma once

#include "card/card_sheet.h"

namespace rimehaul::ports::cairo {

/// The paper that the layout leaves to the map, of a sheet that is whole but for its map.
[[nodiscard]] card::MapPaper card_map_paper(const card::CardSheet& sheet);

/// A4, front and back of one sheet for a route of up to 12 legs; more legs, or names that fold over
/// and over, take more. What is to be minded on a leg stands below it, or where there is no room in
/// a note behind, to which its row points. No text is cut and none is smaller than 8 pt. The map
/// must be made for card_map_paper(). The same sheet gives the same bytes.
[[nodiscard]] card::Printed draw_card(const card::CardSheet& sheet);

/// "cairo 1.16.0, Pango 1.50.12", for cards.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::cairo
