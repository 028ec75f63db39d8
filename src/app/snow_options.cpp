// The command line of `snow`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_snow() {
  return {.examples = {{"A warm sunny day on the demo mountain:",
                        "rimehaul snow routes/marrowfell --trail \"Noon Run\" --at 400 "
                        "--snow-report routes/marrowfell/snow-day.toml"},
                       {"Another place on the map, for a program:",
                        "rimehaul snow routes/marrowfell --point 498500,5093800 "
                        "--snow-report routes/marrowfell/snow-day.toml --json hours.json"},
                       {"The report of the day is kept, with what it says of marks:",
                        "rimehaul snow routes/marrowfell --trail \"Noon Run\" --at 400 --keep --as "
                        "\"N. Example\" --now 2026-02-01T17:00:00Z"}},
          .endings = {{Status::yes, "the snow there is told, known or not"},
                      {Status::honest_no, "nothing can be made of the record"}},
          .notes = {"The hours are those of the forecast in the report. A change may come two "
                    "hours earlier or later than told, and a rig is judged by the worst within "
                    "them; an observation alone rules its own hour.",
                    "What is kept is the file as it was read, whoever keeps it: anybody of "
                    "people.toml may. A report is kept once."}};
}

}  // namespace

Verb add_snow_day(CLI::App& program, SnowDayOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "snow", "Show how the snow at a place softens and freezes through the day.");
  add_common(*verb, options.common);
  add_place(*verb, options.place,
            "In place of both: metres east and north in the site's map frame");
  takes(verb->add_option("--snow-report", options.report,
                         "Observer's report with a forecast (the site's own)"),
        Value::file)
      ->group(kSnowGroup);
  takes(verb->add_option("--record", options.record,
                         "In place of a place: what was seen on past days, to fit the melt to"),
        Value::file)
      ->group(kSnowGroup)
      ->excludes("--trail")
      ->excludes("--point")
      ->excludes("--snow-report");
  verb->add_flag("--keep", options.keep, "Keep the report and what it says of marks in the records")
      ->group(kRecordsGroup)
      ->excludes("--record");
  add_person(*verb, options.person, "Person who keeps it, of the site's list")
      ->group(kRecordsGroup);
  return {verb, guide_to_snow()};
}

}  // namespace rimehaul::app
