// Stopping within sight: how hard the brake may be used, at walking pace, and the highest speed.
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using units::amount;

/// How the rig slows: v t + v^2 / 2a is the way from seeing to standing.
struct Slowing {
  double reaction_s;
  double deceleration;  ///< m/s2, above 0
};

double way_to_stop(double speed, Slowing slowing) {
  return speed * slowing.reaction_s + speed * speed / (2.0 * slowing.deceleration);
}

/// The positive root of v t + v^2 / 2a = way, in the form that does not cancel; then lowered until
/// the way it needs is proven not to be longer, against rounding. 0 where there is no way.
double speed_that_stops_within(double way_m, Slowing slowing) {
  const double time_s = slowing.reaction_s;
  double speed =
      2.0 * way_m / (time_s + std::sqrt(time_s * time_s + 2.0 * way_m / slowing.deceleration));
  if (!(speed > 0.0)) {
    return 0.0;
  }
  while (!(way_to_stop(speed, slowing) <= way_m)) {
    speed *= 1.0 - 1e-12;
  }
  return speed;
}

units::Amount acceleration(double metres_per_second2) {
  return {metres_per_second2, units::Unit::metres_per_second2};
}

/// How hard a brake may be used.
struct Braking {
  double part = 0.0;          ///< of the snow's grip along, that braking may take: u
  units::Newtons by_snow{};   ///< that grip: G
  units::Newtons asked{};     ///< by the hill: F
  double deceleration = 0.0;  ///< m/s2; not above 0: it does not stop
};

/// Looks for the hardest braking that leaves the other checks within the allowed share. Each of its
/// parts falls with a wider box of attitudes, so what it gives bounds from below.
class Brake {
 public:
  Brake(const Footing& footing, double allowed_share)
      : footing_{footing}, allowed_share_{allowed_share}, most_{hardest_slowing(footing)} {}

  /// What does not keep the allowed share, of side slip, roll-over and jackknife; nothing: all do.
  [[nodiscard]] std::optional<Finding> not_kept(const Statics& statics) const {
    using Judgement = Finding (*)(const Statics&);
    constexpr std::array<Judgement, 5> kJudgements{judge_carrier_side_slip, judge_carrier_roll_over,
                                                   judge_trailer_side_slip, judge_trailer_roll_over,
                                                   judge_jackknife};
    for (const Judgement judge : kJudgements) {
      Finding finding = judge(statics);
      if (stand_of(finding, allowed_share_) != Stand::passes) {
        return finding;
      }
    }
    return std::nullopt;
  }

  /// Rolling through a bend that pulls sideways so much, unbraked.
  [[nodiscard]] Statics bent(double sideways) const {
    return statics_of(footing_, {.slowing = 0.0, .sideways = sideways});
  }

  /// In a bend that pulls sideways so much; nothing where rolling through it is too much already.
  [[nodiscard]] Braking hardest(double sideways) const {
    const Statics rolling = bent(sideways);
    return not_kept(rolling) ? Braking{} : hardest_from(rolling);
  }

  /// Rolling so, which must be kept.
  [[nodiscard]] Braking hardest_from(const Statics& rolling) const {
    // Loads are taken as the hardest braking that is planned shifts them; its own force is taken
    // off again.
    const Statics harsh =
        statics_of(footing_, {.slowing = most_, .sideways = rolling.motion.sideways});
    const units::Newtons asked =
        harsh.hold.asked - units::Newtons{footing_.weighed.total().value() * most_};
    const double part = smaller(part_by_slip(harsh), part_by_jackknife(harsh, asked));
    Braking braking = with_part(part, harsh.hold, asked);
    const double before_tip = slowing_before_tip(rolling, harsh, allowed_share_);
    braking.deceleration = smaller(braking.deceleration, smaller(before_tip, most_));
    return braking;
  }

  /// By the brake and the snow alone.
  [[nodiscard]] Braking all_out(const Statics& steady) const {
    return with_part(1.0, steady.hold, steady.hold.asked);
  }

 private:
  /// The hardware may give less than so much of the snow's grip.
  [[nodiscard]] Braking with_part(double part, const Grip& hold, units::Newtons asked) const {
    const double given =
        smaller(part * hold.given_by_snow.value(), footing_.rig.carrier.brake_force.value());
    return {part, hold.given_by_snow, asked,
            (given - asked.value()) / footing_.weighed.total().value()};
  }

  /// (u C)^2 + S^2 <= (s C)^2
  [[nodiscard]] double part_by_slip(const Statics& statics) const {
    const Across across = across_carrier(statics);
    const double taken = across.asked / across.given;
    return std::sqrt(above_zero(allowed_share_ * allowed_share_ - taken * taken));
  }

  /// k (P + m_t a) + S <= N sqrt(1 - u^2) with k = sin(gamma) d_h / (s l / 4) and a = (u G - F) /
  /// m, linear in u on the left: p + q u <= N sqrt(1 - u^2).
  [[nodiscard]] double part_by_jackknife(const Statics& harsh, units::Newtons asked) const {
    if (!footing_.rig.trailer) {
      return 1.0;
    }
    const TailGrip tail = tail_grip(harsh);
    const double push_newton =
        harsh.hitch.push.value() - footing_.weighed.trailer.mass.value() * most_;
    const double arms = tail.push_arm_m / (allowed_share_ * tail.hold_arm_m);
    const double trailer_part = footing_.weighed.trailer.mass / footing_.weighed.total();
    const double grip = tail.of_tracks.value();
    const double q = arms * trailer_part * harsh.hold.given_by_snow.value();
    const double p = arms * (push_newton - trailer_part * asked.value()) + tail.across.value();
    const double part = (-p * q + grip * std::sqrt(above_zero(q * q + grip * grip - p * p))) /
                        (q * q + grip * grip);
    return smaller(part, 1.0);
  }

  const Footing& footing_;
  double allowed_share_;
  double most_;
};

/// What of a check stands in for stopping where rolling through a bend takes more than is allowed.
std::string_view share_in_bend(Check check) {
  using enum Check;
  switch (check) {
    case carrier_side_slip:
      return "share of carrier side slip, rolling at v on a bend of R <= 1";
    case carrier_roll_over:
      return "share of carrier roll-over, rolling at v on a bend of R <= 1";
    case trailer_side_slip:
      return "share of trailer side slip, rolling at v on a bend of R <= 1";
    case trailer_roll_over:
      return "share of trailer roll-over, rolling at v on a bend of R <= 1";
    default:
      return "share of jackknife, rolling at v on a bend of R <= 1";
  }
}

/// Where rolling through a bend at walking pace takes more of a limit than is allowed there is
/// nothing left to brake with: that share is told, so that what is worse elsewhere binds.
Finding taken_by_bend(const Worksheet& sheet, const Finding& taken) {
  if (!taken.share) {
    return sheet.refused("at walking pace nothing lets it through this bend");
  }
  Finding finding = sheet.compared(units::count_of(*taken.share), units::count_of(1.0));
  finding.formula = share_in_bend(taken.check);
  return finding;
}

double sideways_at(double speed, units::Metres radius) {
  return speed * speed / radius.value();
}

constexpr double kStep = 0.05;

/// One of the speeds low, low + a step, ... that is above another, by two steps at most.
// As they lie on the axis. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
double step_above(double low, double speed) {
  return low + kStep * (std::ceil((speed - low) / kStep) + 1.0);
}

/// The highest of the speeds low, low + a step, ... up to `high` that keeps everything, as `low`
/// does. Steps that do not depend on the place: a wider box never gives a higher speed.
struct Between {
  double low;
  double high;
};

template <class Keeps>
double highest_speed(Between speeds, const Keeps& keeps) {
  const auto speed_at = [&](int steps) { return speeds.low + kStep * steps; };
  int kept = 0;
  int beyond = static_cast<int>(std::floor((speeds.high - speeds.low) / kStep)) + 1;
  if (beyond > 1 && keeps(speed_at(beyond - 1))) {
    return speed_at(beyond - 1);
  }
  while (beyond - kept > 1) {
    const int middle = kept + (beyond - kept) / 2;
    (keeps(speed_at(middle)) ? kept : beyond) = middle;
  }
  return speed_at(kept);
}

}  // namespace

double hardest_slowing(const Footing& footing) {
  const double braked_kg = footing.grip.brake.value() * footing.weighed.carrier.mass.value();
  const double dragged_kg =
      footing.grip.trailer_resistance.low.value() * footing.weighed.trailer.mass.value();
  return units::kGravity * (braked_kg + dragged_kg) / footing.weighed.total().value();
}

Stopping judge_stopping(const Footing& footing, const StopWithin& within, double allowed_share) {
  const Brake brake{footing, allowed_share};
  const double pace = footing.rules.walking_pace.value();
  const units::MetresPerSecond none{0.0};
  const Statics rolling = brake.bent(sideways_at(pace, within.radius));
  // A bend takes no less than a straight line, so what it leaves is kept there too.
  const std::optional<Finding> too_much = brake.not_kept(rolling);
  const bool judged_elsewhere = too_much && brake.not_kept(statics_of(footing));
  Worksheet sheet{Check::stopping};
  if (too_much && !judged_elsewhere) {
    sheet.positive("v", amount(footing.rules.walking_pace), Origin::rules);
    sheet.positive("R", amount(within.radius), Origin::trail);
    return {taken_by_bend(sheet, *too_much), none};
  }
  const Braking braking =
      judged_elsewhere ? brake.all_out(statics_of(footing)) : brake.hardest_from(rolling);
  sheet.not_negative("B", amount(footing.rig.carrier.brake_force), Origin::rig_sheet);
  sheet.any("G", amount(braking.by_snow), Origin::derived);
  sheet.not_negative("u", units::count_of(braking.part), Origin::derived);
  sheet.any("F", amount(braking.asked), Origin::derived);
  sheet.positive("m", amount(footing.weighed.total()), Origin::load);
  sheet.positive("v", amount(footing.rules.walking_pace), Origin::rules);
  const double reaction_s = sheet.not_negative("t", amount(footing.rules.reaction), Origin::rules);
  sheet.positive("R", amount(within.radius), Origin::trail);
  sheet.any("a", acceleration(braking.deceleration), Origin::derived);
  if (!sheet.holds() || !(braking.deceleration > 0.0)) {
    return {sheet.refused(braking.part > 0.0
                              ? "brake and drag do not overcome the hill: it cannot stop"
                              : "braking at walking pace would let it slide, tip or jackknife"),
            none};
  }
  const Slowing at_pace{.reaction_s = reaction_s, .deceleration = braking.deceleration};
  const units::Metres way{way_to_stop(pace, at_pace)};
  Finding finding = sheet.compared(amount(way), amount(within.sight));
  const double top_speed = footing.rig.carrier.top_speed.value();
  const bool may_drive = stand_of(finding, allowed_share) == Stand::passes && top_speed > 0.0;
  if (!may_drive) {
    return {std::move(finding), none};
  }
  const double room_m = allowed_share * within.sight.value();
  const auto stops = [&](double speed) {
    const Slowing slowing{
        .reaction_s = reaction_s,
        .deceleration = brake.hardest(sideways_at(speed, within.radius)).deceleration};
    return slowing.deceleration > 0.0 && way_to_stop(speed, slowing) <= room_m;
  };
  const double straight = speed_that_stops_within(room_m, at_pace);
  if (judged_elsewhere) {
    return {std::move(finding), units::MetresPerSecond{smaller(straight, top_speed)}};
  }
  const double low = smaller(pace, top_speed);
  const double wanted = larger(low, step_above(low, within.at_most.value()));
  const double high = smaller(smaller(straight, top_speed), wanted);
  if (!(low <= high)) {
    return {std::move(finding), none};  // what something else allows is not known
  }
  return {std::move(finding),
          units::MetresPerSecond{highest_speed({.low = low, .high = high}, stops)}};
}

}  // namespace rimehaul::passage
