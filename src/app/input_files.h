// The files of a site that go into its answers, with their digests.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/route_card.h"
#include "ports/toml/site_file.h"
#include "snow/snow.h"

namespace rimehaul::app {

/// A file and the folder that its name is relative to.
struct FileIn {
  std::string folder;
  std::string shown;
};

/// Where a file lies.
[[nodiscard]] std::string path_of(const FileIn& file);
/// The file's name and those of the files beside it that belong to it by name (a Shapefile's table,
/// a grid's reference system), as far as they are there.
[[nodiscard]] std::vector<std::string> with_siblings(const FileIn& file);
/// The folder that the height rasters lie in.
[[nodiscard]] std::string heights_folder(const ports::toml::SiteFile& site);

/// Paths of all files that a site is made of: site.toml, those it names, and those that belong to
/// them by name; whether or not they can be read.
[[nodiscard]] std::vector<std::string> files_named(const ports::toml::SiteFile& site);

/// Digests of those files, the snow report's with `report` alone. What cannot be read is left out:
/// reading it has been a fault already.
[[nodiscard]] std::vector<card::InputFile> input_files(
    const ports::toml::SiteFile& site, const std::optional<snow::SnowReport>& report);

/// The snow report given beside the site.
[[nodiscard]] card::InputFile snow_report_file(const std::string& path,
                                               const snow::SnowReport& report);

/// The list of errands given beside the site.
[[nodiscard]] card::InputFile errands_file(const std::string& path);

/// Those that say what a rig is and may do: ground and day do not come into it.
[[nodiscard]] std::vector<card::InputFile> inputs_of_rigs(std::vector<card::InputFile> inputs);

}  // namespace rimehaul::app
