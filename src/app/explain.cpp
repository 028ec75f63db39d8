#include "app/explain.h"

#include <optional>

#include "app/answer.h"
#include "app/orders.h"
#include "app/question.h"
#include "app/versions.h"
#include "card/explanation.h"
#include "card/figures.h"
#include "ports/json/answers.h"

namespace rimehaul::app {

namespace {

/// Further than this from every trail, a point is taken to be a slip of the pen.
constexpr units::Metres kFurthest{100};

card::TrailPlace place_at(const trails::Network& network, geo::MapPoint point) {
  std::optional<card::TrailPlace> nearest;
  units::Metres away{0};
  for (std::size_t i = 0; i < network.trails.size(); ++i) {
    const geo::Foot foot = network.trails[i].line.nearest(point);
    if (!nearest || foot.away < away) {
      nearest = card::TrailPlace{i, foot.at};
      away = foot.away;
    }
  }
  if (!nearest || !(away <= kFurthest)) {
    throw WrongUsage{
        "no trail lies within " + card::distance_text(kFurthest) +
        " of that --point; the nearest is " +
        (nearest ? network.trails[nearest->trail].name + ", " + card::distance_text(away) + " away"
                 : std::string{"not there"})};
  }
  return *nearest;
}

card::TrailPlace place_of(const trails::Network& network, const ExplainOptions& options) {
  if (options.point_m.size() == 2) {
    return place_at(network,
                    {units::Metres{options.point_m[0]}, units::Metres{options.point_m[1]}});
  }
  if (!options.trail || !options.at_m) {
    throw WrongUsage{
        "it is not said which place; say --trail NAME --at METRES, or --point EAST,NORTH"};
  }
  const std::size_t trail = trail_named(network, *options.trail);
  const units::Metres length = network.trails[trail].line.length();
  const units::Metres at{*options.at_m};
  if (!(at <= length)) {
    throw WrongUsage{"the trail " + *options.trail + " is only " + card::distance_text(length) +
                     " long; give an --at on it"};
  }
  return {trail, at};
}

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
  const card::TrailPlace place = place_of(site.scene->network, options);
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
