#include "ports/cairo/way_line.h"

#include <cmath>

namespace rimehaul::ports::cairo {

namespace {

/// Ticks across a line, every so many points along it.
struct Ticks {
  double every_pt = 0.0;
  double half_pt = 0.0;
  double width_pt = 0.0;
};

struct LineLook {
  Stroke paper;  ///< around the line, to part it from what lies below
  Stroke unknown;
  Stroke open;
  Stroke restricted;
  Stroke closed;
  Stroke between;  ///< the two sides of what is closed
  Ticks ticks;
};

const LineLook& look_in(LineRoom room) {
  static const LineLook on_map{
      .paper = {.width_pt = 4.6, .colour = kPaper},
      .unknown = {.width_pt = 2.0, .colour = kUnknown, .dashes_pt = {1.6, 3.0}},
      .open = {.width_pt = 2.6, .colour = kOpen},
      .restricted = {.width_pt = 2.6, .colour = kRestricted, .dashes_pt = {9.0, 3.5}},
      .closed = {.width_pt = 3.6, .colour = kClosed},
      .between = {.width_pt = 1.6, .colour = kPaper},
      .ticks = {.every_pt = 9.0, .half_pt = 3.4, .width_pt = 1.0}};
  static const LineLook in_row{
      .paper = {.width_pt = 2.8, .colour = kPaper},
      .unknown = {.width_pt = 1.6, .colour = kUnknown, .dashes_pt = {1.4, 2.6}},
      .open = {.width_pt = 2.0, .colour = kOpen},
      .restricted = {.width_pt = 2.0, .colour = kRestricted, .dashes_pt = {6.5, 2.4}},
      .closed = {.width_pt = 2.8, .colour = kClosed},
      .between = {.width_pt = 1.2, .colour = kPaper},
      .ticks = {.every_pt = 6.0, .half_pt = 2.2, .width_pt = 0.9}};
  return room == LineRoom::map ? on_map : in_row;
}

void draw_ticks(Canvas& canvas, const std::vector<Spot>& spots, const Ticks& ticks) {
  double next_pt = ticks.every_pt / 2;
  double before_pt = 0.0;
  for (std::size_t i = 1; i < spots.size(); ++i) {
    const double x = spots[i].x_pt - spots[i - 1].x_pt;
    const double y = spots[i].y_pt - spots[i - 1].y_pt;
    const double length = std::hypot(x, y);
    while (length > 0.0 && next_pt <= before_pt + length) {
      const double part = (next_pt - before_pt) / length;
      const Spot at{spots[i - 1].x_pt + x * part, spots[i - 1].y_pt + y * part};
      const double aside_x = -y / length * ticks.half_pt;
      const double aside_y = x / length * ticks.half_pt;
      canvas.line({{at.x_pt - aside_x, at.y_pt - aside_y}, {at.x_pt + aside_x, at.y_pt + aside_y}},
                  {.width_pt = ticks.width_pt, .colour = kClosed});
      next_pt += ticks.every_pt;
    }
    before_pt += length;
  }
}

/// Dark edges keep the palest share apart from snow and paper.
void draw_open(Canvas& canvas, const std::vector<Spot>& spots, Colour inside, double width_pt) {
  canvas.line(spots, {.width_pt = width_pt + 2.6, .colour = kPaper});
  canvas.line(spots, {.width_pt = width_pt, .colour = kOpen});
  canvas.line(spots, {.width_pt = width_pt - 1.2, .colour = inside});
}

}  // namespace

void draw_way(Canvas& canvas, const std::vector<Spot>& spots,
              std::optional<passage::Verdict> verdict, LineRoom room) {
  const LineLook& look = look_in(room);
  canvas.line(spots, look.paper);
  if (!verdict) {
    canvas.line(spots, look.unknown);
    return;
  }
  switch (*verdict) {
    case passage::Verdict::open:
      canvas.line(spots, look.open);
      return;
    case passage::Verdict::restricted:
      canvas.line(spots, look.restricted);
      return;
    case passage::Verdict::closed:
      canvas.line(spots, look.closed);
      canvas.line(spots, look.between);
      draw_ticks(canvas, spots, look.ticks);
      return;
  }
}

void draw_share(Canvas& canvas, const std::vector<Spot>& spots, const ShareOnLine& line) {
  switch (line.band) {
    case audit::Band::to_half:
      draw_open(canvas, spots, colour_of(line.share.value_or(0.0), line.scale), 2.4);
      return;
    case audit::Band::to_allowed:
      draw_open(canvas, spots, colour_of(line.share.value_or(0.0), line.scale), 4.0);
      return;
    case audit::Band::to_whole:
      canvas.line(spots, {.width_pt = 5.2, .colour = kPaper});
      canvas.line(spots, {.width_pt = 3.2, .colour = kClosed, .dashes_pt = {9.0, 3.5}});
      return;
    case audit::Band::over_whole:
      draw_way(canvas, spots, passage::Verdict::closed);
      return;
    case audit::Band::closed:
      draw_way(canvas, spots, std::nullopt);
      return;
  }
}

}  // namespace rimehaul::ports::cairo
