// The answer when there is no route: what stands in the way, by which causes, and what would open
// it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "passage/open_loads.h"

namespace rimehaul::search {

/// What would open something that is closed as the rig stands: each by itself, all else as it is.
struct Openings {
  passage::OpenLoads loads{};
  bool without_trailer = false;
  std::vector<snow::SnowState> snow{};  ///< everywhere, with the day's weather
  // Asked for where none of the above opens it: no trailer, and another bed load or other snow.
  std::vector<passage::LoadInterval> bed_without_trailer{};
  std::vector<snow::SnowState> snow_without_trailer{};
  bool and_decision = false;  ///< some of these ask for a named person's decision besides

  [[nodiscard]] bool any() const;
};

/// One leg or turn that stands in the way. What follows its finding is filled in by obstacles.h.
struct Obstacle {
  trails::LegId leg{};
  std::optional<trails::LegId> turn_from;  ///< set: the turn from there into the leg blocks
  units::Instant entry;                    ///< for which it was judged
  passage::Finding finding;                ///< the one that binds
  std::string decision{};  ///< what a named person would have to decide, if that is all
  std::vector<passage::Finding> findings{};  ///< all that do not pass, in order of Check
  Openings opens{};
};

/// One and the same reason at one or many places.
struct Cause {
  std::vector<std::size_t> obstacles;  ///< where, as indices into NoRoute::obstacles; never empty
  std::size_t worst = 0;               ///< the obstacle where it binds most
  passage::Finding finding;            ///< as found there
  /// What makes the check pass at all these places and brings no other reason against them.
  Openings lifts{};
};

/// A way that would be found open with another load, without the trailer, or in other snow.
struct OtherWay {
  std::vector<trails::LegId> legs;
  Openings opens;  ///< as far as it opens that way
};

struct NoRoute {
  std::string why;                  ///< one line for people
  std::vector<Obstacle> obstacles;  ///< nearest to a way first
  /// The way that is nearest to open, leg by leg; empty when what blocks lies on several.
  std::vector<trails::LegId> way{};
  std::vector<Cause> causes{};  ///< the one at most places first
  Openings opens{};             ///< what opens the whole of that way
  std::vector<OtherWay> other_ways{};
};

}  // namespace rimehaul::search
