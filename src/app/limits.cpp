// The verb `limits`: the steepest ground that a rig may be driven on.
#include "app/limits.h"

#include <optional>

#include "app/answer.h"
#include "app/question.h"
#include "app/versions.h"
#include "app/write_file.h"
#include "card/limits_report.h"
#include "ports/cairo/envelope_sheet.h"
#include "ports/json/limits_json.h"

namespace rimehaul::app {

namespace {

std::vector<snow::Wetness> classes_asked(const std::optional<std::string>& name) {
  if (name) {
    return {wetness_typed(*name)};
  }
  std::vector<snow::Wetness> all;
  all.reserve(snow::kWetnessCount);
  for (int i = 0; i < snow::kWetnessCount; ++i) {
    all.push_back(static_cast<snow::Wetness>(i));
  }
  return all;
}

std::vector<snow::Surface> surfaces_asked(const std::optional<std::string>& name) {
  if (name) {
    return {surface_typed(*name)};
  }
  std::vector<snow::Surface> all;
  all.reserve(snow::kSurfaceCount);
  for (int i = 0; i < snow::kSurfaceCount; ++i) {
    all.push_back(static_cast<snow::Surface>(i));
  }
  return all;
}

}  // namespace

Status limits(const LimitsOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  RigOptions asked = options.rig;
  asked.towed_kg = asked.towed_kg.value_or(0.0);
  const rig::Rig rig = rig_as_loaded(site, asked);
  card::LimitsReport report = card::limits_report({.rig = rig,
                                                   .rules = site.scene->rules,
                                                   .classes = classes_asked(options.wetness),
                                                   .surfaces = surfaces_asked(options.surface)});
  report.site = site.name;
  report.inputs = site.inputs;
  report.versions = versions();
  report.made = outside.now;
  if (options.svg) {
    write_file(*options.svg, ports::cairo::envelope_sheet(report, ports::cairo::Form::svg).bytes);
  }
  if (options.pdf) {
    write_file(*options.pdf, ports::cairo::envelope_sheet(report, ports::cairo::Form::pdf).bytes);
  }
  give_answer({.text = card::text_of(report, kColumns), .json = ports::json::limits_json(report)},
              options.common, outside);
  return card::any_open(report) ? Status::yes : Status::honest_no;
}

}  // namespace rimehaul::app
