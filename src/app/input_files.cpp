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

/// Files of one kind.
struct Part {
  Kind kind;
  std::vector<std::string> names;
};

/// A site without its snow report.
std::vector<Part> parts_of(const ports::toml::SiteFile& site) {
  const auto named = [](const std::string& file) {
    return file.empty() ? std::vector<std::string>{} : std::vector{file};
  };
  const auto own = [&site](const char* what) { return Kind{site.folder, "", what, {}}; };
  return {
      {own("site"), {"site.toml"}},
      {{heights_folder(site), site.heights.folder, "heights", {site.heights.date, {}}},
       site.heights.files},
      {own("trails"), site.trails},
      {own("stations"), site.stations},
      {own("zones"), site.zones},
      {own("marks"), site.marks},
      {own("rigs"), {site.rigs}},
      {own("rules"), {site.rules}},
      {own("people"), named(site.people)},
      {own("routes"), named(site.routes)},
  };
}

/// The report as a part; none where the site names none.
Part snow_part(const ports::toml::SiteFile& site, const snow::Told& date) {
  return {{site.folder, "", "snow", date},
          site.snow.empty() ? std::vector<std::string>{} : std::vector{site.snow}};
}

void add_files(const Part& part, std::vector<card::InputFile>& inputs) {
  for (const std::string& name : part.names) {
    for (const std::string& file : with_siblings({part.kind.folder, name})) {
      try {
        inputs.push_back(digested({part.kind.folder, file}, part.kind));
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

std::vector<std::string> files_named(const ports::toml::SiteFile& site) {
  std::vector<Part> parts = parts_of(site);
  parts.push_back(snow_part(site, {}));
  std::vector<std::string> files;
  for (const Part& part : parts) {
    for (const std::string& name : part.names) {
      for (const std::string& file : with_siblings({part.kind.folder, name})) {
        files.push_back(path_of({part.kind.folder, file}));
      }
    }
  }
  return files;
}

std::vector<card::InputFile> input_files(const ports::toml::SiteFile& site,
                                         const std::optional<snow::SnowReport>& report) {
  std::vector<card::InputFile> inputs;
  for (const Part& part : parts_of(site)) {
    add_files(part, inputs);
  }
  if (report) {
    add_files(snow_part(site, snow::observed_by(*report)), inputs);
  }
  return inputs;
}

card::InputFile snow_report_file(const std::string& path, const snow::SnowReport& report) {
  return digested({"", path},
                  {.folder = "", .shown = "", .what = "snow", .date = snow::observed_by(report)});
}

card::InputFile errands_file(const std::string& path) {
  return digested({"", path}, {.folder = "", .shown = "", .what = "errands", .date = {}});
}

std::vector<card::InputFile> inputs_of_rigs(std::vector<card::InputFile> inputs) {
  std::erase_if(inputs, [](const card::InputFile& input) {
    return input.what != "site" && input.what != "rigs" && input.what != "rules";
  });
  return inputs;
}

}  // namespace rimehaul::app
