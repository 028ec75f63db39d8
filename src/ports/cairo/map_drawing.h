// Draws a map: pale hillshade, ways told apart by their lines, numbers, names, scale bar and north.
#pragma once

#include "card/map_view.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// Draws the map into a box whose sides are those of the paper that the map was made for.
void draw_map(Canvas& canvas, const Box& box, const card::MapView& map);

}  // namespace rimehaul::ports::cairo
