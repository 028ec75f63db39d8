// The command line of `new`.

#include "app/new_options.h"

#include <CLI/CLI.hpp>

#include "app/option_groups.h"

namespace rimehaul::app {

namespace {

constexpr const char* kNewExamples =
    "Examples:\n"
    "  rimehaul new fell --heights survey/heights.tif --trails survey/trails.geojson\n"
    "  rimehaul new fell --heights west.tif --heights east.tif --trails trails.gpkg \\\n"
    "      --stations stations.gpkg --name \"Long Fell\"\n"
    "The files are copied; yours stay as they are. What they do not say is left open and told.\n"
    "Ends with 0 when the folder was made and its check finds no fault, 1 when faults are left\n"
    "to be mended, 3 when no folder was made.";

}  // namespace

CLI::App* add_new(CLI::App& program, NewOptions& options) {
  CLI::App* verb =
      program.add_subcommand("new", "Make a site folder from your own files, and check it");
  verb->add_option("dir", options.common.site, "Folder to make; must not be there, or be empty")
      ->required();
  add_answer(*verb, options.common);
  verb->add_option("--heights", options.heights,
                   "Raster of heights; may be given again for more tiles")
      ->required()
      ->type_name("FILE")
      ->expected(1)
      ->take_all();
  verb->add_option("--trails", options.trails, "Trails as lines")->required()->type_name("FILE");
  verb->add_option("--stations", options.stations, "Stations as points")->type_name("FILE");
  verb->add_option("--name", options.name, "The site's name (the folder's)")->type_name("NAME");
  verb->footer(kNewExamples);
  return verb;
}

}  // namespace rimehaul::app
