// The names, formulas, sources and pages of the checks.
#include "passage/check.h"

#include <array>
#include <cstddef>

#include "base/require.h"

namespace rimehaul::passage {

namespace {

constexpr std::string_view kKnown = "docs/checks/known.md";
constexpr std::string_view kRatings = "docs/checks/ratings.md";
constexpr std::string_view kClimb = "docs/checks/climb.md";
constexpr std::string_view kDescent = "docs/checks/descent.md";
constexpr std::string_view kStopping = "docs/checks/stopping.md";
constexpr std::string_view kRollOver = "docs/checks/roll-over.md";
constexpr std::string_view kSideSlip = "docs/checks/side-slip.md";
constexpr std::string_view kJackknife = "docs/checks/jackknife.md";
constexpr std::string_view kHitch = "docs/checks/hitch.md";
constexpr std::string_view kLoad = "docs/checks/load.md";
constexpr std::string_view kTurning = "docs/checks/turning.md";
constexpr std::string_view kAvalanche = "docs/checks/avalanche.md";
constexpr std::string_view kSight = "docs/checks/visibility.md";
constexpr std::string_view kSiteRules = "docs/checks/site-rules.md";

constexpr std::string_view kRating = "rating in the rig sheet";
constexpr std::string_view kSiteRule = "site rule";
constexpr std::string_view kStatics = "statics of rigid bodies";
constexpr std::string_view kHoldTowing =
    "g m_c along(G_c) + T <= min(B, mu_b (phi g m_c n_c - U)), "
    "T = g m_t (along(G_t) - f_t_low n_t) + f_t_low V";
constexpr std::string_view kHoldSolo = "g m_c along(G_c) <= min(B, mu_b phi g m_c n_c)";

/// In the order of Check.
constexpr std::array<CheckFacts, kCheckCount> kFacts{{
    {"heights_known", "heights known", "every height under the rig is known", kSiteRule, kKnown},
    {"snow_known", "snow known", "somebody has said what the snow is like", kSiteRule, kKnown},
    {"trail_attributes", "trail attributes", "every safety attribute was given", kSiteRule, kKnown},
    {"climb_rating", "climb rating", "G <= rated", kRating, kRatings},
    {"descent_rating", "descent rating", "G <= rated", kRating, kRatings},
    {"cross_rating", "cross-slope rating", "K <= rated", kRating, kRatings},
    {"trailer_rating", "trailer's rating", "G <= rated_climb; G <= rated_descent; K <= rated_cross",
     kRating, kRatings},
    {"climb_traction", "climb traction",
     "max(0, g m_c along(G_c) + T) + f_c g m_c n_c <= mu (phi g m_c n_c - U), "
     "T = g m_t along(G_t) + f_t g m_t n_t_most + max(0, f_c - f_t) V",
     "Wong, Theory of Ground Vehicles, drawbar pull and gradeability", kClimb,
     "max(0, g m_c along(G_c)) + f_c g m_c n_c <= mu phi g m_c n_c"},
    {"engine_power", "engine power",
     "F v / eta <= power, F = max(0, g m_c along(G_c) + T) + f_c g m_c n_c_most, "
     "T = g m_t along(G_t) + f_t g m_t n_t_most + max(0, f_c - f_t) V",
     "work done against a force", kClimb,
     "F v / eta <= power, F = max(0, g m_c along(G_c)) + f_c g m_c n_c_most"},
    {"descent_hold", "hold on descent", kHoldTowing, kStatics, kDescent, kHoldSolo},
    {"parking_hold", "hold when parked", kHoldTowing, kStatics, kDescent, kHoldSolo},
    {"stopping", "stopping", "v t + v^2 / (2 a) <= sight", "uniform deceleration", kStopping},
    {"carrier_roll_over", "carrier roll-over",
     "|x| A + |y| C <= tan(r atan((i - M / (g m n)) / h) - atan(d / w))",
     "static tip angle as in ISO 16231-2:2015; reserve: estimate", kRollOver},
    {"trailer_roll_over", "trailer roll-over", "|x| A + |y| C <= tan(r atan(i / h) - atan(d / w))",
     "static tip angle as in ISO 16231-2:2015; reserve: estimate", kRollOver},
    {"carrier_side_slip", "carrier side slip",
     "sqrt((u C)^2 + S^2) <= C, C = mu_l (g m_c n_c - U), u = max(u_climb, u_hold), "
     "S = g m_c n_c K_c / sqrt(1 + G_c^2) + Y",
     "friction ellipse, Wong, Theory of Ground Vehicles", kSideSlip,
     "sqrt((u C)^2 + S^2) <= C, C = mu_l g m_c n_c, u = max(u_climb, u_hold), "
     "S = g m_c n_c K_c / sqrt(1 + G_c^2)"},
    {"trailer_side_slip", "trailer side slip",
     "g (m_t - m_h) n_t K_t / sqrt(1 + G_t^2) <= mu_tl (g m_t n_t - V)", kStatics, kSideSlip},
    {"jackknife", "jackknife",
     "P sin(gamma) d_h <= (mu_l (phi g m_c n_c - U) sqrt(1 - u_hold^2) - S) l / 4",
     "moment of turning resistance, Wong, Theory of Ground Vehicles, skid steering", kJackknife},
    {"hitch_vertical", "vertical load on the hitch", "max(V, U) / g <= rated", kStatics, kHitch},
    {"towed_mass", "towed mass", "m <= rated", kRating, kHitch},
    {"payload", "payload", "m <= rated", kRating, kLoad},
    {"trailer_payload", "trailer's payload", "m <= rated", kRating, kLoad},
    {"seats", "seats", "passengers <= seats", kRating, kLoad},
    {"turning", "turning", "R_least <= R, R_least = max(R_own, sqrt(max(0, L^2 - e^2)))",
     "steady-turn geometry of rigid bodies", kTurning, "R_least <= R, R_least = R_own"},
    {"off_tracking", "width in bends",
     "swept + cut <= width, cut = R (1 / cos(window / (4 R)) - 1), "
     "swept = max(hypot(R + w_c / 2, l_c - c_c / 2), hypot(R_t + w_t / 2, c_t / 2)) - "
     "min(R - w_c / 2, R_t - w_t / 2), R_t = sqrt(R^2 + e^2 - L^2)",
     "steady-turn geometry of rigid bodies", kTurning,
     "swept + cut <= width, cut = R (1 / cos(window / (4 R)) - 1), "
     "swept = hypot(R + w_c / 2, l_c - c_c / 2) - R + w_c / 2"},
    {"avalanche", "avalanche exposure", "keep off <= distance",
     "site rule; start slopes as published by avalanche services", kAvalanche},
    {"visibility", "visibility", "N d <= seen", kSiteRule, kSight},
    {"direction", "direction of the trail", "driven as the trail allows", kSiteRule, kSiteRules},
    {"hours", "hours of the trail", "open from <= entry; entry + time on the trail <= open to",
     kSiteRule, kSiteRules},
    {"driver_level", "driver's level", "the level is known and may tow", kSiteRule, kSiteRules},
    {"passengers", "passengers", "the level, the trailer and the snow allow them", kSiteRule,
     kSiteRules},
    {"alone", "driving alone", "accompanied, or alone where the rules allow it", kSiteRule,
     kSiteRules},
    {"towing_in_wet_snow", "towing in wet snow", "wetness <= wettest for towing", kSiteRule,
     kSiteRules},
    {"wind", "wind", "wind <= most wind", kSiteRule, kSight},
    {"rain", "rain", "no rain, or rain allowed", kSiteRule, kSiteRules},
    {"grooming", "setting after grooming", "least time to set <= time since grooming", kSiteRule,
     kSiteRules},
    {"single_lane", "single lane", "longest run without passing <= longest allowed", kSiteRule,
     kSiteRules},
    {"tow_out", "tow-out rig", "it stands ready today", kSiteRule, kSiteRules},
    {"order", "order of a named person", "nothing was ordered against it", kSiteRule, kSiteRules},
    {"zone", "zone", "no zone forbids it", kSiteRule, kSiteRules},
    {"mark", "mark on the trail", "every mark is clear, surveyed and strong enough", kSiteRule,
     kSiteRules},
}};

}  // namespace

const CheckFacts& facts_of(Check check) {
  const auto index = static_cast<std::size_t>(check);
  base::require(index < kFacts.size(), "a check has its facts");
  return kFacts[index];
}

std::string_view formula_of(Check check, Towing towing) {
  const CheckFacts& facts = facts_of(check);
  return towing == Towing::no && !facts.solo.empty() ? facts.solo : facts.formula;
}

bool is_of_the_day(Check check) {
  using enum Check;
  switch (check) {
    case snow_known:
    case avalanche:
    case visibility:
    case wind:
    case rain:
    case grooming:
    case tow_out:
    case mark:
      return true;
    default:
      return false;
  }
}

Towing towing_of(const rig::Rig& rig) {
  return rig.trailer ? Towing::yes : Towing::no;
}

}  // namespace rimehaul::passage
