// The command line of `board`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_board() {
  return {.examples =
              {{"What is open between which stations in dry and in moist snow, as a table and "
                "printed:",
                "rimehaul board routes/marrowfell --rig Broadfoot --load 100 --visibility 400 "
                "--bulletin 2 --wind 18 --now 2026-02-01T08:30:00-10:00 --snow dry --snow moist "
                "--csv board.csv "
                "--pdf board.pdf"},
               {"One pair with a trailer in wet snow on all surfaces, with the loads that would "
                "open it:",
                "rimehaul board routes/marrowfell --rig \"Broadfoot with sled\" --load 40 "
                "--towed-load 60 --visibility 400 --bulletin 2 --wind 18 --now "
                "2026-02-01T08:30:00-10:00 "
                "--from \"Cable House\" --to \"Fell Lodge\" --snow wet --surface all"},
               {"Every marked trail, each way in which it may be driven, in moist snow:",
                "rimehaul board routes/marrowfell --rows trails --rig Broadfoot --load 100 --snow "
                "moist --now 2026-02-01T08:30:00-10:00"}},
          .endings = {{Status::yes, "the board is the answer, whatever is closed on it"}},
          .notes = {"A pair or trail that is closed as the rig stands is tried with other loads."}};
}

}  // namespace

Verb add_board(CLI::App& program, BoardOptions& options) {
  CLI::App* verb = program.add_subcommand("board",
                                          "Show what is open between which stations, on named "
                                          "routes or on marked trails, by snow or by "
                                          "the hour.");
  add_common(*verb, options.common);
  takes(
      verb->add_option("--from", options.from, "Only pairs or trails that leave from this station"),
      Value::station)
      ->group(kWayGroup);
  takes(verb->add_option("--to", options.to, "Only pairs or trails that arrive at this station"),
        Value::station)
      ->group(kWayGroup);
  add_depart(*verb, options.depart);
  add_way_back(*verb, options.hours);
  takes(verb->add_option("--rows", options.rows,
                         "What is asked for: " + words_listed(Value::board_rows) + " (pairs)"),
        Value::board_rows)
      ->group(kWayGroup);
  takes(verb->add_option("--by", options.by,
                         "What the columns are: " + words_listed(Value::board_by) +
                             ", each of the day of departure (snow)"),
        Value::board_by)
      ->group(kWayGroup);
  takes(verb->add_option("--rig", options.rig.name, "Rig of the site"), Value::rig)
      ->group(kRigGroup);
  verb->add_flag("--all-rigs", options.all_rigs, "Every rig of the site, with the load given")
      ->group(kRigGroup);
  add_load(*verb, options.rig);
  add_company(*verb, options.rig);
  add_classes(*verb, options.wetness);
  again(takes(verb->add_option("--surface", options.surfaces,
                               "Its surface: " + words_listed(Value::surface_or_all) +
                                   "; may be given again (groomed)"),
              Value::surface_or_all))
      ->group(kSnowGroup);
  add_weather(*verb, options.weather);
  add_file(*verb, options.csv, {"--csv", "Write every pair in every snow as a row of a table"});
  add_file(*verb, options.pdf, {"--pdf", "Print the board"});
  takes(verb->add_option("--paper", options.paper,
                         "Of the sheets of routes, trails, hours or all rigs: a4 or a3 (a4)"),
        Value::paper)
      ->group(kAnswerGroup);
  return {verb, guide_to_board()};
}

}  // namespace rimehaul::app
