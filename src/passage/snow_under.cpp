#include "passage/snow_under.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace rimehaul::passage {

using snow::SnowState;
using terrain::AttitudeBox;
using units::Bearing;
using units::Slope;

namespace {

constexpr double kAspectStepDeg = 15.0;

/// Downslope directions, clockwise from the heading: from a middle so far to both sides.
struct AspectRange {
  double middle_deg = 0.0;
  double half_width_deg = 180.0;
};

/// Direction of the downslope, clockwise from the heading.
double downslope_deg(const terrain::Attitude& ground) {
  return std::atan2(ground.cross.ratio(), -ground.grade.ratio()) * 180.0 / std::numbers::pi;
}

/// Distance of the box from level ground, rise over run; 0 when the box holds level ground.
double least_slope(const AttitudeBox& box) {
  const double grade = std::max({0.0, box.grade_low.ratio(), box.grade_high.reversed().ratio()});
  const double cross = std::max({0.0, box.cross_low.ratio(), box.cross_high.reversed().ratio()});
  return std::hypot(grade, cross);
}

/// Seen from level ground outside it, a box spans less than half a turn between its corners.
AspectRange aspects_of(const AttitudeBox& box) {
  const std::array<Slope, 2> grades{box.grade_low, box.grade_high};
  const std::array<Slope, 2> crosses{box.cross_low, box.cross_high};
  const terrain::Attitude centre{
      .grade = Slope::from_ratio((grades[0].ratio() + grades[1].ratio()) / 2.0),
      .cross = Slope::from_ratio((crosses[0].ratio() + crosses[1].ratio()) / 2.0)};
  AspectRange range{.middle_deg = downslope_deg(centre), .half_width_deg = 0.0};
  const Bearing middle = Bearing::from_degrees(range.middle_deg);
  for (const Slope grade : grades) {
    for (const Slope cross : crosses) {
      const Bearing corner = Bearing::from_degrees(downslope_deg({grade, cross}));
      range.half_width_deg = std::max(range.half_width_deg, std::abs(middle.turn_to(corner)));
    }
  }
  return range;
}

/// How much the line turns around a footfall, degrees, left and right added up.
double turning_around(const geo::Polyline& line, geo::Span span) {
  double turning_deg = 0.0;
  const std::size_t last = line.segment_at(span.to);
  for (std::size_t i = line.segment_at(span.from); i < last; ++i) {
    turning_deg += std::abs(line.segment_bearing(i).turn_to(line.segment_bearing(i + 1)));
  }
  return turning_deg;
}

/// Slopes that the box may have with its error; nothing where the error is not known.
std::optional<snow::SlopeRange> slopes_under(const Footfall& footfall,
                                             const SnowQuestion& question) {
  if (!footfall.carrier.has_value() || !question.tolerance.has_value()) {
    return std::nullopt;
  }
  const AttitudeBox box = footfall.carrier->widened(*question.tolerance);
  const double grade =
      std::max(box.grade_low.steepness().ratio(), box.grade_high.steepness().ratio());
  const double cross =
      std::max(box.cross_low.steepness().ratio(), box.cross_high.steepness().ratio());
  return snow::SlopeRange{.least = Slope::from_ratio(least_slope(box)),
                          .most = Slope::from_ratio(std::hypot(grade, cross))};
}

std::vector<std::optional<Bearing>> aspects_under(const Footfall& footfall,
                                                  const SnowQuestion& question) {
  AspectRange range;
  const bool sloping = footfall.carrier.has_value() && question.tolerance.has_value() &&
                       least_slope(*footfall.carrier) > question.tolerance->ratio();
  if (sloping) {
    range = aspects_of(*footfall.carrier);
    range.half_width_deg += turning_around(question.line, footfall.span);
  }
  const double half_width = std::min(range.half_width_deg, 180.0);
  const int steps = std::max(1, static_cast<int>(std::ceil(2.0 * half_width / kAspectStepDeg)));
  std::vector<std::optional<Bearing>> aspects;
  aspects.reserve(static_cast<std::size_t>(steps) + 3);
  aspects.push_back(footfall.aspect);
  if (!sloping) {
    aspects.emplace_back(std::nullopt);
  }
  for (int i = 0; i <= steps; ++i) {
    const double off = half_width * (2.0 * i / steps - 1.0);
    aspects.emplace_back(
        Bearing::from_degrees(footfall.heading.degrees() + range.middle_deg + off));
  }
  return aspects;
}

std::vector<geo::Height> heights_under(const Footfall& footfall) {
  const geo::Height middle = *footfall.height;
  if (!footfall.carrier.has_value()) {
    return {middle};
  }
  const units::Metres half = (footfall.span.to - footfall.span.from) / 2.0;
  const units::Metres off = half * footfall.carrier->steepest_grade().ratio();
  return {middle, middle + off, middle + -off};
}

/// What lies on groomed snow is fresh, and grips as that does, and so is what nobody has groomed;
/// nobody knows what lies under snow of which nobody has said how much it is.
std::optional<SnowState> as_trodden(const std::optional<SnowState>& state,
                                    const snow::DayWeather& weather, bool groomed) {
  if (!state || !weather.new_snow) {
    return std::nullopt;
  }
  return groomed && *weather.new_snow < kNewSnowThatCounts
             ? *state
             : state->worst_with({snow::Wetness::dry, snow::Surface::fresh});
}

}  // namespace

std::optional<units::Metres> sinkage_in_new_snow(const snow::DayWeather& weather) {
  if (!weather.new_snow) {
    return std::nullopt;
  }
  return snow::sinkage_of(snow::NewSnow{
      .depth = *weather.new_snow,
      .density = weather.new_snow_density.value_or(units::KilogramsPerCubicMetre{0})});
}

std::vector<std::optional<SnowState>> snow_under(const Footfall& footfall,
                                                 const SnowQuestion& question) {
  if (!footfall.height.has_value()) {
    return {std::nullopt};
  }
  std::vector<std::optional<SnowState>> states;
  const std::vector<std::optional<Bearing>> aspects = aspects_under(footfall, question);
  const std::optional<snow::SlopeRange> slopes = slopes_under(footfall, question);
  for (const geo::Height height : heights_under(footfall)) {
    for (const std::optional<Bearing>& aspect : aspects) {
      const std::optional<SnowState> state =
          as_trodden(question.snow.at({height, aspect, question.when, slopes, footfall.middle}),
                     question.snow.weather(), question.groomed);
      if (std::ranges::find(states, state) == states.end()) {
        states.push_back(state);
      }
    }
  }
  return states;
}

Finding snow_that_turns() {
  return unknown(Check::snow_known, "snow that stays while the leg is driven");
}

}  // namespace rimehaul::passage
