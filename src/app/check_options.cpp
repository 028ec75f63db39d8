// The command lines of `check` and `explain`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_check() {
  return {.examples = {{"What is wrong with the demo site, or doubtful:",
                        "rimehaul check routes/marrowfell"},
                       {"The same for a program, in a file:",
                        "rimehaul check routes/marrowfell --json report.json"}},
          .endings = {{Status::yes, "the site is usable"},
                      {Status::honest_no, "faults forbid its use"},
                      {Status::bad_input, "it cannot be read at all"}},
          .notes = {}};
}

Guide guide_to_explain() {
  return {
      .examples = {{"Every check at one place of a trail, both ways:",
                    "rimehaul explain routes/marrowfell --rig Broadfoot --snow moist "
                    "--trail \"Shed Lane\" --at 120"},
                   {"One way alone, loaded, with the day's weather:",
                    "rimehaul explain routes/marrowfell --rig Broadfoot --load 100 --snow dry "
                    "--trail \"Birk Climb\" --at 789 --direction forward --bulletin 2 "
                    "--visibility 400 --wind 18 --now 2026-02-01T08:30:00-10:00"},
                   {"How near a thing it is, and what would change it:",
                    "rimehaul explain routes/marrowfell --rig Broadfoot --load 100 --snow moist "
                    "--trail \"Birk Climb\" --at 789 --direction forward --what-if"},
                   {"The trail nearest to a place on the map:",
                    "rimehaul explain routes/marrowfell --rig Broadfoot --snow dry "
                    "--point 498500,5093800 --json place.json"}},
      .endings = {{Status::yes, "the place is explained, whatever the verdict there"}},
      .notes = {}};
}

}  // namespace

Verb add_check(CLI::App& program, CheckOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "check", "List in one pass all that is wrong or doubtful with a site's files.");
  add_common(*verb, options.common);
  return {verb, guide_to_check()};
}

Verb add_explain(CLI::App& program, ExplainOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "explain", "Show every check at one place of a trail, with formula, inputs and source.");
  add_common(*verb, options.common);
  add_place(*verb, options.place,
            "In place of both: metres east and north in the site's map frame; the nearest trail "
            "within 100 m is taken");
  takes(
      verb->add_option("--direction", options.direction,
                       "As drawn, the other way, or both: " + words_listed(Value::way) + " (both)"),
      Value::way)
      ->group(kPlaceGroup);
  add_depart(*verb, options.depart)->group(kPlaceGroup);
  add_rig(*verb, options.rig);
  add_company(*verb, options.rig);
  add_snow(*verb, options.snow);
  verb->add_flag("--what-if", options.what_if,
                 "Tell besides how each share moves with the ground, the load, the snow and the "
                 "balance")
      ->group(kAnswerGroup);
  return {verb, guide_to_explain()};
}

}  // namespace rimehaul::app
