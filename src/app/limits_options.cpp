// The command lines of `limits` and `rig`.

#include "app/limits_options.h"

#include <CLI/CLI.hpp>

#include "app/option_groups.h"

namespace rimehaul::app {

namespace {

constexpr const char* kLimitsExamples =
    "Examples:\n"
    "  rimehaul limits routes/marrowfell --rig Broadfoot --load 100 --surface groomed\n"
    "  rimehaul limits routes/marrowfell --rig \"Broadfoot with sled\" --load 40 --towed-load 60 "
    "\\\n"
    "      --snow moist --pdf limits.pdf --svg limits.svg\n"
    "Ends with 0 when the rig as given is open on some ground, 1 when it is closed in all snow "
    "asked for.";

constexpr const char* kRigExamples =
    "Examples:\n"
    "  rimehaul rig routes/marrowfell --rig Broadfoot --load 100 --passengers 1\n"
    "  rimehaul rig routes/marrowfell --rig \"Broadfoot with cabin\" --towed-load 60 --pdf "
    "rig.pdf\n"
    "Ends with 0 when every rating of a mass is kept, 1 when one is not.";

}  // namespace

CLI::App* add_limits(CLI::App& program, LimitsOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "limits", "Tell the steepest ground that a rig may be driven on, by snow and load");
  add_common(*verb, options.common);
  add_rig(*verb, options.rig);
  verb->add_option("--snow", options.wetness,
                   "One snow class: dry, moist, wet, very_wet or slush (all)")
      ->type_name("CLASS");
  verb->add_option("--surface", options.surface,
                   "One surface: groomed, fresh, refrozen or ice (all; the plot: groomed)")
      ->type_name("KIND");
  verb->add_option("--svg", options.svg, "Draw the outline of what is allowed as SVG")
      ->type_name("FILE");
  verb->add_option("--pdf", options.pdf, "Draw the outline of what is allowed as PDF")
      ->type_name("FILE");
  verb->footer(kLimitsExamples);
  return verb;
}

CLI::App* add_rig_sheet(CLI::App& program, RigSheetOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "rig", "Show a rig as it stands: masses, balance, ratings, tip angles, drawn to scale");
  add_common(*verb, options.common);
  add_rig(*verb, options.rig);
  verb->add_option("--svg", options.svg, "Draw the sheet as SVG")->type_name("FILE");
  verb->add_option("--pdf", options.pdf, "Draw the sheet as PDF, true to scale on A4")
      ->type_name("FILE");
  verb->footer(kRigExamples);
  return verb;
}

}  // namespace rimehaul::app
