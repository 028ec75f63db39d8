#include "app/input_files.h"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "base/fault.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {

namespace {

namespace fs = std::filesystem;

/// What files of a site are for, and their date where the site states one.
struct Kind {
  std::string folder;
  std::string shown;  ///< that folder relative to the site's, "" for the site's own
  std::string what;
  snow::Told date;
};

card::InputFile digested(const FileIn& file, const Kind& kind) {
  const std::string path = path_of(file);
  return {.name = path_of({kind.shown, file.shown}),
          .what = kind.what,
          .date = kind.date.words,
          .digest = ports::openssl::digest_of_file({path, path}),
          .observed = kind.date.observed};
}

void add_files(const Kind& kind, const std::vector<std::string>& names,
               std::vector<card::InputFile>& inputs) {
  for (const std::string& name : names) {
    for (const std::string& file : with_siblings({kind.folder, name})) {
      try {
        inputs.push_back(digested({kind.folder, file}, kind));
      } catch (const base::BadInput&) {
        continue;
      }
    }
  }
}

}  // namespace

std::vector<std::string> with_siblings(const FileIn& file) {
  std::vector<std::string> files{file.shown};
  const fs::path path{file.shown};
  if (path.extension() != ".shp" && path.extension() != ".asc") {
    return files;
  }
  for (const char* extension : {".cpg", ".dbf", ".prj", ".shx"}) {
    fs::path sibling = path;
    sibling.replace_extension(extension);
    std::error_code ignored;
    if (fs::is_regular_file(fs::path{file.folder} / sibling, ignored)) {
      files.push_back(sibling.string());
    }
  }
  return files;
}

std::string path_of(const FileIn& file) {
  return (fs::path{file.folder} / file.shown).string();
}

std::string heights_folder(const ports::toml::SiteFile& site) {
  return site.heights.folder.empty() ? site.folder : path_of({site.folder, site.heights.folder});
}

std::vector<card::InputFile> input_files(const ports::toml::SiteFile& site,
                                         const std::optional<snow::SnowReport>& report) {
  std::vector<card::InputFile> inputs;
  add_files({site.folder, "", "site", {}}, {"site.toml"}, inputs);
  add_files({heights_folder(site), site.heights.folder, "heights", {site.heights.date, {}}},
            site.heights.files, inputs);
  add_files({site.folder, "", "trails", {}}, site.trails, inputs);
  add_files({site.folder, "", "stations", {}}, site.stations, inputs);
  add_files({site.folder, "", "zones", {}}, site.zones, inputs);
  add_files({site.folder, "", "marks", {}}, site.marks, inputs);
  add_files({site.folder, "", "rigs", {}}, {site.rigs}, inputs);
  add_files({site.folder, "", "rules", {}}, {site.rules}, inputs);
  if (report) {
    add_files({site.folder, "", "snow", snow::observed_by(*report)}, {site.snow}, inputs);
  }
  return inputs;
}

card::InputFile snow_report_file(const std::string& path, const snow::SnowReport& report) {
  return digested({"", path},
                  {.folder = "", .shown = "", .what = "snow", .date = snow::observed_by(report)});
}

}  // namespace rimehaul::app
