// Legs and turns judged as a search comes to need them; until then each counts as the best it may
// be.
#pragma once

#include <optional>
#include <vector>

#include "search/leg_graph.h"
#include "search/usable.h"

namespace rimehaul::search {

/// What is known of every leg and turn of a network for one moment. What is not judged yet stands
/// as open, with share 0 and the least time and fuel that the judge answers for: a judgement is
/// never better. So no way is worse by these facts than it is in truth, and a best way of which all
/// is judged is the best of all (Dellin and Srinivasa 2016, ICAPS 26:459-467).
class Outlook {
 public:
  /// Holds references: network and judge must outlive it.
  Outlook(const trails::Network& network, const passage::LegJudge& judge, units::Instant entry);

  /// Every turn between legs that meet, sorted.
  [[nodiscard]] const std::vector<Turn>& turns() const { return turns_; }
  [[nodiscard]] const LegFacts& leg(trails::LegId leg) const;
  /// Of the turn that a step takes; setting out is open and asks for nothing.
  [[nodiscard]] TurnFacts turn_into(const Step& step) const;

  /// Judges the turns of a path and, from both of its ends, some of its legs, or after many calls
  /// all that there is; false when all of the path was judged before.
  bool judge_some_of(const LegGraph& legs, const Path& path);
  void judge_all();
  /// How many legs and turns have been judged so far: the same number, the same facts.
  [[nodiscard]] std::size_t judged() const { return legs_judged_ + turns_judged_; }

 private:
  bool judge(trails::LegId leg);
  bool judge(TurnIndex turn);

  const trails::Network* network_;
  const passage::LegJudge* judge_;
  units::Instant entry_;
  std::vector<Turn> turns_;
  std::vector<LegFacts> leg_facts_;
  std::vector<TurnFacts> turn_facts_;
  std::vector<bool> leg_judged_;
  std::vector<bool> turn_judged_;
  std::size_t legs_judged_ = 0;
  std::size_t turns_judged_ = 0;
  int guesses_ = 0;  ///< paths of which something was not judged yet
};

/// The best way by the outlook, which `best_now` finds and is asked for anew whenever more is
/// judged; all of the way is judged in the end. Nothing when there is none, judged or not.
template <class BestNow>
[[nodiscard]] std::optional<Path> best_judged(const LegGraph& legs, Outlook& outlook,
                                              const BestNow& best_now) {
  std::optional<Path> path = best_now();
  while (path.has_value() && outlook.judge_some_of(legs, *path)) {
    path = best_now();
  }
  return path;
}

}  // namespace rimehaul::search
