#include "app/audit_site.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "app/answer.h"
#include "app/print_doubts.h"
#include "app/progress.h"
#include "app/question.h"
#include "app/sheet_map.h"
#include "app/versions.h"
#include "card/audit_csv.h"
#include "card/limits_report.h"
#include "card/rating_words.h"
#include "passage/estimates.h"
#include "ports/cairo/audit_sheet.h"
#include "ports/json/audit_json.h"
#include "ports/proj/globe.h"
#include "ports/qpdf/finish_pdf.h"

namespace rimehaul::app {

namespace {

/// A load that every rig is judged with.
struct NamedLoad {
  std::string name;
  std::string meaning;
};

bool load_given(const RigOptions& load) {
  return load.bed_kg || load.towed_kg || load.passengers > 0;
}

std::vector<NamedLoad> loads_of(const AuditOptions& options) {
  if (load_given(options.load)) {
    return {{"as given", "as given: each rig with the load that was asked for"}};
  }
  return {
      {"full",
       "full: bed and trailer with the most that is allowed: the allowed share of every rating "
       "of their loads, no passengers (no load was asked for)"},
      {"empty", "empty: driver and fuel alone, because a light rig may grip and balance worse"}};
}

rig::Rig rig_with(const LoadedSite& site, const rig::Rig& rig, const NamedLoad& load,
                  const RigOptions& asked) {
  RigOptions options = asked;
  options.name = rig.name;
  if (load.name == "full") {
    const passage::Rules& rules = site.scene->rules;
    const double allowed =
        passage::allowed_share_for(rules, rig.driver_level).value_or(rules.allowed_share);
    const rig::Load full = card::full_load(rig, allowed);
    options.bed_kg = full.bed.value();
    options.towed_kg = full.towed.value();
  } else if (load.name == "empty") {
    options.towed_kg = 0.0;
  } else if (!rig.trailer) {
    options.towed_kg.reset();
  }
  return rig_as_loaded(site, options);
}

std::vector<rig::Rig> rigs_asked(const LoadedSite& site, const AuditOptions& options) {
  if (options.rigs.empty()) {
    return site.rigs;
  }
  std::vector<rig::Rig> rigs;
  for (const std::string& name : options.rigs) {
    RigOptions asked;
    asked.name = name;
    asked.towed_kg = 0.0;
    rigs.push_back(rig_as_loaded(site, asked));
  }
  return rigs;
}

/// The snows asked for, and what they all share.
std::vector<ChosenSnow> snows_asked(const LoadedSite& site, const AuditOptions& options,
                                    units::Instant when) {
  std::vector<ChosenSnow> snows;
  for (const snow::Wetness wetness : classes_typed(options.wetness)) {
    SnowOptions asked = options.snow;
    asked.wetness = snow::key_of(wetness);
    snows.push_back(snow_to_judge_by(site, asked, when));
  }
  return snows;
}

card::AuditReport blank_report(const LoadedSite& site, const AuditOptions& options,
                               const snow::SnowAt& snow, const Outside& outside) {
  const passage::Scene& scene = *site.scene;
  card::AuditReport report;
  report.site = scene.site_name;
  report.map_frame = scene.frame.horizontal_name;
  report.vertical_datum = scene.frame.vertical_name;
  report.when = departure(options.depart, {outside.now, site.local_clock});
  report.local_clock = site.local_clock;
  report.for_whom = options.for_whom;
  report.snow_told_by = snow.told_by();
  report.weather = snow.weather();
  report.confidence_k = scene.rules.confidence_k;
  for (const trails::Trail& trail : scene.network.trails) {
    report.trails.push_back({trail.name, trail.line});
  }
  report.heights_notes = site.heights_notes;
  report.made_from = made_from(site.inputs, outside);
  return report;
}

/// One rig with its loads and the snows, judged all over.
class RigAudit {
 public:
  RigAudit(const LoadedSite& site, const AuditOptions& options, const passage::Scene& as_measured)
      : site_{&site}, options_{&options}, as_measured_{&as_measured} {}

  void run(const rig::Rig& rig, const std::vector<ChosenSnow>& snows, Progress& progress,
           card::AuditReport& report) const {
    std::vector<rig::Rig> loaded;
    for (const NamedLoad& load : loads_of(*options_)) {
      loaded.push_back(rig_with(*site_, rig, load, options_->load));
    }
    std::vector<passage::Judge> judges;
    std::vector<passage::Judge> bare;
    std::vector<card::AuditedTrails> found;
    add_rig(loaded, report);
    const std::vector<NamedLoad> loads = loads_of(*options_);
    for (std::size_t load = 0; load < loaded.size(); ++load) {
      for (const ChosenSnow& snow : snows) {
        add_judge(*site_->scene, loaded[load], *snow.snow, judges);
        add_judge(*as_measured_, loaded[load], *snow.snow, bare);
        found.push_back({report.cases.size(), {}});
        report.cases.push_back(
            {.rig = report.rigs.size() - 1,
             .load_name = loads[load].name,
             .load = loaded[load].load,
             .snow = snow.snow->at({geo::Height{0}, {}, report.when}).value_or(snow::SnowState{}),
             .lengths = {},
             .exceedances = 0});
      }
    }
    for (std::size_t trail = 0; trail < report.trails.size(); ++trail) {
      for (const trails::Way way : audit::allowed_ways(site_->scene->network.trails[trail])) {
        const audit::MeasuredTrail ground = audit::measure(*site_->scene, rig, {trail, way});
        for (std::size_t i = 0; i < found.size(); ++i) {
          found[i].audits.push_back(audit::audit_trail(ground, {judges[i], bare[i]}, report.when));
        }
      }
      progress.part_done();
    }
    card::add_cases(found, report);
  }

 private:
  void add_rig(const std::vector<rig::Rig>& loaded, card::AuditReport& report) const {
    const rig::Rig& rig = loaded.front();
    const passage::Scene& scene = *site_->scene;
    const units::Metres gauge =
        rig.trailer ? std::min(rig.carrier.gauge, rig.trailer->gauge) : rig.carrier.gauge;
    report.rigs.push_back(
        {.name = rig.name,
         .carrier = rig.carrier.name,
         .trailer = rig.trailer ? rig.trailer->name : "",
         .driver_level = rig.driver_level,
         .allowed_share = passage::allowed_share_for(scene.rules, rig.driver_level)
                              .value_or(scene.rules.allowed_share),
         .tolerance = passage::slope_tolerance(scene, gauge),
         .sources = card::rating_lines(rig)});
  }

  /// What a judge has worked out of the scene is shared with the next.
  static void add_judge(const passage::Scene& scene, const rig::Rig& rig, const snow::SnowAt& snow,
                        std::vector<passage::Judge>& judges) {
    judges.push_back(judges.empty() ? passage::Judge{scene, rig, snow}
                                    : judges.front().with_rig(rig).with_snow(snow));
  }

  const LoadedSite* site_;
  const AuditOptions* options_;
  const passage::Scene* as_measured_;
};

std::vector<std::vector<geo::GlobePoint>> lines_of(const card::AuditReport& report,
                                                   const geo::MapFrame& frame) {
  const ports::proj::Globe globe{frame};
  std::vector<std::vector<geo::GlobePoint>> lines;
  lines.reserve(report.exceedances.size());
  for (const card::AuditRow& row : report.exceedances) {
    std::vector<geo::GlobePoint> line;
    if (row.place.on == audit::On::joint) {
      line.push_back(globe.to_globe(row.place.place));
    } else {
      const geo::Polyline part = report.trails[row.place.trail].line.part(row.place.span);
      for (const geo::MapPoint point : part.points()) {
        line.push_back(globe.to_globe(point));
      }
    }
    if (row.place.way == trails::Way::against) {
      std::ranges::reverse(line);
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

std::string sheet_of(const card::AuditReport& report, const LoadedSite& site,
                     const Outside& outside) {
  std::vector<card::MapView> maps;
  Progress progress{outside, "drawing maps"};
  progress.parts_to_come(report.maps.size());
  for (const card::AuditMap& map : report.maps) {
    maps.push_back(map_with_ground(card::ways_of(map, report), site, ports::cairo::kAuditMapPaper));
    const card::AuditedCase& one = report.cases.at(map.audited_case);
    maps.back().allowed_share = report.rigs.at(one.rig).allowed_share;
    progress.part_done();
  }
  return ports::qpdf::finish_pdf(ports::cairo::draw_audit(report, maps),
                                 {.title = "Slope audit: " + report.site});
}

std::vector<FileToWrite> files_of(const card::AuditReport& report, const AuditOptions& options,
                                  const LoadedSite& site, const Outside& outside) {
  std::vector<FileToWrite> files;
  if (options.csv) {
    files.push_back({*options.csv, card::audit_csv(report)});
  }
  if (options.geojson) {
    files.push_back(
        {*options.geojson,
         ports::json::audit_geojson(report, lines_of(report, site.scene->frame)) + "\n"});
  }
  if (options.pdf) {
    files.push_back({*options.pdf, sheet_of(report, site, outside)});
  }
  return files;
}

}  // namespace

Status audit_site(const AuditOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  const units::Instant when = departure(options.depart, {outside.now, site.local_clock});
  const std::vector<rig::Rig> rigs = rigs_asked(site, options);
  const std::vector<ChosenSnow> snows = snows_asked(site, options, when);
  card::AuditReport report = blank_report(site, options, *snows.front().snow, outside);
  const bool towing = std::ranges::any_of(
      rigs, [](const rig::Rig& rig) { return passage::towing_of(rig) == passage::Towing::yes; });
  report.estimates = passage::estimates_in(
      {.rules = site.scene->rules, .towing = towing ? passage::Towing::yes : passage::Towing::no});
  for (const NamedLoad& load : loads_of(options)) {
    report.loads.push_back(load.meaning);
  }
  const passage::Scene as_measured = audit::without_errors(*site.scene);
  {
    Progress progress{outside, "judging trails"};
    progress.parts_to_come(rigs.size() * report.trails.size());
    for (const rig::Rig& rig : rigs) {
      RigAudit{site, options, as_measured}.run(rig, snows, progress, report);
    }
  }
  const bool json_alone = options.common.json == "-";
  Answer answer{.text = json_alone ? "" : card::text_of(report, kColumns),
                .json = options.common.json ? ports::json::audit_json(report) : "",
                .files = files_of(report, options, site, outside)};
  if (options.pdf) {
    doubt_letters_on_paper(site, answer);
  }
  give_answer(std::move(answer), options.common, outside);
  return report.failed() ? Status::honest_no : Status::yes;
}

}  // namespace rimehaul::app
