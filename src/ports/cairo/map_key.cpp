#include "ports/cairo/map_key.h"

#include <array>
#include <functional>

#include "ports/cairo/way_line.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr Lettering kSmall{.size_pt = kSmallest_pt};
constexpr double kLine_pt = 11.0;

/// A sign, drawn in a width around the middle of its line, and what it means.
struct KeyEntry {
  double sign_pt;
  std::function<void(Canvas&, Spot middle)> draw;
  const char* words;
};

std::function<void(Canvas&, Spot)> place(card::PlaceKind kind) {
  return [kind](Canvas& canvas, Spot middle) { draw_place(canvas, middle, kind); };
}

std::function<void(Canvas&, Spot)> way(std::optional<passage::Verdict> verdict) {
  return [verdict](Canvas& canvas, Spot middle) {
    draw_way(canvas, {{middle.x_pt - 13, middle.y_pt}, {middle.x_pt + 13, middle.y_pt}}, verdict);
  };
}

void other_trail(Canvas& canvas, Spot middle) {
  canvas.line({{middle.x_pt - 8, middle.y_pt}, {middle.x_pt + 8, middle.y_pt}},
              {.width_pt = 0.9, .colour = kQuiet});
}

}  // namespace

void draw_place(Canvas& canvas, Spot at, card::PlaceKind kind) {
  const Stroke edge{.width_pt = 1.2, .colour = kInk};
  switch (kind) {
    case card::PlaceKind::station:
      canvas.box({at.x_pt - 3, at.y_pt - 3, 6, 6}, kInk, {.width_pt = 1.0, .colour = kPaper});
      return;
    case card::PlaceKind::refuge:
      canvas.area({{at.x_pt - 4, at.y_pt + 3.5},
                   {at.x_pt - 4, at.y_pt - 1},
                   {at.x_pt, at.y_pt - 4.5},
                   {at.x_pt + 4, at.y_pt - 1},
                   {at.x_pt + 4, at.y_pt + 3.5}},
                  kPaper, edge);
      return;
    case card::PlaceKind::turning_room:
      canvas.disc(at, 3.2, kPaper, edge);
      return;
    case card::PlaceKind::notice:
      canvas.area({{at.x_pt, at.y_pt - 4}, {at.x_pt + 4, at.y_pt + 3}, {at.x_pt - 4, at.y_pt + 3}},
                  kPaper, edge);
      return;
  }
}

double draw_map_key(Canvas& canvas, Spot corner, double width_pt) {
  const std::array<KeyEntry, 6> entries{
      KeyEntry{8, place(card::PlaceKind::station), "station"},
      KeyEntry{10, place(card::PlaceKind::refuge), "refuge"},
      KeyEntry{9, place(card::PlaceKind::turning_room), "room to turn"},
      KeyEntry{28, way(passage::Verdict::open), "open"},
      KeyEntry{28, way(passage::Verdict::restricted), "restricted"},
      KeyEntry{18, other_trail, "other trail"}};
  const Canvas::Tag tag{canvas, "P"};
  Spot at = corner;
  for (const KeyEntry& entry : entries) {
    const double words_pt = canvas.width_of(entry.words, kSmall);
    if (at.x_pt + entry.sign_pt + words_pt + 4 > corner.x_pt + width_pt) {
      at = {corner.x_pt, at.y_pt + kLine_pt};
    }
    entry.draw(canvas, {at.x_pt + entry.sign_pt / 2, at.y_pt + kLine_pt / 2});
    canvas.write({at.x_pt + entry.sign_pt + 3, at.y_pt}, {entry.words, kSmall, words_pt + 2});
    at.x_pt += entry.sign_pt + words_pt + 13;
  }
  return at.y_pt + kLine_pt;
}

}  // namespace rimehaul::ports::cairo
