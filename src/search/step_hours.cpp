#include "search/step_hours.h"

#include <algorithm>

#include "base/require.h"

namespace rimehaul::search {

using units::Period;

namespace {

constexpr TurnFacts kSettingOut{.verdict = passage::Verdict::open, .share = 0.0};

}  // namespace

std::vector<bool> legs_to_stations(const trails::Network& network) {
  std::vector<bool> to_station;
  to_station.reserve(network.legs.size());
  for (const trails::Leg& leg : network.legs) {
    to_station.push_back(network.junctions[static_cast<std::size_t>(leg.to)].station.has_value());
  }
  return to_station;
}

StepHours::StepHours(const TimedGraph& graph, LegHours& hours, Permission permission)
    : graph_{graph}, hours_{&hours}, permission_{permission}, pieces_(graph.legs.steps.size()) {}

const std::vector<StepPiece>& StepHours::of(ArcIndex arc) {
  std::optional<std::vector<StepPiece>>& known = pieces_[arc];
  if (!known.has_value()) {
    base::require(graph_.legs.steps[arc].leg.has_value(), "reaching the goal has no hours");
    known = worked_out(graph_.legs.steps[arc]);
  }
  return *known;
}

const StepPiece& StepHours::at(ArcIndex arc, units::Instant entry) {
  const std::vector<StepPiece>& pieces = of(arc);
  const auto piece = std::ranges::lower_bound(pieces, entry, {},
                                              [](const StepPiece& one) { return one.entries.to; });
  base::require(piece != pieces.end() && piece->entries.from <= entry,
                "a step is taken at an hour at which it may not be");
  return *piece;
}

void StepHours::hold_to(double largest_share) {
  largest_share_ = largest_share;
  std::ranges::fill(pieces_, std::nullopt);
}

std::vector<StepPiece> StepHours::worked_out(const Step& step) {
  const std::vector<TurnPiece> setting_out{{hours_->horizon(), kSettingOut}};
  const std::span<const TurnPiece> turns = step.turn.has_value()
                                               ? hours_->of(graph_.turns[*step.turn])
                                               : std::span<const TurnPiece>{setting_out};
  std::vector<StepPiece> pieces;
  auto turn = turns.begin();
  for (const LegPiece& leg : hours_->of(*step.leg)) {
    const bool drivable = may_drive(leg.facts, permission_);
    for (; turn != turns.end() && turn->entries.from <= leg.entries.to; ++turn) {
      const Period entries{std::max(leg.entries.from, turn->entries.from),
                           std::min(leg.entries.to, turn->entries.to)};
      const double share = std::max(leg.facts.share, turn->facts.share);
      if (drivable && entries.from <= entries.to && may_turn(turn->facts, leg.facts, permission_) &&
          share <= largest_share_) {
        pieces.push_back({.entries = entries,
                          .lasts_s = units::after({}, units::Seconds{leg.facts.time_s}).seconds,
                          .share = share,
                          .allowed_share = leg.facts.allowed_share,
                          .fuel_l = leg.facts.fuel_l});
      }
      if (turn->entries.to > leg.entries.to) {
        break;  // the rest of it goes with the next leg piece
      }
    }
  }
  return pieces;
}

}  // namespace rimehaul::search
