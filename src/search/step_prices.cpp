#include "search/step_prices.h"

#include <algorithm>
#include <cmath>

#include "passage/share_penalty.h"

namespace rimehaul::search {

namespace {

/// What prices are multiples of: so many to a second, or to a litre.
struct Fineness {
  double to_one = 1.0;
};
constexpr Fineness kOfSecond{0x1p26};
constexpr Fineness kOfLitre{0x1p32};

/// To a multiple above 0; exact but for that, as there is a power of two to one.
double rounded_up(double price, Fineness fineness) {
  return std::max(1.0, std::ceil(price * fineness.to_one)) / fineness.to_one;
}

double price_of(const LegFacts& leg, double share, Preference prefer) {
  switch (prefer) {
    case Preference::quickest:
      return rounded_up(leg.time_s, kOfSecond);
    case Preference::least_fuel:
      return rounded_up(leg.fuel_l, kOfLitre);
    case Preference::safest:
      break;
  }
  return rounded_up(leg.time_s * passage::share_penalty(share, leg.allowed_share), kOfSecond);
}

}  // namespace

Prices PricedSteps::up_to(double worst_share) const {
  Prices kept = prices;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    if (!(shares[i] <= worst_share)) {
      kept[i] = kBarred;
    }
  }
  return kept;
}

PricedSteps priced_steps(const LegGraph& legs, const Outlook& outlook, Preference prefer,
                         const Barring& barring) {
  PricedSteps priced;
  priced.prices.reserve(legs.steps.size());
  priced.shares.reserve(legs.steps.size());
  for (const Step& step : legs.steps) {
    if (!step.leg.has_value()) {
      priced.prices.push_back(0.0);
      priced.shares.push_back(0.0);
      continue;
    }
    const LegFacts& leg = outlook.leg(*step.leg);
    const TurnFacts turn = outlook.turn_into(step);
    const double share = std::max(leg.share, turn.share);
    const bool usable = may_drive(leg, barring.permission) &&
                        may_turn(turn, leg, barring.permission) &&
                        !barring.left_out.contains(*step.leg);
    priced.prices.push_back(usable ? price_of(leg, share, prefer) : kBarred);
    priced.shares.push_back(usable ? share : kBarred);
  }
  return priced;
}

}  // namespace rimehaul::search
