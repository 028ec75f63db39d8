// Ways from one node to another, from the cheapest on, none of which passes a node twice.
#pragma once

#include <set>

#include "search/graph.h"

namespace rimehaul::search {

/// Yields the loopless paths of a graph one by one, prices never falling: Yen (1971), Management
/// Science 17(11):712-716, without trying again what an earlier path has tried, as Lawler (1972),
/// Management Science 18(7):401-405. Of equal prices, the path whose first different arc has the
/// lower index comes first among those found so far.
class CheapestPaths {
 public:
  /// Holds a reference: the graph must outlive it.
  CheapestPaths(const Graph& graph, Prices prices, Journey journey);

  /// The next path; nothing when there are no more.
  [[nodiscard]] std::optional<Path> next();

 private:
  /// A path, and from which arc on it leaves the path it was made from.
  struct Candidate {
    Path path;
    std::size_t leaves_at = 0;

    bool operator<(const Candidate& other) const;
  };

  void branch_off(const Candidate& accepted);
  void branch_at(const Candidate& accepted, std::size_t place);

  const Graph* graph_;
  Prices prices_;
  Journey journey_;
  std::vector<double> still_to_go_;
  std::vector<bool> passed_;  ///< nodes of the part that is kept while branching off
  std::vector<Path> accepted_;
  std::set<Candidate> candidates_;
};

}  // namespace rimehaul::search
