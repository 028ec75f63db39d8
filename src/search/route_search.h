// One question about a network, from judged legs to timed routes.
#pragma once

#include <set>
#include <span>

#include "search/candidates.h"
#include "search/outlook.h"
#include "search/timing.h"

namespace rimehaul::search {

/// Searches, times what was found, and searches again without what its hour had closed: first among
/// ways that need no decision, then, where a named person permits them, among all. Where only the
/// best way is asked for, and its hours keep it open, no more is judged than it takes to know that
/// it is the best.
class RouteSearch {
 public:
  /// Holds references: all must outlive it. `stops`: the junctions of the question's stations. The
  /// outlook must be for the departure; what is judged on the way stays in it.
  RouteSearch(const trails::Network& network, const passage::LegJudge& judge, Outlook& outlook,
              const RouteQuestion& question, std::span<const trails::JunctionId> stops);

  /// The best route and its alternatives, each as in find_routes; none when there is no way.
  [[nodiscard]] std::vector<Route> routes();
  /// Where there is no way: what the hours have closed on the ways that were tried.
  [[nodiscard]] const std::vector<Blocked>& blocked() const { return blocked_; }

  /// Alternatives share at most this part of their length with a better route.
  static constexpr double kMostShared = 0.7;
  /// Ways timed before what blocks them is left out of the graph, and how often that is done.
  static constexpr int kMostTimed = 24;
  static constexpr int kMostRounds = 8;

 private:
  /// A way before it is timed.
  struct Way {
    std::vector<trails::LegId> legs;
    std::size_t returns = 0;  ///< how often it comes back to a junction within a stage
  };

  [[nodiscard]] Prices prices_by(double (*price)(const LegFacts&, double share),
                                 double worst_share) const;
  [[nodiscard]] double least_worst_share() const;
  /// By the question's preference, among all with a share up to the worst that is needed.
  [[nodiscard]] Prices prices() const;
  [[nodiscard]] Prices prices(double worst_share) const;
  [[nodiscard]] Way way_of(const Path& path) const;
  [[nodiscard]] bool truly_differs(const Way& way) const;
  [[nodiscard]] bool has_enough() const { return kept_.size() > question_.most_alternatives; }
  void search_with(Permission permission);
  [[nodiscard]] bool settled_by_best_alone();
  void search_all();
  void keep_from(Prices prices);

  const trails::Network* network_;
  Outlook* outlook_;
  RouteQuestion question_;
  Permission permission_ = Permission::nobody;  ///< of the ways that are looked for now
  LegGraph legs_;
  Timekeeper timekeeper_;
  std::set<trails::LegId> left_out_;
  std::vector<Blocked> blocked_;
  std::vector<Route> kept_;
  std::vector<Way> kept_ways_;
};

}  // namespace rimehaul::search
