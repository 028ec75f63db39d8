// Marks of a drawing to scale: centres of gravity and lengths between end strokes.
#pragma once

#include "ports/cairo/canvas.h"
#include "units/quantities.h"

namespace rimehaul::ports::cairo {

/// Radius of a centre of gravity on paper.
inline constexpr double kSymbol_pt = 5.5;

/// Whether a spot is known.
[[nodiscard]] bool is_place(Spot spot);

enum class Filling { quartered, hollow };

/// Centre of gravity: a disc in quarters, or hollow for the empty rig. Nothing where it is unknown.
void draw_centre(Canvas& canvas, Spot middle, Filling filling);

/// A line with end strokes and its length, level or upright.
struct Dimension {
  Spot from;
  Spot to;
  units::Metres length;
};
void draw_dimension(Canvas& canvas, const Dimension& dimension);

}  // namespace rimehaul::ports::cairo
