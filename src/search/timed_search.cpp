#include "search/timed_search.h"

#include <algorithm>
#include <queue>
#include <set>
#include <tuple>

#include "passage/share_penalty.h"

namespace rimehaul::search {

using units::Instant;
using units::Period;
using units::TimeSpans;

namespace {

enum class Price { worst_share, weighted_time, arrival, fuel };
enum class Waits { none, at_stations };

struct Aim {
  Price price = Price::arrival;
  Waits waits = Waits::none;
  double largest_share = kBarred;
};

/// A leg driven to its end.
struct Label {
  double price = 0.0;
  Instant arrival;
  Instant entry;
  ArcIndex arc = 0;
  std::size_t before = 0;  ///< the label that it goes on from; its own number at the start
};

struct Found {
  std::vector<TimedLeg> legs;
  double price = kBarred;
};

class Search {
 public:
  Search(const Departures& departures, Aim aim, Instant depart)
      : departures_{departures},
        legs_{departures.steps().graph().legs},
        aim_{aim},
        depart_{depart} {}

  [[nodiscard]] Found from(Node start) {
    for (const ArcIndex arc : departures_.arcs_out_of(start)) {
      if (departures_.entries(arc).contains(depart_)) {
        enter(arc, depart_, std::nullopt);
      }
    }
    while (!open_.empty()) {
      const std::size_t number = std::get<2>(open_.top());
      open_.pop();
      const Node node = legs_.graph.arcs()[labels_[number].arc].to;
      if (!settled_.emplace(node, labels_[number].arrival).second) {
        continue;
      }
      if (reaches_goal(node, labels_[number].arrival)) {
        return {.legs = legs_to(number), .price = labels_[number].price};
      }
      go_on(node, number);
    }
    return {};
  }

 private:
  [[nodiscard]] bool reaches_goal(Node node, Instant arrival) const {
    const auto out = departures_.arcs_out_of(node);
    return departures_.arrivals_allowed().contains(arrival) &&
           std::ranges::any_of(out,
                               [&](ArcIndex arc) { return !legs_.steps[arc].leg.has_value(); });
  }

  void go_on(Node node, std::size_t number) {
    const Instant reached = labels_[number].arrival;
    for (const ArcIndex arc : departures_.arcs_out_of(node)) {
      if (!legs_.steps[arc].leg.has_value() || is_on_way(legs_.graph.arcs()[arc].to, number)) {
        continue;
      }
      const TimeSpans& entries = departures_.entries(arc);
      if (entries.contains(reached)) {
        enter(arc, reached, number);
      }
      if (aim_.waits == Waits::at_stations && departures_.may_wait_at(node)) {
        wait_for(arc, number);
      }
    }
  }

  void wait_for(ArcIndex arc, std::size_t number) {
    const Instant reached = labels_[number].arrival;
    std::set<Instant> ends;
    const TimeSpans& entries = departures_.entries(arc);
    for (const Period& open : entries.periods()) {
      ends.insert(open.from);
    }
    for (const StepPiece& piece : departures_.steps().of(arc)) {
      ends.insert(piece.entries.from);
    }
    for (const Instant end : ends) {
      if (reached < end && entries.contains(end)) {
        enter(arc, end, number);
      }
    }
  }

  void enter(ArcIndex arc, Instant entry, std::optional<std::size_t> before) {
    const StepPiece& piece = departures_.steps().at(arc, entry);
    if (!(piece.share <= aim_.largest_share)) {
      return;
    }
    const std::size_t number = labels_.size();
    const Instant arrival{entry.seconds + piece.lasts_s};
    const Instant reached = before.has_value() ? labels_[*before].arrival : entry;
    const double so_far = before.has_value() ? labels_[*before].price : 0.0;
    const double price = price_after(so_far, piece, entry.since(reached));
    labels_.push_back({.price = price,
                       .arrival = arrival,
                       .entry = entry,
                       .arc = arc,
                       .before = before.value_or(number)});
    open_.emplace(price, arrival, number);
  }

  [[nodiscard]] double price_after(double so_far, const StepPiece& piece,
                                   units::Seconds waited) const {
    const auto lasts = static_cast<double>(piece.lasts_s);
    switch (aim_.price) {
      case Price::worst_share:
        return std::max(so_far, piece.share);
      case Price::arrival:
        return so_far + waited.value() + lasts;
      case Price::fuel:
        return so_far + piece.fuel_l;
      case Price::weighted_time:
        break;
    }
    return so_far + waited.value() +
           lasts * passage::share_penalty(piece.share, piece.allowed_share);
  }

  [[nodiscard]] bool is_on_way(Node node, std::size_t number) const {
    while (legs_.graph.arcs()[labels_[number].arc].to != node) {
      if (labels_[number].before == number) {
        return false;
      }
      number = labels_[number].before;
    }
    return true;
  }

  [[nodiscard]] std::vector<TimedLeg> legs_to(std::size_t number) const {
    std::vector<TimedLeg> legs;
    while (true) {
      const Label& label = labels_[number];
      legs.push_back({*legs_.steps[label.arc].leg, label.entry});
      if (label.before == number) {
        break;
      }
      number = label.before;
    }
    std::ranges::reverse(legs);
    return legs;
  }

  using Open = std::tuple<double, Instant, std::size_t>;
  /// The cheapest first, then the earliest, then the one found first.
  struct Later {
    bool operator()(const Open& a, const Open& b) const { return b < a; }
  };

  const Departures& departures_;
  const LegGraph& legs_;
  Aim aim_;
  Instant depart_;
  std::vector<Label> labels_;
  std::priority_queue<Open, std::vector<Open>, Later> open_;
  std::set<std::pair<Node, Instant>> settled_;
};

}  // namespace

std::vector<TimedLeg> TimedSearch::best(Node start, Instant depart, Preference prefer) const {
  const auto search = [&](const Aim& aim) { return Search{*departures_, aim, depart}.from(start); };
  if (prefer == Preference::quickest) {
    Found at_once = search({.price = Price::arrival});
    Found waiting = search({.price = Price::arrival, .waits = Waits::at_stations});
    return waiting.price < at_once.price ? waiting.legs : at_once.legs;
  }
  Aim aim{.price = prefer == Preference::safest ? Price::weighted_time : Price::fuel};
  if (prefer == Preference::safest) {
    aim.largest_share = search({.price = Price::worst_share}).price;
  }
  const Found at_once = search(aim);
  if (!at_once.legs.empty()) {
    return at_once.legs;
  }
  return search({.price = aim.price, .waits = Waits::at_stations}).legs;
}

}  // namespace rimehaul::search
