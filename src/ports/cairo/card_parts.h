// The parts of the printed card, front and back.
#pragma once

#include <string>

#include "card/card_sheet.h"
#include "ports/cairo/pages.h"

namespace rimehaul::ports::cairo {

/// Whether what is to be minded on a leg stands below it in front, or in a list behind because the
/// front has no room for it.
enum class Minding { in_front, behind };

Minding draw_front(Canvas& canvas, const card::CardSheet& sheet, Pages& pages);
void draw_back(Canvas& canvas, const card::CardSheet& sheet, Pages& pages, Minding minding);

/// What is to be minded on a leg, and what lies ahead of its start.
[[nodiscard]] std::string to_mind(const card::CardLeg& leg);

/// Angles as they are printed, "7.2\u00b0" for "7.2 deg".
[[nodiscard]] std::string with_degree_signs(std::string text);

}  // namespace rimehaul::ports::cairo
