#include "day/orders_given.h"

#include <algorithm>
#include <array>
#include <charconv>

#include "base/require.h"

namespace rimehaul::day {

namespace {

constexpr std::array<OrderKind, 5> kKinds{OrderKind::close_trail, OrderKind::trail_hours,
                                          OrderKind::forbid_rig, OrderKind::allowed_share,
                                          OrderKind::rule};
constexpr std::string_view kBetween = " to ";

bool was_taken_back(const Override& order, const std::vector<Kept<OverrideEnd>>& ends) {
  return std::ranges::any_of(ends, [&](const Kept<OverrideEnd>& end) {
    return end.thing.override_number == order.number;
  });
}

}  // namespace

const char* key_of(OrderKind kind) {
  switch (kind) {
    case OrderKind::close_trail:
      return "close_trail";
    case OrderKind::trail_hours:
      return "trail_hours";
    case OrderKind::forbid_rig:
      return "forbid_rig";
    case OrderKind::allowed_share:
      return "allowed_share";
    case OrderKind::rule:
      break;
  }
  return "rule";
}

std::optional<OrderKind> order_kind_named(std::string_view key) {
  const auto* kind =
      std::ranges::find_if(kKinds, [&](OrderKind each) { return key == key_of(each); });
  return kind == kKinds.end() ? std::nullopt : std::optional{*kind};
}

std::optional<trails::OpenHours> parse_hours(std::string_view text) {
  const std::size_t between = text.find(kBetween);
  if (between == std::string_view::npos) {
    return std::nullopt;
  }
  const auto from = units::parse_time_of_day(text.substr(0, between));
  const auto to = units::parse_time_of_day(text.substr(between + kBetween.size()));
  if (!from || !to || !(*from < *to)) {
    return std::nullopt;
  }
  return trails::OpenHours{*from, *to};
}

std::string text_of(const trails::OpenHours& hours) {
  return units::text_of(hours.from) + std::string{kBetween} + units::text_of(hours.to);
}

std::optional<double> parse_share(std::string_view text) {
  double share = 0.0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), share);
  const bool whole = error == std::errc{} && end == text.data() + text.size();
  return whole && 0.0 < share && share <= 1.0 ? std::optional{share} : std::nullopt;
}

std::vector<Override> orders_in_force(const Records& records, units::Instant depart) {
  const std::vector<Kept<OverrideEnd>> ends = records.override_ends();
  std::vector<Override> orders;
  for (const Kept<Override>& kept : records.overrides()) {
    if (depart <= kept.thing.expires && !was_taken_back(kept.thing, ends)) {
      orders.push_back(kept.thing);
    }
  }
  return orders;
}

void put_in_force(const Override& order, passage::Rules& rules) {
  const auto kind = order_kind_named(order.kind);
  base::require(kind.has_value() && *kind != OrderKind::rule,
                "an order is of a kind that is known, and a rule is read first");
  switch (*kind) {
    case OrderKind::close_trail:
      rules.orders.trails.push_back({order.subject, std::nullopt, giver_words(order)});
      break;
    case OrderKind::trail_hours: {
      const auto hours = parse_hours(order.value);
      base::require(hours.has_value(), "an order of hours gives hours");
      rules.orders.trails.push_back({order.subject, hours, giver_words(order)});
      break;
    }
    case OrderKind::forbid_rig:
      rules.orders.rigs.push_back({order.subject, giver_words(order)});
      break;
    case OrderKind::allowed_share: {
      const auto share = parse_share(order.value);
      base::require(share.has_value(), "an order of a share gives one");
      passage::lower_allowed_share(rules, *share);
      break;
    }
    case OrderKind::rule:
      break;
  }
}

std::string giver_words(const Override& order) {
  return order.allowed.by + ": " + order.reason;
}

}  // namespace rimehaul::day
