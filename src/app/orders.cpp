#include "app/orders.h"

#include <algorithm>
#include <iterator>
#include <ostream>
#include <utility>

#include "app/names.h"
#include "app/recall.h"
#include "app/record_place.h"
#include "app/status.h"
#include "base/joined.h"
#include "card/order_words.h"
#include "day/orders_given.h"
#include "ports/gdal/records_file.h"
#include "ports/toml/rules_file.h"

namespace rimehaul::app {

namespace {

using day::OrderKind;
using day::Override;

[[noreturn]] void refuse(const Override& order, const std::string& problem) {
  throw base::BadInput{{.file = ports::gdal::RecordsPlace{}.name,
                        .place = "override " + std::to_string(order.number),
                        .problem = problem,
                        .remedy = "take it back with `rimehaul override --end " +
                                  std::to_string(order.number) + "`, and give it anew"}};
}

/// A name in an order that the site does not have any more would close nothing.
void expect_name(const Override& order, const std::string& kind,
                 const std::vector<std::string>& names) {
  if (std::ranges::find(names, order.subject) == names.end()) {
    refuse(order, "this site has no " + kind + " '" + order.subject + "'");
  }
}

void expect_sense(const Override& order, const LoadedSite& site) {
  const auto kind = day::order_kind_named(order.kind);
  if (!kind) {
    refuse(order, "'" + order.kind + "' is no kind of order that this program knows");
  }
  switch (*kind) {
    case OrderKind::close_trail:
      expect_name(order, "trail", names_of(site.scene->network.trails));
      return;
    case OrderKind::trail_hours:
      expect_name(order, "trail", names_of(site.scene->network.trails));
      if (!day::parse_hours(order.value)) {
        refuse(order, "'" + order.value + "' are no hours");
      }
      return;
    case OrderKind::forbid_rig:
      expect_name(order, "rig", names_of(site.rigs));
      return;
    case OrderKind::allowed_share:
      if (!day::parse_share(order.value)) {
        refuse(order, "'" + order.value + "' is no share");
      }
      return;
    case OrderKind::rule:
      return;
  }
}

bool is_rule(const Override& order) {
  return order.kind == key_of(OrderKind::rule);
}

}  // namespace

OrderedRules ordered_rules(const LoadedSite& site, const std::vector<std::string>& changes) {
  std::vector<ports::toml::RuleChange> before;
  OrderedRules ordered{.rules = ports::toml::read_rules(site.rules_file).data};
  for (const std::string& text : changes) {
    before.push_back(ports::toml::rule_change(text));
    auto [rules, faults] = ports::toml::read_rules_with(site.rules_file, before);
    const auto fault = std::ranges::find(faults, base::Weight::fault, &base::Fault::weight);
    if (fault != faults.end()) {
      throw base::BadInput{*fault};
    }
    const auto leaning = passage::leaning_of(before.back().key, ordered.rules, rules);
    if (!leaning) {
      const auto open = passage::keys_open_to_orders();
      throw base::BadInput{{.file = text,
                            .place = "",
                            .problem = "no order may change " + before.back().key,
                            .remedy = "orders change " +
                                      base::joined({open.begin(), open.end()}, ", ") +
                                      "; all else stands in the site's files"}};
    }
    ordered = {std::move(rules), *leaning};
  }
  ordered.rules.local_clock = site.local_clock;
  return ordered;
}

void heed_records(LoadedSite& site, units::Instant depart, const Outside& outside) {
  const auto records = records_of(site);
  if (!records) {
    return;
  }
  for (const base::Fault& doubt : doubts_about_recalled(*records, site.local_clock, outside.now)) {
    outside.err << base::line_of(doubt) << '\n';
  }
  passage::Rules& rules = site.scene->rules;
  std::vector<std::string> changes;
  std::vector<Override> others;
  passage::Orders leaves;
  for (const Override& order : day::orders_in_force(*records, depart)) {
    expect_sense(order, site);
    if (!is_rule(order)) {
      others.push_back(order);
    } else {
      changes.push_back(order.value);
      const OrderedRules ordered = ordered_rules(site, changes);
      const bool loosens = ordered.last == passage::Leaning::looser;
      if (loosens && depart < order.allowed.at) {
        changes.pop_back();
        continue;
      }
      rules = ordered.rules;
      if (loosens) {
        leaves.leaves.push_back({order.expires, day::giver_words(order)});
      }
    }
    site.orders.push_back(card::order_words(order, site.local_clock));
  }
  rules.orders = std::move(leaves);
  for (const Override& order : others) {
    day::put_in_force(order, rules);
  }
}

}  // namespace rimehaul::app
