// Draws a stretch of trail by its share of the limit: told by its line first, by colour second.
#pragma once

#include <optional>
#include <vector>

#include "audit/audited_place.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

struct ShareOnLine {
  audit::Band band = audit::Band::closed;
  std::optional<double> share;
  ShareScale scale;
};

/// Open: a solid line with dark edges, paler inside the smaller the share, and wider from 50 % on.
/// Over the allowed share: long dashes in plum. Over 100 %: the double line with cross ticks of
/// what is closed. Closed by rule or unknown: grey dots.
void draw_share(Canvas& canvas, const std::vector<Spot>& spots, const ShareOnLine& line);

}  // namespace rimehaul::ports::cairo
