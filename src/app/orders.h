// Orders kept in the records, put into the site's rules for who leaves at an hour.
#pragma once

#include <string>
#include <vector>

#include "app/load_site.h"
#include "app/outside.h"
#include "passage/rule_changes.h"

namespace rimehaul::app {

/// From here on the site is judged by its rules and by the orders in force at a departure, which
/// are told in `site.orders`; cards that were recalled within a day are told at once. Requires a
/// site with a scene. Throws BadInput where the records cannot be read, or hold an order that the
/// site does not understand: nobody drives past what somebody may have closed.
void heed_records(LoadedSite& site, units::Instant depart, const Outside& outside);

/// The rules of the site's file with the rules that were ordered, and whether the last of these
/// loosens what held before it.
struct OrderedRules {
  passage::Rules rules;
  passage::Leaning last = passage::Leaning::same;
};
/// Throws BadInput where an order cannot be read as a rule of the site, or no order may change it.
[[nodiscard]] OrderedRules ordered_rules(const LoadedSite& site,
                                         const std::vector<std::string>& changes);

}  // namespace rimehaul::app
