// Many questions about one rig in one snow at one hour; a single one is the first of them.
#pragma once

#include <map>

#include "search/route_search.h"

namespace rimehaul::search {

/// Between which junctions questions are asked, and all ways between them as a graph: worked out
/// once, whatever the rig, the snow and the hour.
struct JunctionWays {
  Between between;
  LegGraph legs;
};

[[nodiscard]] JunctionWays ways_between(const trails::Network& network, Between between);

/// Answers each question as find_routes does, to the last digit. What is judged for one question
/// is known to the next, and questions for the best way between two of the junctions share what
/// they are found by (see BestWays).
class RouteFinder {
 public:
  /// Holds references: all must outlive it.
  RouteFinder(const trails::Network& network, const passage::LegJudge& judge,
              units::Instant depart);
  RouteFinder(const trails::Network& network, const passage::LegJudge& judge, units::Instant depart,
              const JunctionWays& shared);

  /// Throws OurFault where the question is not for the departure.
  [[nodiscard]] RouteAnswer routes(const RouteQuestion& question);
  /// The same for who does not ask why there is none, which takes much longer to tell: empty then.
  [[nodiscard]] std::vector<Route> open_routes(const RouteQuestion& question);

 private:
  [[nodiscard]] RouteSearch search_for(const RouteQuestion& question,
                                       std::span<const trails::JunctionId> stops);
  [[nodiscard]] std::optional<BestWays::Ends> shared_ends(
      const RouteQuestion& question, std::span<const trails::JunctionId> stops) const;
  [[nodiscard]] BestWays& shared_ways(Preference prefer);

  const trails::Network* network_;
  const passage::LegJudge* judge_;
  units::Instant depart_;
  Outlook outlook_;
  const JunctionWays* shared_ = nullptr;
  std::map<Preference, BestWays> ways_;
};

}  // namespace rimehaul::search
