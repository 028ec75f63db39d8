// Open ground becomes part of the network, as far as the rig may cross it.
#include "app/open_ground.h"

#include <list>
#include <vector>

#include "crossing/ways_over.h"

namespace rimehaul::app {

void join_open_ground(LoadedSite& site, const rig::Rig& rig,
                      std::span<const snow::SnowAt* const> snows, units::Instant when) {
  std::list<passage::Judge> judges;
  std::vector<const passage::Judge*> asked;
  for (const snow::SnowAt* snow : snows) {
    judges.push_back(judges.empty() ? passage::Judge{*site.scene, rig, *snow}
                                    : judges.front().with_snow(*snow));
    asked.push_back(&judges.back());
  }
  passage::Scene joined = crossing::with_open_ground(*site.scene, asked, when);
  site.scene.emplace(std::move(joined));
}

}  // namespace rimehaul::app
