// The parts of the printed card, front and back.
#pragma once

#include <string>

#include "card/card_sheet.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

inline constexpr double kCardMargin_pt = 34.0;

/// Pages of a card as they come: gives each its foot, and the area above it.
class CardPages {
 public:
  /// `of`: how many pages there will be, 0 where that is not known yet.
  CardPages(Canvas& canvas, const card::CardSheet& sheet, int of);

  /// The area of the page in hand.
  [[nodiscard]] Box area() const;
  /// Goes to the next page and gives its area.
  Box next();
  [[nodiscard]] int count() const { return page_; }

 private:
  void write_foot();

  Canvas& canvas_;
  const card::CardSheet& sheet_;
  int of_;
  int page_ = 1;
};

/// Whether what is to be minded on a leg stands below it in front, or in a list behind because the
/// front has no room for it.
enum class Minding { in_front, behind };

Minding draw_front(Canvas& canvas, const card::CardSheet& sheet, CardPages& pages);
void draw_back(Canvas& canvas, const card::CardSheet& sheet, CardPages& pages, Minding minding);

/// What is to be minded on a leg, and what lies ahead of its start.
[[nodiscard]] std::string to_mind(const card::CardLeg& leg);

/// Angles as they are printed, "7.2\u00b0" for "7.2 deg".
[[nodiscard]] std::string with_degree_signs(std::string text);

}  // namespace rimehaul::ports::cairo
