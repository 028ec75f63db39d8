// The legend of a board: the verdicts' lines beside their words, and what its figures are.
#pragma once

#include "ports/cairo/flow.h"

namespace rimehaul::ports::cairo {

/// One line of the flow's width.
void write_verdict_legend(Canvas& canvas, Flow& flow);

}  // namespace rimehaul::ports::cairo
