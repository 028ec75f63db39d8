#include "app/field_check.h"

#include <algorithm>
#include <utility>

#include "app/answer.h"
#include "app/deciders.h"
#include "app/names.h"
#include "app/place.h"
#include "app/record_place.h"
#include "app/versions.h"
#include "base/one_line.h"
#include "card/field_check_report.h"
#include "ports/gdal/records_file.h"
#include "ports/json/field_check_json.h"
#include "units/rounding.h"

namespace rimehaul::app {

namespace {

bool keeps_one(const FieldCheckOptions& options) {
  return options.place.trail || options.place.at_m || !options.place.point_m.empty() ||
         options.heading_deg || options.grade_deg || options.cross_slope_deg ||
         options.instrument || !options.person.empty();
}

/// Throws WrongUsage naming all that a check lacks.
void expect_whole(const FieldCheckOptions& options) {
  struct Part {
    bool there;
    const char* option;
  };
  const bool on_trail = options.place.trail.has_value();
  std::vector<std::string> lacking;
  for (const Part& part : {Part{!options.person.empty(), "--as PERSON"},
                           Part{on_trail || !options.place.point_m.empty(),
                                "--point EAST,NORTH (or --trail NAME --at METRES)"},
                           Part{on_trail || options.heading_deg, "--heading DEG"},
                           Part{options.grade_deg.has_value(), "--grade DEG"},
                           Part{options.cross_slope_deg.has_value(), "--cross-slope DEG"},
                           Part{options.instrument.has_value(), "--instrument TEXT"}}) {
    if (!part.there) {
      lacking.emplace_back(part.option);
    }
  }
  if (!lacking.empty()) {
    throw WrongUsage{"a field check lacks " + listed(lacking, " and ") +
                     "; say all of it, or nothing of it to see those that are kept"};
  }
  if (!base::is_one_line(*options.instrument)) {
    throw WrongUsage{
        "--instrument is blank or longer than 200 bytes; say in short what it was measured with"};
  }
}

/// Whether a place lies on the raster of the heights, known there or not.
bool is_on_heights(const LoadedSite& site, geo::MapPoint at) {
  constexpr double kHalfACell = 0.5;
  const terrain::GridPlace place = site.heights_source->frame().locate(at);
  const terrain::CellIndex size = site.heights_source->size();
  const auto in = [](double index, std::int64_t count) {
    return index >= -kHalfACell && index <= static_cast<double>(count) - kHalfACell;
  };
  return in(place.column, size.column) && in(place.row, size.row);
}

/// The site with the heights around the checks, which may lie far from every trail.
passage::Scene scene_around(const LoadedSite& site, const std::vector<day::FieldCheck>& checks) {
  constexpr units::Metres kAround{25};  // more than any carrier is long
  std::vector<terrain::Corridor> corridors;
  for (const day::FieldCheck& check : checks) {
    if (is_on_heights(site, check.at)) {
      const units::Bearing east = units::Bearing::from_degrees(90);
      corridors.push_back(
          {geo::Polyline{{check.at, geo::moved(check.at, east, kAround)}}, kAround});
    }
  }
  passage::Scene scene = *site.scene;
  scene.heights = terrain::HeightMap::load(*site.heights_source, corridors);
  return scene;
}

card::FieldCheckReport report_on(const LoadedSite& site, const std::vector<day::FieldCheck>& checks,
                                 const Outside& outside) {
  card::FieldCheckReport report;
  report.site = site.name;
  report.map_frame = site.scene->frame.horizontal_name;
  report.confidence_k = site.scene->rules.confidence_k;
  report.local_clock = site.local_clock;
  report.made_from = made_from(site.inputs, outside);
  const rig::Rig* rig = audit::smallest_tread(site.rigs);
  report.rig = rig == nullptr ? "" : rig->name;
  const passage::Scene scene = scene_around(site, checks);
  std::vector<audit::FieldComparison> comparisons;
  for (const day::FieldCheck& check : checks) {
    std::optional<audit::GroundByHeights> ground;
    if (rig != nullptr) {
      ground = audit::ground_by_heights(scene, *rig, {check.at, check.heading});
    }
    comparisons.push_back(audit::compared({check.grade, check.cross_slope}, ground));
    report.rows.push_back({check, comparisons.back()});
  }
  report.summary = audit::summary_of(comparisons);
  return report;
}

Status tell(const card::FieldCheckReport& report, const FieldCheckOptions& options,
            const Outside& outside) {
  Answer answer{.text = card::text_of(report, kColumns),
                .json = ports::json::field_checks_json(report)};
  if (options.csv) {
    answer.files.push_back({*options.csv, card::field_checks_csv(report)});
  }
  give_answer(std::move(answer), options.common, outside);
  return report.rows.empty() ? Status::honest_no : Status::yes;
}

Status list(const LoadedSite& site, const FieldCheckOptions& options, const Outside& outside) {
  std::vector<day::FieldCheck> checks;
  ports::gdal::expect_frame({.folder = site.folder}, site.scene->frame.horizontal);
  if (const auto records = records_of(site)) {
    for (const auto& kept : records->field_checks()) {
      checks.push_back(kept.thing);
    }
  }
  return tell(report_on(site, checks, outside), options, outside);
}

std::string degrees_text(double degrees) {
  return units::text_of(degrees, 1, units::Round::nearest) + " deg";
}

Status keep(const LoadedSite& site, const FieldCheckOptions& options, const Outside& outside) {
  expect_whole(options);
  const day::Done by = told_by(site, options.person, outside);
  const MapPlace place = place_on_map(site.scene->network, options.place);
  if (!is_on_heights(site, place.at)) {
    throw WrongUsage{
        "that place lies outside the heights of this site; give metres east and north "
        "in " +
        site.scene->frame.horizontal_name};
  }
  day::FieldCheck check{.number = 0,
                        .at = place.at,
                        .heading = {},
                        .grade = units::Slope::from_degrees(*options.grade_deg),
                        .cross_slope = units::Slope::from_degrees(*options.cross_slope_deg),
                        .instrument = *options.instrument,
                        .measured = by};
  if (options.heading_deg) {
    check.heading = units::Bearing::from_degrees(*options.heading_deg);
  } else {
    const trails::Trail& trail = site.scene->network.trails[place.on_trail->trail];
    check.heading = trail.line.bearing_at(place.on_trail->at);
  }
  card::FieldCheckReport report = report_on(site, {check}, outside);
  report.asked = card::FieldChecksAsked::keep;
  if (place.on_trail) {
    report.trail = site.scene->network.trails[place.on_trail->trail].name;
    report.along = place.on_trail->at;
  }
  const auto writing = begin_writing(site, outside);
  check.number = writing->next(day::Kind::field_check);
  writing->add(check, {"keep check", "field check " + std::to_string(check.number),
                       "grade " + degrees_text(*options.grade_deg) + ", across " +
                           degrees_text(*options.cross_slope_deg) + ", with: " + check.instrument});
  writing->commit();
  report.rows.front().check = check;
  return tell(report, options, outside);
}

}  // namespace

Status field_check(const FieldCheckOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  return keeps_one(options) ? keep(site, options, outside) : list(site, options, outside);
}

}  // namespace rimehaul::app
