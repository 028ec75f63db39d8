#include "ports/cairo/palette.h"

namespace rimehaul::ports::cairo {

namespace {

/// The share's colour, from none of what is allowed to all of it.
Colour mixed(double part) {
  constexpr Colour kFrom = kIce;
  constexpr Colour kTo = kOpen;
  return {kFrom.red + (kTo.red - kFrom.red) * part, kFrom.green + (kTo.green - kFrom.green) * part,
          kFrom.blue + (kTo.blue - kFrom.blue) * part};
}

}  // namespace

Colour colour_of(double share, ShareScale scale) {
  if (share <= scale.allowed && share >= 0.0) {
    return mixed(scale.allowed > 0.0 ? share / scale.allowed : 1.0);
  }
  return share > scale.allowed ? kClosed : kUnknown;
}

}  // namespace rimehaul::ports::cairo
