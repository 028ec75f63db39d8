// Open ground becomes part of the network, as far as the rig may cross it and somebody's way does.
#include "app/open_ground.h"

#include <list>

#include "crossing/ways_over.h"

namespace rimehaul::app {

std::vector<trails::OpenWay> ways_over_open_ground(const LoadedSite& site,
                                                   const Crossing& crossing) {
  std::list<passage::Judge> judges;
  std::vector<const passage::Judge*> asked;
  for (const snow::SnowAt* snow : crossing.snows) {
    judges.push_back(judges.empty() ? passage::Judge{*site.scene, crossing.rig, *snow}
                                    : judges.front().with_snow(*snow));
    asked.push_back(&judges.back());
  }
  return crossing::ways_for_any(asked, crossing.when);
}

std::set<std::string> open_ways_among(const LoadedSite& site, std::span<const trails::LegId> legs) {
  const trails::Network& network = site.scene->network;
  std::set<std::string> names;
  for (const trails::LegId leg : legs) {
    const trails::Trail& trail = network.trails[network.legs[static_cast<std::size_t>(leg)].trail];
    if (!trail.marked) {
      names.insert(trail.name);
    }
  }
  return names;
}

}  // namespace rimehaul::app
