// Map and grades on the front of the printed card, and what their signs mean.
#include <algorithm>

#include "card/figures.h"
#include "ports/cairo/card_parts.h"
#include "ports/cairo/map_drawing.h"
#include "ports/cairo/map_key.h"
#include "ports/cairo/profile_drawing.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr double kPointsPerMillimetre = 72.0 / 25.4;
constexpr double kWide_pt = 186 * kPointsPerMillimetre;
constexpr double kNarrow_pt = 82 * kPointsPerMillimetre;
constexpr double kProfile_pt = 96.0;  ///< below the map
constexpr double kBetween_pt = 8.0;
constexpr double kAfter_pt = 5.0;
constexpr Lettering kQuietly{.size_pt = kSmallest_pt, .colour = kQuiet};

double write_profile_key(Canvas& canvas, Spot corner, double width_pt,
                         const card::CardSheet& sheet) {
  const Canvas::Tag tag{canvas, "P"};
  const std::string words = "Height, and grade as steep as it may be (" +
                            card::confidence_text(sheet.card.confidence_k) +
                            " sure). Ticked: the rig's limits in this snow, no cross-slope.";
  return corner.y_pt + canvas.write(corner, {words, kQuietly, width_pt});
}

/// Source and date; the whole list stands behind.
double write_source(Canvas& canvas, Spot corner, const card::CardSheet& sheet) {
  const Canvas::Tag tag{canvas, "P"};
  const auto& notes = sheet.card.heights_notes;
  const std::string words =
      "Heights: " + (notes.empty() ? "not stated" : notes.front()) + ". Chequered: no heights.";
  return corner.y_pt + canvas.write(corner, {words, kQuietly, kWide_pt});
}

void draw_map_figure(Canvas& canvas, const Box& box, const card::CardSheet& sheet) {
  const auto figure = Canvas::Tag::figure(
      canvas, "Map of the route with its numbered legs; the legs are listed in the table.");
  draw_map(canvas, box, sheet.map);
}

void draw_profile_figure(Canvas& canvas, const Box& box, const card::CardSheet& sheet) {
  const auto figure = Canvas::Tag::figure(
      canvas,
      "Height and grade along the route with the rig's limits; the steepest of each leg stands in "
      "the table.");
  draw_profile(canvas, box, sheet.profile);
}

double write_below(Canvas& canvas, Spot corner, const card::CardSheet& sheet, double map_pt) {
  const Box map{corner.x_pt, corner.y_pt, kWide_pt, map_pt};
  draw_map_figure(canvas, map, sheet);
  double y = draw_map_key(canvas, {corner.x_pt, map.bottom_pt() + 1}, kWide_pt);
  y = write_source(canvas, {corner.x_pt, y}, sheet);
  draw_profile_figure(canvas, {corner.x_pt, y, kWide_pt, kProfile_pt}, sheet);
  return write_profile_key(canvas, {corner.x_pt, y + kProfile_pt}, kWide_pt, sheet) + kAfter_pt;
}

double write_beside(Canvas& canvas, Spot corner, const card::CardSheet& sheet, double map_pt) {
  const Box map{corner.x_pt, corner.y_pt, kNarrow_pt, map_pt};
  draw_map_figure(canvas, map, sheet);
  const double map_end = draw_map_key(canvas, {corner.x_pt, map.bottom_pt() + 1}, kNarrow_pt);
  const Box profile{map.right_pt() + kBetween_pt, corner.y_pt, kWide_pt - kNarrow_pt - kBetween_pt,
                    map_pt};
  draw_profile_figure(canvas, profile, sheet);
  const double profile_end = write_profile_key(canvas, {profile.left_pt, profile.bottom_pt() + 1},
                                               profile.width_pt, sheet);
  return write_source(canvas, {corner.x_pt, std::max(map_end, profile_end)}, sheet) + kAfter_pt;
}

}  // namespace

double map_width_pt(FigurePlace place) {
  return place == FigurePlace::side_by_side ? kNarrow_pt : kWide_pt;
}

double write_figures(Canvas& canvas, Spot corner, const card::CardSheet& sheet,
                     const CardPlan& plan) {
  return plan.figures == FigurePlace::side_by_side
             ? write_beside(canvas, corner, sheet, plan.map_pt)
             : write_below(canvas, corner, sheet, plan.map_pt);
}

double figures_beside_map_pt(Canvas& trial, const card::CardSheet& sheet, FigurePlace place) {
  if (place == FigurePlace::side_by_side) {
    const double map = draw_map_key(trial, {0, 1}, kNarrow_pt);
    const double profile =
        write_profile_key(trial, {0, 1}, kWide_pt - kNarrow_pt - kBetween_pt, sheet);
    return write_source(trial, {0, std::max(map, profile)}, sheet) + kAfter_pt;
  }
  const double map = write_source(trial, {0, draw_map_key(trial, {0, 1}, kWide_pt)}, sheet);
  return write_profile_key(trial, {0, map + kProfile_pt}, kWide_pt, sheet) + kAfter_pt;
}

}  // namespace rimehaul::ports::cairo
