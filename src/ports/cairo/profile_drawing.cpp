#include "ports/cairo/profile_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "card/figures.h"
#include "ports/cairo/axis.h"
#include "ports/cairo/profile_limits.h"

namespace rimehaul::ports::cairo {

namespace {

using units::Metres;
using units::Slope;

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

constexpr Lettering kSmall{.size_pt = kSmallest_pt};
constexpr Lettering kSmallRight{.size_pt = kSmallest_pt, .align = Align::right};
constexpr double kLabels_pt = 46.0;
constexpr Stroke kHairline{.width_pt = 0.4, .colour = kHair};

struct Frame {
  Box box;
  Axis along;
};

/// Values along the left side, none over another: the first come keep their places.
class LeftLabels {
 public:
  void write(Canvas& canvas, const Frame& frame, double y_pt, const std::string& text) {
    constexpr double kApart_pt = 9.5;
    const bool is_free = std::ranges::none_of(
        taken_pt_, [y_pt](double other_pt) { return std::abs(other_pt - y_pt) < kApart_pt; });
    if (is_free) {
      taken_pt_.push_back(y_pt);
      canvas.write({frame.box.left_pt - kLabels_pt, y_pt - 5.5},
                   {text, kSmallRight, kLabels_pt - 3});
    }
  }

 private:
  std::vector<double> taken_pt_;
};

std::string metres_words(double metres) {
  return std::to_string(std::llround(metres)) + " m";
}

/// From the lowest height to the highest, metres; never less than 10 m apart.
Ends heights_of(const card::GradeProfile& profile) {
  Ends found{1e9, -1e9};
  for (const card::GradePiece& piece : profile.pieces) {
    if (piece.height) {
      found.from = std::min(found.from, piece.height->above_datum_m());
      found.to = std::max(found.to, piece.height->above_datum_m());
    }
  }
  if (found.from > found.to) {
    return {0.0, 10.0};
  }
  return found.to - found.from < 10.0 ? Ends{found.from - 5, found.to + 5} : found;
}

void draw_heights(Canvas& canvas, const Frame& frame, const card::GradeProfile& profile,
                  LeftLabels& labels) {
  const Ends heights = heights_of(profile);
  const Axis up{heights, {frame.box.bottom_pt() - 2, frame.box.top_pt + 4}};
  for (const double height : marked_values(heights, round_step(heights.to - heights.from, 3))) {
    canvas.line({{frame.box.left_pt, up.at(height)}, {frame.box.right_pt(), up.at(height)}},
                kHairline);
    labels.write(canvas, frame, up.at(height), metres_words(height));
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
  for (const card::GradeBounds& limit : profile.limits) {
    steepest =
        std::max({steepest, degrees_or(limit.climb, 0.0) + 1, degrees_or(limit.descent, 0.0) + 1});
  }
  return std::min(steepest, 35.0);
}

void draw_grades(Canvas& canvas, const Frame& frame, const card::GradeProfile& profile,
                 LeftLabels& labels) {
  const double most = steepest_shown(profile);
  const Axis up{{-most, most}, {frame.box.bottom_pt() - 3, frame.box.top_pt + 3}};
  const double step = most > 16 ? 10.0 : 5.0;
  for (const double grade : marked_values({-most, most - 0.1 * step}, step)) {
    canvas.line({{frame.box.left_pt, up.at(grade)}, {frame.box.right_pt(), up.at(grade)}},
                grade == 0.0 ? Stroke{.width_pt = 0.7, .colour = kQuiet} : kHairline);
    labels.write(canvas, frame, up.at(grade), std::to_string(std::lround(grade)) + "\u00b0");
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
  draw_limits(canvas, {frame.box, frame.along, up, most}, profile);
}

void draw_distance(Canvas& canvas, const Frame& frame, double length_m) {
  const double step = round_step(length_m, 8);
  for (const double at : marked_values({0.0, length_m}, step)) {
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
  for (const geo::Span& leg : profile.legs) {
    const double from = frame.along.at(leg.from.value());
    const double to = frame.along.at(leg.to.value());
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
  const double length_m = profile.legs.empty() ? 1.0 : profile.legs.back().to.value();
  const Box plot{box.left_pt + kLabels_pt, box.top_pt + 12,
                 box.width_pt - kLabels_pt - kLimitValues_pt, box.height_pt - 26};
  const Axis along{{0.0, length_m}, {plot.left_pt, plot.right_pt()}};
  const double heights_pt = plot.height_pt * 0.42;
  const Frame whole{plot, along};
  draw_distance(canvas, whole, length_m);
  LeftLabels labels;
  const Box grades{plot.left_pt, plot.top_pt + heights_pt + 2, plot.width_pt,
                   plot.height_pt - heights_pt - 2};
  draw_grades(canvas, {grades, along}, profile, labels);
  draw_heights(canvas, {{plot.left_pt, plot.top_pt, plot.width_pt, heights_pt}, along}, profile,
               labels);
  draw_leg_numbers(canvas, whole, profile);
  canvas.line({{plot.left_pt, plot.top_pt}, {plot.left_pt, plot.bottom_pt()}},
              {.width_pt = 0.8, .colour = kInk});
  canvas.line({{plot.left_pt, grades.top_pt - 1}, {plot.right_pt(), grades.top_pt - 1}},
              {.width_pt = 0.5, .colour = kQuiet});
}

}  // namespace rimehaul::ports::cairo
