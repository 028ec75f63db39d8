// The verb `limits`: the steepest ground that a rig may be driven on.
#include "app/limits.h"

#include <optional>
#include <utility>

#include "app/answer.h"
#include "app/input_files.h"
#include "app/print_doubts.h"
#include "app/question.h"
#include "app/versions.h"
#include "card/limits_report.h"
#include "ports/cairo/envelope_sheet.h"
#include "ports/json/limits_json.h"
#include "ports/qpdf/finish_pdf.h"

namespace rimehaul::app {

namespace {

/// Nothing typed stands for all.
std::vector<std::string> one_or_all(const std::optional<std::string>& name) {
  return name ? std::vector{*name} : std::vector<std::string>{};
}

}  // namespace

Status limits(const LimitsOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  RigOptions asked = options.rig;
  asked.towed_kg = asked.towed_kg.value_or(0.0);
  const rig::Rig rig = rig_as_loaded(site, asked);
  card::LimitsReport report =
      card::limits_report({.rig = rig,
                           .rules = site.scene->rules,
                           .classes = classes_typed(one_or_all(options.wetness)),
                           .surfaces = surfaces_typed(one_or_all(options.surface))});
  report.site = site.name;
  report.made_from = made_from(inputs_of_rigs(site.inputs), outside);
  Answer answer{.text = card::text_of(report, kColumns), .json = ports::json::limits_json(report)};
  if (options.svg) {
    answer.files.push_back(
        {*options.svg, ports::cairo::envelope_sheet(report, ports::cairo::Form::svg).bytes});
  }
  if (options.pdf) {
    doubt_letters_on_paper(site, answer);
    answer.files.push_back(
        {*options.pdf,
         ports::qpdf::finish_pdf(ports::cairo::envelope_sheet(report, ports::cairo::Form::pdf),
                                 {.title = "Allowed grade and cross-slope: " + report.rig})});
  }
  give_answer(std::move(answer), options.common, outside);
  return card::any_open(report) ? Status::yes : Status::honest_no;
}

}  // namespace rimehaul::app
