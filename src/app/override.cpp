#include "app/override.h"

#include <algorithm>
#include <utility>

#include "app/answer.h"
#include "app/deciders.h"
#include "app/names.h"
#include "app/orders.h"
#include "app/question.h"
#include "app/record_place.h"
#include "card/layout.h"
#include "card/order_words.h"
#include "day/orders_given.h"
#include "ports/json/orders_json.h"
#include "units/rounding.h"

namespace rimehaul::app {

namespace {

using day::OrderKind;

/// What is ordered, before anybody stands for it.
struct Ordered {
  OrderKind kind;
  std::string subject;
  std::string value;
};

std::vector<Ordered> ordered_by(const OverrideOptions& options, const LoadedSite& site) {
  std::vector<Ordered> ordered;
  if (options.trail) {
    (void)trail_named(site.scene->network, *options.trail);
    const auto hours = options.hours ? day::parse_hours(*options.hours) : std::nullopt;
    if (options.hours && !hours) {
      throw WrongUsage{"--hours " + *options.hours + " are no hours; write \"08:00 to 12:00\""};
    }
    ordered.push_back(hours ? Ordered{OrderKind::trail_hours, *options.trail, day::text_of(*hours)}
                            : Ordered{OrderKind::close_trail, *options.trail, ""});
  }
  if (options.rig) {
    if (std::ranges::find(site.rigs, *options.rig, &rig::Rig::name) == site.rigs.end()) {
      throw WrongUsage{no_such({"rig", names_of(site.rigs)}, *options.rig)};
    }
    ordered.push_back({OrderKind::forbid_rig, *options.rig, ""});
  }
  if (options.share) {
    ordered.push_back(
        {OrderKind::allowed_share, "", units::text_of(*options.share, 4, units::Round::down)});
  }
  if (options.rule) {
    ordered.push_back({OrderKind::rule, "", *options.rule});
  }
  return ordered;
}

std::vector<std::string> rules_ordered(const std::vector<day::Override>& orders) {
  std::vector<std::string> changes;
  for (const day::Override& order : orders) {
    if (order.kind == key_of(OrderKind::rule)) {
      changes.push_back(order.value);
    }
  }
  return changes;
}

/// Whether a rule is looser than the file's, or than any that is ordered: of these each may be the
/// one that is left when others have run out.
bool loosens(const LoadedSite& site, const std::vector<std::string>& in_force,
             const std::string& change) {
  const auto is_looser = [&](const std::vector<std::string>& changes) {
    return ordered_rules(site, changes).last == passage::Leaning::looser;
  };
  return is_looser({change}) || std::ranges::any_of(in_force, [&](const std::string& other) {
           return is_looser({other, change});
         });
}

/// Throws WrongUsage where a rule would be loosened without an end.
void expect_end_of_leave(const LoadedSite& site, const std::vector<std::string>& in_force,
                         const OverrideOptions& options) {
  if (loosens(site, in_force, *options.rule) && !options.until) {
    throw WrongUsage{"'" + *options.rule +
                     "' loosens the site's rules; say with --until when that runs out"};
  }
}

units::Instant expiry(const LoadedSite& site, const OverrideOptions& options,
                      const Outside& outside) {
  if (!options.until) {
    return day::kUntilTakenBack;
  }
  const units::Instant until = departure(options.until, {outside.now, site.local_clock}, "--until");
  if (!(outside.now < until)) {
    throw WrongUsage{"--until " + *options.until + " is over already"};
  }
  return until;
}

void expect_reason(const OverrideOptions& options) {
  if (options.reason.empty()) {
    throw WrongUsage{"no reason is given; say --reason TEXT, which stands on boards and cards"};
  }
}

std::string keep_order(LoadedSite& site, const Ordered& ordered, const OverrideOptions& options,
                       const Outside& outside) {
  expect_reason(options);
  day::Override order{.number = 0,
                      .kind = key_of(ordered.kind),
                      .subject = ordered.subject,
                      .value = ordered.value,
                      .reason = options.reason,
                      .expires = expiry(site, options, outside),
                      .allowed = decided_by(site, options.person, outside)};
  const auto writing = begin_writing(site, outside);
  if (ordered.kind == OrderKind::rule) {
    expect_end_of_leave(site, rules_ordered(day::orders_in_force(*writing, outside.now)), options);
  }
  order.number = writing->next(day::Kind::override_given);
  writing->add(order, {"override", "override " + std::to_string(order.number),
                       card::order_alone(order) + ": " + order.reason});
  writing->commit();
  return card::order_words(order, site.local_clock);
}

std::string take_back(const LoadedSite& site, const OverrideOptions& options,
                      const Outside& outside) {
  expect_reason(options);
  const day::Done done = decided_by(site, options.person, outside);
  const auto writing = begin_writing(site, outside);
  const auto orders = day::orders_in_force(*writing, outside.now);
  const auto order = std::ranges::find(orders, *options.end, &day::Override::number);
  if (order == orders.end()) {
    throw WrongUsage{"no order " + std::to_string(*options.end) +
                     " is in force; `rimehaul override " + site.folder + "` shows those that are"};
  }
  const day::OverrideEnd end{.number = writing->next(day::Kind::override_end),
                             .override_number = order->number,
                             .reason = options.reason,
                             .ended = done};
  writing->add(end, {"end override", "override " + std::to_string(order->number), options.reason});
  writing->commit();
  return "taken back by " + done.by + " (" + done.role + "): " + options.reason + "; " +
         card::order_words(*order, site.local_clock);
}

std::vector<day::Override> in_force_now(const LoadedSite& site, const Outside& outside) {
  const auto records = records_of(site);
  return records ? day::orders_in_force(*records, outside.now) : std::vector<day::Override>{};
}

}  // namespace

Status override_rules(const OverrideOptions& options, const Outside& outside) {
  LoadedSite site = load_usable_site(options.common.site);
  const std::vector<Ordered> ordered = ordered_by(options, site);
  const std::size_t asked = ordered.size() + (options.end ? 1 : 0);
  if (asked > 1) {
    throw WrongUsage{"several orders at once; give them one by one"};
  }
  if (asked == 0 && !options.person.empty()) {
    throw WrongUsage{"nothing is ordered; say --trail, --rig, --share, --rule or --end"};
  }
  if (asked == 1 && options.person.empty()) {
    throw WrongUsage{"nobody orders it; say --as PERSON"};
  }
  std::vector<std::string> news;
  if (asked == 1) {
    news.push_back(options.end ? take_back(site, options, outside)
                               : keep_order(site, ordered.front(), options, outside));
  }
  const std::vector<day::Override> orders = in_force_now(site, outside);
  std::vector<std::string> told(orders.size());
  std::ranges::transform(orders, told.begin(), [&](const day::Override& order) {
    return card::order_words(order, site.local_clock);
  });
  card::Sheet sheet{kColumns};
  for (const std::string& done : news) {
    sheet.paragraph(done);
  }
  sheet.heading(orders.empty() ? "NO ORDER IS IN FORCE" : "ORDERS IN FORCE");
  sheet.list("-", told);
  give_answer({.text = sheet.text(), .json = ports::json::orders_json(orders)}, options.common,
              outside);
  return Status::yes;
}

}  // namespace rimehaul::app
