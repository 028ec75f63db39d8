// How much dearer ground is to a search the nearer its share comes to what is allowed.
#pragma once

namespace rimehaul::passage {

/// Smooth penalty on a share: 1 / (1 - (share / allowed)^2 / 2), from 1 at share 0 to 2 at allowed.
/// Infinite unless 0 <= share <= allowed and allowed > 0. Our choice, no source.
[[nodiscard]] double share_penalty(double share, double allowed);

}  // namespace rimehaul::passage
