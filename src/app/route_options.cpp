// The command line of `route`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_route() {
  return {
      .examples = {{"The safest way in moist snow, for the day's weather:",
                    "rimehaul route routes/marrowfell --rig Broadfoot --load 100 --snow moist "
                    "--visibility 400 --bulletin 2 --wind 18 --now 2026-02-01T08:30:00-10:00 "
                    "--from \"Cable House\" --to \"Fell Lodge\""},
                   {"With a trailer, as a card to print and for a hand-held device:",
                    "rimehaul route routes/marrowfell --rig \"Broadfoot with sled\" --load 40 "
                    "--towed-load 60 --snow moist --visibility 400 --bulletin 2 --wind 18 --now "
                    "2026-02-01T08:30:00-10:00 "
                    "--from \"Cable House\" --to \"Fell Lodge\" --card card.pdf --gpx card.gpx"},
                   {"What is in the way in wet snow, and what would open it:",
                    "rimehaul route routes/marrowfell --rig \"Broadfoot with sled\" --load 40 "
                    "--towed-load 60 --snow wet --visibility 400 --bulletin 2 --wind 18 --now "
                    "2026-02-01T08:30:00-10:00 "
                    "--from \"Cable House\" --to \"Fell Lodge\"",
                    Status::honest_no}},
      .endings = {{Status::yes, "there is a way"},
                  {Status::honest_no, "there is none as things stand: the answer says why"}},
      .notes = {"Weather that no option gives is that of the site's report while it holds; else it "
                "is unknown, and what is unknown is closed."}};
}

}  // namespace

Verb add_route(CLI::App& program, RouteOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "route", "Find a way between two stations and print its route card, or what blocks it.");
  add_common(*verb, options.common);
  add_way(*verb, options.way);
  takes_whole_number(
      verb->add_option("--alternatives", options.alternatives, "Other ways to show, 0 to 3 (0)"),
      "N", {0, 3})
      ->group(kWayGroup);
  add_hours(*verb, options.hours);
  add_rig(*verb, options.rig);
  add_company(*verb, options.rig);
  verb->get_option("--load")->required();
  add_snow(*verb, options.snow);
  add_file(*verb, options.card,
           {kCardOption, "Print the best route's card as PDF; its record lies beside it"});
  add_file(*verb, options.gpx, {"--gpx", "Write the best route as GPX 1.1"});
  return {verb, guide_to_route()};
}

}  // namespace rimehaul::app
