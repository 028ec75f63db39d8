#include "terrain/stretch.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

#include "base/require.h"
#include "terrain/gradient.h"
#include "terrain/gradient_box.h"
#include "terrain/heading_arc.h"
#include "terrain/patch.h"
#include "terrain/plane_bounds.h"

namespace rimehaul::terrain {

using geo::Polyline;
using units::Metres;
using units::Slope;

namespace {

/// Far above the rounding of a slope from heights (1e-12), far below any that matters.
constexpr Slope kRounding = Slope::from_ratio(1e-9);

/// Where the gradient differs by no more than this over a piece, there is nothing to be gained from
/// a closer look (our choice).
constexpr Slope kSmoothEnough = Slope::from_ratio(0.01);

/// One segment of the line within a piece, and the turn to it from the start of the window.
struct Part {
  geo::MapPoint from;
  geo::MapPoint to;
  double turn_deg = 0.0;
};

/// What a piece of line looks like to a footprint on it.
struct Window {
  HeadingArc headings;  ///< of the line within half the contact length of the piece
  std::vector<Part> parts;
};

Window window_over(const Polyline& line, geo::Span span, Metres half_length) {
  const std::size_t first = line.segment_at(span.from - half_length);
  const std::size_t last = line.segment_at(span.to + half_length);
  const std::size_t first_part = line.segment_at(span.from);
  const std::size_t last_part = line.segment_at(span.to);
  Window window{HeadingArc{line.segment_bearing(first)}, {}};
  double turn_deg = 0.0;
  for (std::size_t i = first; i <= last; ++i) {
    if (i > first) {
      turn_deg += line.segment_bearing(i - 1).turn_to(line.segment_bearing(i));
      window.headings = window.headings.reaching(turn_deg);
    }
    if (i >= first_part && i <= last_part) {
      window.parts.push_back({i == first_part ? line.at(span.from) : line.points()[i],
                              i == last_part ? line.at(span.to) : line.points()[i + 1], turn_deg});
    }
  }
  return window;
}

/// The ground that any footprint touches whose middle lies on the part, or beside it by the line's
/// error, and whose heading is off the part's by an angle with at most this sine.
Strip swept_by(const Walk& walk, const Part& part, double sine) {
  const Metres half_length = walk.footprint.length / 2.0;
  const Metres half_width = walk.footprint.gauge / 2.0 + walk.line_error;
  return {part.from, part.to, half_length + sine * half_width, half_width + sine * half_length};
}

/// A part and what lies beyond its ends of the wedge outside a corner, where the true track may
/// turn.
geo::Segment stands_along(const Part& part, const Window& window, Metres line_error) {
  const units::Bearing along = geo::bearing({part.from, part.to});
  const Metres beyond = window.headings.largest_sine_from(part.turn_deg) * line_error;
  return {geo::moved(part.from, along, -beyond), geo::moved(part.to, along, beyond)};
}

/// Bounds over parts of a line: of the attitudes, and of the gradient itself.
struct GroundBounds {
  AttitudeBox attitudes;
  GradientBox gradients;
};

std::optional<GroundBounds> bounds_of_surface(const HeightMap& heights, const Window& window,
                                              const Walk& walk) {
  std::optional<GroundBounds> bounds;
  for (const Part& part : window.parts) {
    const double sine = window.headings.largest_sine_from(part.turn_deg);
    const auto touched = rises_under(heights, swept_by(walk, part, sine));
    if (!touched) {
      return std::nullopt;
    }
    for (const PatchRises& rises : *touched) {
      for (const Gradient gradient : extremes_of(heights.frame(), rises)) {
        const GroundBounds here{window.headings.attitudes_on(gradient), {gradient, gradient}};
        bounds = bounds ? GroundBounds{bounds->attitudes.with(here.attitudes),
                                       bounds->gradients.with(gradient)}
                        : here;
      }
    }
  }
  return bounds;
}

std::optional<AttitudeBox> attitudes_over(const HeightMap& heights, const Window& window,
                                          const Walk& walk) {
  const std::optional<GroundBounds> surface = bounds_of_surface(heights, window, walk);
  if (!surface) {
    return std::nullopt;
  }
  AttitudeBox box = surface->attitudes;
  const Slope spread = surface->gradients.diameter();
  if (heights.frame().larger_step() <= std::min(walk.footprint.length, walk.footprint.gauge) &&
      spread > kSmoothEnough) {
    std::optional<AttitudeBox> planes;
    for (const Part& part : window.parts) {
      const Stands stands{stands_along(part, window, walk.line_error), walk.line_error,
                          window.headings};
      const auto here = plane_attitudes(heights, walk.footprint, stands, spread);
      if (!here) {
        return box.widened(kRounding);
      }
      planes = planes ? planes->with(*here) : *here;
    }
    box = box.within(*planes);
  }
  return box.widened(kRounding);
}

/// `off_deg`: how far the footprint's heading may be off the line's.
GroundPiece piece_over(const HeightMap& heights, const Polyline& line, geo::Span span,
                       const Walk& walk, double off_deg) {
  const Metres at_middle = (span.from + span.to) / 2.0;
  const geo::MapPoint middle = line.at(at_middle);
  const units::Bearing heading = line.bearing_at(at_middle);
  Window window = window_over(line, span, walk.footprint.length / 2.0);
  window.headings = window.headings.opened_by(off_deg);
  const auto gradient = surface_gradient(heights, middle);
  return {.span = span,
          .middle = middle,
          .heading = heading,
          .attitude = attitudes_over(heights, window, walk),
          .nominal = gradient ? std::optional{attitude_of(*gradient, heading)} : std::nullopt,
          .height = heights.at(middle)};
}

}  // namespace

std::vector<GroundPiece> ground_under(const HeightMap& heights, const Polyline& line,
                                      const Walk& walk) {
  base::require(walk.footprint.length > Metres{0} && walk.footprint.gauge > Metres{0},
                "a footprint has no size");
  base::require(walk.line_error >= Metres{0}, "a line is walked with an error below 0");
  // Steps without end would leave no piece, and no piece is no ground that could be refused.
  base::require(walk.step > Metres{0} && std::isfinite(walk.step.value()),
                "a line is walked without a step");
  const auto count = static_cast<std::size_t>(std::ceil(line.length() / walk.step));
  const auto cut = [&](std::size_t i) {
    return i == count ? line.length()
                      : static_cast<double>(i) / static_cast<double>(count) * line.length();
  };
  std::optional<HeadingOff> off;
  if (walk.pulled) {
    off.emplace(line, *walk.pulled);
  }
  std::vector<GroundPiece> pieces;
  pieces.reserve(count);
  for (std::size_t i = 0; i < count; ++i) {
    const geo::Span span{cut(i), cut(i + 1)};
    pieces.push_back(piece_over(heights, line, span, walk, off ? off->on(span) : 0.0));
  }
  return pieces;
}

std::optional<Gradient> surface_gradient(const HeightMap& heights, geo::MapPoint place) {
  const auto under = patch_under(heights, place);
  if (!under) {
    return std::nullopt;
  }
  return heights.frame().to_map({under->patch.rise_per_column(under->within.row),
                                 under->patch.rise_per_row(under->within.column)});
}

std::optional<Slope> steepest_around(const HeightMap& heights, const Polyline& line,
                                     const Surroundings& where) {
  double steepest2 = 0.0;
  for (const Part& part : window_over(line, where.piece, Metres{0}).parts) {
    const auto touched = rises_under(heights, {part.from, part.to, where.around, where.around});
    if (!touched) {
      return std::nullopt;
    }
    for (const PatchRises& rises : *touched) {
      for (const Gradient gradient : extremes_of(heights.frame(), rises)) {
        const double east = gradient.east.ratio();
        const double north = gradient.north.ratio();
        steepest2 = std::max(steepest2, east * east + north * north);
      }
    }
  }
  return Slope::from_ratio(std::sqrt(steepest2)).raised_by(kRounding);
}

}  // namespace rimehaul::terrain
