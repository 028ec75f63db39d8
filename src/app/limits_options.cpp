// The command lines of `limits` and `rig`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_limits() {
  return {.examples =
              {{"The steepest groomed ground for a load, and the outline as a drawing:",
                "rimehaul limits routes/marrowfell --rig Broadfoot --load 100 --surface groomed "
                "--svg limits.svg"},
               {"With a trailer in one snow class, to print:",
                "rimehaul limits routes/marrowfell --rig \"Broadfoot with sled\" --load 40 "
                "--towed-load 60 --snow moist --pdf limits.pdf"}},
          .endings = {{Status::yes, "the rig as given is open on some ground"},
                      {Status::honest_no, "it is closed in all snow asked for"}},
          .notes = {}};
}

Guide guide_to_rig() {
  return {.examples = {{"A carrier with a load and a passenger:",
                        "rimehaul rig routes/marrowfell --rig Broadfoot --load 100 "
                        "--passengers 1"},
                       {"A trailer behind it, drawn to scale:",
                        "rimehaul rig routes/marrowfell --rig \"Broadfoot with cabin\" "
                        "--towed-load 60 --pdf rig.pdf"}},
          .endings = {{Status::yes, "every rating of a mass, and the seats, are kept"},
                      {Status::honest_no, "one is not"}},
          .notes = {}};
}

}  // namespace

Verb add_limits(CLI::App& program, LimitsOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "limits", "Tell the steepest ground that a rig may be driven on, by snow and load.");
  add_common(*verb, options.common);
  add_rig(*verb, options.rig);
  takes(verb->add_option("--snow", options.wetness,
                         "One snow class: " + words_listed(Value::snow_class) + " (all)"),
        Value::snow_class)
      ->group(kSnowGroup);
  takes(verb->add_option(
            "--surface", options.surface,
            "One surface: " + words_listed(Value::surface) + " (all; the drawing: groomed)"),
        Value::surface)
      ->group(kSnowGroup);
  add_file(*verb, options.svg, {"--svg", "Draw the outline of what is allowed as SVG"});
  add_file(*verb, options.pdf, {"--pdf", "Draw the outline of what is allowed as PDF"});
  return {verb, guide_to_limits()};
}

Verb add_rig_sheet(CLI::App& program, RigSheetOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "rig", "Show a rig as it stands: masses, balance, ratings, tip angles, drawn to scale.");
  add_common(*verb, options.common);
  add_rig(*verb, options.rig);
  add_file(*verb, options.svg, {"--svg", "Draw the sheet as SVG"});
  add_file(*verb, options.pdf, {"--pdf", "Draw the sheet as PDF, true to scale on A4"});
  return {verb, guide_to_rig()};
}

}  // namespace rimehaul::app
