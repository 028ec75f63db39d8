// What is asked for by itself: the best way between stations, or a way as it is given.
#pragma once

#include <variant>
#include <vector>

#include "search/fixed_way.h"

namespace rimehaul::day {

/// Stations as indices into Network::stations, in driving order, two or more.
struct Stops {
  std::vector<std::size_t> stations;

  [[nodiscard]] std::size_t first() const { return stations.front(); }
  [[nodiscard]] std::size_t last() const { return stations.back(); }
  friend bool operator==(const Stops&, const Stops&) = default;
};

/// The best way is looked for, or one alone is judged.
using Trip = std::variant<Stops, search::FixedWay>;

/// The same stations, or the same way, from the last to the first.
[[nodiscard]] Trip back_of(const Trip& trip);

/// Every pair of two stations that trails reach and that do not share a junction.
[[nodiscard]] std::vector<Stops> all_pairs(const trails::Network& network);

/// Every marked trail from end to end, each way in which it may be driven: as drawn, then against.
/// Where nobody said which way it may be driven, both, so that it is told to be missing.
[[nodiscard]] std::vector<search::FixedWay> marked_trails(const trails::Network& network);

}  // namespace rimehaul::day
