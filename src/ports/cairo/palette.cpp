#include "ports/cairo/palette.h"

namespace rimehaul::ports::cairo {

namespace {

Colour between(Colour from, Colour to, double part) {
  return {from.red + (to.red - from.red) * part, from.green + (to.green - from.green) * part,
          from.blue + (to.blue - from.blue) * part};
}

}  // namespace

Colour colour_of(double share, ShareScale scale) {
  if (share <= scale.allowed && share >= 0.0) {
    return between(kIce, kOpen, scale.allowed > 0.0 ? share / scale.allowed : 1.0);
  }
  return share > scale.allowed ? kClosed : kUnknown;
}

}  // namespace rimehaul::ports::cairo
