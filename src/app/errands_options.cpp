// The command line of `errands`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_errands() {
  return {
      .examples = {{"The best order of a morning's errands on the demo mountain:",
                    "rimehaul errands routes/marrowfell --list routes/marrowfell/errands.toml "
                    "--rig Broadfoot --snow dry --visibility 400 --bulletin 2 --wind 18 --now "
                    "2026-02-01T08:30:00-10:00"},
                   {"The quickest, with the card of every trip to print:",
                    "rimehaul errands routes/marrowfell --list routes/marrowfell/errands.toml "
                    "--rig Broadfoot --snow dry --visibility 400 --bulletin 2 --wind 18 --now "
                    "2026-02-01T08:30:00-10:00 --prefer quickest --into trips"}},
      .endings = {{Status::yes, "the round holds: its order and its trips are told"},
                  {Status::honest_no, "no order holds: the answer says how far it gets, and why"}},
      .notes = {"Every trip is judged with what is aboard on it, at the hour at which it begins. "
                "Each station is called at once, 10 at most besides start and end; where no way "
                "is open the rig waits at its stop until one is."}};
}

}  // namespace

Verb add_errands(CLI::App& program, ErrandsOptions& options) {
  CLI::App* verb = program.add_subcommand(
      kErrandsVerb, "Put several stops in their best order, loads changing on the way.");
  add_common(*verb, options.common);
  takes(verb->add_option("--list", options.list,
                         "Errands: where the round starts and ends, what goes from where to where"),
        Value::file)
      ->required()
      ->group(kWayGroup);
  add_choice(*verb, {options.prefer, options.depart, options.permitted_by});
  takes_number(verb->add_option("--halt", options.halt_min, "Time at every stop (10)"), "MINUTES",
               {0, 720})
      ->group(kWayGroup);
  takes(verb->add_option(kIntoOption, options.into,
                         "Print the card of every trip into this folder, its record beside it"),
        Value::folder)
      ->group(kAnswerGroup);
  add_rig(*verb, options.rig);
  verb->get_option("--load")->description("On the carrier's bed all the way, besides (0)");
  verb->get_option("--towed-load")->description("On the trailer all the way, besides (0)");
  add_company(*verb, options.rig);
  add_snow(*verb, options.snow);
  return {verb, guide_to_errands()};
}

}  // namespace rimehaul::app
