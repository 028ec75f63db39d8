#include "search/links.h"

#include <utility>

#include "base/require.h"

namespace rimehaul::search {

namespace {

/// None, one, or several.
std::uint8_t one_more(std::uint8_t ways) {
  return static_cast<std::uint8_t>(ways == 0 ? 1 : 2);
}

class Folding {
 public:
  Folding(const Graph& graph, const std::vector<bool>& usable)
      : arcs_{graph.arcs()},
        usable_{usable},
        tail_of_(graph.node_count(), kNone),
        way_on_(graph.node_count(), kNoArc) {
    links_.kept_of.assign(graph.node_count(), kNone);
    links_.arcs.reserve(arcs_.size());
  }

  [[nodiscard]] Links folded(std::span<const Node> ends) && {
    sort_nodes(ends);
    for (const std::uint32_t head : heads_) {
      found_tails_.push_back(run_from(way_on_[head]));
    }
    order_tails();
    for (ArcIndex arc = 0; arc < arcs_.size(); ++arc) {
      if (usable_[arc] && links_.kept_of[index_of(arcs_[arc].from)] != kNone) {
        add_link(arc);
      }
    }
    return std::move(links_);
  }

 private:
  /// Arcs that follow one another, and the node where they stop.
  struct FoundRun {
    Run run;
    std::size_t stop = 0;
  };

  /// Into such as are kept, heads of tails, and those in the midst of a run or on no way.
  void sort_nodes(std::span<const Node> ends) {
    std::vector<std::uint8_t> ways_in(way_on_.size(), 0);
    std::vector<std::uint8_t> ways_out(way_on_.size(), 0);
    for (ArcIndex arc = 0; arc < arcs_.size(); ++arc) {
      if (usable_[arc]) {
        const std::size_t from = index_of(arcs_[arc].from);
        const std::size_t to = index_of(arcs_[arc].to);
        ways_in[to] = one_more(ways_in[to]);
        ways_out[from] = one_more(ways_out[from]);
        way_on_[from] = arc;
      }
    }
    for (const Node end : ends) {
      ways_out[index_of(end)] = 2;
    }
    for (std::uint32_t node = 0; node < way_on_.size(); ++node) {
      if (ways_out[node] == 2) {
        links_.kept_of[node] = links_.kept_count++;
      } else if (ways_out[node] == 1 && ways_in[node] == 2) {
        tail_of_[node] = static_cast<std::uint32_t>(heads_.size());
        heads_.push_back(node);
      }
    }
  }

  /// Up to where there is a choice, or others join, or nothing leads on. Every node between has one
  /// way in, so none comes twice.
  FoundRun run_from(ArcIndex arc) {
    const auto first = static_cast<std::uint32_t>(links_.arcs.size());
    while (true) {
      links_.arcs.push_back(arc);
      const std::size_t at = index_of(arcs_[arc].to);
      if (links_.kept_of[at] != kNone || tail_of_[at] != kNone || way_on_[at] == kNoArc) {
        const auto end = static_cast<std::uint32_t>(links_.arcs.size());
        return {.run = {.first = first, .count = end - first}, .stop = at};
      }
      arc = way_on_[at];
    }
  }

  /// Each after the one that it leads into, unless they go round.
  void order_tails() {
    place_of_tail_.assign(heads_.size(), kNone);
    std::vector<bool> seen(heads_.size(), false);
    std::vector<std::uint32_t> open;
    for (std::uint32_t tail = 0; tail < heads_.size(); ++tail) {
      for (std::uint32_t on = tail; on != kNone && !seen[on];) {
        seen[on] = true;
        open.push_back(on);
        on = tail_of_[found_tails_[on].stop];
      }
      for (; !open.empty(); open.pop_back()) {
        const Led led = led_on(found_tails_[open.back()]);
        place_of_tail_[open.back()] = static_cast<std::uint32_t>(links_.tails.size());
        links_.tails.push_back(led);
      }
    }
  }

  [[nodiscard]] Led led_on(const FoundRun& found) const {
    Led led{.run = found.run, .to = links_.kept_of[found.stop]};
    const std::uint32_t into = tail_of_[found.stop];
    if (into != kNone && place_of_tail_[into] != kNone) {
      led.tail = place_of_tail_[into];
      led.to = links_.tails[led.tail].to;
    }
    return led;
  }

  void add_link(ArcIndex arc) {
    const Led led = led_on(run_from(arc));
    if (led.to == kNone) {
      links_.arcs.resize(led.run.first);
      return;
    }
    links_.from.push_back(links_.kept_of[index_of(arcs_[arc].from)]);
    links_.links.push_back(led);
  }

  const std::vector<Arc>& arcs_;
  const std::vector<bool>& usable_;
  std::vector<std::uint32_t> tail_of_;  ///< by node, that of which it is the head
  std::vector<ArcIndex> way_on_;        ///< by node, the only way out, where there is but one
  std::vector<std::uint32_t> heads_;    ///< nodes with one way out and several in
  std::vector<FoundRun> found_tails_;
  std::vector<std::uint32_t> place_of_tail_;  ///< once it is in order
  Links links_;
};

}  // namespace

Links folded_into_links(const Graph& graph, const std::vector<bool>& usable,
                        std::span<const Node> ends) {
  base::require(usable.size() == graph.arcs().size(), "not every arc is usable or not");
  return Folding{graph, usable}.folded(ends);
}

}  // namespace rimehaul::search
