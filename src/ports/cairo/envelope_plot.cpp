// The drawing of the outlines: axes in degrees and percent, one line for each snow class.
#include "ports/cairo/envelope_plot.h"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "ports/cairo/axis.h"
#include "units/rounding.h"

namespace rimehaul::ports::cairo {

namespace {

constexpr Lettering kSmall{.size_pt = kSmallest_pt};
constexpr double kLeftMargin_pt = 78.0;
constexpr double kBottomMargin_pt = 40.0;
constexpr double kTopMargin_pt = 16.0;
constexpr double kStep_deg = 5.0;

/// What the axes show, degrees.
struct Ranges {
  double down = kStep_deg;
  double up = kStep_deg;
  double across = kStep_deg;
};

double up_to_step(double degrees) {
  return kStep_deg * std::max(1.0, std::ceil((degrees + 0.5) / kStep_deg));
}

Ranges ranges_of(const card::OutlineSet& set) {
  Ranges ranges;
  for (const card::SnowOutline& outline : set.outlines) {
    for (const passage::EnvelopePoint& point : outline.envelope.outline) {
      const double grade = point.plane.grade.degrees();
      ranges.up = std::max(ranges.up, up_to_step(grade));
      ranges.down = std::max(ranges.down, up_to_step(-grade));
      ranges.across = std::max(ranges.across, up_to_step(point.plane.cross.degrees()));
    }
  }
  return ranges;
}

/// Where the ground lies in the plot.
struct Tilt {
  double cross_deg = 0.0;
  double grade_deg = 0.0;
};

/// Degrees on paper; each axis has its own scale.
class Frame {
 public:
  Frame(const Box& box, const Ranges& ranges) : ranges_{ranges} {
    const double width_pt = box.width_pt - kLeftMargin_pt - 10.0;
    const double height_pt = box.height_pt - kBottomMargin_pt - kTopMargin_pt;
    across_pt_ = width_pt / ranges.across;
    up_pt_ = height_pt / (ranges.up + ranges.down);
    inner_ = {box.left_pt + kLeftMargin_pt, box.top_pt + kTopMargin_pt, width_pt, height_pt};
  }

  [[nodiscard]] Spot at(const Tilt& tilt) const {
    return {inner_.left_pt + tilt.cross_deg * across_pt_,
            inner_.top_pt + (ranges_.up - tilt.grade_deg) * up_pt_};
  }
  [[nodiscard]] Spot at(const passage::EnvelopePoint& point) const {
    return at({point.plane.cross.degrees(), point.plane.grade.degrees()});
  }
  [[nodiscard]] const Ranges& ranges() const { return ranges_; }
  [[nodiscard]] const Box& inner() const { return inner_; }

 private:
  Ranges ranges_;
  Box inner_;
  double across_pt_ = 1.0;
  double up_pt_ = 1.0;
};

std::string degrees_text(double degrees) {
  return units::text_of(degrees, 0, units::Round::nearest) + " deg";
}

std::string percent_text(double degrees) {
  return units::text_of(units::Slope::from_degrees(degrees).percent(), 1, units::Round::nearest) +
         " %";
}

void draw_axes(Canvas& canvas, const Frame& frame) {
  const Stroke hair{.width_pt = 0.5, .colour = kHair};
  const Ranges& ranges = frame.ranges();
  for (const double grade : marked_values({-ranges.down, ranges.up}, kStep_deg)) {
    const Spot from = frame.at({0.0, grade});
    canvas.line({from, frame.at({ranges.across, grade})}, hair);
    const std::string text = degrees_text(std::abs(grade)) + "  " + percent_text(std::abs(grade));
    const double width_pt = canvas.width_of(text, kSmall);
    canvas.write({from.x_pt - width_pt - 5.0, from.y_pt - 5.0},
                 {.text = text, .lettering = kSmall, .width_pt = width_pt + 2.0});
  }
  for (const double cross : marked_values({0.0, ranges.across}, kStep_deg)) {
    const Spot from = frame.at({cross, -ranges.down});
    canvas.line({from, frame.at({cross, ranges.up})}, hair);
    const Lettering centred{.size_pt = kSmallest_pt, .align = Align::centre};
    canvas.write({from.x_pt - 20.0, from.y_pt + 3.0},
                 {.text = degrees_text(cross), .lettering = centred, .width_pt = 40.0});
    canvas.write({from.x_pt - 20.0, from.y_pt + 13.0},
                 {.text = percent_text(cross), .lettering = centred, .width_pt = 40.0});
  }
  canvas.line({frame.at({0.0, 0.0}), frame.at({ranges.across, 0.0})}, {.width_pt = 1.0});
  canvas.line({frame.at({0.0, -ranges.down}), frame.at({0.0, ranges.up})}, {.width_pt = 1.0});
}

void draw_axis_names(Canvas& canvas, const Frame& frame, const Box& box) {
  const Lettering bold{.size_pt = kSmallest_pt, .weight = Weight::bold};
  canvas.write({box.left_pt, box.top_pt},
               {.text = "Climb, up; descent, down", .lettering = bold, .width_pt = 200.0});
  const std::string across = "Cross-slope, to either side";
  canvas.write(
      {frame.inner().left_pt, frame.inner().bottom_pt() + 25.0},
      {.text = across,
       .lettering = {.size_pt = kSmallest_pt, .weight = Weight::bold, .align = Align::right},
       .width_pt = frame.inner().width_pt});
  for (const double part : {0.5, -0.5}) {
    const bool climb = part > 0.0;
    const double grade = climb ? frame.ranges().up - 0.8 : -frame.ranges().down + 0.8;
    const Spot place = frame.at({frame.ranges().across, grade});
    canvas.label({place.x_pt - 20.0, place.y_pt}, climb ? "climb" : "descent",
                 {.size_pt = kSmallest_pt, .colour = kQuiet});
  }
}

/// Snow classes whose outlines are the same are drawn once.
struct Curve {
  std::vector<snow::Wetness> classes;
  std::vector<Spot> spots;

  [[nodiscard]] bool runs_along(const std::vector<Spot>& others) const {
    return std::ranges::equal(spots, others, [](const Spot& a, const Spot& b) {
      return std::abs(a.x_pt - b.x_pt) < 0.01 && std::abs(a.y_pt - b.y_pt) < 0.01;
    });
  }
};

std::vector<Curve> curves_of(const card::OutlineSet& set, const Frame& frame) {
  std::vector<Curve> curves;
  for (const card::SnowOutline& outline : set.outlines) {
    if (outline.envelope.closed || outline.envelope.outline.empty()) {
      continue;
    }
    const std::vector<passage::EnvelopePoint>& points = outline.envelope.outline;
    std::vector<Spot> spots{frame.at({0.0, points.front().plane.grade.degrees()})};
    for (const passage::EnvelopePoint& point : points) {
      spots.push_back(frame.at(point));
    }
    spots.push_back(frame.at({0.0, points.back().plane.grade.degrees()}));
    const auto twin =
        std::ranges::find_if(curves, [&](const Curve& curve) { return curve.runs_along(spots); });
    if (twin != curves.end()) {
      twin->classes.push_back(outline.wetness);
    } else {
      curves.push_back({{outline.wetness}, std::move(spots)});
    }
  }
  return curves;
}

std::string name_of(const Curve& curve) {
  std::string name;
  for (const snow::Wetness wetness : curve.classes) {
    name += (name.empty() ? "" : ", ") + std::string{snow::words_for(wetness)};
  }
  return name;
}

/// Shortest way from a spot to a line.
double away_from(Spot spot, const std::vector<Spot>& line) {
  double least = HUGE_VAL;
  for (std::size_t i = 1; i < line.size(); ++i) {
    const Spot from = line[i - 1];
    const double run_x = line[i].x_pt - from.x_pt;
    const double run_y = line[i].y_pt - from.y_pt;
    const double square = run_x * run_x + run_y * run_y;
    const double part =
        square > 0.0
            ? std::clamp(
                  ((spot.x_pt - from.x_pt) * run_x + (spot.y_pt - from.y_pt) * run_y) / square, 0.0,
                  1.0)
            : 0.0;
    least = std::min(least, std::hypot(spot.x_pt - from.x_pt - part * run_x,
                                       spot.y_pt - from.y_pt - part * run_y));
  }
  return least;
}

/// The spot of a curve where its name is furthest from other curves, other names and the edges.
Spot place_for_name(const Curve& curve, const std::vector<Curve>& curves,
                    const std::vector<Spot>& taken, const Box& inner) {
  Spot best = curve.spots[curve.spots.size() / 2];
  double best_room = -1.0;
  for (std::size_t i = 1; i < curve.spots.size(); ++i) {
    const Spot from = curve.spots[i - 1];
    const Spot to = curve.spots[i];
    const Spot spot{(from.x_pt + to.x_pt) / 2, (from.y_pt + to.y_pt) / 2};
    double room = std::min({(spot.x_pt - inner.left_pt) / 2.0, inner.right_pt() - spot.x_pt,
                            spot.y_pt - inner.top_pt, inner.bottom_pt() - spot.y_pt, 40.0});
    for (const Curve& other : curves) {
      if (&other != &curve) {
        room = std::min(room, away_from(spot, other.spots));
      }
    }
    for (const Spot& name : taken) {
      room = std::min(
          room, std::max(std::abs(name.x_pt - spot.x_pt) / 3.0, std::abs(name.y_pt - spot.y_pt)));
    }
    if (room > best_room) {
      best = spot;
      best_room = room;
    }
  }
  return best;
}

void draw_curves(Canvas& canvas, const Frame& frame, const std::vector<Curve>& curves) {
  for (const Curve& curve : curves) {
    canvas.area(curve.spots, kIce);
  }
  draw_axes(canvas, frame);
  for (const Curve& curve : curves) {
    canvas.line(curve.spots, stroke_of(curve.classes.front()));
  }
  std::vector<Spot> taken;
  for (const Curve& curve : curves) {
    const Spot place = place_for_name(curve, curves, taken, frame.inner());
    canvas.label(place, name_of(curve),
                 {.size_pt = 9.0,
                  .weight = Weight::bold,
                  .colour = stroke_of(curve.classes.front()).colour});
    taken.push_back(place);
  }
  if (curves.empty()) {
    const Box& inner = frame.inner();
    canvas.label({inner.left_pt + inner.width_pt / 2, inner.top_pt + inner.height_pt / 3},
                 "closed in every snow class asked for",
                 {.size_pt = 11.0, .weight = Weight::bold, .colour = kClosed});
  }
}

}  // namespace

Stroke stroke_of(snow::Wetness wetness) {
  switch (wetness) {
    case snow::Wetness::dry:
      return {.width_pt = 1.8, .colour = kOpen};
    case snow::Wetness::moist:
      return {.width_pt = 1.8, .colour = colour_of(0x1d4f86), .dashes_pt = {12, 3}};
    case snow::Wetness::wet:
      return {.width_pt = 1.8, .colour = colour_of(0x6a3d9a), .dashes_pt = {9, 3, 2, 3}};
    case snow::Wetness::very_wet:
      return {.width_pt = 1.8, .colour = colour_of(0x9a5b00), .dashes_pt = {5, 3}};
    case snow::Wetness::slush:
      break;
  }
  return {.width_pt = 2.2, .colour = kClosed, .dashes_pt = {2, 3}};
}

void draw_envelopes(Canvas& canvas, const Box& box, const card::OutlineSet& set) {
  const Frame frame{box, ranges_of(set)};
  draw_curves(canvas, frame, curves_of(set, frame));
  draw_axis_names(canvas, frame, box);
}

}  // namespace rimehaul::ports::cairo
