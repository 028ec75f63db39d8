// The rig to scale: from above with its support and centres of gravity, and from the side.
#include "ports/cairo/rig_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "ports/cairo/drawing_marks.h"

namespace rimehaul::ports::cairo {

namespace {

using units::Metres;

constexpr double kTextRow_pt = 13.0;
constexpr double kBesides_pt = 70.0;  ///< room for words beside the drawing
constexpr double kMargins_pt = 6.0 * kTextRow_pt;
constexpr Lettering kSmall{.size_pt = kSmallest_pt};

/// How much further back than the carrier's the trailer's own zero lies.
Metres lag_of(const card::RigSheet& sheet) {
  return sheet.hitch ? sheet.hitch->ahead_of_trailer - sheet.hitch->on_carrier.forward : Metres{0};
}

/// What a drawing must hold, in the carrier's metres.
struct Extent {
  Metres rear{0};
  Metres front{0};
  Metres half_width{0};
  Metres top{0};
};

void widen(Extent& extent, const card::SheetBody& body, Metres lag) {
  for (const rig::SupportPoint& corner : body.support) {
    extent.rear = std::min(extent.rear, corner.forward - lag);
    extent.front = std::max(extent.front, corner.forward - lag);
    extent.half_width = std::max({extent.half_width, corner.left, -corner.left});
  }
  extent.front = std::max(extent.front, body.contact_length - lag);
  extent.half_width = std::max({extent.half_width, body.gauge / 2.0, body.overall_width / 2.0});
  for (const rig::BodyPoint& centre : {body.as_loaded.centre, body.empty.centre}) {
    if (std::isfinite(centre.up.value())) {
      extent.top = std::max(extent.top, centre.up);
    }
  }
}

Extent extent_of(const card::RigSheet& sheet) {
  Extent extent;
  widen(extent, sheet.carrier, Metres{0});
  if (sheet.trailer) {
    widen(extent, *sheet.trailer, lag_of(sheet));
  }
  return extent;
}

/// A place on a body seen from the side.
struct SidePoint {
  Metres forward;
  Metres up;
};

/// One body on paper, seen from above or from the side.
class View {
 public:
  View(Spot zero, const DrawingScale& scale) : zero_{zero}, scale_{&scale} {}

  [[nodiscard]] Spot above(const rig::SupportPoint& point) const {
    return {zero_.x_pt + scale_->pt(point.forward), zero_.y_pt - scale_->pt(point.left)};
  }
  [[nodiscard]] Spot beside(const SidePoint& point) const {
    return {zero_.x_pt + scale_->pt(point.forward), zero_.y_pt - scale_->pt(point.up)};
  }

 private:
  Spot zero_;
  const DrawingScale* scale_;
};

/// Runners or tracks as far as the sheet tells them: two of equal width that make up the area.
void draw_tracks(Canvas& canvas, const View& view, const card::SheetBody& body) {
  const Metres width{body.contact_area.value() / body.contact_length.value() / 2.0};
  const Metres half = body.gauge / 2.0;
  if (!(width > Metres{0}) || !(width <= half)) {
    return;
  }
  for (const double side : {1.0, -1.0}) {
    canvas.area({view.above({{}, half * side}), view.above({body.contact_length, half * side}),
                 view.above({body.contact_length, (half - width) * side}),
                 view.above({{}, (half - width) * side})},
                kHair);
  }
}

void draw_support(Canvas& canvas, const View& view, const card::SheetBody& body) {
  std::vector<Spot> corners;
  for (const rig::SupportPoint& corner : body.support) {
    corners.push_back(view.above(corner));
  }
  if (corners.size() >= 3 && std::ranges::all_of(corners, is_place)) {
    canvas.area(corners, kIce, {.width_pt = 1.6, .colour = kOpen});
  }
}

enum class Tracks { unknown, two };

void draw_body_from_above(Canvas& canvas, const View& view, const card::SheetBody& body,
                          Tracks tracks) {
  draw_support(canvas, view, body);
  if (tracks == Tracks::two) {
    draw_tracks(canvas, view, body);
    std::vector<Spot> corners;
    for (const rig::SupportPoint& corner : body.support) {
      corners.push_back(view.above(corner));
    }
    if (!corners.empty()) {
      corners.push_back(corners.front());
      canvas.line(corners, {.width_pt = 1.6, .colour = kOpen});
    }
  }
  const rig::BodyPoint& empty = body.empty.centre;
  const rig::BodyPoint& loaded = body.as_loaded.centre;
  draw_centre(canvas, view.above({empty.forward, empty.left}), Filling::hollow);
  draw_centre(canvas, view.above({loaded.forward, loaded.left}), Filling::quartered);
}

/// Length of the contact under the drawing.
void draw_length(Canvas& canvas, const View& view, const card::SheetBody& body, double y_pt) {
  const double from_pt = view.above({}).x_pt;
  const double to_pt = view.above({body.contact_length, {}}).x_pt;
  draw_dimension(canvas, {{from_pt, y_pt}, {to_pt, y_pt}, body.contact_length});
}

/// Gauge at a place along the drawing.
void draw_gauge(Canvas& canvas, const View& view, const card::SheetBody& body, double x_pt) {
  const Metres half = body.gauge / 2.0;
  draw_dimension(
      canvas,
      {{x_pt, view.above({{}, half}).y_pt}, {x_pt, view.above({{}, -half}).y_pt}, body.gauge});
}

void draw_body_from_beside(Canvas& canvas, const View& view, const card::SheetBody& body) {
  canvas.line({view.beside({}), view.beside({body.contact_length, {}})},
              {.width_pt = 4.0, .colour = kOpen});
  const rig::BodyPoint& empty = body.empty.centre;
  const rig::BodyPoint& loaded = body.as_loaded.centre;
  const Spot high = view.beside({loaded.forward, loaded.up});
  draw_centre(canvas, view.beside({empty.forward, empty.up}), Filling::hollow);
  draw_centre(canvas, high, Filling::quartered);
  if (is_place(high)) {
    // Beside both symbols, so that neither hides the line.
    const double x_pt =
        std::max(high.x_pt, view.beside({empty.forward, empty.up}).x_pt) + 4.0 * kSymbol_pt;
    canvas.line({high, {x_pt + 3.0, high.y_pt}}, {.width_pt = 0.4, .colour = kQuiet});
    draw_dimension(canvas, {{x_pt, high.y_pt}, {x_pt, view.beside({}).y_pt}, loaded.up});
    draw_centre(canvas, high, Filling::quartered);
  }
}

struct Views {
  View carrier;
  View trailer;
};

void draw_hitch(Canvas& canvas, const Views& views, const card::RigSheet& sheet) {
  if (!sheet.hitch || !sheet.trailer) {
    return;
  }
  const rig::BodyPoint& hitch = sheet.hitch->on_carrier;
  const Spot eye = views.carrier.above({hitch.forward, hitch.left});
  canvas.line({views.trailer.above({sheet.trailer->contact_length, {}}), eye}, {.width_pt = 1.0});
  canvas.disc(eye, 2.2, kInk);
  canvas.label({eye.x_pt, eye.y_pt - 9.0}, "hitch", kSmall);
}

void draw_scale_bar(Canvas& canvas, Spot from, const DrawingScale& scale) {
  const double metre_pt = scale.pt(Metres{1});
  canvas.box({from.x_pt, from.y_pt, metre_pt / 2, 4.0}, kInk, {.width_pt = 0.6});
  canvas.box({from.x_pt + metre_pt / 2, from.y_pt, metre_pt / 2, 4.0}, kPaper, {.width_pt = 0.6});
  canvas.write(
      {from.x_pt + metre_pt + 6.0, from.y_pt - 4.0},
      {.text = "1 m, scale " + scale.words() + " on A4", .lettering = kSmall, .width_pt = 160.0});
}

void draw_key(Canvas& canvas, Spot from) {
  const auto words = [&](double x_pt, std::string_view text, double width_pt) {
    canvas.write({x_pt, from.y_pt - 6.0},
                 {.text = text, .lettering = kSmall, .width_pt = width_pt});
  };
  draw_centre(canvas, {from.x_pt + kSymbol_pt, from.y_pt}, Filling::quartered);
  words(from.x_pt + 16.0, "centre of gravity as loaded", 120.0);
  draw_centre(canvas, {from.x_pt + 142.0, from.y_pt}, Filling::hollow);
  words(from.x_pt + 152.0, "without load", 60.0);
  canvas.line({{from.x_pt + 216.0, from.y_pt}, {from.x_pt + 236.0, from.y_pt}},
              {.width_pt = 1.6, .colour = kOpen});
  words(from.x_pt + 241.0, "edge of the support", 90.0);
}

void note(Canvas& canvas, Spot corner, std::string_view text) {
  canvas.write(corner, {.text = text,
                        .lettering = {.size_pt = kSmallest_pt, .weight = Weight::bold},
                        .width_pt = 260.0});
}

}  // namespace

DrawingScale::DrawingScale(const card::RigSheet& sheet, double width_pt) {
  constexpr double kPointsPerMetre = 72.0 / 0.0254;
  constexpr double kMostHeight_pt = 290.0;
  const Extent extent = extent_of(sheet);
  const double length_m = (extent.front - extent.rear).value();
  for (const int one_to : {10, 20, 25, 50, 100, 200, 500}) {
    one_to_ = one_to;
    pt_per_metre_ = kPointsPerMetre / one_to;
    const bool fits = length_m * pt_per_metre_ + 2 * kBesides_pt <= width_pt;
    if (fits && height_pt(sheet) <= kMostHeight_pt) {
      return;
    }
  }
}

double DrawingScale::height_pt(const card::RigSheet& sheet) const {
  const Extent extent = extent_of(sheet);
  return pt(extent.half_width * 2.0) + pt(extent.top) + kMargins_pt + 2 * kTextRow_pt;
}

void draw_rig(Canvas& canvas, const Box& box, const card::RigSheet& sheet,
              const DrawingScale& scale) {
  const Extent extent = extent_of(sheet);
  const double zero_pt = box.left_pt + kBesides_pt - scale.pt(extent.rear);
  const double middle_pt = box.top_pt + kTextRow_pt + scale.pt(extent.half_width);
  const double lengths_pt = middle_pt + scale.pt(extent.half_width) + kTextRow_pt;
  const double ground_pt = lengths_pt + 3.0 * kTextRow_pt + scale.pt(extent.top);
  const double lag_pt = scale.pt(lag_of(sheet));
  const View carrier{{zero_pt, middle_pt}, scale};
  const View trailer{{zero_pt - lag_pt, middle_pt}, scale};
  const bool twin = sheet.kind == rig::CarrierKind::twin_track;

  note(canvas, {box.left_pt, box.top_pt}, "From above; heads to the right");
  draw_body_from_above(canvas, carrier, sheet.carrier, twin ? Tracks::two : Tracks::unknown);
  draw_gauge(canvas, carrier, sheet.carrier,
             carrier.above({extent.front, {}}).x_pt + kBesides_pt / 2);
  draw_length(canvas, carrier, sheet.carrier, lengths_pt);
  if (sheet.trailer) {
    draw_body_from_above(canvas, trailer, *sheet.trailer, Tracks::two);
    draw_gauge(canvas, trailer, *sheet.trailer, trailer.above({}).x_pt - kBesides_pt / 2);
    draw_length(canvas, trailer, *sheet.trailer, lengths_pt);
  }
  draw_hitch(canvas, {carrier, trailer}, sheet);

  note(canvas, {box.left_pt, lengths_pt + kTextRow_pt}, "From the side: heights above the snow");
  canvas.line({{box.left_pt, ground_pt + 2.0}, {box.right_pt(), ground_pt + 2.0}},
              {.width_pt = 0.6, .colour = kQuiet});
  draw_body_from_beside(canvas, View{{zero_pt, ground_pt}, scale}, sheet.carrier);
  if (sheet.trailer) {
    draw_body_from_beside(canvas, View{{zero_pt - lag_pt, ground_pt}, scale}, *sheet.trailer);
  }
  draw_key(canvas, {box.left_pt, ground_pt + 1.3 * kTextRow_pt});
  draw_scale_bar(canvas, {box.left_pt, ground_pt + 2.4 * kTextRow_pt}, scale);
}

}  // namespace rimehaul::ports::cairo
