#include "app/own_files.h"

#include <unistd.h>

#include <algorithm>
#include <system_error>
#include <utility>

#include "app/input_files.h"
#include "app/write_file.h"
#include "base/fault.h"
#include "base/one_line.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::app {

namespace {

namespace fs = std::filesystem;

struct Trouble {
  std::string problem;
  std::string remedy;
};

base::BadInput bad(const std::string& file, Trouble trouble) {
  return base::BadInput{{file, "", std::move(trouble.problem), std::move(trouble.remedy), {}}};
}

/// A regular file, no link, whose name can stand in site.toml.
void expect_plain_file(const fs::path& path, const std::string& given) {
  std::error_code trouble;
  const fs::file_status status = fs::symlink_status(path, trouble);
  if (status.type() == fs::file_type::symlink) {
    throw bad(path.string(), {"it is a link", "give the file that it leads to"});
  }
  if (!fs::exists(status)) {
    throw bad(given, {"there is no such file", "check its name"});
  }
  if (!fs::is_regular_file(status)) {
    throw bad(given, {"this is no regular file", "name a file, not a folder or a device"});
  }
  const std::string name = path.filename().string();
  if (!fits_site_file(name) || name.starts_with('<')) {
    throw bad(given, {"its name cannot stand in site.toml",
                      "give it a name of plain letters, at most 200 bytes long"});
  }
  if (std::ranges::find(kOurNames, name) != kOurNames.end()) {
    throw bad(given, {"the site needs this name for a file of its own", "rename the file"});
  }
}

}  // namespace

bool fits_site_file(const std::string& name) {
  return base::is_one_line(name) && ports::gdal::is_utf8(name);
}

fs::path place_for_site(const std::string& folder) {
  std::error_code trouble;
  fs::path place = fs::absolute(folder, trouble).lexically_normal();
  if (!place.has_filename()) {
    place = place.parent_path();
  }
  if (trouble || !fits_site_file(place.filename().string())) {
    throw bad(folder, {"this is no name for a folder that people can read",
                       "give one of plain letters, at most 200 bytes long"});
  }
  const fs::file_status status = fs::symlink_status(place, trouble);
  if (fs::exists(status)) {
    if (!fs::is_directory(status)) {
      throw bad(folder, {"this is there already and is no folder", "name a folder to be made"});
    }
    if (!fs::is_empty(place, trouble) || trouble) {
      throw bad(folder, {"the folder is there already and not empty",
                         "name one that is not there, or write into this one by hand"});
    }
  }
  if (!fs::is_directory(place.parent_path(), trouble)) {
    throw bad(folder, {"the folder that it shall lie in is not there", "make that one first"});
  }
  return place;
}

Unfinished::Unfinished(fs::path place) : place_{std::move(place)}, folder_{place_} {
  folder_ += ".unfinished-" + std::to_string(::getpid());
  std::error_code trouble;
  const SignalsHeld held;
  if (!fs::create_directory(folder_, trouble)) {
    const std::string why = trouble ? trouble.message() : "it is there already";
    const std::string folder = folder_.string();
    folder_.clear();
    throw bad(folder, {"cannot be made: " + why, "name a folder where you may write"});
  }
  swept_.emplace_back(folder_.string());
}

Unfinished::~Unfinished() {
  if (!folder_.empty()) {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
}

std::string Unfinished::take(const std::string& given) {
  const fs::path path{given};
  expect_plain_file(path, given);
  const FileIn file{path.parent_path().string(), path.filename().string()};
  for (const std::string& each : with_siblings(file)) {
    copy(fs::path{path_of({file.folder, each})}, given);
  }
  return file.shown;
}

void Unfinished::copy(const fs::path& from, const std::string& given) {
  expect_plain_file(from, from.string());
  std::error_code trouble;
  fs::path canonical = fs::canonical(from, trouble);
  if (std::ranges::find(taken_, canonical) != taken_.end()) {
    return;
  }
  const fs::path to = folder_ / from.filename();
  if (fs::exists(fs::symlink_status(to))) {
    throw bad(given, {"another file given has the same name", "rename one of the two"});
  }
  swept_.emplace_back(to.string());
  if (!fs::copy_file(from, to, trouble) || trouble) {
    throw bad(from.string(), {"cannot be copied: " + trouble.message(),
                              "see that it can be read and that there is room"});
  }
  taken_.push_back(std::move(canonical));
}

void Unfinished::write(const std::string& name, std::string_view bytes) {
  const fs::path to = folder_ / name;
  swept_.emplace_back(to.string());
  write_file(to.string(), bytes);
}

void Unfinished::finish() {
  std::error_code trouble;
  const SignalsHeld held;
  fs::rename(folder_, place_, trouble);
  if (trouble) {
    throw bad(place_.string(),
              {"cannot be made: " + trouble.message(), "name a folder that is not there"});
  }
  folder_.clear();
  swept_.clear();
}

}  // namespace rimehaul::app
