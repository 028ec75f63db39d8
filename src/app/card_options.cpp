// The command line of `card`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_card() {
  return {
      .examples =
          {{"The card of a route, on the screen and printed, where the board is signed; here it is "
            "not yet:",
            "rimehaul card routes/marrowfell --route \"Supper run\" --driver \"N. Example\" "
            "--depart 08:30 --card supper.pdf --now 2026-02-01T17:00:00Z",
            Status::honest_no},
           {"With less on the bed than usual:",
            "rimehaul card routes/marrowfell --route \"Laundry back\" --driver \"N. Example\" "
            "--load 20 --now 2026-02-01T17:00:00Z",
            Status::honest_no}},
      .endings = {{Status::yes, "the card is issued and kept"},
                  {Status::honest_no,
                   "the board does not allow it, is stale, or no way is open "
                   "now; no card is issued"}},
      .notes = {
          "The way is found and judged anew for the hour of departure, by the day's report and "
          "the orders in force; the board that was signed must allow it besides."}};
}

}  // namespace

Verb add_card(CLI::App& program, CardOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "card", "Issue the driver's card of a named route from the board that was signed.");
  add_common(*verb, options.common);
  takes(verb->add_option("--route", options.route, "Route of the site's list"), Value::named_route)
      ->required()
      ->group(kWayGroup);
  takes(verb->add_option("--driver", options.driver, "Driver of the site's list who takes it"),
        Value::person)
      ->required()
      ->group(kWayGroup);
  add_depart(*verb, options.depart);
  takes_number(verb->add_option("--load", options.bed_kg, "On the carrier's bed (as usual)"), "KG",
               {0, 20'000})
      ->group(kRigGroup);
  takes_number(verb->add_option("--towed-load", options.towed_kg, "On the trailer (as usual)"),
               "KG", {0, 20'000})
      ->group(kRigGroup);
  add_file(*verb, options.card, {kCardOption, "Print the card"});
  add_file(*verb, options.gpx, {"--gpx", "Write the route for a satellite receiver"});
  return {verb, guide_to_card()};
}

}  // namespace rimehaul::app
