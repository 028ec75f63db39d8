#include "passage/order_rules.h"

namespace rimehaul::passage {

namespace {

Finding judge_leave(const Leave& leave, Stay stay) {
  const units::Instant leaves = units::after(stay.entry, stay.lasting.value_or(units::Seconds{0}));
  return leaves <= leave.until
             ? kept(Check::order, "driven before the leave that was given runs out")
             : refusal(Check::order, "the leave given by " + leave.by + " has run out by then");
}

}  // namespace

// Trail and rig, as the declaration has them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::vector<Finding> judge_orders(const std::string& trail, const std::string& rig, Stay stay,
                                  const Rules& rules) {
  std::vector<Finding> found;
  for (const TrailOrder& order : rules.orders.trails) {
    if (order.trail != trail) {
      continue;
    }
    found.push_back(
        order.hours
            ? held_to_hours({.check = Check::order,
                             .hours = *order.hours,
                             .refused = "by order of " + order.by + ": " + trail + " is open",
                             .always = "open all day by order",
                             .origin = Origin::rules},
                            stay, rules)
            : refusal(Check::order, trail + " is closed by order of " + order.by));
  }
  for (const RigOrder& order : rules.orders.rigs) {
    if (order.rig == rig) {
      found.push_back(refusal(Check::order, rig + " is forbidden by order of " + order.by));
    }
  }
  for (const Leave& leave : rules.orders.leaves) {
    found.push_back(judge_leave(leave, stay));
  }
  return found;
}

}  // namespace rimehaul::passage
