// What single checks work with beside their inputs: sight, the hitch's arm, the trail's width.
#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>
#include <utility>

#include "passage/forces.h"
#include "passage/site_rules.h"
#include "passage/workings.h"

namespace rimehaul::passage {

namespace {

using units::amount;

constexpr std::string_view kStopping = "docs/checks/stopping.md";
constexpr std::string_view kTurning = "docs/checks/turning.md";
constexpr std::string_view kJackknife = "docs/checks/jackknife.md";

Working given(std::string symbol, units::Amount value, Origin origin, std::string_view page) {
  return {std::move(symbol), value, origin, "", page};
}

Working worked(std::string symbol, units::Amount value, std::string formula,
               std::string_view page) {
  return {std::move(symbol), value, Origin::derived, std::move(formula), page};
}

/// As sight_along() reckons it.
std::vector<Working> sight_workings(const WorkedAt& where) {
  const Rules& rules = where.course.scene.rules;
  const bool of_trail = where.trail.sight.has_value();
  std::vector<Working> numbers{given("sight_here", amount(where.trail.sight.value_or(rules.sight)),
                                     of_trail ? Origin::trail : Origin::rules, kStopping)};
  std::string formula = "sight_here";
  if (where.weather.visibility.has_value()) {
    numbers.push_back(
        given("seen", amount(*where.weather.visibility), Origin::snow_report, kStopping));
    formula = "min(sight_here, seen)";
  }
  trails::Trail one_way = where.trail;
  one_way.direction = trails::AllowedDirection::forward;
  if (where.course.sight != sight_along(one_way, rules, where.weather)) {
    formula += " / 2";  // two-way on a single lane
  }
  numbers.push_back(worked("sight", amount(where.course.sight), formula, kStopping));
  return numbers;
}

/// How far the hitch stands behind the middle of the contact.
std::vector<Working> arm_workings(const char* symbol, const rig::Rig& rig, std::string_view page) {
  if (!rig.trailer.has_value()) {
    return {};
  }
  return {given("l", amount(rig.carrier.contact_length), Origin::rig_sheet, page),
          given("x_h", amount(rig.carrier.hitch_at.forward), Origin::rig_sheet, page),
          worked(symbol, amount(hitch_behind_middle(rig.carrier)), "l / 2 - x_h", page)};
}

}  // namespace

std::vector<Working> besides(const Finding& finding, const WorkedAt& where) {
  const rig::Rig& rig = where.course.rig;
  switch (finding.check) {
    case Check::carrier_roll_over:
    case Check::trailer_roll_over:
      return where.footing.has_value() ? roll_over_workings(*where.footing, finding)
                                       : std::vector<Working>{};
    case Check::stopping: {
      std::vector<Working> numbers;
      if (where.footing.has_value()) {
        numbers = braking_workings(*where.footing, finding, where.course.allowed_share);
      }
      std::ranges::move(sight_workings(where), std::back_inserter(numbers));
      return numbers;
    }
    case Check::jackknife:
      return arm_workings("d_h", rig, kJackknife);
    case Check::turning:
      return arm_workings("e", rig, kTurning);
    case Check::off_tracking: {
      std::vector<Working> numbers = arm_workings("e", rig, kTurning);
      if (where.trail.width.has_value()) {
        numbers.push_back(given("width", amount(*where.trail.width), Origin::trail, kTurning));
      }
      return numbers;
    }
    default:
      return {};
  }
}

}  // namespace rimehaul::passage
