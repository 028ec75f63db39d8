// Draws the printed card: driving in front; checks, parking, cautions and inputs behind.
#pragma once

#include "card/card_sheet.h"

namespace rimehaul::ports::cairo {

/// A4, two pages for a route of up to 12 legs; more legs take more pages. No text is cut and none
/// is smaller than 8 pt. The same sheet gives the same bytes.
[[nodiscard]] card::Printed draw_card(const card::CardSheet& sheet);

/// "cairo 1.16.0, Pango 1.50.12", for cards.
[[nodiscard]] std::string library_version();

}  // namespace rimehaul::ports::cairo
