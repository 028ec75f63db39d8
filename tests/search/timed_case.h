// Small random networks whose legs close and open by the minute, and all their ways.
#pragma once

#include <optional>
#include <vector>

#include "passage/share_penalty.h"
#include "search/fake_judge.h"
#include "search/step_hours.h"

namespace rimehaul::testing {

/// Everything turns at whole minutes of an hour and a half, and legs take whole minutes.
inline constexpr std::int64_t kMinutes = 90;
inline constexpr units::Period kHours{{0}, {kMinutes * 60 - 1}};

inline units::Instant minute(std::int64_t number) {
  return {number * 60};
}

struct TimedCase {
  explicit TimedCase(std::uint32_t seed)
      : dice{seed},
        junctions{4 + dice.below(2)},
        network{network_of(junctions, random_edges(dice, junctions, 6))},
        judge{network} {
    for (FakeLeg& leg : judge.legs) {
      roll(leg);
    }
    for (const search::Turn turn : search::turns_of(network)) {
      roll(turn);
    }
    for (trails::Junction& junction : network.junctions) {
      if (dice.one_in(2)) {
        junction.station.reset();  // nowhere to wait
      }
    }
  }
  TimedCase(const TimedCase&) = delete;
  TimedCase& operator=(const TimedCase&) = delete;

  Dice dice;
  std::uint32_t junctions;
  trails::Network network;
  FakeJudge judge;

 private:
  units::Period some_minutes() {
    const std::int64_t from = dice.below(static_cast<std::uint32_t>(kMinutes));
    return {minute(from), {(from + 5 + dice.below(30)) * 60 - 1}};
  }

  void roll(FakeLeg& leg) {
    leg.time_s = 60.0 * (1 + dice.below(6));
    leg.share = 0.1 * dice.below(7);
    leg.fuel_l = 0.25 * (1 + dice.below(4));
    leg.asks = dice.one_in(9);
    for (std::uint32_t i = dice.below(3); i > 0; --i) {
      leg.spells.push_back({.when = some_minutes(),
                            .refused = !dice.one_in(3),
                            .share = 0.1 * dice.below(7),
                            .time_s = 60.0 * (1 + dice.below(8))});
    }
  }

  void roll(search::Turn turn) {
    FakeTurn& fake = judge.turns[{turn.from, turn.to}];
    fake.refused = turn.to == trails::opposite_of(turn.from) ? !dice.one_in(4) : dice.one_in(6);
    fake.share = dice.one_in(3) ? 0.1 * dice.below(7) : 0.0;
    if (dice.one_in(4)) {
      fake.closed.push_back(some_minutes());
    }
  }
};

/// What taking a leg comes to, asked of the judge anew for each minute. Who comes from the leg
/// itself sets out on it.
struct Taken {
  std::int64_t minutes = 0;
  double share = 0.0;
  double allowed_share = 0.0;
  double fuel_l = 0.0;
};

inline std::optional<Taken> taken(const FakeJudge& judge, search::Turn turn, std::int64_t entry) {
  const auto leg = judge.judge(turn.to, minute(entry));
  double share = leg.share().value_or(9.0);
  bool open = leg.verdict == passage::Verdict::open && entry < kMinutes;
  if (turn.from != turn.to) {
    const auto turned = judge.judge_turn(turn.from, turn.to, minute(entry));
    share = std::max(share, turned.binding.share.value_or(9.0));
    open = open && turned.verdict == passage::Verdict::open;
  }
  if (!open) {
    return std::nullopt;
  }
  return Taken{.minutes = static_cast<std::int64_t>(leg.time.value()) / 60,
               .share = share,
               .allowed_share = leg.allowed_share,
               .fuel_l = leg.fuel.value()};
}

/// The minutes at which one way can be set out on, from its last leg back.
inline std::vector<bool> minutes_of(const TimedCase& test, const std::vector<trails::LegId>& way) {
  std::vector<bool> on(kMinutes, true);  // by the minute of arrival
  for (std::size_t i = way.size(); i > 0; --i) {
    const search::Turn turn{way[i > 1 ? i - 2 : 0], way[i - 1]};
    std::vector<bool> enters(kMinutes, false);
    for (std::int64_t entry = 0; entry < kMinutes; ++entry) {
      const auto step = taken(test.judge, turn, entry);
      enters[static_cast<std::size_t>(entry)] = step.has_value() &&
                                                entry + step->minutes < kMinutes &&
                                                on[static_cast<std::size_t>(entry + step->minutes)];
    }
    const trails::JunctionId at = test.network.legs[static_cast<std::size_t>(way[i - 1])].from;
    const bool waits =
        i > 1 && test.network.junctions[static_cast<std::size_t>(at)].station.has_value();
    for (std::size_t minute = kMinutes - 1; waits && minute > 0; --minute) {
      enters[minute - 1] = enters[minute - 1] || enters[minute];
    }
    on = enters;
  }
  return on;
}

/// Every way of different legs between two junctions that comes past the first no more, opened or
/// not.
class AllWays {
 public:
  AllWays(const trails::Network& network, trails::JunctionId from, trails::JunctionId to)
      : network_{&network}, from_{from}, to_{to} {
    go_on(from);
  }
  std::vector<std::vector<trails::LegId>> ways;

 private:
  void go_on(trails::JunctionId at) {
    for (std::uint32_t i = 0; i < network_->legs.size(); ++i) {
      const trails::Leg& next = network_->legs[i];
      if (next.from != at || std::ranges::find(way_, leg(i)) != way_.end()) {
        continue;
      }
      way_.push_back(leg(i));
      if (next.to == to_) {
        ways.push_back(way_);
      } else if (next.to != from_) {
        go_on(next.to);
      }
      way_.pop_back();
    }
  }

  const trails::Network* network_;
  trails::JunctionId from_;
  trails::JunctionId to_;
  std::vector<trails::LegId> way_;
};

}  // namespace rimehaul::testing
