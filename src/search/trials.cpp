#include "search/trials.h"

#include <cmath>
#include <utility>

#include "base/require.h"
#include "passage/open_loads.h"
#include "passage/stretch_judge.h"

namespace rimehaul::search {

using passage::Finding;
using passage::Judge;
using passage::Stand;

namespace {

Trailer trailer_of(const rig::Rig& rig) {
  return rig.trailer.has_value() ? Trailer::hitched : Trailer::left_behind;
}

}  // namespace

std::vector<Place> places_along(const std::vector<trails::LegId>& way, units::Instant entry) {
  std::vector<Place> places;
  for (std::size_t i = 0; i < way.size(); ++i) {
    places.push_back({.leg = way[i], .turn_from = {}, .entry = entry});
    if (i > 0) {
      places.push_back({.leg = way[i], .turn_from = way[i - 1], .entry = entry});
    }
  }
  return places;
}

bool load_may_lift(const Checks& closing) {
  for (std::size_t i = 0; i < closing.size(); ++i) {
    if (closing[i] && !passage::depends_on_load(static_cast<passage::Check>(i))) {
      return false;
    }
  }
  return true;
}

/// The rig or the snow of one trial, and the judge of it, which refers to both.
struct Trials::Variant {
  Variant(const Judge& like, const Trial& trial)
      : rig{rig_of(like.rig(), trial)},
        snow{trial.snow ? std::optional<snow::OtherSnow>{std::in_place, like.snow(), *trial.snow}
                        : std::nullopt},
        judge{snow.has_value() ? like.with_rig(rig).with_snow(*snow) : like.with_rig(rig)} {}
  Variant(const Variant&) = delete;
  Variant& operator=(const Variant&) = delete;

  static rig::Rig rig_of(rig::Rig rig, const Trial& trial) {
    if (trial.trailer == Trailer::left_behind) {
      rig.trailer.reset();
    }
    rig.load.bed = trial.bed;
    rig.load.towed = trial.towed;
    return rig;
  }

  rig::Rig rig;
  std::optional<snow::OtherSnow> snow;
  Judge judge;
};

Trials::Trials(const Judge& judge, Permission permission)
    : judge_{&judge}, permission_{permission} {
  const rig::Load& load = judge.rig().load;
  base::require(std::isfinite(load.bed.value()) && std::isfinite(load.towed.value()),
                "a rig whose load is no number has no other loads");
}

Trial Trials::as_it_stands() const {
  return trial_of(judge_->rig());
}

Trial Trials::trial_of(const rig::Rig& rig) {
  return {.bed = rig.load.bed, .towed = rig.load.towed, .trailer = trailer_of(rig)};
}

const Trials::Variant& Trials::variant_for(const Trial& trial) {
  const auto known = variants_.find(trial);
  if (known != variants_.end()) {
    return *known->second;
  }
  // Without its trailer a rig may see the ground otherwise: worked out for one, taken by the rest.
  Trial alone = as_it_stands();
  alone.trailer = Trailer::left_behind;
  alone.towed = units::Kilograms{0};
  const bool another_alone = trial.trailer == Trailer::left_behind && trial != alone;
  const Judge& like = another_alone ? variant_for(alone).judge : *judge_;
  return *variants_.emplace(trial, std::make_shared<const Variant>(like, trial)).first->second;
}

passage::RememberingJudge Trials::judge_of(const Trial& trial) {
  return {variant_for(trial).judge, ground_[trial.trailer]};
}

std::vector<Finding> Trials::findings(const Place& place, const Trial& trial) {
  const Variant& variant = variant_for(trial);
  if (place.turn_from.has_value()) {
    return variant.judge.judge_turn(*place.turn_from, place.leg, place.entry).findings;
  }
  passage::LegJudgement judged = variant.judge.judge_over(
      variant.judge.stretch_of(place.leg),
      passage::ground_under(place.leg, variant.judge, ground_[trial.trailer]), place.entry);
  const bool passes = judged.verdict != passage::Verdict::closed;
  if (passes && !may_drive(facts_of(judged), Permission::named_person)) {
    judged.findings.push_back(
        passage::unknown(passage::Check::heights_known, "heights to tell time and fuel by"));
  }
  return std::move(judged.findings);
}

const Outcome& Trials::outcome(const Place& place, const Trial& trial) {
  const auto key = std::pair{place, trial};
  const auto known = outcomes_.find(key);
  if (known != outcomes_.end()) {
    return known->second;
  }
  Outcome outcome;
  for (const Finding& finding : findings(place, trial)) {
    const auto check = static_cast<std::size_t>(finding.check);
    const Stand stand = passage::stand_of(finding, judge_->allowed_share());
    if (stand == Stand::asks) {
      outcome.asks.set(check, permission_ == Permission::nobody);
    } else if (stand != Stand::passes) {
      outcome.closed.set(check);
    }
  }
  return outcomes_.emplace(key, outcome).first->second;
}

Checks Trials::closing(const std::vector<Place>& places, const Trial& trial) {
  Checks closing;
  for (const Place& place : places) {
    closing |= outcome(place, trial).closed;
  }
  return closing;
}

Outcome Trials::outcome_along(const std::vector<Place>& places, const Trial& trial) {
  Outcome along;
  for (const Place& place : places) {
    const Outcome& here = outcome(place, trial);
    along.closed |= here.closed;
    along.asks |= here.asks;
    if (along.closed.any()) {
      break;
    }
  }
  return along;
}

std::vector<Finding> Trials::not_passing(const Place& place) {
  std::vector<Finding> found = findings(place, as_it_stands());
  std::erase_if(found, [&](const Finding& finding) {
    const Stand stand = passage::stand_of(finding, judge_->allowed_share());
    return stand == Stand::passes ||
           (stand == Stand::asks && permission_ == Permission::named_person);
  });
  return found;
}

}  // namespace rimehaul::search
