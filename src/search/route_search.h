// One question about a network, from judged legs to timed routes.
#pragma once

#include <set>
#include <span>

#include "search/best_ways.h"
#include "search/candidates.h"
#include "search/differing_ways.h"
#include "search/timing.h"

namespace rimehaul::search {

/// Best ways that several questions share, and which of them is asked for.
struct SharedWays {
  BestWays& ways;
  BestWays::Ends ends;
};

/// A question, the junctions of its stations, and the ways that it shares with others, if any: from
/// the first junction to the second, where there are but two, by what the question prefers.
struct Asked {
  const RouteQuestion& question;
  std::span<const trails::JunctionId> stops;
  std::optional<SharedWays> shared{};
};

/// Searches, times what was found, and searches again without what its hour had closed: first among
/// ways that need no decision, then, where a named person permits them, among all. Where only the
/// best way is asked for, and its hours keep it open, no more is judged than it takes to know that
/// it is the best.
class RouteSearch {
 public:
  /// Holds references: all must outlive it. The outlook must be for the departure, and the one that
  /// shared ways go by; what is judged on the way stays in it.
  RouteSearch(const trails::Network& network, const passage::LegJudge& judge, Outlook& outlook,
              const Asked& asked);

  /// The best route and its alternatives, each as in find_routes; none when there is no way.
  [[nodiscard]] std::vector<Route> routes();
  /// Where there is no way: what the hours have closed on the ways that were tried.
  [[nodiscard]] const std::vector<Blocked>& blocked() const { return blocked_; }

  /// Ways timed before what blocks them is left out of the graph, and how often that is done.
  static constexpr int kMostTimed = 24;
  static constexpr int kMostRounds = 8;

 private:
  [[nodiscard]] const LegGraph& legs();
  [[nodiscard]] std::optional<std::vector<trails::LegId>> best_way();
  [[nodiscard]] PricedSteps priced();
  [[nodiscard]] double least_worst_share(const Prices& shares);
  [[nodiscard]] DrivenWay way_of(const Path& path);
  [[nodiscard]] bool has_enough() const { return kept_.size() > question_.most_alternatives; }
  void search_with(Permission permission);
  [[nodiscard]] bool settled_by_best_alone();
  void search_all();
  void keep_from(Prices prices);

  const trails::Network* network_;
  Outlook* outlook_;
  RouteQuestion question_;
  std::vector<trails::JunctionId> stops_;
  std::optional<SharedWays> shared_;
  Barring barring_;               ///< of the ways that are looked for now
  std::optional<LegGraph> legs_;  ///< of this journey alone, once it is needed
  Timekeeper timekeeper_;
  std::vector<Blocked> blocked_;
  std::vector<Route> kept_;
  std::vector<DrivenWay> kept_ways_;
};

}  // namespace rimehaul::search
