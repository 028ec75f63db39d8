// Ways worth a look, the cheapest first: some that differ little, and some that differ much.
#pragma once

#include <set>

#include "search/cheapest_paths.h"

namespace rimehaul::search {

/// The first is a cheapest path. Then follow, merged by price, the next few loopless paths (Yen
/// 1971), which are the best but often alike, and for each arc the cheapest path that leads over
/// it, if that is loopless: single-via paths (Abraham, Delling, Goldberg and Werneck 2013, ACM
/// Journal of Experimental Algorithmics 18), which soon differ much. Bounded in number.
class Candidates {
 public:
  /// Holds a reference: the graph must outlive it.
  Candidates(const Graph& graph, Prices prices, Journey journey);

  /// The next way, none twice; nothing when there are no more.
  [[nodiscard]] std::optional<Path> next();

  static constexpr std::size_t kMostByYen = 40;
  static constexpr std::size_t kMostByArc = 60;

 private:
  void find_by_arc();
  [[nodiscard]] std::optional<Path> cheaper_of_both();

  const Graph* graph_;
  Prices prices_;
  Journey journey_;
  CheapestPaths by_yen_;
  std::size_t yen_taken_ = 0;
  std::optional<Path> yen_head_;
  std::vector<Path> by_arc_;  ///< cheapest last
  bool by_arc_known_ = false;
  std::set<std::vector<ArcIndex>> given_;
};

}  // namespace rimehaul::search
