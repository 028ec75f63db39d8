// The command line of `payload`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_payload() {
  return {
      .examples = {{"How much may go on the bed in moist snow:",
                    "rimehaul payload routes/marrowfell --rig Broadfoot --snow moist "
                    "--visibility 400 --bulletin 2 --wind 18 --now 2026-02-01T08:30:00-10:00 "
                    "--from \"Cable House\" --to \"Fell Lodge\""},
                   {"Bed and trailer, each with the other as given, and both at once:",
                    "rimehaul payload routes/marrowfell --rig \"Broadfoot with sled\" --load 40 "
                    "--towed-load 60 --snow moist --visibility 400 --bulletin 2 --wind 18 --now "
                    "2026-02-01T08:30:00-10:00 --from \"Cable House\" --to \"Fell Lodge\""}},
      .endings = {{Status::yes, "the way is open with some load"},
                  {Status::honest_no, "it is open with none, or there is no way"}},
      .notes = {"One way is judged: the one that route finds for the load as given, else for no "
                "load. Another load may have another way that is better for it."}};
}

}  // namespace

Verb add_payload(CLI::App& program, PayloadOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "payload", "Tell which loads a way is open with, and what binds at each end.");
  add_common(*verb, options.common);
  add_way(*verb, options.way);
  add_rig(*verb, options.rig);
  add_company(*verb, options.rig);
  takes_whole_number(verb->add_option("--step", options.step_kg,
                                      "Loads judged: every so many kilograms, 1 to 100 (5)"),
                     "KG", {1, 100})
      ->group(kRigGroup);
  add_snow(*verb, options.snow);
  return {verb, guide_to_payload()};
}

}  // namespace rimehaul::app
