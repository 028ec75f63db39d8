// A leg walked footfall by footfall: findings folded, the steepest places noted, the drive told.
#include <algorithm>
#include <cmath>
#include <limits>

#include "passage/judge.h"
#include "passage/profile.h"
#include "passage/snow_under.h"
#include "passage/stretch_judge.h"
#include "passage/worst.h"

namespace rimehaul::passage {

using units::Instant;
using units::Metres;
using units::MetresPerSecond;
using units::Seconds;
using units::Slope;

namespace {

/// How often the snow is asked again because judging it made the leg take longer.
constexpr int kMostRounds = 4;

/// One footfall as judged so far.
struct Trodden {
  std::vector<std::optional<snow::SnowState>> judged;  ///< all that were met; nothing: unknown
  const snow::GripRow* heaviest = nullptr;             ///< row of the most motion resistance met
  std::optional<MetresPerSecond> speed;                ///< lowest so far
  std::vector<snow::SnowState> states;                 ///< those that are known
  std::optional<Lie> lie;                              ///< of the ground under the carrier
  bool exposed = false;  ///< to avalanches, beyond what the policy allows
};

bool is_exposed(const std::vector<Finding>& findings, double allowed_share) {
  return std::ranges::any_of(findings, [&](const Finding& finding) {
    return finding.check == Check::avalanche && stand_of(finding, allowed_share) != Stand::passes;
  });
}

/// Keeps the steeper of what was found so far and what is found here. Ground that goes the other
/// way is kept too: with its error counted it may still go this way.
void keep_steeper(std::optional<Steepness>& kept_so_far, const Steepness& here) {
  if (!kept_so_far.has_value()) {
    kept_so_far = here;
    return;
  }
  kept_so_far->up_to = std::max(kept_so_far->up_to, here.up_to);
  if (here.found > kept_so_far->found) {
    kept_so_far->found = here.found;
    kept_so_far->at = here.at;
  }
}

class LegWalk {
 public:
  LegWalk(const Judge& judge, const Stretch& stretch, const std::vector<Footfall>& footfalls)
      : judge_{judge},
        stretch_{stretch},
        footfalls_{footfalls},
        asked_{judge, stretch},
        trodden_(footfalls.size()),
        profile_{profile_of(judge.scene().heights, stretch.line, footfalls)} {
    told_.length = stretch.line.length();
    told_.allowed_share = asked_.allowed_share();
    const Way way = profile_.has_value() ? way_over(*profile_) : Way{};
    told_.climb = way.climb;
    told_.drop = way.drop;
    over_snow_ = profile_.has_value() ? way.over_snow : told_.length;
  }

  LegJudgement judge(const Driven& driven) {
    const Instant entry = driven.entry;
    at_most_ = driven.at_most;
    offer_at_their_places(asked_.judge_whole());
    offer_at_their_places(asked_.judge_marks({Metres{0}, told_.length}, entry));
    if (footfalls_.empty()) {
      worst_.offer(unknown(Check::heights_known, "ground of this stretch"), Metres{0});
    }
    tread_until_settled(entry);
    if (std::isfinite(staying().value())) {
      // What was said of a mark may have run out before the tail has left.
      offer_at_their_places(asked_.judge_marks({Metres{0}, told_.length}, left_at(entry)));
    }
    told_.hours.staying = staying_or_closed();
    const Stay stay{entry, told_.hours.staying};
    for (Finding& finding : asked_.judge_stay(stay)) {
      worst_.offer(std::move(finding), Metres{0});
    }
    tell_drive();
    tell_exposed();
    told_.findings = worst_.of_every_check();
    told_.binding = binding_of(told_.findings);
    told_.verdict = verdict_of(told_.findings, told_.allowed_share);
    return told_;
  }

 private:
  void offer_at_their_places(std::vector<Finding> findings) {
    for (Finding& finding : findings) {
      const Metres at = finding.at;
      worst_.offer(std::move(finding), at);
    }
  }

  /// The snow is asked as it is on entering and as it is when the tail leaves. What is found then
  /// may slow the rig down, so that it leaves later still.
  void tread_until_settled(Instant entry) {
    tread(entry);
    Instant until = entry;
    for (int round = 0; round < kMostRounds; ++round) {
      const Seconds lasting = staying();
      if (!std::isfinite(lasting.value()) || units::after(entry, lasting) <= until) {
        return;
      }
      until = left_at(entry);
      tread(until);
    }
    told_.hours.settled = false;
    worst_.offer(snow_that_turns(), Metres{0});
  }

  void tread(Instant when) {
    told_.hours.asked.push_back(when);
    for (std::size_t i = 0; i < footfalls_.size(); ++i) {
      const Footfall& footfall = footfalls_[i];
      const SnowQuestion question{judge_.snow(), stretch_.line, judge_.tolerance(), when,
                                  is_groomed(judge_.scene().network.trails[stretch_.trail])};
      for (const std::optional<snow::SnowState>& state : snow_under(footfall, question)) {
        const auto& known = trodden_[i].judged;
        if (std::find(known.begin(), known.end(), state) == known.end()) {
          note(i, state, asked_.judge_piece(footfall, {state, when}));
        }
      }
    }
  }

  void note(std::size_t index, std::optional<snow::SnowState> state, PlaceJudgement judged) {
    Trodden& here = trodden_[index];
    const Metres at = footfalls_[index].span.from;
    if (judged.carrier.has_value()) {
      note_steepness(*judged.carrier, at);
      here.lie = judged.carrier;
    }
    const bool both_known =
        judged.speed.has_value() && (here.speed.has_value() || here.judged.empty());
    here.speed = both_known
                     ? std::optional{here.judged.empty() ? *judged.speed
                                                         : lower_of(*here.speed, *judged.speed)}
                     : std::nullopt;
    if (state.has_value()) {
      const std::optional<snow::GripRow>& grip = judge_.grip().row(*state);
      const bool heavier = grip.has_value() &&
                           (here.heaviest == nullptr || drag_in(*grip) > drag_in(*here.heaviest));
      here.heaviest = heavier ? &*grip : here.heaviest;
      here.states.push_back(*state);
    }
    here.judged.push_back(state);
    here.exposed = here.exposed || is_exposed(judged.findings, told_.allowed_share);
    worst_.offer_all(std::move(judged.findings), at);
  }

  /// What holds this rig back on the level.
  [[nodiscard]] units::Newtons drag_in(const snow::GripRow& grip) const {
    return pull_needed(judge_.weighed(), grip, Slope::from_ratio(0));
  }

  void note_steepness(const Lie& lie, Metres at) {
    keep_steeper(told_.steepest_up, {lie.found.grade_high, lie.up_to.grade_high, at});
    keep_steeper(told_.steepest_down,
                 {lie.found.grade_low.reversed(), lie.up_to.grade_low.reversed(), at});
    keep_steeper(told_.steepest_across,
                 {lie.found.steepest_cross(), lie.up_to.steepest_cross(), at});
  }

  [[nodiscard]] MetresPerSecond slowest() const {
    MetresPerSecond speed{footfalls_.empty() ? 0.0 : std::numeric_limits<double>::infinity()};
    for (const Trodden& here : trodden_) {
      speed = lower_of(speed, here.speed.value_or(MetresPerSecond{0}));
    }
    return speed;
  }

  [[nodiscard]] MetresPerSecond driven() const { return lower_of(slowest(), at_most_); }

  /// From the nose entering to the tail leaving.
  [[nodiscard]] Seconds staying() const {
    return (over_snow_ + overall_length(judge_.rig())) / driven();
  }

  /// Nothing where the rig cannot get to the end for what was found already: that closes the leg,
  /// and not the trail's hours.
  [[nodiscard]] std::optional<Seconds> staying_or_closed() const {
    const bool closed = verdict_of(worst_.of_every_check(), told_.allowed_share) == Verdict::closed;
    return closed && !std::isfinite(staying().value()) ? std::nullopt : std::optional{staying()};
  }

  [[nodiscard]] Instant left_at(Instant entry) const { return units::after(entry, staying()); }

  void tell_exposed() {
    for (std::size_t i = 0; i < trodden_.size(); ++i) {
      const geo::Span& span = footfalls_[i].span;
      if (!trodden_[i].exposed) {
        continue;
      }
      if (i > 0 && trodden_[i - 1].exposed) {
        told_.exposed.back().to = span.to;
      } else {
        told_.exposed.push_back(span);
      }
    }
  }

  void tell_drive() {
    told_.slowest = slowest();
    told_.time = over_snow_ / driven();
    std::vector<const snow::GripRow*> grips;
    for (std::size_t i = 0; i < trodden_.size(); ++i) {
      const Trodden& here = trodden_[i];
      if (here.heaviest == nullptr) {
        continue;
      }
      grips.push_back(here.heaviest);
      std::vector<snow::SnowState> states = here.states;
      std::ranges::sort(states);
      told_.pieces.push_back({footfalls_[i].span, footfalls_[i].height,
                              here.speed.value_or(MetresPerSecond{0}), std::move(states),
                              here.lie});
      told_.snow.insert(told_.snow.end(), here.states.begin(), here.states.end());
    }
    std::ranges::sort(told_.snow);
    told_.snow.erase(std::unique(told_.snow.begin(), told_.snow.end()), told_.snow.end());
    const bool complete = profile_.has_value() && grips.size() == footfalls_.size();
    told_.fuel = complete ? fuel_over(*profile_, judge_.rig(), grips, driven())
                          : units::Litres{std::nan("")};
  }

  const Judge& judge_;
  const Stretch& stretch_;
  const std::vector<Footfall>& footfalls_;
  StretchJudge asked_;
  std::vector<Trodden> trodden_;
  std::optional<std::vector<Rise>> profile_;
  Metres over_snow_;
  MetresPerSecond at_most_;
  Worst worst_;
  LegJudgement told_;
};

}  // namespace

LegJudgement Judge::judge_over(const Stretch& stretch, const std::vector<Footfall>& footfalls,
                               Instant entry) const {
  constexpr MetresPerSecond kAsFastAsItMay{std::numeric_limits<double>::infinity()};
  return judge_driven(stretch, footfalls, {entry, kAsFastAsItMay});
}

LegJudgement Judge::judge_driven(const Stretch& stretch, const std::vector<Footfall>& footfalls,
                                 const Driven& driven) const {
  return LegWalk{*this, stretch, footfalls}.judge(driven);
}

}  // namespace rimehaul::passage
