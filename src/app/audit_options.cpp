#include "app/audit_options.h"

#include <CLI/CLI.hpp>

namespace rimehaul::app {

namespace {

constexpr const char* kAuditExamples =
    "Examples:\n"
    "  rimehaul audit routes/marrowfell --now 2026-02-01T18:00:00Z --for \"A. Officer\"\n"
    "  rimehaul audit routes/marrowfell --rig Broadfoot --snow moist --snow wet --load 100 \\\n"
    "      --visibility 400 --bulletin 2 --wind 18 --csv audit.csv --geojson audit.geojson \\\n"
    "      --pdf audit.pdf\n"
    "With no load given, every rig is judged full and empty: too little ballast can close a trail "
    "too.\n"
    "Ends with 1 when anything exceeds a limit, is refused or is not known (a failed audit), 0 "
    "when "
    "nothing is.";

}  // namespace

CLI::App* add_audit(CLI::App& program, AuditOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "audit", "Judge every metre of every trail against every limit, and list what exceeds");
  add_common(*verb, options.common);
  verb->add_option("--rig", options.rigs, "Rig to audit; may be given again (all of the site)")
      ->type_name("NAME")
      ->expected(1)
      ->take_all();
  add_load(*verb, options.load);
  verb->add_option("--snow", options.wetness,
                   "Snow assumed everywhere: dry, moist, wet, very_wet or slush; may be given "
                   "again (all five)")
      ->type_name("CLASS")
      ->expected(1)
      ->take_all();
  verb->add_option("--surface", options.snow.surface,
                   "Its surface: groomed, fresh, refrozen or ice (groomed)")
      ->type_name("KIND");
  add_weather(*verb, options.snow);
  add_depart(*verb, options.depart);
  verb->add_option("--for", options.for_whom, "Person that the audit is made for")
      ->type_name("NAME");
  verb->add_option("--csv", options.csv, "Write every exceedance as a table")->type_name("FILE");
  verb->add_option("--geojson", options.geojson, "Write every exceedance as lines on the globe")
      ->type_name("FILE");
  verb->add_option("--pdf", options.pdf, "Write the printed summary with maps of shares")
      ->type_name("FILE");
  verb->footer(kAuditExamples);
  return verb;
}

}  // namespace rimehaul::app
