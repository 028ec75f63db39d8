// Marks of a drawing to scale: centres of gravity and lengths between end strokes.
#include "ports/cairo/drawing_marks.h"

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "units/rounding.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr Lettering kSmall{.size_pt = kSmallest_pt};

std::string metres_text(units::Metres length) {
  return units::text_of(length.value(), 2, units::Round::nearest) + " m";
}

}  // namespace

bool is_place(Spot spot) {
  return std::isfinite(spot.x_pt) && std::isfinite(spot.y_pt);
}

void draw_centre(Canvas& canvas, Spot middle, Filling filling) {
  if (!is_place(middle)) {
    return;
  }
  canvas.disc(middle, kSymbol_pt, kPaper, {.width_pt = 1.0});
  if (filling == Filling::hollow) {
    canvas.line({{middle.x_pt - 2.5, middle.y_pt}, {middle.x_pt + 2.5, middle.y_pt}},
                {.width_pt = 0.8});
    canvas.line({{middle.x_pt, middle.y_pt - 2.5}, {middle.x_pt, middle.y_pt + 2.5}},
                {.width_pt = 0.8});
    return;
  }
  for (const double from : {0.0, 180.0}) {
    std::vector<Spot> wedge{middle};
    for (int step = 0; step <= 9; ++step) {
      const double turn = (from + 10.0 * step) / 180.0 * std::numbers::pi;
      wedge.push_back(
          {middle.x_pt + kSymbol_pt * std::cos(turn), middle.y_pt + kSymbol_pt * std::sin(turn)});
    }
    canvas.area(wedge, kInk);
  }
}

void draw_dimension(Canvas& canvas, const Dimension& dimension) {
  const Stroke thin{.width_pt = 0.6};
  const bool level = std::abs(dimension.from.y_pt - dimension.to.y_pt) < 0.1;
  canvas.line({dimension.from, dimension.to}, thin);
  for (const Spot& end : {dimension.from, dimension.to}) {
    const double across = level ? 0.0 : 3.0;
    const double along = level ? 3.0 : 0.0;
    canvas.line({{end.x_pt - across, end.y_pt - along}, {end.x_pt + across, end.y_pt + along}},
                thin);
  }
  const Spot middle{(dimension.from.x_pt + dimension.to.x_pt) / 2,
                    (dimension.from.y_pt + dimension.to.y_pt) / 2};
  const std::string text = metres_text(dimension.length);
  const double width_pt = canvas.width_of(text, kSmall);
  canvas.box({middle.x_pt - width_pt / 2 - 2.0, middle.y_pt - 5.0, width_pt + 4.0, 10.0}, kPaper);
  canvas.label(middle, text, kSmall);
}

}  // namespace rimehaul::ports::cairo
