#include "card/order_words.h"

#include "card/figures.h"

namespace rimehaul::card {

std::string order_alone(const day::Override& order) {
  const auto kind = day::order_kind_named(order.kind);
  if (!kind) {
    return order.kind;
  }
  switch (*kind) {
    case day::OrderKind::close_trail:
      return order.subject + " is closed";
    case day::OrderKind::trail_hours:
      return order.subject + " is open " + order.value + " at most";
    case day::OrderKind::forbid_rig:
      return order.subject + " is not driven";
    case day::OrderKind::allowed_share:
      return "no more than " + order.value + " of any limit is allowed";
    case day::OrderKind::rule:
      break;
  }
  return "the rule " + order.value + " holds";
}

std::string order_words(const day::Override& order, const units::LocalClock& local_clock) {
  const std::string until = order.expires == day::kUntilTakenBack
                                ? "until it is taken back"
                                : "until " + local_text(order.expires, local_clock);
  return "order " + std::to_string(order.number) + ": " + order_alone(order) + ", by " +
         order.allowed.by + " (" + order.allowed.role + "), " +
         local_text(order.allowed.at, local_clock) + ", " + until + ": " + order.reason;
}

}  // namespace rimehaul::card
