#include "search/fixed_way.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include "base/require.h"
#include "search/blockers.h"
#include "search/timing.h"

namespace rimehaul::search {

using trails::LegId;

namespace {

/// When each leg is entered, those that may not be driven taken to last as they were judged to.
std::vector<TimedLeg> at_their_hours(const passage::LegJudge& judge, const FixedWay& way,
                                     units::Instant depart) {
  std::vector<TimedLeg> legs;
  units::Seconds gone{0};
  for (const LegId leg : way.legs) {
    legs.push_back({leg, units::after(depart, gone)});
    const units::Seconds time = judge.judge(leg, legs.back().entry).time;
    if (std::isfinite(time.value()) && time > units::Seconds{0}) {
      gone += time;
    }
  }
  return legs;
}

}  // namespace

FixedWay back_along(const FixedWay& way) {
  FixedWay back;
  std::transform(way.legs.rbegin(), way.legs.rend(), std::back_inserter(back.legs),
                 trails::opposite_of);
  return back;
}

std::variant<Route, NoRoute> drive_fixed(const passage::LegJudge& judge, const FixedWay& way,
                                         units::Instant depart, Permission permission) {
  auto driven = Timekeeper{judge, depart}.drive(way.legs, permission);
  if (auto* route = std::get_if<Route>(&driven)) {
    return std::move(*route);
  }
  NoRoute none = what_stands_in(at_their_hours(judge, way, depart), judge, permission);
  base::require(!none.obstacles.empty(), "nothing stands in a way that may not be driven");
  return none;
}

}  // namespace rimehaul::search
