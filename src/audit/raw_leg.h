// The promised legs found again on their trails, and joined into the line that is driven.
#pragma once

#include <span>
#include <string>
#include <variant>
#include <vector>

#include "audit/rewalk.h"

namespace rimehaul::audit {

/// A promised leg on the raw line of its trail.
struct RawLeg {
  passage::Stretch stretch;
  units::Metres line_error;
};

/// The leg, or why there is no such leg. Only the trail and its chainages are used.
[[nodiscard]] std::variant<RawLeg, std::string> find_raw_leg(const trails::Network& network,
                                                             const PromisedLeg& promised);

/// How far apart the end of one leg and the start of the next may lie.
inline constexpr units::Metres kTouching{0.01};

/// Two legs in driving order.
struct Joint {
  const RawLeg& before;
  const RawLeg& after;
};

[[nodiscard]] bool touch(const Joint& joint);
/// Whether the rig goes back the way it came.
[[nodiscard]] bool turns_back(const Joint& joint);

/// Legs driven one after another without turning back, as one line.
struct Run {
  geo::Polyline line;
  std::vector<units::Metres> starts;       ///< chainage at which each leg starts
  std::vector<units::Metres> line_errors;  ///< of each leg
};

/// Requires legs of which each touches the next.
[[nodiscard]] Run joined(std::span<const RawLeg> legs);

}  // namespace rimehaul::audit
