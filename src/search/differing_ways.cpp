#include "search/differing_ways.h"

#include <algorithm>
#include <set>

namespace rimehaul::search {

using trails::LegId;

namespace {

/// The same ground, whichever way it is driven.
std::uint32_t stretch_of(LegId leg) {
  return static_cast<std::uint32_t>(leg) / 2;
}

std::set<std::uint32_t> ground_of(const DrivenWay& way) {
  std::set<std::uint32_t> ground;
  for (const LegId leg : way.legs) {
    ground.insert(stretch_of(leg));
  }
  return ground;
}

}  // namespace

bool truly_differs(const trails::Network& network, const DrivenWay& way,
                   std::span<const DrivenWay> better) {
  if (!better.empty() && way.returns > better.front().returns) {
    return false;
  }
  const std::set<std::uint32_t> own = ground_of(way);
  return std::ranges::all_of(better, [&](const DrivenWay& known_way) {
    const std::set<std::uint32_t> known = ground_of(known_way);
    if (std::ranges::includes(own, known)) {
      return false;  // the better one, and something besides
    }
    double all = 0.0;
    double shared = 0.0;
    for (const LegId leg : way.legs) {
      const double length = network.legs[static_cast<std::size_t>(leg)].line.length().value();
      all += length;
      shared += known.contains(stretch_of(leg)) ? length : 0.0;
    }
    return shared <= kMostShared * all;
  });
}

}  // namespace rimehaul::search
