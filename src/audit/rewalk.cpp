#include "audit/rewalk.h"

#include <algorithm>
#include <cmath>
#include <string_view>

#include "audit/exact_ground.h"
#include "audit/raw_leg.h"
#include "units/rounding.h"

namespace rimehaul::audit {

using passage::Finding;
using passage::Verdict;
using trails::LegId;
using trails::Way;
using units::Metres;

namespace {

/// Rounding in adding the same numbers in another order, nothing else.
constexpr double kRounding = 1e-9;
/// Hours of entry are whole seconds, each rounded up.
constexpr units::Seconds kSooner{1.0};
constexpr units::Seconds kLater{1.0};

std::string shown(double number) {
  return units::text_of(number, 3, units::Round::up);
}

std::string told(const Finding& finding) {
  const std::string what{passage::facts_of(finding.check).title};
  if (!finding.missing.empty()) {
    return what + ": not known: " + finding.missing;
  }
  if (!finding.refused.empty()) {
    return what + ": " + finding.refused;
  }
  if (!finding.asks.empty()) {
    return what + " asks for a decision: " + finding.asks;
  }
  return what + " comes to " + shown(finding.share.value_or(std::nan("")));
}

/// What decides the verdict: what asks for a decision where nothing else stands in the way.
const Finding& deciding(const passage::LegJudgement& judged) {
  const auto asks = std::ranges::find_if(
      judged.findings, [](const Finding& finding) { return !finding.asks.empty(); });
  const bool waits = judged.verdict == Verdict::restricted && asks != judged.findings.end();
  return waits ? *asks : judged.bind();
}

/// Chainage at which a leg is entered and left.
Metres start_of(const passage::Stretch& stretch) {
  return stretch.way == Way::as_drawn ? stretch.span.from : stretch.span.to;
}
Metres end_of(const passage::Stretch& stretch) {
  return stretch.way == Way::as_drawn ? stretch.span.to : stretch.span.from;
}

/// Something that a drive needs, as walked again and as promised.
struct NeededAndPromised {
  std::string_view what;
  std::string_view unit;
  double needed = 0.0;
  double promised = 0.0;
};

class Rewalker {
 public:
  Rewalker(const passage::Scene& scene, const rig::Rig& rig, const snow::SnowAt& snow,
           const std::vector<PromisedLeg>& promise)
      : scene_{&scene}, promise_{&promise}, judge_{scene, rig, snow} {}

  Rewalk walk() && {
    if (promise_->empty()) {
      note(0, "nothing was promised");
      return std::move(result_);
    }
    find_legs();
    if (!result_.discrepancies.empty()) {
      return std::move(result_);  // there is no line to walk
    }
    for (std::size_t leg = 1; leg < legs_.size(); ++leg) {
      check_joint(leg);
    }
    for (std::size_t first = 0; first < legs_.size();) {
      first = walk_run(first);
    }
    return std::move(result_);
  }

 private:
  void note(std::size_t leg, std::string what) {
    result_.discrepancies.push_back({.leg = leg, .what = std::move(what)});
  }

  void find_legs() {
    for (std::size_t leg = 0; leg < promise_->size(); ++leg) {
      auto found = find_raw_leg(scene_->network, (*promise_)[leg]);
      if (const auto* why = std::get_if<std::string>(&found)) {
        note(leg, *why);
        continue;
      }
      legs_.push_back(std::get<RawLeg>(std::move(found)));
      const bool follows = legs_.size() == leg + 1 && leg > 0;
      if (follows && !touch({legs_[leg - 1], legs_[leg]})) {
        note(leg, "it does not start where the leg before it ends");
      }
    }
  }

  /// The leg of the network that is driven that way on that trail and is entered, or left, there.
  template <class Chainage>
  [[nodiscard]] std::optional<LegId> network_leg(const passage::Stretch& stretch,
                                                 Chainage chainage) const {
    for (std::uint32_t leg = 0; leg < scene_->network.legs.size(); ++leg) {
      const passage::Stretch there = judge_.stretch_of(LegId{leg});
      if (there.trail == stretch.trail && there.way == stretch.way &&
          std::abs((chainage(there) - chainage(stretch)).value()) <= kTouching.value()) {
        return LegId{leg};
      }
    }
    return std::nullopt;
  }

  void check_joint(std::size_t leg) {
    const auto from = network_leg(legs_[leg - 1].stretch, end_of);
    const auto to = network_leg(legs_[leg].stretch, start_of);
    const bool meet = from.has_value() && to.has_value() &&
                      scene_->network.legs[static_cast<std::size_t>(*from)].to ==
                          scene_->network.legs[static_cast<std::size_t>(*to)].from;
    if (!meet) {
      note(leg, "there is no junction where it starts");
      return;
    }
    check_wait(leg, scene_->network.legs[static_cast<std::size_t>(*to)].from);
    const auto turn = judge_.judge_turn(*from, *to, (*promise_)[leg].entry);
    const Found found{turn.verdict, turn.binding.share.value_or(std::nan("")), turn.binding,
                      turn.binding};
    compare(leg, found);
    if (may_be_driven(leg, found.verdict)) {
      compare_share(leg - 1, found, "the turn out of it: ");
    }
  }

  /// A rig waits at a station, and nowhere else.
  void check_wait(std::size_t leg, trails::JunctionId before) {
    const PromisedLeg& driven = (*promise_)[leg - 1];
    const units::Seconds between = (*promise_)[leg].entry.since(driven.entry);
    const bool at_station =
        scene_->network.junctions[static_cast<std::size_t>(before)].station.has_value();
    if (!at_station && !(between <= driven.time + kLater)) {
      note(leg, "the rig would wait before it, where there is no station");
    }
  }

  struct Found {
    Verdict verdict = Verdict::closed;
    double share = std::nan("");
    Finding binding;   ///< the largest share, or what closes
    Finding deciding;  ///< what makes the verdict
  };

  [[nodiscard]] bool may_be_driven(std::size_t leg, Verdict verdict) const {
    return verdict == Verdict::open ||
           (verdict == Verdict::restricted && (*promise_)[leg].permitted);
  }

  /// Passes only what is open, or permitted, and no worse than promised.
  void compare(std::size_t leg, const Found& found) {
    if (may_be_driven(leg, found.verdict)) {
      compare_share(leg, found, "");
    } else {
      note(leg, std::string{passage::words_for(found.verdict)} + ": " + told(found.deciding));
    }
    result_.worst_share = std::max(result_.worst_share, found.share);
  }

  void compare_share(std::size_t leg, const Found& found, const std::string& where) {
    const double promised = (*promise_)[leg].share;
    if (!(found.share <= promised + kRounding)) {
      note(leg, where + told(found.binding) + ", promised " + shown(promised));
    }
  }

  /// Walks the legs from `first` on until the rig turns back; returns the leg after them.
  std::size_t walk_run(std::size_t first) {
    std::size_t end = first + 1;
    while (end < legs_.size() && !turns_back({legs_[end - 1], legs_[end]})) {
      ++end;
    }
    const Run run = joined(std::span{legs_}.subspan(first, end - first));
    for (std::size_t leg = first; leg < end; ++leg) {
      walk_leg(leg, {.run = run, .leg = leg - first, .line = legs_[leg].stretch.line});
    }
    return end;
  }

  void walk_leg(std::size_t leg, const LegOfRun& part) {
    const auto footfalls = exact_footfalls(*scene_, judge_.rig(), part);
    result_.places_judged += footfalls.size();
    const PromisedLeg& promised = (*promise_)[leg];
    const auto judged =
        judge_.judge_driven(legs_[leg].stretch, footfalls, {promised.entry, promised.speed});
    compare(leg, {judged.verdict, judged.share().value_or(std::nan("")), judged.bind(),
                  deciding(judged)});
    compare_drive(leg, judged);
    if (leg + 1 == legs_.size()) {
      return;
    }
    const double between =
        static_cast<double>((*promise_)[leg + 1].entry.seconds - promised.entry.seconds);
    if (!((judged.time - kSooner).value() <= between && 0.0 <= between)) {
      note(leg + 1, "it is entered before the leg before it can have been driven");
    }
  }

  /// No faster than the raw ground allows; and at that speed in no more time, with no more fuel.
  void compare_drive(std::size_t leg, const passage::LegJudgement& judged) {
    const PromisedLeg& promised = (*promise_)[leg];
    constexpr double kMore = 1.0 + kRounding;
    const auto compare = [&](const NeededAndPromised& drive) {
      if (!(drive.needed <= drive.promised * kMore)) {
        note(leg, std::string{drive.what} + " comes to " + shown(drive.needed) + " " +
                      std::string{drive.unit} + ", promised " + shown(drive.promised));
      }
    };
    const bool as_fast =
        promised.speed > units::MetresPerSecond{0} && promised.speed <= judged.slowest * kMore;
    if (!as_fast) {
      note(leg, "no more than " + units::text_of(judged.slowest.value(), 3, units::Round::down) +
                    " m/s may be driven, promised " + shown(promised.speed.value()));
    }
    compare({"time", "s", judged.time.value(), promised.time.value()});
    compare({"fuel", "L", judged.fuel.value(), promised.fuel.value()});
  }

  const passage::Scene* scene_;
  const std::vector<PromisedLeg>* promise_;
  passage::Judge judge_;
  std::vector<RawLeg> legs_;
  Rewalk result_;
};

}  // namespace

Rewalk rewalk(const passage::Scene& scene, const rig::Rig& rig, const snow::SnowAt& snow,
              const std::vector<PromisedLeg>& promise) {
  return Rewalker{scene, rig, snow, promise}.walk();
}

}  // namespace rimehaul::audit
