#include "day/round_hops.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <set>
#include <utility>

namespace rimehaul::day {

using passage::Judge;
using search::Hop;
using search::HopAsked;
using search::HopDriven;
using search::RouteAnswer;
using search::StopSet;
using trails::JunctionId;
using units::Instant;

namespace {

/// Of loads for which the hour matters, so many are kept for the proof that an order is the best:
/// each takes some 10 MB. Where there are more, they are judged once more.
constexpr std::size_t kMostKept = 64;

/// Between all stations of the round.
search::JunctionWays ways_of(const trails::Network& network, const RoundStops& stops) {
  std::vector<JunctionId> junctions;
  const auto add = [&](std::size_t station) {
    const auto junction = network.junction_of(station);
    if (junction && std::ranges::find(junctions, *junction) == junctions.end()) {
      junctions.push_back(*junction);
    }
  };
  add(stops.start);
  std::ranges::for_each(stops.stations, add);
  if (stops.end.has_value()) {
    add(*stops.end);
  }
  return search::ways_between(network, {.from = junctions, .to = junctions});
}

/// The least seconds and litres that any way takes, whatever the load: judges say it of the
/// carrier alone. Nothing where there is no way.
std::optional<search::HopAtBest> least_between(Stations ends, const search::JunctionWays& ways,
                                               const Judge& judge) {
  const auto place_of = [&](std::size_t station) {
    const auto junction = judge.scene().network.junction_of(station);
    const auto found = std::ranges::find(ways.between.from, junction.value());
    return static_cast<std::size_t>(found - ways.between.from.begin());
  };
  const auto least = [&](const auto& price_of) {
    search::Prices prices;
    for (const search::Step& step : ways.legs.steps) {
      prices.push_back(step.leg.has_value() ? price_of(judge.at_best(*step.leg)) : 0.0);
    }
    const search::Node goal = ways.legs.goals.at(place_of(ends.second));
    const search::Reach reach = ways.legs.graph.reach_to(goal, prices, search::Combining::sum);
    return reach.price[search::index_of(ways.legs.starts.at(place_of(ends.first)))];
  };
  const double least_s = least([](const passage::LegAtBest& leg) { return leg.time.value(); });
  const double least_l = least([](const passage::LegAtBest& leg) { return leg.fuel.value(); });
  if (!std::isfinite(least_s) || !std::isfinite(least_l)) {
    return std::nullopt;
  }
  return search::HopAtBest{.lasts_s = static_cast<std::int64_t>(least_s),
                           .fuel = units::Litres{least_l}};
}

}  // namespace

/// Loads that the crew judges side by side.
class RoundHops::Finding final : public base::Work {
 public:
  Finding(RoundHops& hops, std::vector<SameLoad>& loads) : hops_{hops}, loads_{loads} {}

  void do_part(std::size_t part) override {
    SameLoad& same = loads_[part];
    LoadHops& loaded = hops_.with_load_of(same.asked.front().hop, same.shelf);
    std::set<StopSet> sets;
    for (const HopAsked& asked : same.asked) {
      same.driven.push_back(loaded.driven(hops_.ends_of(asked.hop), asked.ready));
      sets.insert(asked.hop.called);
      same.shelf.driven_once.insert(asked.hop.called);
    }
    const bool comes_again = loaded.last_turn().has_value() && hops_.shelves_.size() <= kMostKept;
    if (!comes_again && std::popcount(same.asked.front().hop.called) >= same.shelf.last_needed) {
      same.shelf.loaded.reset();
    }
    for (std::size_t told = 0; hops_.question_->watcher != nullptr && told < sets.size(); ++told) {
      hops_.question_->watcher->part_done();
    }
  }

 private:
  RoundHops& hops_;
  std::vector<SameLoad>& loads_;
};

RoundHops::RoundHops(const Judge& judge, const RoundQuestion& question)
    : judge_{&judge}, question_{&question}, ways_{ways_of(judge.scene().network, question.stops)} {
  for (std::uint32_t leg = 0; leg < judge.scene().network.legs.size(); ++leg) {
    static_cast<void>(passage::ground_under(trails::LegId{leg}, judge, ground_));
  }
  for (const StopSet called : question.stops.sets_on_the_way()) {
    int& last_needed = shelf_for(called).last_needed;
    last_needed = std::max(last_needed, std::popcount(called));
  }
}

RoundHops::Shelf& RoundHops::shelf_for(StopSet called) {
  const rig::Load load = rig_with(judge_->rig(), question_->round, question_->stops, called).load;
  return shelves_[{load.bed.value(), load.towed.value(), load.passengers}];
}

LoadHops& RoundHops::with_load_of(const Hop& hop, Shelf& shelf) {
  if (shelf.loaded == nullptr) {
    shelf.loaded = std::make_unique<LoadHops>(
        rig_with(judge_->rig(), question_->round, question_->stops, hop.called),
        SharedByLoads{*judge_, *question_, ways_, ground_});
    shelf.last_turn = shelf.loaded->last_turn();
  }
  return *shelf.loaded;
}

LoadHops& RoundHops::with_load_of(const Hop& hop) {
  return with_load_of(hop, shelf_for(hop.called));
}

Stations RoundHops::ends_of(const Hop& hop) const {
  return {question_->stops.departed(hop), question_->stops.reached(hop)};
}

void RoundHops::expect(std::span<const HopAsked> next) {
  std::map<Shelf*, std::size_t> places;
  std::vector<SameLoad> loads;
  std::set<StopSet> once_more;  // to prove that an order is the best
  for (const HopAsked& asked : next) {
    Shelf& shelf = shelf_for(asked.hop.called);
    const auto [known, is_new] = places.emplace(&shelf, loads.size());
    if (is_new) {
      loads.push_back({.shelf = shelf});
    }
    loads[known->second].asked.push_back(asked);
    if (shelf.driven_once.contains(asked.hop.called)) {
      once_more.insert(asked.hop.called);
    }
  }
  if (question_->watcher != nullptr && !once_more.empty()) {
    question_->watcher->parts_to_come(once_more.size());
  }
  Finding finding{*this, loads};
  base::CrewOfOne alone;
  (question_->crew != nullptr ? *question_->crew : alone).do_all(finding, loads.size());
  expected_.clear();
  for (const SameLoad& same : loads) {
    for (std::size_t i = 0; i < same.asked.size(); ++i) {
      expected_.emplace(same.asked[i], same.driven[i]);
    }
  }
}

std::optional<HopDriven> RoundHops::driven(const Hop& hop, Instant ready) {
  const auto found = expected_.find({hop, ready});
  return found != expected_.end() ? found->second : with_load_of(hop).driven(ends_of(hop), ready);
}

std::optional<Instant> RoundHops::last_turn() const {
  std::optional<Instant> last;
  for (const auto& [cargo, shelf] : shelves_) {
    last = std::max(last, shelf.last_turn);  // nothing is before all
  }
  return last;
}

std::optional<search::HopAtBest> RoundHops::at_best(const Hop& hop) {
  const auto [known, is_new] = at_best_.try_emplace(ends_of(hop));
  if (is_new) {
    known->second = least_between(known->first, ways_, *judge_);
  }
  return known->second;
}

RouteAnswer RoundHops::answer(const Hop& hop, Instant depart) {
  return with_load_of(hop).answer(ends_of(hop), depart);
}

const Judge& RoundHops::judge_on(const Hop& hop) {
  return with_load_of(hop).judge();
}

}  // namespace rimehaul::day
