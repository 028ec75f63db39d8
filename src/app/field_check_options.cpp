// The command line of `field-check`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

constexpr const char* kMeasuredGroup = "Measured by hand";

Guide guide_to_field_check() {
  return {
      .examples =
          {{"Measured on the Noon Run, facing as it is drawn:",
            "rimehaul field-check routes/marrowfell --as \"N. Example\" --trail \"Noon Run\" --at "
            "400 --grade 2.5 --cross-slope -0.5 --instrument \"inclinometer 2, 1 m board\" --now "
            "2026-02-01T17:00:00Z"},
           {"At a place on the map, facing south-east:",
            "rimehaul field-check routes/marrowfell --as \"R. Example\" --point 499600,5094200 "
            "--heading 135 --grade -1.8 --cross-slope 0.4 --instrument \"inclinometer 2, 1 m "
            "board\" --now 2026-02-01T17:10:00Z"},
           {"Those that are kept, against the heights as they are now:",
            "rimehaul field-check routes/marrowfell --csv checks.csv"}},
      .endings = {{Status::yes, "the check is kept, or those kept are told, whatever they come to"},
                  {Status::honest_no, "none is kept yet"}},
      .notes = {
          "Lay a board of about a metre on the snow where the rig would drive: once along the way "
          "that it would face, once square to that as seen from above. A grade is above 0 where it "
          "climbs, a cross-slope where the ground falls away to the right.",
          "Checks change no error by themselves. Lowering one takes a recorded measurement: at "
          "least 30 checks, and their upper 95 % bound."}};
}

}  // namespace

Verb add_field_check(CLI::App& program, FieldCheckOptions& options) {
  constexpr double kSteepestDeg = 89.0;
  CLI::App* verb = program.add_subcommand(
      "field-check", "Keep angles measured by hand, or list those kept, beside the heights.");
  add_common(*verb, options.common);
  add_place(*verb, options.place,
            "In place of both: metres east and north in the site's map frame");
  takes_number(verb->add_option("--heading", options.heading_deg,
                                "Which way a rig would face, clockwise from map north (the "
                                "trail's, as drawn)"),
               "DEG", {0, 360})
      ->group(kMeasuredGroup);
  takes_number(
      verb->add_option("--grade", options.grade_deg, "Along that way; + climbs, - goes down"),
      "DEG", {-kSteepestDeg, kSteepestDeg})
      ->group(kMeasuredGroup);
  takes_number(verb->add_option("--cross-slope", options.cross_slope_deg,
                                "Square to it; + falls away to the right, - to the left"),
               "DEG", {-kSteepestDeg, kSteepestDeg})
      ->group(kMeasuredGroup);
  verb->add_option("--instrument", options.instrument, "What it was measured with")
      ->type_name("TEXT")
      ->group(kMeasuredGroup);
  add_person(*verb, options.person, "Person who measured, of the site's list")
      ->group(kMeasuredGroup);
  add_file(*verb, options.csv, {"--csv", "Write every check as a row of a table"});
  return {verb, guide_to_field_check()};
}

}  // namespace rimehaul::app
