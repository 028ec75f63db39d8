#include "day/asked_way.h"

#include <utility>

#include "day/fuel.h"
#include "day/withhold.h"

namespace rimehaul::day {

using passage::Judge;

WayAsker::WayAsker(const Judge& judge, passage::GroundMemory& ground, const AskedOfAll& asked)
    : judge_{&judge},
      remembering_{judge, ground},
      asked_{asked},
      finder_{judge.scene().network, remembering_, asked.depart, asked.ways} {}

AskedWay WayAsker::ask(const Trip& trip, search::Permission permission) {
  AskedWay way = driven(trip, permission);
  if (!way.route) {
    return way;
  }
  const units::Litres spare = fuel_to_spare(judge_->rig(), judge_->scene().rules);
  if (way.route->fuel <= spare) {
    way.places_rewalked = walk_again(*way.route);
  } else {
    way.fuel_to_spare = spare;
  }
  return way;
}

/// The safest way between the stations, or the way that was given; fuel is not looked at yet.
AskedWay WayAsker::driven(const Trip& trip, search::Permission permission) {
  if (const auto* way = std::get_if<search::FixedWay>(&trip)) {
    auto answer = search::drive_fixed(remembering_, *way, asked_.depart, permission);
    if (auto* route = std::get_if<search::Route>(&answer)) {
      return {.route = std::move(*route)};
    }
    return {.none = std::get<search::NoRoute>(std::move(answer))};
  }
  search::RouteQuestion question;
  question.stations = std::get<Stops>(trip).stations;
  question.depart = asked_.depart;
  question.most_alternatives = 0;
  question.permitted_by = permission == search::Permission::named_person ? "a named person" : "";
  search::RouteAnswer answer = finder_.routes(question);
  if (auto* routes = std::get_if<std::vector<search::Route>>(&answer)) {
    return {.route = std::move(routes->front())};
  }
  return {.none = std::get<search::NoRoute>(std::move(answer))};
}

std::size_t WayAsker::walk_again(const search::Route& route) const {
  const passage::Scene& scene = judge_->scene();
  const audit::Rewalk rewalk =
      asked_.rewalk(scene, judge_->rig(), judge_->snow(), promise_of(route, scene.network));
  withhold_if_worse(rewalk);
  return rewalk.places_judged;
}

struct OtherLoadAskers::Loaded {
  Loaded(const Judge& as_it_stands, rig::Rig other, passage::GroundMemory& ground,
         const AskedOfAll& asked)
      : rig{std::move(other)}, judge{as_it_stands.with_rig(rig)}, asker{judge, ground, asked} {}

  rig::Rig rig;
  Judge judge;
  WayAsker asker;
};

OtherLoadAskers::OtherLoadAskers(const Judge& judge, passage::GroundMemory& ground,
                                 const AskedOfAll& asked)
    : judge_{&judge}, ground_{&ground}, asked_{asked} {}

WayAsker& OtherLoadAskers::with(const Cargo& cargo) {
  std::shared_ptr<Loaded>& loaded = loaded_[cargo];
  if (loaded == nullptr) {
    rig::Rig rig = judge_->rig();
    rig.load.bed = cargo.bed;
    rig.load.towed = cargo.towed;
    loaded = std::make_shared<Loaded>(*judge_, std::move(rig), *ground_, asked_);
  }
  return loaded->asker;
}

}  // namespace rimehaul::day
