// Lines of ways, by verdict and by share of the limit: told by the line first, by colour second.
#pragma once

#include <optional>
#include <vector>

#include "audit/audited_place.h"
#include "passage/judgement.h"
#include "ports/cairo/canvas.h"

namespace rimehaul::ports::cairo {

/// Where a line stands: on a map, apart from what is below it, or in the row of a table.
enum class LineRoom { map, row };

/// How a verdict's line looks: open solid teal, restricted long dashes in ochre, closed a double
/// line with cross ticks in plum, unknown grey dots.
void draw_way(Canvas& canvas, const std::vector<Spot>& spots,
              std::optional<passage::Verdict> verdict, LineRoom room = LineRoom::map);

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
