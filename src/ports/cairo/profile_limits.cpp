#include "ports/cairo/profile_limits.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "ports/cairo/card_parts.h"
#include "ports/cairo/map_labels.h"
#include "units/rounding.h"

namespace rimehaul::ports::cairo {

namespace {

using units::Slope;

constexpr Lettering kValue{.size_pt = kSmallest_pt, .weight = Weight::bold, .colour = kClosed};

enum class Way { climb, descent };

/// One limit on neighbouring parts.
struct Run {
  Way way;
  Slope limit;
  double from_pt;
  double to_pt;
};

std::vector<Run> runs_of(const GradeFrame& frame, const card::GradeProfile& profile, Way way) {
  std::vector<Run> runs;
  bool goes_on = false;
  for (const card::GradeBounds& part : profile.limits) {
    const std::optional<Slope>& limit = way == Way::climb ? part.climb : part.descent;
    const double to_pt = frame.along.at(part.span.to.value());
    if (limit && goes_on && runs.back().limit == *limit) {
      runs.back().to_pt = to_pt;
    } else if (limit) {
      runs.push_back({way, *limit, frame.along.at(part.span.from.value()), to_pt});
    }
    goes_on = limit.has_value();
  }
  return runs;
}

bool is_shown(const GradeFrame& frame, const Run& run) {
  return run.limit.degrees() <= frame.most_deg;
}

/// Ticks stand on the side that is not driven: above a climb, below a descent.
double y_of(const GradeFrame& frame, const Run& run) {
  const double grade = std::min(run.limit.degrees(), frame.most_deg);
  return frame.up.at(run.way == Way::climb ? grade : -grade);
}

void draw_line(Canvas& canvas, const GradeFrame& frame, const Run& run) {
  const double y = y_of(frame, run);
  const double beyond = run.way == Way::climb ? -1.0 : 1.0;
  canvas.line({{run.from_pt, y}, {run.to_pt, y}}, {.width_pt = 1.3, .colour = kClosed});
  for (const double along : marked_values({0.0, run.to_pt - run.from_pt - 3.0}, 5.0)) {
    const double x = run.from_pt + 2 + along;
    canvas.line({{x, y}, {x + 2.5, y + beyond * 3.5}}, {.width_pt = 0.7, .colour = kClosed});
  }
}

std::string words_of(const GradeFrame& frame, const Run& run) {
  return std::string{is_shown(frame, run) ? "" : "off: "} +
         units::text_of(run.limit, units::Round::down);
}

/// Whether the grades under a box stay clear of it.
bool is_clear_of_grades(const GradeFrame& frame, const card::GradeProfile& profile,
                        const Box& box) {
  return std::ranges::none_of(profile.pieces, [&](const card::GradePiece& piece) {
    const double from = frame.along.at(piece.span.from.value());
    const double to = frame.along.at(piece.span.to.value());
    if (to < box.left_pt || from > box.right_pt() || !piece.lowest || !piece.highest) {
      return false;
    }
    const double top = frame.up.at(piece.highest->degrees());
    const double bottom = frame.up.at(piece.lowest->degrees());
    return top < box.bottom_pt() && bottom > box.top_pt;
  });
}

/// Writes the value on the driven side of its line, where its run has room and, if it can be, off
/// the grades. What no room is left for beside its neighbours is not written.
void write_value(Canvas& canvas, const GradeFrame& frame, const card::GradeProfile& profile,
                 const Run& run, LabelRoom& room) {
  const std::string words = words_of(frame, run);
  const LabelSize size{canvas.width_of(words, kValue) + 2, 9.5};
  const double first_pt = run.from_pt + size.width_pt / 2 + 2;
  const double last_pt = std::max(first_pt, run.to_pt - size.width_pt / 2 - 2);
  const double y = y_of(frame, run) + (run.way == Way::climb ? 6.5 : -6.5);
  std::optional<Box> chosen;
  for (const double part : {1.0, 0.0, 0.5, 0.75, 0.25, 0.88, 0.12, 0.62, 0.38}) {
    const Box box = box_around({first_pt + (last_pt - first_pt) * part, y}, size);
    if (!room.is_free(box)) {
      continue;
    }
    if (!chosen || is_clear_of_grades(frame, profile, box)) {
      chosen = box;
      if (is_clear_of_grades(frame, profile, box)) {
        break;
      }
    }
  }
  if (chosen) {
    room.take(*chosen);
    canvas.label(middle_of(*chosen), words, kValue);
  }
}

}  // namespace

void draw_limits(Canvas& canvas, const GradeFrame& frame, const card::GradeProfile& profile) {
  LabelRoom room{
      {frame.box.left_pt, frame.box.top_pt - 4, frame.box.width_pt + 8, frame.box.height_pt + 8}};
  std::vector<Run> within;
  double lowest_pt = frame.box.top_pt - 12.0;
  for (const Way way : {Way::climb, Way::descent}) {
    std::vector<Run> runs = runs_of(frame, profile, way);
    for (const Run& run : runs) {
      if (is_shown(frame, run)) {
        draw_line(canvas, frame, run);
      }
    }
    if (!runs.empty() && runs.back().to_pt >= frame.box.right_pt() - 0.5) {
      lowest_pt = std::max(lowest_pt + 10.0, y_of(frame, runs.back()) - 5.5);
      canvas.write({frame.box.right_pt() + 3, lowest_pt},
                   {words_of(frame, runs.back()), kValue, kLimitValues_pt - 3});
      runs.pop_back();
    }
    within.insert(within.end(), runs.begin(), runs.end());
  }
  // The longest first: a short run between others may find no room.
  std::ranges::stable_sort(within, std::ranges::greater{},
                           [](const Run& run) { return run.to_pt - run.from_pt; });
  for (const Run& run : within) {
    write_value(canvas, frame, profile, run, room);
  }
}

}  // namespace rimehaul::ports::cairo
