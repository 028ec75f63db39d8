// What the limits of a rig are said to be, alike on the screen and on paper.
#include "card/limits_words.h"

#include "card/figures.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

std::string limit_words(const passage::Limit& limit) {
  return units::text_of(limit.steepest, units::Round::down);
}

std::string binding_words(const passage::Limit& limit) {
  return limit.scan_end ? "none up to here"
                        : std::string{passage::facts_of(limit.binding.check).title};
}

std::string closed_words(const passage::Finding& finding) {
  return "closed: " + std::string{passage::facts_of(finding.check).title} + ", " +
         words::outcome(finding);
}

std::string towing_words(std::string_view towing) {
  return towing.empty() ? "without a trailer" : "towing " + std::string{towing};
}

std::string load_case_words(LoadCase load_case) {
  switch (load_case) {
    case LoadCase::empty:
      return "empty";
    case LoadCase::as_given:
      return "load as given";
    case LoadCase::full:
      return "full, as far as the allowed share of the ratings goes";
  }
  return "";
}

std::vector<LabelledLine> basis_of(const LimitsReport& report) {
  return {
      {"Allowed", report.allowed_share > 0.0
                      ? allowed_text(report.allowed_share) + " of every limit, driver level " +
                            report.driver_level
                      : "unknown: the rules have no driver level '" + report.driver_level + "'"},
      {"Slopes",
       "as they truly are: no error of heights is counted here. What was measured has its "
       "error added before it is held against these limits."},
      {"Counted",
       "every check of the ground, and stopping from walking pace within " +
           units::text_of(report.sight.value(), 0, units::Round::down) +
           " m of sight. Not counted: bends, width, marks, zones, avalanches, new snow."},
      {"Climb, descent",
       "on ground that does not fall away sideways; cross-slope: on no grade, to "
       "either side. Both at once allow less: see the outline."},
      {"Rounding", "down to a tenth of a degree; every tenth below was judged and passes."},
  };
}

std::string_view outranked() {
  return "A planning aid, not permission to drive: the operator's manual, local rules and the "
         "people on the hill outrank it. Conditions worse than assumed mean stop and replan.";
}

}  // namespace rimehaul::card
