#include "day/payload.h"

#include <cmath>
#include <utility>

#include "base/require.h"
#include "day/fuel.h"
#include "day/withhold.h"

namespace rimehaul::day {

using passage::LoadPlace;
using units::Kilograms;

namespace {

constexpr Kilograms kOne{1};
constexpr int kMostInGrid = 9;

/// Drives one way with one load after the other; the ground is measured once.
class Loader {
 public:
  Loader(const passage::Judge& judge, const PayloadQuestion& question)
      : judge_{judge}, question_{question} {}

  LoadedWay drive(const rig::Rig& rig) {
    const passage::Judge judge = judge_.with_rig(rig);
    const passage::RememberingJudge remembering{judge, ground_};
    auto driven = search::Timekeeper{remembering, question_.depart}.drive(question_.way,
                                                                          question_.permission);
    LoadedWay way;
    if (auto* blocked = std::get_if<search::Blocked>(&driven)) {
      way.closed.at = std::move(*blocked);
      return way;
    }
    auto& route = std::get<search::Route>(driven);
    const units::Litres spare = fuel_to_spare(rig, judge_.scene().rules);
    if (route.fuel <= spare) {
      way.route = std::move(route);
    } else {
      way.closed.fuel_to_spare = spare;
      way.closed.fuel = route.fuel;
    }
    return way;
  }

  /// Of an open way.
  void walk_again(const rig::Rig& rig, const LoadedWay& way) {
    const passage::Scene& scene = judge_.scene();
    const audit::Rewalk rewalk =
        question_.rewalk(scene, rig, judge_.snow(), promise_of(*way.route, scene.network));
    withhold_if_worse(rewalk);
    places_rewalked_ += rewalk.places_judged;
  }

  [[nodiscard]] const rig::Rig& rig() const { return judge_.rig(); }
  [[nodiscard]] std::size_t places_rewalked() const { return places_rewalked_; }

 private:
  const passage::Judge& judge_;
  const PayloadQuestion& question_;
  passage::GroundMemory ground_;
  std::size_t places_rewalked_ = 0;
};

rig::Rig with_load(rig::Rig rig, LoadPlace place, Kilograms load) {
  (place == LoadPlace::bed ? rig.load.bed : rig.load.towed) = load;
  return rig;
}

// The load, and the step past it. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
LoadEnd end_at(Loader& loader, LoadPlace place, Kilograms load, Kilograms further) {
  const rig::Rig rig = with_load(loader.rig(), place, load);
  const LoadedWay way = loader.drive(rig);
  base::require(way.route.has_value(), "a load that was found open is not");
  loader.walk_again(rig, way);
  LoadEnd end{.load = load, .binds = way.binds()};
  const Kilograms beyond = load + further;
  if (beyond >= Kilograms{0}) {
    const LoadedWay past = loader.drive(with_load(loader.rig(), place, beyond));
    base::require(!past.route.has_value(), "a load past the end of an interval is open");
    end.beyond = past.closed;
  }
  return end;
}

std::vector<LoadRange> ranges_of(Loader& loader, const passage::LoadSteps& steps) {
  const passage::OpenIf open{
      [&](const rig::Rig& other) { return loader.drive(other).route.has_value(); }};
  std::vector<LoadRange> ranges;
  for (const passage::LoadInterval& found : passage::open_loads(loader.rig(), steps, open)) {
    ranges.push_back({end_at(loader, steps.place, found.from, -1.0 * kOne),
                      end_at(loader, steps.place, found.to, kOne)});
  }
  return ranges;
}

/// From none to the last whole kilogram of the rating, in whole steps.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::vector<Kilograms> loads_shown(Kilograms rating, Kilograms step) {
  const Kilograms last{std::floor(rating.value())};
  if (!(last >= Kilograms{0}) || !std::isfinite(last.value())) {
    return {};
  }
  const double steps = std::max(std::ceil(last.value() / step.value() / (kMostInGrid - 1)), 1.0);
  std::vector<Kilograms> loads;
  for (int i = 0; i * steps * step < last; ++i) {
    loads.push_back(i * steps * step);
  }
  loads.push_back(last);
  return loads;
}

LoadGrid grid_of(Loader& loader, Kilograms step) {
  const rig::Rig& rig = loader.rig();
  if (!rig.trailer.has_value()) {
    return {};
  }
  LoadGrid grid{loads_shown(rig.carrier.bed_rating, step),
                loads_shown(rig.trailer->payload_rating, step),
                {}};
  rig::Rig loaded = rig;
  for (const Kilograms bed : grid.bed) {
    loaded.load.bed = bed;
    for (const Kilograms towed : grid.towed) {
      loaded.load.towed = towed;
      grid.cells.push_back(loader.drive(loaded));
    }
  }
  return grid;
}

}  // namespace

BindsAt LoadedWay::binds() const {
  base::require(route.has_value() && !route->legs.empty(), "only an open way has what binds");
  BindsAt binds{.finding = route->legs.front().judgement.bind(), .leg = route->legs.front().leg};
  for (std::size_t i = 0; i < route->legs.size(); ++i) {
    const search::RouteLeg& part = route->legs[i];
    if (passage::binds_before(part.judgement.bind(), binds.finding)) {
      binds = {part.judgement.bind(), part.leg};
    }
    if (i > 0 && passage::binds_before(part.turn_into.binding, binds.finding)) {
      binds = {part.turn_into.binding, part.leg, route->legs[i - 1].leg};
    }
  }
  return binds;
}

Payload payload_of(const passage::Judge& judge, const PayloadQuestion& question) {
  base::require(!question.way.empty(), "a way has no legs");
  base::require(question.step > Kilograms{0}, "loads are judged in steps above 0");
  Loader loader{judge, question};
  const auto third_done = [&] {
    if (question.watcher != nullptr) {
      question.watcher->part_done();
    }
  };
  if (question.watcher != nullptr) {
    question.watcher->parts_to_come(3);
  }
  Payload payload{.as_asked = loader.drive(judge.rig()), .step = question.step};
  if (payload.as_asked.route.has_value()) {
    loader.walk_again(judge.rig(), payload.as_asked);
  }
  payload.bed = ranges_of(loader, {LoadPlace::bed, question.step});
  third_done();
  payload.towed = ranges_of(loader, {LoadPlace::towed, question.step});
  third_done();
  payload.both = grid_of(loader, question.step);
  third_done();
  payload.places_rewalked = loader.places_rewalked();
  return payload;
}

}  // namespace rimehaul::day
