// The command line of `board`.

#include "app/board_options.h"

#include <CLI/CLI.hpp>

#include "app/option_groups.h"

namespace rimehaul::app {

namespace {

constexpr const char* kBoardExamples =
    "Examples:\n"
    "  rimehaul board routes/marrowfell --rig Broadfoot --load 100 --bulletin 2 --csv board.csv\n"
    "  rimehaul board routes/marrowfell --rig \"Broadfoot with sled\" --load 40 --towed-load 60 "
    "\\\n"
    "      --from \"Cable House\" --to \"Fell Lodge\" --surface all\n"
    "Which other loads would open a pair is tried for the pairs of --from or --to alone, as it\n"
    "takes a while; without them a pair that another load would open stands as closed.\n"
    "Ends with 0: the board is the answer, whatever is closed on it.";

}  // namespace

CLI::App* add_board(CLI::App& program, BoardOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "board", "Show what is open between which stations, by snow, for one rig");
  add_common(*verb, options.common);
  add_rig(*verb, options.rig);
  verb->add_option("--snow", options.wetness,
                   "Snow class to judge in: dry, moist, wet, very_wet or slush; may be given "
                   "again (all five)")
      ->type_name("CLASS")
      ->expected(1)
      ->take_all();
  verb->add_option("--surface", options.surfaces,
                   "Its surface: groomed, fresh, refrozen, ice, or all; may be given again "
                   "(groomed)")
      ->type_name("KIND")
      ->expected(1)
      ->take_all();
  add_weather(*verb, options.weather);
  add_depart(*verb, options.depart);
  verb->add_option("--from", options.from, "Only pairs that leave from this station; tries loads")
      ->type_name("NAME");
  verb->add_option("--to", options.to, "Only pairs that arrive at this station; tries loads")
      ->type_name("NAME");
  verb->add_option("--csv", options.csv, "Write every pair as a row of a table")->type_name("FILE");
  verb->footer(kBoardExamples);
  return verb;
}

}  // namespace rimehaul::app
