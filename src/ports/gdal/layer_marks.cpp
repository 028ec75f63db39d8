// Marks from vector files: what they speak of, and where on their trail they lie.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <set>
#include <utility>

#include "base/nearest_name.h"
#include "ports/gdal/layer_columns.h"
#include "ports/gdal/layer_source.h"
#include "ports/gdal/layers.h"

namespace rimehaul::ports::gdal {

using trails::Mark;
using trails::MarkKind;
using trails::Trail;
using units::Metres;
using units::Slope;

namespace {

/// A mark farther from its trail than this belongs to another, or is misplaced.
constexpr Metres kFarthest{30.0};
constexpr double kTiny = std::numeric_limits<double>::min();
constexpr Allowed kSteepness{0.0, 80.0, "degrees from 0 to 80"};
/// Deviations of a survey in degrees, above 0: no survey is exact.
constexpr Allowed kDeviation{kTiny, 10.0, "degrees above 0, to 10"};

constexpr std::array<Word<trails::Side>, 2> kSides{
    {{"left", trails::Side::left}, {"right", trails::Side::right}}};

constexpr std::array<Word<MarkKind>, 16> kMarkKinds{{{"bench", MarkKind::bench},
                                                     {"bridge", MarkKind::bridge},
                                                     {"road_crossing", MarkKind::road_crossing},
                                                     {"piste_crossing", MarkKind::piste_crossing},
                                                     {"winch_cable", MarkKind::winch_cable},
                                                     {"blasting", MarkKind::blasting},
                                                     {"gate", MarkKind::gate},
                                                     {"radio_gate", MarkKind::radio_gate},
                                                     {"creek_bridge", MarkKind::creek_bridge},
                                                     {"cornice", MarkKind::cornice},
                                                     {"drop", MarkKind::drop},
                                                     {"dead_zone", MarkKind::dead_zone},
                                                     {"refuge", MarkKind::refuge},
                                                     {"turning_room", MarkKind::turning_room},
                                                     {"passing_place", MarkKind::passing_place},
                                                     {"check_in", MarkKind::check_in}}};

/// A deviation in degrees as one in rise over run. The tangent grows faster the steeper it is, so
/// its rate is taken three deviations above the steeper of the two surveyed angles.
struct SurveyedAngle {
  double steepest_deg = 0.0;
  double deviation_deg = 0.0;
};

Slope deviation_of(SurveyedAngle angle) {
  const auto [steepest_deg, deviation_deg] = angle;
  constexpr double kDegree = std::numbers::pi / 180.0;
  const double tangent = std::tan((steepest_deg + 3 * deviation_deg) * kDegree);
  const double beyond = steepest_deg + 3 * deviation_deg;
  return beyond < 90.0 ? Slope::from_ratio((1 + tangent * tangent) * deviation_deg * kDegree)
                       : Slope::from_ratio(std::nan(""));
}

std::optional<trails::Survey> survey_of(const Columns& columns, bool is_built) {
  const auto grade = columns.number("grade_deg", kSteepness);
  const auto cross = columns.number("cross_deg", kSteepness);
  const auto deviation = columns.number("sd_deg", kDeviation);
  const auto surveyed = columns.moment("surveyed");
  const auto inspected = columns.moment("inspected", DateAlone::misfits);
  std::vector<std::string> missing;
  const auto note = [&missing](bool said, const char* column) {
    if (!said) {
      missing.emplace_back(column);
    }
  };
  note(grade.has_value(), "grade_deg");
  note(cross.has_value(), "cross_deg");
  note(deviation.has_value(), "sd_deg");
  note(surveyed.has_value(), "surveyed");
  note(inspected.has_value(), "inspected");
  if (is_built && !missing.empty()) {
    columns.doubt({"it is closed, because its survey does not say " + list_of(missing),
                   "fill in these columns"});
  }
  if (!grade || !cross || !deviation || !surveyed) {
    return std::nullopt;
  }
  return trails::Survey{.steepest_grade = Slope::from_degrees(*grade),
                        .steepest_cross = Slope::from_degrees(*cross),
                        .standard_deviation = deviation_of({std::max(*grade, *cross), *deviation}),
                        .surveyed = *surveyed,
                        .inspected = inspected};
}

const Trail* trail_named(const Columns& columns, const std::vector<Trail>& trails,
                         trails::TrailList list) {
  const auto named = columns.text("trail");
  if (!named) {
    columns.fault({"it does not say on which trail it lies", "fill in the column trail"});
    return nullptr;
  }
  std::vector<std::string> known;
  for (const Trail& trail : trails) {
    if (trail.name == *named) {
      return &trail;
    }
    known.push_back(trail.name);
  }
  if (list == trails::TrailList::some_left_out) {
    return nullptr;
  }
  const auto meant = base::nearest_name(*named, known);
  columns.fault({"there is no trail " + *named + " to lie on",
                 meant ? "did you mean " + *meant + "?" : "give the name of a trail of this site"});
  return nullptr;
}

/// The stretch of a trail from the first to the last of the places nearest to a mark's points.
std::optional<geo::Span> span_of(const std::vector<geo::MapPoint>& points, const Trail& trail,
                                 const Columns& columns) {
  geo::Span span{Metres{std::numeric_limits<double>::infinity()}, Metres{0}};
  Metres drawn{0};
  for (std::size_t i = 0; i < points.size(); ++i) {
    const geo::Foot foot = trail.line.nearest(points[i]);
    if (!(foot.away <= kFarthest)) {
      columns.fault({"it lies " + std::to_string(std::lround(foot.away.value())) +
                         " m away from its trail " + trail.name,
                     "draw it on its trail, or name the trail that it lies on"});
      return std::nullopt;
    }
    span = {std::min(span.from, foot.at), std::max(span.to, foot.at)};
    drawn += i == 0 ? Metres{0} : geo::distance(points[i - 1], points[i]);
  }
  // Near a bend or a second stretch of the trail the nearest place may jump far along it.
  if (!(span.to - span.from <= 1.5 * drawn + kFarthest)) {
    columns.fault({"it does not follow its trail " + trail.name, "draw it along its trail"});
    return std::nullopt;
  }
  return span;
}

/// Which way to keep off is the first thing a driver asks where one sees nothing.
std::optional<trails::Side> side_of(const Columns& columns, std::optional<MarkKind> kind) {
  const auto side = columns.word<trails::Side>("side", kSides);
  if (!side && (kind == MarkKind::cornice || kind == MarkKind::drop)) {
    columns.doubt({"cards cannot tell on which side it is",
                   "say left or right, as the trail is "
                   "drawn, in the column side"});
  }
  return side;
}

Mark mark_of(const LayerFeature& feature, const Columns& columns) {
  const auto kind = columns.word<MarkKind>("kind", kMarkKinds);
  const auto most_kg = columns.number("most_kg", {kTiny, 1e6, "kilograms above 0"});
  const auto room_m = columns.number("room_m", {0.0, 1e6, "metres, 0 or more"});
  if (columns.text("status")) {
    columns.fault({"what it is like today does not belong here",
                   "say it in the snow report: [[status]], mark and clear"});
  }
  if (!columns.text("kind")) {
    columns.fault({"it does not say its kind, and counts as a gate that nobody has cleared",
                   "fill in the column kind"});
  }
  if (kind && trails::carries_a_mass(*kind) && !most_kg) {
    columns.doubt({"it is closed, because it does not say most_kg", "fill in this column"});
  }
  return {.name = feature.name.empty() ? feature.place : feature.name,
          .kind = kind.value_or(MarkKind::gate),
          .trail = "",
          .span = {},
          .survey = survey_of(columns, kind && trails::needs_survey(*kind)),
          .most_mass = most_kg ? std::optional{units::Kilograms{*most_kg}} : std::nullopt,
          .room = room_m ? std::optional{Metres{*room_m}} : std::nullopt,
          .side = side_of(columns, kind)};
}

void tell_name(const LayerFeature& feature, std::set<std::string>& used, const Columns& columns) {
  if (feature.name.empty()) {
    columns.fault({"it has no name", "fill in the column name"});
  } else if (!used.insert(feature.name).second) {
    columns.fault({"the name is used twice in this file", "give each its own name"});
  }
}

}  // namespace

base::Reading<std::vector<Mark>> read_marks(const LayerFile& file, const geo::MapFrame& frame,
                                            const std::vector<Trail>& trails,
                                            trails::TrailList trail_list) {
  auto features = read_features(file, frame,
                                {"marks",
                                 "mark",
                                 {ShapeKind::point, ShapeKind::line},
                                 {"name", "kind", "trail", "status", "grade_deg", "cross_deg",
                                  "sd_deg", "surveyed", "inspected", "most_kg", "room_m", "side"}});
  base::Reading<std::vector<Mark>> reading;
  reading.faults = std::move(features.faults);
  std::set<std::string> used;
  for (const LayerFeature& feature : features.data) {
    const Columns columns{feature.said, {file.shown, feature.place}, reading.faults};
    // A mark warns or closes, so one with a fault in its words still stands where it can be placed.
    tell_name(feature, used, columns);
    Mark mark = mark_of(feature, columns);
    const Trail* trail = trail_named(columns, trails, trail_list);
    const auto span =
        trail == nullptr ? std::nullopt : span_of(feature.shape.front().front(), *trail, columns);
    if (span) {
      mark.trail = trail->name;
      mark.span = *span;
      reading.data.push_back(std::move(mark));
    }
  }
  return reading;
}

}  // namespace rimehaul::ports::gdal
