// Which ways are so different that both are worth telling.
#pragma once

#include <span>
#include <vector>

#include "trails/network.h"

namespace rimehaul::search {

/// A way before it is timed.
struct DrivenWay {
  std::vector<trails::LegId> legs;
  std::size_t returns = 0;  ///< how often it comes back to a junction within a stage
};

/// Ways that are told share at most this part of their length with a better one.
inline constexpr double kMostShared = 0.7;

/// Whether a way shares little ground with each of the better ones, is none of them with something
/// besides, and returns no more often than the first.
[[nodiscard]] bool truly_differs(const trails::Network& network, const DrivenWay& way,
                                 std::span<const DrivenWay> better);

}  // namespace rimehaul::search
