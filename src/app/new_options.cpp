// The command line of `new`.
#include <CLI/CLI.hpp>

#include "app/option_groups.h"
#include "app/value_kinds.h"
#include "app/verb.h"

namespace rimehaul::app {

namespace {

Guide guide_to_new() {
  return {
      .examples = {{"From a raster of heights and the trails as lines:",
                    "rimehaul new fell --heights dem-samples/marrowfell.tif "
                    "--trails routes/marrowfell/trails.geojson",
                    Status::honest_no},
                   {"With stations and a name of its own, all that is found and missing as JSON:",
                    "rimehaul new long-fell --heights dem-samples/marrowfell.tif "
                    "--trails routes/marrowfell/trails.geojson "
                    "--stations routes/marrowfell/stations.geojson --name \"Long Fell\" --json -",
                    Status::honest_no}},
      .endings = {{Status::yes, "the folder was made and its check finds no fault"},
                  {Status::honest_no, "it was made, and faults are left to be mended"},
                  {Status::bad_input, "no folder was made; nothing is left behind"}},
      .notes = {"The files are copied; yours stay as they are. What they do not say is left open "
                "and told."}};
}

}  // namespace

Verb add_new(CLI::App& program, NewOptions& options) {
  CLI::App* verb =
      program.add_subcommand(kNewVerb, "Make a site folder from your own files, and check it.");
  takes(verb->add_option("DIR", options.common.site,
                         "Folder to make; must not be there, or be empty"),
        Value::folder)
      ->required();
  again(takes(verb->add_option("--heights", options.heights,
                               "Raster of heights; may be given again for more tiles"),
              Value::file))
      ->required()
      ->group(kFilesGroup);
  takes(verb->add_option("--trails", options.trails, "Trails as lines"), Value::file)
      ->required()
      ->group(kFilesGroup);
  takes(verb->add_option("--stations", options.stations, "Stations as points"), Value::file)
      ->group(kFilesGroup);
  takes(verb->add_option("--name", options.name, "The site's name (the folder's)"), Value::name)
      ->group(kAnswerGroup);
  add_answer(*verb, options.common);
  return {verb, guide_to_new()};
}

}  // namespace rimehaul::app
