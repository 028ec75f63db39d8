#include "search/inquiry.h"

#include <algorithm>

namespace rimehaul::search {

namespace {

/// Whether trying loads can be of any use.
enum class Loads { may_help, cannot_help };

/// The states of the snow in which a trial holds: a question that says yes or no to every trial.
template <class Holds>
std::vector<snow::SnowState> snow_where(Trial trial, const Holds& holds) {
  std::vector<snow::SnowState> states;
  for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
    for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
      trial.snow = snow::SnowState{.wetness = static_cast<snow::Wetness>(wetness),
                                   .surface = static_cast<snow::Surface>(surface)};
      if (holds(trial)) {
        states.push_back(*trial.snow);
      }
    }
  }
  return states;
}

template <class Holds>
Openings openings_for(const rig::Rig& rig, const Holds& holds, Loads loads) {
  const passage::OpenIf open_with{
      [&](const rig::Rig& other) { return holds(Trials::trial_of(other)); }};
  Openings opens;
  if (loads == Loads::may_help) {
    opens.loads = passage::loads_that_open(rig, open_with);
  }
  opens.snow = snow_where(Trials::trial_of(rig), holds);
  if (!rig.trailer.has_value()) {
    return opens;
  }
  const rig::Rig alone = rig::without_trailer(rig);
  opens.without_trailer = open_with(alone);
  if (!opens.any()) {
    opens.bed_without_trailer = passage::loads_that_open(alone, open_with).bed;
    opens.snow_without_trailer = snow_where(Trials::trial_of(alone), holds);
  }
  return opens;
}

Loads loads_against(const Checks& closing) {
  return load_may_lift(closing) ? Loads::may_help : Loads::cannot_help;
}

Checks load_ratings() {
  Checks ratings;
  using enum passage::Check;
  for (const passage::Check check : {hitch_vertical, towed_mass, payload, trailer_payload, seats}) {
    ratings.set(static_cast<std::size_t>(check));
  }
  return ratings;
}

}  // namespace

bool Openings::any() const {
  return loads.any() || without_trailer || !snow.empty() || !bed_without_trailer.empty() ||
         !snow_without_trailer.empty();
}

Inquiry::Inquiry(const passage::Judge& judge, Permission permission)
    : rig_{judge.rig()}, trials_{judge, permission} {}

Openings Inquiry::opens(const std::vector<Place>& places) {
  const Checks closing = trials_.closing(places, trials_.as_it_stands());
  const bool only_by_decision = closing.none();
  bool asks = false;
  const auto holds = [&](const Trial& trial) {
    const Outcome came = trials_.outcome_along(places, trial);
    if (came.closed.any() || (only_by_decision && came.asks.any())) {
      return false;
    }
    asks = asks || came.asks.any();
    return true;
  };
  Openings opens =
      openings_for(rig_, holds, only_by_decision ? Loads::cannot_help : loads_against(closing));
  opens.and_decision = asks;
  return opens;
}

// A load that is over some rating is no remedy for anything else.
Openings Inquiry::lifts(passage::Check check, const std::vector<Place>& places) {
  const auto index = static_cast<std::size_t>(check);
  const Trial now = trials_.as_it_stands();
  const auto holds = [&](const Trial& trial) {
    return std::ranges::all_of(places, [&](const Place& place) {
      const Outcome came = trials_.outcome(place, trial);
      const Outcome stands = trials_.outcome(place, now);
      return !came.closed[index] && !came.asks[index] &&
             (came.closed & (~stands.closed | load_ratings())).none();
    });
  };
  return openings_for(rig_, holds, loads_against(Checks{}.set(index)));
}

}  // namespace rimehaul::search
