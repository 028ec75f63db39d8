// All that is found at one footfall of a leg, as the judgement of the whole leg found it there.
#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

#include "base/require.h"
#include "passage/judge.h"
#include "passage/snow_under.h"
#include "passage/stretch_judge.h"

namespace rimehaul::passage {

using snow::SnowState;
using units::Instant;
using units::Metres;

namespace {

/// Keeps the worst finding of every check.
class WorstHere {
 public:
  void offer(PlaceFinding found) {
    auto& slot = worst_.at(static_cast<std::size_t>(found.finding.check));
    if (!slot.has_value() || binds_before(found.finding, slot->finding)) {
      slot = std::move(found);
    }
  }
  void offer_all(std::vector<Finding> findings, Instant when) {
    for (Finding& finding : findings) {
      offer({.finding = std::move(finding), .when = when});
    }
  }

  [[nodiscard]] std::vector<PlaceFinding> take() && {
    std::vector<PlaceFinding> found;
    for (std::optional<PlaceFinding>& slot : worst_) {
      if (slot.has_value()) {
        found.push_back(std::move(*slot));
      }
    }
    return found;
  }

 private:
  std::array<std::optional<PlaceFinding>, kCheckCount> worst_;
};

}  // namespace

std::vector<PlaceFinding> Judge::findings_at(const Stretch& stretch, const Footfall& footfall,
                                             const HoursOnLeg& hours) const {
  base::require(!hours.asked.empty(), "a place is looked at for the hours that its leg was");
  const StretchJudge asked{*this, stretch};
  WorstHere worst;
  std::vector<std::optional<SnowState>> judged;
  for (const Instant when : hours.asked) {
    for (const auto& state :
         snow_under(footfall, {*snow_, stretch.line, tolerance_, when,
                               is_groomed(scene_->network.trails[stretch.trail])})) {
      if (std::ranges::find(judged, state) != judged.end()) {
        continue;
      }
      judged.push_back(state);
      for (Finding& finding : asked.judge_piece(footfall, {state, when}).findings) {
        finding.at = footfall.span.from;
        worst.offer({.finding = std::move(finding), .snow = state, .when = when});
      }
    }
  }
  const Instant entry = hours.asked.front();
  worst.offer_all(asked.judge_whole(), entry);
  worst.offer_all(asked.judge_marks(footfall.span, entry), entry);
  if (hours.staying && std::isfinite(hours.staying->value())) {
    const Instant left = units::after(entry, *hours.staying);
    worst.offer_all(asked.judge_marks(footfall.span, left), left);
  }
  const Stay stay{entry, hours.staying};
  std::vector<Finding> of_leg = asked.judge_stay(stay);
  if (!hours.settled) {
    of_leg.push_back(snow_that_turns());
  }
  worst.offer_all(std::move(of_leg), entry);
  return std::move(worst).take();
}

}  // namespace rimehaul::passage
