// Networks drawn by hand and a judge that says what a test tells it to.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "passage/judge.h"
#include "search/route.h"
#include "snow/turning_moments.h"

namespace rimehaul::testing {

/// A trail from one junction to another, straight.
struct Edge {
  std::uint32_t from;
  std::uint32_t to;
};

/// Junctions on a circle of 1 km radius, one trail per edge (legs 2n there and 2n + 1 back), and a
/// station named by its number at every junction.
inline trails::Network network_of(std::uint32_t junctions, const std::vector<Edge>& edges) {
  trails::Network network;
  for (std::uint32_t i = 0; i < junctions; ++i) {
    const double angle = 6.283185307179586 * i / junctions;
    const geo::MapPoint place{units::Metres{1000 * std::cos(angle)},
                              units::Metres{1000 * std::sin(angle)}};
    network.junctions.push_back({.place = place, .station = i});
    network.stations.push_back({.name = "Station " + std::to_string(i),
                                .kind = trails::StationKind::hut,
                                .place = place,
                                .turning_radius = {}});
  }
  for (const Edge& edge : edges) {
    const geo::Polyline line{
        {network.junctions[edge.from].place, network.junctions[edge.to].place}};
    const geo::Span span{units::Metres{0}, line.length()};
    network.trails.push_back({.name = "Trail " + std::to_string(network.trails.size()),
                              .line = line,
                              .direction = {},
                              .width = {},
                              .lanes = {},
                              .groomed = {},
                              .shared_with_skiers = {},
                              .hours = {},
                              .line_error = {},
                              .sight = {},
                              .marker_spacing = {},
                              .file = {}});
    const std::size_t trail = network.trails.size() - 1;
    network.legs.push_back({.trail = trail,
                            .span = span,
                            .way = trails::Way::as_drawn,
                            .from = trails::JunctionId{edge.from},
                            .to = trails::JunctionId{edge.to},
                            .line = line});
    network.legs.push_back({.trail = trail,
                            .span = span,
                            .way = trails::Way::against,
                            .from = trails::JunctionId{edge.to},
                            .to = trails::JunctionId{edge.from},
                            .line = line.reversed()});
  }
  return network;
}

/// What is otherwise for a while.
struct FakeSpell {
  units::Period when;
  bool refused = true;
  double share = 0.1;
  double time_s = 60.0;
};

/// What the fake judge says of a leg.
struct FakeLeg {
  double share = 0.1;
  double time_s = 60.0;
  double fuel_l = 0.5;
  bool refused = false;
  bool asks = false;
  bool untold = false;                    ///< nobody said what a mark on it is like today
  std::int64_t closes_s = 1'000'000'000;  ///< refused from this moment on
  /// By the hour of entry; the leg is refused too where the rig would leave it in a refused one.
  std::vector<FakeSpell> spells{};

  [[nodiscard]] const FakeSpell* spell_at(units::Instant when) const {
    const auto found = std::ranges::find_if(spells, [&](const FakeSpell& spell) {
      return spell.when.from <= when && when <= spell.when.to;
    });
    return found == spells.end() ? nullptr : &*found;
  }
};

struct FakeTurn {
  double share = 0.0;
  bool refused = false;
  bool asks = false;
  std::vector<units::Period> closed{};
};

inline bool refuses_at(const FakeLeg& leg, units::Instant when) {
  const FakeSpell* spell = leg.spell_at(when);
  return leg.refused || when.seconds >= leg.closes_s || (spell != nullptr && spell->refused);
}

/// Turning back is refused unless a test says otherwise; any other turn is open.
class FakeJudge : public passage::LegJudge {
 public:
  explicit FakeJudge(const trails::Network& network)
      : legs(network.legs.size()), network_{&network} {}

  [[nodiscard]] passage::LegAtBest at_best(trails::LegId leg) const override {
    const FakeLeg& fake = legs[static_cast<std::size_t>(leg)];
    return {.time = units::Seconds{fake.time_s * hopeful},
            .fuel = units::Litres{fake.fuel_l * hopeful}};
  }

  [[nodiscard]] passage::LegJudgement judge(trails::LegId leg,
                                            units::Instant entry) const override {
    const auto index = static_cast<std::size_t>(leg);
    const FakeLeg& fake = legs[index];
    const FakeSpell* spell = fake.spell_at(entry);
    const units::Seconds time{spell == nullptr ? fake.time_s : spell->time_s};
    passage::Finding finding = passage::kept(passage::Check::climb_traction);
    finding.share = spell == nullptr ? fake.share : spell->share;
    const bool refused_on_leaving =
        !fake.spells.empty() && refuses_at(fake, units::after(entry, time));
    if (refuses_at(fake, entry) || refused_on_leaving) {
      finding = passage::refusal(passage::Check::direction, "the test says no");
    }
    passage::LegJudgement judgement;
    judgement.findings = {finding};
    if (fake.asks) {
      judgement.findings.push_back(passage::kept(passage::Check::avalanche));
      judgement.findings.back().asks = "may the runout be crossed";
    }
    if (fake.untold) {
      judgement.findings.push_back(passage::unknown(passage::Check::mark, "today's status"));
      judgement.binding = judgement.findings.size() - 1;
    }
    judgement.allowed_share = allowed_share;
    judgement.verdict = passage::verdict_of(judgement.findings, allowed_share);
    judgement.length = network_->legs[index].line.length();
    judgement.time = time;
    judgement.hours.asked = {entry};
    if (!fake.spells.empty()) {
      judgement.hours.staying = time;
    }
    judgement.fuel = units::Litres{fake.fuel_l};
    return judgement;
  }

  [[nodiscard]] passage::TurnJudgement judge_turn(trails::LegId from, trails::LegId to,
                                                  units::Instant entry) const override {
    const auto found = turns.find({from, to});
    FakeTurn fake{.share = 0.0, .refused = to == trails::opposite_of(from)};
    fake = found == turns.end() ? fake : found->second;
    passage::Finding finding = passage::kept(passage::Check::turning);
    finding.share = fake.share;
    finding.asks = fake.asks ? "may the piste be crossed" : "";
    const bool closed = std::ranges::any_of(fake.closed, [&](const units::Period& period) {
      return period.from <= entry && entry <= period.to;
    });
    if (fake.refused || closed) {
      finding = passage::refusal(passage::Check::turning, "the test says no");
    }
    return {.verdict = passage::verdict_of({finding}, allowed_share), .binding = finding};
  }

  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId leg,
                                                            units::Period during) const override {
    const FakeLeg& fake = legs[static_cast<std::size_t>(leg)];
    std::vector<units::Instant> moments{{fake.closes_s}};
    for (const FakeSpell& spell : fake.spells) {
      moments.push_back(spell.when.from);
      moments.push_back({spell.when.to.seconds + 1});
    }
    return snow::in_order_within(moments, during);
  }
  [[nodiscard]] std::vector<units::Instant> turning_moments(trails::LegId from, trails::LegId to,
                                                            units::Period during) const override {
    std::vector<units::Instant> moments;
    const auto found = turns.find({from, to});
    if (found != turns.end()) {
      for (const units::Period& closed : found->second.closed) {
        moments.push_back(closed.from);
        moments.push_back({closed.to.seconds + 1});
      }
    }
    return snow::in_order_within(moments, during);
  }

  std::vector<FakeLeg> legs;
  std::map<std::pair<trails::LegId, trails::LegId>, FakeTurn> turns;
  double allowed_share = 0.7;
  double hopeful = 0.5;  ///< the part of time and fuel that is known without judging

 private:
  const trails::Network* network_;
};

inline trails::LegId leg(std::uint32_t index) {
  return trails::LegId{index};
}

/// Numbers that are the same on every machine.
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_{seed} {}
  std::uint32_t below(std::uint32_t count) { return static_cast<std::uint32_t>(engine_()) % count; }
  bool one_in(std::uint32_t count) { return below(count) == 0; }

 private:
  std::mt19937 engine_;
};

/// Edges between random junctions, none to itself.
inline std::vector<Edge> random_edges(Dice& dice, std::uint32_t junctions, std::size_t count) {
  std::vector<Edge> edges;
  while (edges.size() < count) {
    const Edge edge{dice.below(junctions), dice.below(junctions)};
    if (edge.from != edge.to) {
      edges.push_back(edge);
    }
  }
  return edges;
}

/// Shares and times from few values, so that ties are common; one-way legs, decisions, turns that
/// may not be made, and here and there room to turn back.
inline void roll_judgements(Dice& dice, const trails::Network& network, FakeJudge& judge) {
  for (FakeLeg& leg : judge.legs) {
    leg.share = 0.1 * dice.below(8);
    leg.time_s = 20.0 + 10.0 * dice.below(5);
    leg.fuel_l = 0.25 * dice.below(4);
    leg.refused = dice.one_in(6);
    leg.asks = dice.one_in(8);
  }
  for (std::uint32_t from = 0; from < network.legs.size(); ++from) {
    for (std::uint32_t to = 0; to < network.legs.size(); ++to) {
      const bool meet = network.legs[from].to == network.legs[to].from;
      const bool back = leg(to) == trails::opposite_of(leg(from));
      if (meet && (back ? dice.one_in(5) : dice.one_in(4))) {
        judge.turns[{leg(from), leg(to)}] = {.share = 0.1 * dice.below(8),
                                             .refused = !back && dice.one_in(2),
                                             .asks = dice.one_in(4)};
      }
    }
  }
}

}  // namespace rimehaul::testing
