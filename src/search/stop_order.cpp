#include "search/stop_order.h"

#include <algorithm>
#include <bit>
#include <list>
#include <map>
#include <tuple>

#include "base/require.h"

namespace rimehaul::search {

using units::Instant;
using units::Litres;

namespace {

/// How good it is to have come so far.
struct Worth {
  bool needs_permission = false;
  double worst_share = 0.0;
  Instant arrives;
  Litres fuel{0};

  [[nodiscard]] bool is_as_good_as(const Worth& other) const {
    return (other.needs_permission || !needs_permission) && worst_share <= other.worst_share &&
           arrives <= other.arrives && fuel <= other.fuel;
  }

  [[nodiscard]] bool is_better_than(const Worth& other, Preference prefer) const {
    if (needs_permission != other.needs_permission) {
      return other.needs_permission;
    }
    return in_order_of(prefer) < other.in_order_of(prefer);
  }

 private:
  [[nodiscard]] std::tuple<double, double, double> in_order_of(Preference prefer) const {
    const auto hour = static_cast<double>(arrives.seconds);
    switch (prefer) {
      case Preference::quickest:
        return {hour, worst_share, fuel.value()};
      case Preference::least_fuel:
        return {fuel.value(), hour, worst_share};
      case Preference::safest:
        break;
    }
    return {worst_share, hour, fuel.value()};
  }
};

/// One way to have called at a set of stops and to stand at the last of them.
struct Label {
  Worth worth;
  std::optional<HopDriven> hop;       ///< nothing at the start
  const Label* before = nullptr;      ///< nothing at the start
  std::optional<std::size_t> stop{};  ///< that it stands at; nothing: the start, or the end
};

StopSet bit_of(std::size_t stop) {
  return StopSet{1} << stop;
}

class OrderSearch {
 public:
  OrderSearch(Hops& hops, const OrderQuestion& question) : hops_{hops}, question_{question} {}

  [[nodiscard]] std::variant<StopOrder, NoOrder> answer() {
    begin();
    for (std::size_t called = 0; called < question_.after.size(); ++called) {
      go_on_from_sets_of(called);
    }
    const StopSet all = bit_of(question_.after.size()) - 1;
    const Label* best = question_.comes_to_an_end ? best_at_end(all) : best_of(all);
    if (best != nullptr) {
      return order_to(*best);
    }
    return NoOrder{order_to(*farthest())};
  }

 private:
  using Standing = std::pair<StopSet, std::optional<std::size_t>>;

  void begin() {
    const Worth nothing_yet{.arrives = question_.depart};
    labels_[{0, std::nullopt}].push_back({.worth = nothing_yet, .hop = {}});
  }

  /// A hop that goes on from a label.
  struct Onward {
    const Label* label;
    Hop hop;
  };

  /// From wherever the rig may stand with so many called at, to one stop more.
  void go_on_from_sets_of(std::size_t count) {
    std::vector<Onward> onward;
    for (const auto& [standing, labels] : labels_) {
      if (static_cast<std::size_t>(std::popcount(standing.first)) != count) {
        continue;
      }
      for (std::size_t stop = 0; stop < question_.after.size(); ++stop) {
        if (may_be_next(stop, standing.first)) {
          for (const Label& label : labels) {
            onward.push_back({&label, {standing.first, standing.second, stop}});
          }
        }
      }
    }
    drive(onward, [&](const Hop& hop, const Label& next) {
      keep({hop.called | bit_of(*hop.to), *hop.to}, next);
    });
  }

  [[nodiscard]] bool may_be_next(std::size_t stop, StopSet called) const {
    return (called & bit_of(stop)) == 0 && (question_.after[stop] & ~called) == 0;
  }

  /// Takes each hop that can be driven, and the label that it comes to.
  template <class Take>
  void drive(const std::vector<Onward>& onward, const Take& take) {
    std::vector<HopAsked> asked;
    asked.reserve(onward.size());
    for (const Onward& way : onward) {
      asked.push_back({way.hop, ready_to_leave(*way.label)});
    }
    hops_.expect(asked);
    for (const Onward& way : onward) {
      if (const auto next = driven_from(*way.label, way.hop); next.has_value()) {
        take(way.hop, *next);
      }
    }
  }

  [[nodiscard]] Instant ready_to_leave(const Label& label) const {
    return label.hop ? units::after(label.worth.arrives, question_.halt) : question_.depart;
  }

  using Standings = std::vector<std::pair<std::optional<std::size_t>, const std::list<Label>*>>;
  [[nodiscard]] Standings standing_with(StopSet called) const {
    Standings all;
    for (auto at = labels_.lower_bound({called, std::nullopt});
         at != labels_.end() && at->first.first == called; ++at) {
      all.emplace_back(at->first.second, &at->second);
    }
    return all;
  }

  [[nodiscard]] std::optional<Label> driven_from(const Label& label, const Hop& hop) {
    const auto driven = hops_.driven(hop, ready_to_leave(label));
    if (!driven.has_value()) {
      return std::nullopt;
    }
    const Worth worth{.needs_permission = label.worth.needs_permission || driven->needs_permission,
                      .worst_share = std::max(label.worth.worst_share, driven->worst_share),
                      .arrives = driven->arrives,
                      .fuel = label.worth.fuel + driven->fuel};
    if (!(worth.fuel <= question_.fuel)) {
      return std::nullopt;
    }
    return Label{.worth = worth, .hop = driven, .before = &label, .stop = hop.to};
  }

  void keep(const Standing& standing, const Label& label) {
    std::list<Label>& labels = labels_[standing];
    if (std::ranges::any_of(
            labels, [&](const Label& kept) { return kept.worth.is_as_good_as(label.worth); })) {
      return;
    }
    // Nothing goes on from a label before all of its standing are known.
    labels.remove_if([&](const Label& kept) { return label.worth.is_as_good_as(kept.worth); });
    labels.push_back(label);
  }

  [[nodiscard]] const Label* best_of(StopSet called) const {
    const Label* best = nullptr;
    for (const auto& [last, labels] : standing_with(called)) {
      for (const Label& label : *labels) {
        if (best == nullptr || label.worth.is_better_than(best->worth, question_.prefer)) {
          best = &label;
        }
      }
    }
    return best;
  }

  [[nodiscard]] const Label* best_at_end(StopSet all) {
    std::vector<Onward> onward;
    for (const auto& [last, labels] : standing_with(all)) {
      for (const Label& label : *labels) {
        onward.push_back({&label, {all, last, std::nullopt}});
      }
    }
    drive(onward, [&](const Hop& /*home*/, const Label& there) { at_end_.push_back(there); });
    const auto best = std::ranges::min_element(at_end_, [&](const Label& a, const Label& b) {
      return a.worth.is_better_than(b.worth, question_.prefer);
    });
    return best == at_end_.end() ? nullptr : &*best;
  }

  [[nodiscard]] const Label* farthest() const {
    StopSet most = 0;
    for (const auto& [standing, labels] : labels_) {
      if (std::popcount(standing.first) > std::popcount(most)) {
        most = standing.first;
      }
    }
    const Label* best = nullptr;
    for (const auto& [standing, labels] : labels_) {
      const Label* here =
          std::popcount(standing.first) == std::popcount(most) ? best_of(standing.first) : nullptr;
      if (here != nullptr &&
          (best == nullptr || here->worth.is_better_than(best->worth, question_.prefer))) {
        best = here;
      }
    }
    return best;
  }

  [[nodiscard]] static StopOrder order_to(const Label& last) {
    StopOrder order;
    for (const Label* label = &last; label->before != nullptr; label = label->before) {
      order.hops.push_back(*label->hop);
      if (label->stop.has_value()) {
        order.stops.push_back(*label->stop);
      }
    }
    std::ranges::reverse(order.stops);
    std::ranges::reverse(order.hops);
    return order;
  }

  Hops& hops_;
  const OrderQuestion& question_;
  std::map<Standing, std::list<Label>> labels_;
  std::list<Label> at_end_;
};

}  // namespace

std::variant<StopOrder, NoOrder> best_order(Hops& hops, const OrderQuestion& question) {
  base::require(question.after.size() <= kMostStops, "a round has more stops than can be ordered");
  return OrderSearch{hops, question}.answer();
}

}  // namespace rimehaul::search
