// Goes through the orders of a round's stops, set by set of those called at.
#pragma once

#include <list>
#include <map>

#include "search/order_bounds.h"

namespace rimehaul::search {

/// What an order must come to better than, and what is known of the rest of the way.
struct ToBeat {
  std::optional<OrderWorth> found;  ///< nothing: any that holds will do
  OrderBounds& bounds;
  units::Instant last_turn;   ///< from then on no hop depends on the hour
  std::size_t most_hops = 0;  ///< driven before it is given up
};

/// One search through all orders.
class OrderSearch {
 public:
  /// Holds references: both must outlive it. Of labels at a stop, with the same stops called at,
  /// those are left off that another is as good as.
  OrderSearch(Hops& hops, const OrderQuestion& question);
  /// Leaves off also what cannot beat something, and holds that too. Before the last turn, only
  /// labels of the same hour are held against each other.
  OrderSearch(Hops& hops, const OrderQuestion& question, const ToBeat& to_beat);

  /// The best order of those that were followed to their end; nothing where there is none.
  [[nodiscard]] std::optional<StopOrder> best();
  /// After that: what orders that were given up for their number may come to.
  [[nodiscard]] const std::optional<OrderWorth>& given_up() const { return given_up_; }
  /// After that: calls at as many stops as any.
  [[nodiscard]] StopOrder farthest() const;

 private:
  /// One way to have called at a set of stops and to stand at the last of them.
  struct Label {
    OrderWorth worth;
    std::optional<HopDriven> hop;       ///< nothing at the start
    const Label* before = nullptr;      ///< nothing at the start
    std::optional<std::size_t> stop{};  ///< that it stands at; nothing: the start, or the end
  };
  /// Where labels are held against each other.
  struct Standing {
    StopSet called = 0;
    std::optional<std::size_t> at;
    units::Instant hour{};  ///< of arriving; 0 where labels of any hour are rivals

    auto operator<=>(const Standing&) const = default;
  };
  /// A hop that goes on from a label.
  struct Onward {
    const Label* label = nullptr;
    Hop hop;
  };

  [[nodiscard]] std::vector<Onward> onward_from_sets_of(std::size_t count) const;
  [[nodiscard]] std::vector<Onward> onward_to_the_end() const;
  [[nodiscard]] bool gives_up(const std::vector<Onward>& onward);
  void drive(const std::vector<Onward>& onward);
  [[nodiscard]] units::Instant ready_to_leave(const Label& label) const;
  [[nodiscard]] std::optional<Label> driven_from(const Label& label, const Hop& hop);
  [[nodiscard]] std::optional<OrderWorth> at_best(const Label& label, StopSet called);
  [[nodiscard]] bool beats(const OrderWorth& worth) const;
  void keep(StopSet called, const Label& label);
  [[nodiscard]] const Label* best_of_all() const;
  void take_if_better(const Label*& best, const Label& label) const;
  [[nodiscard]] static StopOrder order_to(const Label& last);

  Hops* hops_;
  const OrderQuestion* question_;
  const ToBeat* to_beat_ = nullptr;
  std::map<Standing, std::list<Label>> labels_;
  std::list<Label> at_end_;
  std::size_t driven_ = 0;
  std::optional<OrderWorth> given_up_;
};

}  // namespace rimehaul::search
