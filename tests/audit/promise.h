// Honest promises for chosen legs, so that a test can spoil one thing in them.
#pragma once

#include <algorithm>
#include <vector>

#include "audit/rewalk.h"
#include "passage/judge.h"

namespace rimehaul::testing {

/// What the judge says of these legs driven one after another, as a promise.
inline std::vector<audit::PromisedLeg> promise_along(const passage::Judge& judge,
                                                     const std::vector<trails::LegId>& legs,
                                                     units::Instant depart) {
  const trails::Network& network = judge.scene().network;
  std::vector<audit::PromisedLeg> promise;
  units::Seconds so_far{0};
  for (std::size_t i = 0; i < legs.size(); ++i) {
    const trails::Leg& leg = network.legs[static_cast<std::size_t>(legs[i])];
    const units::Instant entry = units::after(depart, so_far);
    const passage::LegJudgement judged = judge.judge(legs[i], entry);
    promise.push_back({.trail = network.trails[leg.trail].name,
                       .span = leg.span,
                       .way = leg.way,
                       .entry = entry,
                       .share = judged.share().value_or(1e9),
                       .permitted = false,
                       .speed = judged.slowest,
                       .time = judged.time,
                       .fuel = judged.fuel});
    so_far += judged.time;
    if (i > 0) {
      const double turn = judge.judge_turn(legs[i - 1], legs[i], entry).binding.share.value_or(1e9);
      promise[i].share = std::max(promise[i].share, turn);
      promise[i - 1].share = std::max(promise[i - 1].share, turn);
    }
  }
  return promise;
}

}  // namespace rimehaul::testing
