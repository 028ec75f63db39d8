#include "passage/open_loads.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "base/require.h"
#include "passage/stretch_judge.h"

namespace rimehaul::passage {

using units::Kilograms;

namespace {

/// A rating beyond so many steps, or none, is no rating that can be judged load by load.
constexpr double kMostSteps = 10'000;

constexpr Kilograms kStep{25};
constexpr double kMostStepsShown = 16;

Kilograms& load_at(rig::Rig& rig, LoadPlace place) {
  return place == LoadPlace::bed ? rig.load.bed : rig.load.towed;
}

/// The heaviest load that may be put there; nothing where nothing can be.
std::optional<Kilograms> rating_of(const rig::Rig& rig, const LoadSteps& steps) {
  if (steps.place == LoadPlace::towed && !rig.trailer.has_value()) {
    return std::nullopt;
  }
  const Kilograms rating =
      steps.place == LoadPlace::bed ? rig.carrier.bed_rating : rig.trailer->payload_rating;
  const bool can_be_judged = rating >= Kilograms{0} && rating <= kMostSteps * steps.each;
  return can_be_judged ? std::optional{rating} : std::nullopt;
}

/// 0, one step, two steps ... and the last whole kilogram of the rating.
std::vector<Kilograms> loads_up_to(Kilograms rating, const LoadSteps& steps) {
  const Kilograms last{std::floor(rating.value())};
  std::vector<Kilograms> loads;
  for (int i = 0; i * steps.each < last; ++i) {
    loads.push_back(i * steps.each);
  }
  loads.push_back(last);
  return loads;
}

/// Asks for one load after the other.
class Weighing {
 public:
  Weighing(const rig::Rig& rig, LoadPlace place, const OpenWith& open)
      : rig_{rig}, place_{place}, open_{open} {}

  bool open_with(Kilograms load) {
    load_at(rig_, place_) = load;
    return open_(rig_);
  }

  struct Gap {
    Kilograms open;
    Kilograms closed;
  };
  /// The whole kilogram nearest to the closed end that halving finds open.
  Kilograms furthest_open(Gap gap) {
    for (auto middle = middle_of(gap); middle.has_value(); middle = middle_of(gap)) {
      (open_with(*middle) ? gap.open : gap.closed) = *middle;
    }
    return gap.open;
  }

 private:
  /// The whole kilogram in the middle of a gap; nothing when none lies between its ends.
  static std::optional<Kilograms> middle_of(const Gap& gap) {
    const Kilograms middle{std::floor(((gap.open + gap.closed) / 2).value())};
    const bool between =
        std::min(gap.open, gap.closed) < middle && middle < std::max(gap.open, gap.closed);
    return between ? std::optional{middle} : std::nullopt;
  }

  rig::Rig rig_;
  LoadPlace place_;
  const OpenWith& open_;
};

/// Which pairs of a bed load and a towed load are open.
struct PairGrid {
  std::vector<Kilograms> bed;
  std::vector<Kilograms> towed;
  std::vector<bool> open;  ///< by bed, then towed

  /// First and last index of a run of loads.
  struct Run {
    std::size_t first = 0;
    std::size_t last = 0;

    [[nodiscard]] std::size_t count() const { return last - first + 1; }
  };

  [[nodiscard]] bool all_open(const Run& beds, std::size_t towed_index) const {
    for (std::size_t i = beds.first; i <= beds.last; ++i) {
      if (!open[i * towed.size() + towed_index]) {
        return false;
      }
    }
    return true;
  }

  /// The longest run of towed loads that are open with every one of these bed loads.
  [[nodiscard]] std::optional<Run> longest_towed(const Run& beds) const {
    std::optional<Run> longest;
    std::optional<Run> run;
    for (std::size_t i = 0; i < towed.size(); ++i) {
      if (!all_open(beds, i)) {
        run.reset();
        continue;
      }
      run = Run{run.has_value() ? run->first : i, i};
      if (!longest.has_value() || run->count() > longest->count()) {
        longest = run;
      }
    }
    return longest;
  }

  /// The pair of runs that holds most pairs; of equals the one with the lighter bed.
  [[nodiscard]] std::optional<LoadPair> largest() const {
    std::optional<LoadPair> largest;
    std::size_t most = 0;
    for (std::size_t first = 0; first < bed.size(); ++first) {
      for (std::size_t last = first; last < bed.size(); ++last) {
        const Run beds{first, last};
        const std::optional<Run> run = longest_towed(beds);
        if (run.has_value() && beds.count() * run->count() > most) {
          most = beds.count() * run->count();
          largest = LoadPair{{bed[first], bed[last]}, {towed[run->first], towed[run->last]}};
        }
      }
    }
    return largest;
  }
};

struct StepsOfBoth {
  LoadSteps bed;
  LoadSteps towed;
};

std::optional<LoadPair> open_pair(const rig::Rig& rig, const StepsOfBoth& steps,
                                  const OpenWith& open) {
  const auto bed_rating = rating_of(rig, steps.bed);
  const auto towed_rating = rating_of(rig, steps.towed);
  if (!bed_rating.has_value() || !towed_rating.has_value()) {
    return std::nullopt;
  }
  PairGrid grid{loads_up_to(*bed_rating, steps.bed), loads_up_to(*towed_rating, steps.towed), {}};
  rig::Rig loaded = rig;
  for (const Kilograms bed : grid.bed) {
    loaded.load.bed = bed;
    for (const Kilograms towed : grid.towed) {
      loaded.load.towed = towed;
      grid.open.push_back(open(loaded));
    }
  }
  return grid.largest();
}

/// Steps that a rating has no more of than people want to read.
LoadSteps steps_for(const rig::Rig& rig, LoadPlace place) {
  const Kilograms rating = rating_of(rig, {place, kStep}).value_or(Kilograms{0});
  const double times = std::ceil(rating.value() / (kMostStepsShown * kStep.value()));
  return {place, std::max(times, 1.0) * kStep};
}

LoadSteps twice(const LoadSteps& steps) {
  return {steps.place, 2 * steps.each};
}

}  // namespace

std::vector<LoadInterval> open_loads(const rig::Rig& rig, const LoadSteps& steps,
                                     const OpenWith& open) {
  base::require(steps.each > Kilograms{0}, "loads are judged in steps above 0");
  const std::optional<Kilograms> rating = rating_of(rig, steps);
  if (!rating.has_value()) {
    return {};
  }
  Weighing weighing{rig, steps.place, open};
  std::vector<LoadInterval> intervals;
  std::optional<Kilograms> open_before;
  std::optional<Kilograms> closed_before;
  for (const Kilograms load : loads_up_to(*rating, steps)) {
    const bool is_open = weighing.open_with(load);
    if (is_open && !open_before.has_value()) {
      const Kilograms from = closed_before.has_value()
                                 ? weighing.furthest_open({.open = load, .closed = *closed_before})
                                 : load;
      intervals.push_back({from, load});
    } else if (is_open) {
      intervals.back().to = load;
    } else if (open_before.has_value()) {
      intervals.back().to = weighing.furthest_open({.open = *open_before, .closed = load});
    }
    (is_open ? open_before : closed_before) = load;
    (is_open ? closed_before : open_before).reset();
  }
  return intervals;
}

OpenLoads loads_that_open(const rig::Rig& rig, const OpenWith& open) {
  const LoadSteps bed = steps_for(rig, LoadPlace::bed);
  const LoadSteps towed = steps_for(rig, LoadPlace::towed);
  OpenLoads loads{open_loads(rig, bed, open), open_loads(rig, towed, open), {}};
  if (!loads.any() && rig.trailer.has_value()) {
    if (const auto pair = open_pair(rig, {twice(bed), twice(towed)}, open)) {
      loads.both.push_back(*pair);
    }
  }
  return loads;
}

bool depends_on_load(Check check) {
  using enum Check;
  switch (check) {
    case heights_known:
    case trail_attributes:
    case seats:
    case turning:
    case off_tracking:
    case avalanche:
    case visibility:
    case direction:
    case driver_level:
    case passengers:
    case alone:
    case towing_in_wet_snow:
    case wind:
    case rain:
    case grooming:
    case single_lane:
    case tow_out:
    case zone:
      return false;
    default:
      return true;
  }
}

bool load_may_open(const std::vector<Finding>& findings, double allowed_share) {
  return std::ranges::all_of(findings, [&](const Finding& finding) {
    const Stand stand = stand_of(finding, allowed_share);
    return depends_on_load(finding.check) || stand == Stand::passes || stand == Stand::asks;
  });
}

LegOpenWith::LegOpenWith(const Judge& judge, trails::LegId leg, units::Instant entry)
    : judge_{&judge},
      stretch_{judge.stretch_of(leg)},
      ground_{passage::ground_under(judge.scene(), judge.rig(), stretch_)},
      entry_{entry} {}

bool LegOpenWith::operator()(const rig::Rig& rig) const {
  return judge_->with_rig(rig).judge_over(stretch_, ground_, entry_).verdict != Verdict::closed;
}

PlaceOpenWith::PlaceOpenWith(const Judge& judge, const PlaceOnStretch& place, units::Instant when)
    : judge_{&judge}, place_{place}, when_{when} {}

bool PlaceOpenWith::operator()(const rig::Rig& rig) const {
  const Judge other = judge_->with_rig(rig);
  // Another load may take longer, and so meet other snow.
  const HoursOnLeg hours = other.judge_over(place_.stretch, place_.footfalls, when_).hours;
  std::vector<Finding> findings;
  for (PlaceFinding& found :
       other.findings_at(place_.stretch, place_.footfalls[place_.footfall], hours)) {
    findings.push_back(std::move(found.finding));
  }
  return verdict_of(findings, other.allowed_share()) != Verdict::closed;
}

Verdict verdict_with_loads(Verdict as_it_stands, const OpenLoads& loads) {
  return as_it_stands == Verdict::closed && loads.any() ? Verdict::restricted : as_it_stands;
}

}  // namespace rimehaul::passage
