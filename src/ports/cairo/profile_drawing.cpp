#include "ports/cairo/profile_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "card/figures.h"

namespace rimehaul::ports::cairo {

namespace {

using units::Metres;
using units::Slope;

/// A range of values laid along one side of the page.
class Axis {
 public:
  Axis(double from, double to, double start_pt, double end_pt)
      : from_{from}, per_value_{(end_pt - start_pt) / (to - from)}, start_pt_{start_pt} {}

  [[nodiscard]] double at(double value) const { return start_pt_ + (value - from_) * per_value_; }

 private:
  double from_;
  double per_value_;
  double start_pt_;
};

double round_step(double range, int most_steps) {
  const double least = range / most_steps;
  const double power = std::pow(10.0, std::floor(std::log10(least)));
  for (const double times : {1.0, 2.0, 5.0}) {
    if (power * times >= least) {
      return power * times;
    }
  }
  return power * 10.0;
}

const Lettering kSmall{.size_pt = kSmallest_pt};
const Lettering kSmallRight{.size_pt = kSmallest_pt, .align = Align::right};
constexpr double kLabels_pt = 46.0;
constexpr Stroke kHairline{.width_pt = 0.4, .colour = kHair};

struct Frame {
  Box box;
  Axis along;
};

void label_left(Canvas& canvas, const Frame& frame, double y_pt, const std::string& text) {
  canvas.write({frame.box.left_pt - kLabels_pt, y_pt - 5.5}, {text, kSmallRight, kLabels_pt - 3});
}

std::string metres_words(double metres) {
  return std::to_string(std::llround(metres)) + " m";
}

struct Extremes {
  double low;
  double high;
};

Extremes heights_of(const card::GradeProfile& profile) {
  Extremes found{1e9, -1e9};
  for (const card::GradePiece& piece : profile.pieces) {
    if (piece.height) {
      found.low = std::min(found.low, piece.height->above_datum_m());
      found.high = std::max(found.high, piece.height->above_datum_m());
    }
  }
  if (found.low > found.high) {
    return {0.0, 10.0};
  }
  return found.high - found.low < 10.0 ? Extremes{found.low - 5, found.high + 5} : found;
}

void draw_heights(Canvas& canvas, const Frame& frame, const card::GradeProfile& profile) {
  const Extremes heights = heights_of(profile);
  const Axis up{heights.low, heights.high, frame.box.bottom_pt() - 2, frame.box.top_pt + 4};
  const double step = round_step(heights.high - heights.low, 3);
  for (double height = std::ceil(heights.low / step) * step; height <= heights.high;
       height += step) {
    canvas.line({{frame.box.left_pt, up.at(height)}, {frame.box.right_pt(), up.at(height)}},
                kHairline);
    if (up.at(height) < frame.box.bottom_pt() - 5) {
      label_left(canvas, frame, up.at(height), metres_words(height));
    }
  }
  std::vector<Spot> line;
  for (const card::GradePiece& piece : profile.pieces) {
    if (piece.height) {
      const double middle = ((piece.span.from + piece.span.to) / 2).value();
      line.push_back({frame.along.at(middle), up.at(piece.height->above_datum_m())});
    } else if (line.size() > 1) {
      canvas.line(line, {.width_pt = 1.4, .colour = kInk});
      line.clear();
    }
  }
  if (line.size() > 1) {
    canvas.line(line, {.width_pt = 1.4, .colour = kInk});
  }
}

double degrees_or(const std::optional<Slope>& slope, double otherwise) {
  return slope ? slope->degrees() : otherwise;
}

/// The steepest that has to fit, degrees: grades and limits, up to 35.
double steepest_shown(const card::GradeProfile& profile) {
  double steepest = 10.0;
  for (const card::GradePiece& piece : profile.pieces) {
    steepest = std::max({steepest, degrees_or(piece.highest, 0.0), -degrees_or(piece.lowest, 0.0)});
  }
  for (const card::GradeBounds& leg : profile.legs) {
    steepest =
        std::max({steepest, degrees_or(leg.climb, 0.0) + 1, degrees_or(leg.descent, 0.0) + 1});
  }
  return std::min(steepest, 35.0);
}

struct Limit {
  double from_pt;
  double to_pt;
  double y_pt;
  double beyond_pt;  ///< which way is not driven: -1 up, 1 down
};

void draw_limit(Canvas& canvas, const Limit& limit) {
  canvas.line({{limit.from_pt, limit.y_pt}, {limit.to_pt, limit.y_pt}},
              {.width_pt = 1.3, .colour = kClosed});
  for (double x = limit.from_pt + 2; x < limit.to_pt - 1; x += 5) {
    canvas.line({{x, limit.y_pt}, {x + 2.5, limit.y_pt + limit.beyond_pt * 3.5}},
                {.width_pt = 0.7, .colour = kClosed});
  }
}

void draw_grades(Canvas& canvas, const Frame& frame, const card::GradeProfile& profile) {
  const double most = steepest_shown(profile);
  const Axis up{-most, most, frame.box.bottom_pt() - 3, frame.box.top_pt + 3};
  const double step = most > 16 ? 10.0 : 5.0;
  for (double grade = -std::floor(most / step) * step; grade <= most - 0.1 * step; grade += step) {
    canvas.line({{frame.box.left_pt, up.at(grade)}, {frame.box.right_pt(), up.at(grade)}},
                grade == 0.0 ? Stroke{.width_pt = 0.7, .colour = kQuiet} : kHairline);
    label_left(canvas, frame, up.at(grade), std::to_string(std::lround(grade)) + "\u00b0");
  }
  for (const card::GradePiece& piece : profile.pieces) {
    const double left = frame.along.at(piece.span.from.value());
    const double width = frame.along.at(piece.span.to.value()) - left;
    if (!piece.lowest || !piece.highest) {
      canvas.box({left, frame.box.top_pt, width, frame.box.height_pt}, kUnknown);
      continue;
    }
    const double top = up.at(std::min(piece.highest->degrees(), most));
    const double bottom = up.at(std::max(piece.lowest->degrees(), -most));
    canvas.box({left, top, width + 0.2, bottom - top}, colour_of(0x7aa7a5));
  }
  for (const card::GradeBounds& leg : profile.legs) {
    const double from = frame.along.at(leg.span.from.value());
    const double to = frame.along.at(leg.span.to.value());
    if (leg.climb && leg.climb->degrees() <= most) {
      draw_limit(canvas, {from, to, up.at(leg.climb->degrees()), -1});
    }
    if (leg.descent && leg.descent->degrees() <= most) {
      draw_limit(canvas, {from, to, up.at(-leg.descent->degrees()), 1});
    }
  }
}

void draw_distance(Canvas& canvas, const Frame& frame, double length_m) {
  const double step = round_step(length_m, 8);
  for (double at = 0.0; at <= length_m; at += step) {
    const double x = frame.along.at(at);
    canvas.line({{x, frame.box.top_pt}, {x, frame.box.bottom_pt() + 2}}, kHairline);
    const std::string words =
        step >= 1000 || at == 0.0 ? std::to_string(std::llround(at / 1000)) : metres_words(at);
    canvas.write({x - 20, frame.box.bottom_pt() + 2},
                 {step >= 1000 && at > 0 ? words + " km" : words,
                  {.size_pt = kSmallest_pt, .align = Align::centre},
                  40});
  }
}

void draw_leg_numbers(Canvas& canvas, const Frame& frame, const card::GradeProfile& profile) {
  int number = 1;
  for (const card::GradeBounds& leg : profile.legs) {
    const double from = frame.along.at(leg.span.from.value());
    const double to = frame.along.at(leg.span.to.value());
    if (number > 1) {
      canvas.line({{from, frame.box.top_pt}, {from, frame.box.bottom_pt()}},
                  {.width_pt = 0.7, .colour = kInk, .dashes_pt = {2, 2}});
    }
    const std::string words = std::to_string(number++);
    const Lettering bold{.size_pt = kSmallest_pt, .weight = Weight::bold};
    if (to - from > canvas.width_of(words, bold) + 1) {
      canvas.label({(from + to) / 2, frame.box.top_pt - 6}, words, bold);
    }
  }
}

}  // namespace

void draw_profile(Canvas& canvas, const Box& box, const card::GradeProfile& profile) {
  const double length_m = profile.legs.empty() ? 1.0 : profile.legs.back().span.to.value();
  const Box plot{box.left_pt + kLabels_pt, box.top_pt + 12, box.width_pt - kLabels_pt - 8,
                 box.height_pt - 26};
  const Axis along{0.0, length_m, plot.left_pt, plot.right_pt()};
  const double heights_pt = plot.height_pt * 0.42;
  const Frame whole{plot, along};
  draw_distance(canvas, whole, length_m);
  draw_heights(canvas, {{plot.left_pt, plot.top_pt, plot.width_pt, heights_pt}, along}, profile);
  const Box grades{plot.left_pt, plot.top_pt + heights_pt + 2, plot.width_pt,
                   plot.height_pt - heights_pt - 2};
  draw_grades(canvas, {grades, along}, profile);
  draw_leg_numbers(canvas, whole, profile);
  canvas.line({{plot.left_pt, plot.top_pt}, {plot.left_pt, plot.bottom_pt()}},
              {.width_pt = 0.8, .colour = kInk});
  canvas.line({{plot.left_pt, grades.top_pt - 1}, {plot.right_pt(), grades.top_pt - 1}},
              {.width_pt = 0.5, .colour = kQuiet});
}

}  // namespace rimehaul::ports::cairo
