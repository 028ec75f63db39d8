#include "search/order_search.h"

#include <algorithm>
#include <bit>

namespace rimehaul::search {

using units::Instant;

OrderSearch::OrderSearch(Hops& hops, const OrderQuestion& question)
    : hops_{&hops}, question_{&question} {
  labels_[{}].push_back({.worth = {.arrives = question.depart}, .hop = {}});
}

OrderSearch::OrderSearch(Hops& hops, const OrderQuestion& question, const ToBeat& to_beat)
    : OrderSearch{hops, question} {
  to_beat_ = &to_beat;
}

std::optional<StopOrder> OrderSearch::best() {
  const std::size_t stops = question_->after.size();
  for (std::size_t called = 0; called < stops && !given_up_.has_value(); ++called) {
    const std::vector<Onward> onward = onward_from_sets_of(called);
    if (!gives_up(onward)) {
      drive(onward);
    }
  }
  if (question_->comes_to_an_end) {
    drive(onward_to_the_end());
  }
  const Label* best = best_of_all();
  return best != nullptr ? std::optional{order_to(*best)} : std::nullopt;
}

/// Of those that have come to the end; nothing where none has.
const OrderSearch::Label* OrderSearch::best_of_all() const {
  const Label* best = nullptr;
  for (const Label& label : at_end_) {
    take_if_better(best, label);
  }
  const StopSet all = bit_of(question_->after.size()) - 1;
  for (const auto& [standing, labels] : labels_) {
    if (standing.called != all || question_->comes_to_an_end) {
      continue;
    }
    for (const Label& label : labels) {
      take_if_better(best, label);
    }
  }
  return best;
}

/// From wherever the rig may stand with so many called at, to one stop more.
std::vector<OrderSearch::Onward> OrderSearch::onward_from_sets_of(std::size_t count) const {
  std::vector<Onward> onward;
  for (const auto& [standing, labels] : labels_) {
    if (static_cast<std::size_t>(std::popcount(standing.called)) != count) {
      continue;
    }
    for (std::size_t stop = 0; stop < question_->after.size(); ++stop) {
      if (may_be_next(*question_, stop, standing.called)) {
        for (const Label& label : labels) {
          onward.push_back({&label, {standing.called, standing.at, stop}});
        }
      }
    }
  }
  return onward;
}

std::vector<OrderSearch::Onward> OrderSearch::onward_to_the_end() const {
  const StopSet all = bit_of(question_->after.size()) - 1;
  std::vector<Onward> onward;
  for (const auto& [standing, labels] : labels_) {
    for (const Label& label : labels) {
      if (standing.called == all) {
        onward.push_back({&label, {all, standing.at, std::nullopt}});
      }
    }
  }
  return onward;
}

/// Whether this would be too much; remembers then what is left behind.
bool OrderSearch::gives_up(const std::vector<Onward>& onward) {
  if (to_beat_ == nullptr || driven_ + onward.size() <= to_beat_->most_hops) {
    return false;
  }
  for (const Onward& way : onward) {
    const auto least = at_best(*way.label, way.hop.called);
    if (!least.has_value()) {
      continue;
    }
    if (!given_up_.has_value()) {
      given_up_ = least;
    }
    given_up_->needs_permission = given_up_->needs_permission && least->needs_permission;
    given_up_->worst_share = std::min(given_up_->worst_share, least->worst_share);
    given_up_->arrives = std::min(given_up_->arrives, least->arrives);
    given_up_->fuel = std::min(given_up_->fuel, least->fuel);
  }
  return given_up_.has_value();
}

/// Keeps the label that each hop comes to, where it can be driven.
void OrderSearch::drive(const std::vector<Onward>& onward) {
  std::vector<HopAsked> asked;
  asked.reserve(onward.size());
  for (const Onward& way : onward) {
    asked.push_back({way.hop, ready_to_leave(*way.label)});
  }
  hops_->expect(asked);
  driven_ += asked.size();
  for (const Onward& way : onward) {
    const auto next = driven_from(*way.label, way.hop);
    if (!next.has_value()) {
      continue;
    }
    if (way.hop.to.has_value()) {
      keep(way.hop.called | bit_of(*way.hop.to), *next);
    } else if (beats(next->worth)) {
      at_end_.push_back(*next);
    }
  }
}

Instant OrderSearch::ready_to_leave(const Label& label) const {
  return label.hop ? units::after(label.worth.arrives, question_->halt) : question_->depart;
}

std::optional<OrderSearch::Label> OrderSearch::driven_from(const Label& label, const Hop& hop) {
  const auto driven = hops_->driven(hop, ready_to_leave(label));
  if (!driven.has_value()) {
    return std::nullopt;
  }
  const OrderWorth worth{
      .needs_permission = label.worth.needs_permission || driven->needs_permission,
      .worst_share = std::max(label.worth.worst_share, driven->worst_share),
      .arrives = driven->arrives,
      .fuel = label.worth.fuel + driven->fuel};
  if (!(worth.fuel <= question_->fuel)) {
    return std::nullopt;
  }
  return Label{.worth = worth, .hop = driven, .before = &label, .stop = hop.to};
}

/// What no order comes to less than that goes on from a label; nothing where none does.
std::optional<OrderWorth> OrderSearch::at_best(const Label& label, StopSet called) {
  const auto& rest = to_beat_->bounds.still_to_go(called, label.stop);
  if (!rest.has_value()) {
    return std::nullopt;
  }
  return OrderWorth{.needs_permission = label.worth.needs_permission || rest->needs_permission,
                    .worst_share = std::max(label.worth.worst_share, rest->worst_share),
                    .arrives = {label.worth.arrives.seconds + rest->lasts_s},
                    .fuel = label.worth.fuel + rest->fuel};
}

bool OrderSearch::beats(const OrderWorth& worth) const {
  return to_beat_ == nullptr || !to_beat_->found.has_value() ||
         worth.is_better_than(*to_beat_->found, question_->prefer);
}

void OrderSearch::keep(StopSet called, const Label& label) {
  if (to_beat_ != nullptr) {
    const auto least = at_best(label, called);
    if (!least.has_value() || !(least->fuel <= question_->fuel) || !beats(*least)) {
      return;
    }
  }
  const bool by_the_hour = to_beat_ != nullptr && label.worth.arrives < to_beat_->last_turn;
  const Instant hour = by_the_hour ? label.worth.arrives : Instant{};
  std::list<Label>& labels = labels_[{called, label.stop, hour}];
  if (std::ranges::any_of(
          labels, [&](const Label& kept) { return kept.worth.is_as_good_as(label.worth); })) {
    return;
  }
  // Nothing goes on from a label before all of its standing are known.
  labels.remove_if([&](const Label& kept) { return label.worth.is_as_good_as(kept.worth); });
  labels.push_back(label);
}

/// The first of equals stays.
void OrderSearch::take_if_better(const Label*& best, const Label& label) const {
  if (best == nullptr || label.worth.is_better_than(best->worth, question_->prefer)) {
    best = &label;
  }
}

StopOrder OrderSearch::farthest() const {
  int most = 0;
  for (const auto& [standing, labels] : labels_) {
    most = std::max(most, labels.empty() ? 0 : std::popcount(standing.called));
  }
  const Label* best = nullptr;
  for (const auto& [standing, labels] : labels_) {
    if (std::popcount(standing.called) == most) {
      for (const Label& label : labels) {
        take_if_better(best, label);
      }
    }
  }
  return best != nullptr ? order_to(*best) : StopOrder{};
}

StopOrder OrderSearch::order_to(const Label& last) {
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

}  // namespace rimehaul::search
