// The best ways between all starts and goals of a graph, by what is judged so far.
#pragma once

#include <array>
#include <map>

#include "search/chains.h"
#include "search/step_prices.h"

namespace rimehaul::search {

/// Answers one question as it answers many: what the outlook knows is priced and folded into links
/// once (see Chains), and the ways from all starts to a goal are found together when one of them is
/// asked for first. What was found is good until more is judged.
class BestWays {
 public:
  /// Holds references: both must outlive it.
  BestWays(const LegGraph& legs, const Outlook& outlook, Preference prefer);

  /// Of a start and a goal of the graph, which of them.
  struct Ends {
    std::size_t start = 0;
    std::size_t goal = 0;
  };
  /// The best way, of arcs of the graph; nothing where there is none. Safest: the cheapest among
  /// those with the least possible worst share. Of several as cheap, each leg leads on over the arc
  /// with the lowest index.
  [[nodiscard]] std::optional<Path> way(Ends ends, Permission permission);

  [[nodiscard]] const LegGraph& legs() const { return *legs_; }

 private:
  using FromAllStarts = std::vector<std::optional<Path>>;
  /// What is known for one permission.
  struct Known {
    std::size_t judged = 0;  ///< by the outlook
    Prices steps;
    Chains chains;
    PricedSteps links;
    std::map<std::size_t, FromAllStarts> ways;  ///< by goal
  };

  [[nodiscard]] Known known_now(Permission permission) const;
  [[nodiscard]] FromAllStarts ways_to(Node goal, const Known& known) const;
  [[nodiscard]] std::vector<double> worst_shares(Node goal, const Known& known) const;

  const LegGraph* legs_;
  const Outlook* outlook_;
  Preference prefer_;
  std::array<std::optional<Known>, 2> known_;  ///< by permission
};

}  // namespace rimehaul::search
