#include "app/explain.h"

#include "app/answer.h"
#include "app/orders.h"
#include "app/place.h"
#include "app/question.h"
#include "app/versions.h"
#include "card/explanation.h"
#include "ports/json/answers.h"

namespace rimehaul::app {

namespace {

card::Directions directions_named(const std::string& name) {
  if (name == "forward") {
    return card::Directions::forward;
  }
  return name == "backward" ? card::Directions::backward : card::Directions::both;
}

}  // namespace

Status explain(const ExplainOptions& options, const Outside& outside) {
  LoadedSite site = load_usable_site(options.common.site);
  const rig::Rig rig = rig_as_loaded(site, options.rig);
  const units::Instant when = departure(options.depart, {outside.now, site.local_clock});
  heed_records(site, when, outside);
  const ChosenSnow snow = snow_to_judge_by(site, options.snow, when);
  const passage::Judge judge{*site.scene, rig, *snow.snow};
  const card::TrailPlace place = place_on_trail(site.scene->network, options.place);
  card::Explanation explanation =
      card::explain(judge, place, directions_named(options.direction), when,
                    options.what_if ? card::WhatIf::yes : card::WhatIf::no);
  explanation.made_from = made_from(inputs_judged_by(site, snow), outside);
  give_answer({.text = card::text_of(explanation, kColumns),
               .json = ports::json::explanation_json(explanation)},
              options.common, outside);
  return Status::yes;
}

}  // namespace rimehaul::app
