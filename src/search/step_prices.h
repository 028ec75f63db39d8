// What it costs to take each step of a leg graph.
#pragma once

#include <set>

#include "search/outlook.h"
#include "search/route.h"

namespace rimehaul::search {

/// Which steps may not be taken: by a leg or turn that may not be driven with this permission, or
/// into a leg that is left out.
struct Barring {
  Permission permission = Permission::nobody;
  std::set<trails::LegId> left_out{};
};

/// A price and a share for each step, or for each of what steps were folded into; both are kBarred
/// where it may not be taken.
struct PricedSteps {
  Prices prices;
  Prices shares;

  /// The prices of what has a share up to the worst; kBarred elsewhere.
  [[nodiscard]] Prices up_to(double worst_share) const;
};

/// Shares are the worse of that of the leg and of the turn into it. Prices are what is preferred:
/// seconds weighted by share_penalty, seconds, or litres. They are rounded up to multiples of
/// 2^-26 s and of 2^-32 l above 0, so that those of a way of less than four years and two million
/// litres add up exactly, in whatever order: ways that are as good as each other cost the same.
[[nodiscard]] PricedSteps priced_steps(const LegGraph& legs, const Outlook& outlook,
                                       Preference prefer, const Barring& barring);

}  // namespace rimehaul::search
