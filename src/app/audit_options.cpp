// The command line of `audit`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_audit() {
  return {
      .examples = {{"One rig in one snow class, with the day's weather:",
                    "rimehaul audit routes/marrowfell --rig Broadfoot --snow moist --load 100 "
                    "--visibility 400 --bulletin 2 --wind 18 --now 2026-02-01T08:30:00-10:00 --for "
                    "\"A. Officer\"",
                    Status::honest_no},
                   {"Every exceedance as a table, as lines on the globe, and printed with maps:",
                    "rimehaul audit routes/marrowfell --rig Longback --snow dry --load 40 "
                    "--visibility 400 --bulletin 2 --wind 18 --now 2026-02-01T08:30:00-10:00 --csv "
                    "audit.csv "
                    "--geojson audit.geojson --pdf audit.pdf",
                    Status::honest_no}},
      .endings = {{Status::yes, "nothing exceeds a limit, is refused or is not known"},
                  {Status::honest_no, "something does: a failed audit"}},
      .notes = {"With no load given every rig is judged full and empty: too little ballast can "
                "close a trail too."}};
}

}  // namespace

Verb add_audit(CLI::App& program, AuditOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "audit", "Judge every metre of every trail against every limit, and list what exceeds.");
  add_common(*verb, options.common);
  again(takes(verb->add_option("--rig", options.rigs,
                               "Rig to audit; may be given again (all of the site)"),
              Value::rig))
      ->group(kRigGroup);
  add_load(*verb, options.load);
  add_company(*verb, options.load);
  add_classes(*verb, options.wetness);
  takes(verb->add_option("--surface", options.snow.surface,
                         "Its surface: " + words_listed(Value::surface) + " (groomed)"),
        Value::surface)
      ->group(kSnowGroup);
  add_weather(*verb, options.snow);
  add_depart(*verb, options.depart)->group(kSnowGroup);
  takes(verb->add_option("--for", options.for_whom, "Person that the audit is made for"),
        Value::name)
      ->group(kAnswerGroup);
  add_file(*verb, options.csv, {"--csv", "Write every exceedance as a row of a table"});
  add_file(*verb, options.geojson, {"--geojson", "Write every exceedance as a line on the globe"});
  add_file(*verb, options.pdf, {"--pdf", "Write the printed summary, with maps of shares"});
  return {verb, guide_to_audit()};
}

}  // namespace rimehaul::app
