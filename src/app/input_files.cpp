#include "app/input_files.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "base/fault.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {

namespace {

namespace fs = std::filesystem;

/// Files beside one that share its stem, for formats that are several files.
std::vector<std::string> with_siblings(const std::string& folder, const std::string& shown) {
  std::vector<std::string> files{shown};
  const fs::path path{shown};
  if (path.extension() != ".shp" && path.extension() != ".asc") {
    return files;
  }
  for (const char* extension : {".cpg", ".dbf", ".prj", ".shx"}) {
    fs::path sibling = path;
    sibling.replace_extension(extension);
    std::error_code ignored;
    if (fs::is_regular_file(fs::path{folder} / sibling, ignored)) {
      files.push_back(sibling.string());
    }
  }
  return files;
}

/// What files of a site are for, and their date where the site states one.
struct Kind {
  std::string folder;
  std::string shown;  ///< that folder relative to the site's, "" for the site's own
  std::string what;
  std::string date;
};

void add_files(const Kind& kind, const std::vector<std::string>& names,
               std::vector<card::InputFile>& inputs) {
  for (const std::string& name : names) {
    for (const std::string& file : with_siblings(kind.folder, name)) {
      try {
        card::InputFile input = input_file(path_in(kind.folder, file), kind.what);
        input.name = path_in(kind.shown, file);
        input.date = kind.date;
        inputs.push_back(std::move(input));
      } catch (const base::BadInput&) {
        continue;
      }
    }
  }
}

}  // namespace

std::string path_in(const std::string& folder, const std::string& shown) {
  return (fs::path{folder} / shown).string();
}

std::string heights_folder(const ports::toml::SiteFile& site) {
  return site.heights.folder.empty() ? site.folder : path_in(site.folder, site.heights.folder);
}

std::vector<card::InputFile> input_files(const ports::toml::SiteFile& site,
                                         const std::optional<snow::SnowReport>& report) {
  std::vector<card::InputFile> inputs;
  add_files({site.folder, "", "site", ""}, {"site.toml"}, inputs);
  add_files({heights_folder(site), site.heights.folder, "heights", site.heights.date},
            site.heights.files, inputs);
  add_files({site.folder, "", "trails", ""}, site.trails, inputs);
  add_files({site.folder, "", "stations", ""}, site.stations, inputs);
  add_files({site.folder, "", "zones", ""}, site.zones, inputs);
  add_files({site.folder, "", "marks", ""}, site.marks, inputs);
  add_files({site.folder, "", "rigs", ""}, {site.rigs}, inputs);
  add_files({site.folder, "", "rules", ""}, {site.rules}, inputs);
  if (report) {
    add_files({site.folder, "", "snow", observed_text(*report)}, {site.snow}, inputs);
  }
  return inputs;
}

card::InputFile input_file(const std::string& path, const std::string& what) {
  return {.name = path,
          .what = what,
          .date = "",
          .digest = ports::openssl::digest_of_file({path, path})};
}

std::string observed_text(const snow::SnowReport& report) {
  std::string text = "observed by " + report.observer;
  return report.observed ? text + " " + units::text_of(*report.observed) : text;
}

}  // namespace rimehaul::app
