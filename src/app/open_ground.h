// Open ground becomes part of the network, as far as the rig may cross it and somebody's way does.
#pragma once

#include <set>
#include <span>
#include <string>
#include <vector>

#include "app/load_site.h"
#include "snow/snow.h"
#include "trails/open_ways.h"

namespace rimehaul::app {

/// Who crosses when.
struct Crossing {
  const rig::Rig& rig;
  std::vector<const snow::SnowAt*> snows;  ///< in any of which a way counts
  units::Instant when;
};

/// The ways over the site's open ground that a rig may take at an hour. Requires a site with a
/// scene.
[[nodiscard]] std::vector<trails::OpenWay> ways_over_open_ground(const LoadedSite& site,
                                                                 const Crossing& crossing);

/// The names of all ways over open ground among legs of the site's network.
[[nodiscard]] std::set<std::string> open_ways_among(const LoadedSite& site,
                                                    std::span<const trails::LegId> legs);

/// Asks with open ground as part of the site's network, and asks again with no more of it than the
/// answer takes, so that ways which nobody goes cut no trail into legs. `legs_of` tells the legs of
/// an answer. What referred to the site's scene before is void; both ask of the site as it then is.
template <class Ask, class LegsOf>
auto asked_over_open_ground(LoadedSite& site, const Crossing& crossing, const Ask& ask,
                            const LegsOf& legs_of) {
  std::vector<trails::OpenWay> ways = ways_over_open_ground(site, crossing);
  if (ways.empty()) {
    return ask();
  }
  const passage::Scene trails_alone = *site.scene;
  const auto join = [&] {
    passage::Scene joined = trails_alone;
    joined.network = trails::joined_with(trails_alone.network, ways);
    site.scene.emplace(std::move(joined));
  };
  join();
  auto answer = ask();
  const std::set<std::string> taken = open_ways_among(site, legs_of(answer));
  if (taken.size() == ways.size()) {
    return answer;
  }
  std::erase_if(ways,
                [&](const trails::OpenWay& way) { return !taken.contains(way.as_trail.name); });
  join();
  return ask();
}

}  // namespace rimehaul::app
