#include "app/back_up.h"

#include <filesystem>
#include <utility>

#include "app/answer.h"
#include "base/one_line.h"
#include "ports/gdal/records_file.h"
#include "ports/json/log_json.h"
#include "ports/openssl/digest.h"
#include "ports/toml/site_file.h"

namespace rimehaul::app {

namespace {

namespace fs = std::filesystem;

base::BadInput is_there_already(const std::string& into) {
  return base::BadInput{{into,
                         "",
                         "there is something of that name, and no copy goes over it",
                         "name a file that is not there yet",
                         {}}};
}

/// Everything wrong with the copy: it must be what it is a copy of, and that must hold.
std::vector<std::string> defects_of_copy(const fs::path& copy) {
  const ports::gdal::RecordsPlace place{.folder = copy.parent_path().string(),
                                        .name = copy.filename().string()};
  std::vector<std::string> defects = ports::gdal::damage_in(place);
  const auto records = ports::gdal::read_records(place);
  for (std::string& defect : day::defects_of(*records, {}, ports::openssl::digest_of)) {
    defects.push_back(std::move(defect));
  }
  return defects;
}

day::LogHead head_in(const fs::path& copy) {
  return ports::gdal::read_records(
             {.folder = copy.parent_path().string(), .name = copy.filename().string()})
      ->head();
}

Status tell_of_none(const BackupOptions& options, const std::string& site, const Outside& outside) {
  give_answer({.text = "No records yet: nothing was signed, allowed, issued or measured at " +
                       base::one_line(site) + ", so that there is nothing to copy.\n",
               .json = ports::json::backup_json({.site = site, .file = ""})},
              options.common, outside);
  return Status::honest_no;
}

}  // namespace

Status back_up(const BackupOptions& options, const Outside& outside) {
  const std::string site = ports::toml::read_site_file(options.common.site).data.name;
  const ports::gdal::RecordsPlace place{.folder = options.common.site};
  if (!ports::gdal::is_there(place)) {
    return tell_of_none(options, site, outside);
  }
  std::error_code trouble;
  if (fs::exists(fs::symlink_status(options.into, trouble))) {
    throw is_there_already(options.into);
  }
  auto copy = std::make_unique<FreshFile>(options.into, fs::absolute(options.into));
  ports::gdal::back_up(place, {.path = copy->path(), .shown = options.into});
  const std::vector<std::string> defects = defects_of_copy(copy->path());
  if (!defects.empty()) {
    throw base::BadInput{{place.shown(),
                          "",
                          "it does not hold: " + defects.front(),
                          "see all of it by rimehaul log --verify, and keep the older copies",
                          {}}};
  }
  const day::LogHead head = head_in(copy->path());
  Answer answer{.text = options.into + ": a copy of the records of " + base::one_line(site) +
                        "; it holds, and its head is " + day::text_of(head) + ".\n",
                .json = ports::json::backup_json({site, options.into, head})};
  answer.made.push_back(std::move(copy));
  give_answer(std::move(answer), options.common, outside);
  return Status::yes;
}

}  // namespace rimehaul::app
