// Symbols of places on a map, and the key that says what symbols and lines mean.
#pragma once

#include "card/map_view.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// A station is a square, a refuge a house, room to turn an open ring, a notice a triangle.
void draw_place(Canvas& canvas, Spot at, card::PlaceKind kind);

/// The key of a card's map, folded at a width; returns where it ends.
double draw_map_key(Canvas& canvas, Spot corner, double width_pt);

}  // namespace rimehaul::ports::cairo
