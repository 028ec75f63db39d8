// A folder to work in, with the tiny site's files as somebody's survey beside it.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "app/tiny_site.h"

namespace rimehaul::testing {

inline std::string text_in(const std::filesystem::path& path) {
  std::ifstream file{path, std::ios::binary};
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

/// An empty folder to work in, with the tiny site's files as a stranger's survey beside it.
class Desk {
 public:
  Desk() {
    static int count = 0;
    desk_ = std::filesystem::temp_directory_path() /
            ("rimehaul-desk-" + std::to_string(::getpid()) + "-" + std::to_string(++count));
    std::filesystem::create_directories(desk_);
  }
  ~Desk() {
    std::error_code ignored;
    std::filesystem::remove_all(desk_, ignored);
  }
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  [[nodiscard]] std::string path(const std::string& name) const { return (desk_ / name).string(); }
  [[nodiscard]] std::string given(const std::string& name) const { return survey_.path(name); }
  [[nodiscard]] const TinySite& survey() const { return survey_; }
  [[nodiscard]] bool is_empty() const { return std::filesystem::is_empty(desk_); }

  /// `new fell` with files of the survey; other options behind.
  [[nodiscard]] Ran make(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words{"new",       path("fell"),
                                   "--heights", given("heights.asc"),
                                   "--trails",  given("trails.geojson")};
    words.insert(words.end(), more.begin(), more.end());
    return run_command(words);
  }
  [[nodiscard]] Ran make_of(const std::string& heights, const std::string& trails) const {
    return run_command({"new", path("fell"), "--heights", heights, "--trails", trails});
  }

 private:
  std::filesystem::path desk_;
  TinySite survey_;
};

}  // namespace rimehaul::testing
