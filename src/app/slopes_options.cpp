// The command line of `slopes`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_slopes() {
  return {
      .examples = {{"Slope, aspect and slope error of the site's heights, for any map program:",
                    "rimehaul slopes routes/marrowfell --into slopes"},
                   {"Where a loaded rig may head on moist snow, and with which share:",
                    "rimehaul slopes routes/marrowfell --rig Broadfoot --load 100 --snow moist "
                    "--into slopes --layer share --layer directions"}},
      .endings = {{Status::yes, "the rasters are written"},
                  {Status::honest_no, "they are, and no cell is open to the rig"}},
      .notes = {"A raster over the ground is no judgement of a way: it knows no trail, no bend, "
                "no mark and no avalanche. Plan a route, or audit."}};
}

}  // namespace

Verb add_slopes(CLI::App& program, SlopesOptions& options) {
  CLI::App* verb = program.add_subcommand(
      "slopes", "Write rasters of slope, aspect and error, and of where a rig may head.");
  add_common(*verb, options.common);
  takes(verb->add_option(kIntoOption, options.into,
                         "Folder to write them into; made where it is not there"),
        Value::folder)
      ->required()
      ->group(kAnswerGroup);
  again(takes(verb->add_option("--layer", options.layers,
                               "One raster: " + words_listed(Value::layer) +
                                   "; may be given again (all; the last two with a rig)"),
              Value::layer))
      ->group(kAnswerGroup);
  verb->add_flag("--plain", options.plain,
                 "Write plain tiled GeoTIFF: quicker, not compressed, without overviews")
      ->group(kAnswerGroup);
  CLI::Option* rig =
      takes(verb->add_option("--rig", options.rig.name, "Rig of the site (none)"), Value::rig)
          ->group(kRigGroup);
  add_load(*verb, options.rig);
  CLI::Option* snow =
      takes(verb->add_option("--snow", options.wetness,
                             "Snow taken to lie everywhere: " + words_listed(Value::snow_class)),
            Value::snow_class)
          ->group(kSnowGroup);
  CLI::Option* surface =
      takes(verb->add_option("--surface", options.surface,
                             "Its surface: " + words_listed(Value::surface) + " (fresh)"),
            Value::surface)
          ->group(kSnowGroup);
  rig->needs(snow);
  snow->needs(rig);
  surface->needs(rig);
  for (const char* load : {"--load", "--towed-load", "--passengers", "--fuel"}) {
    verb->get_option(load)->needs(rig);
  }
  return {verb, guide_to_slopes()};
}

}  // namespace rimehaul::app
