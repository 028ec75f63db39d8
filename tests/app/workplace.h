// A copy of what the documents' commands speak of, to run them in as their reader would.
#pragma once

#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <string>

#include "app/tiny_site.h"

namespace rimehaul::testing {

/// A folder with the demo site, its heights, an empty `docs`, and the tiny site's files as
/// somebody's `survey`. While it lives it is the folder that relative paths start from.
class Workplace {
 public:
  Workplace() : before_{std::filesystem::current_path()} {
    namespace fs = std::filesystem;
    static int count = 0;
    folder_ = fs::temp_directory_path() /
              ("rimehaul-workplace-" + std::to_string(::getpid()) + "-" + std::to_string(++count));
    fs::create_directories(folder_ / "docs");
    const fs::path root{RIMEHAUL_ROOT};
    for (const char* part : {"routes", "dem-samples"}) {
      fs::copy(root / part, folder_ / part, fs::copy_options::recursive);
    }
    fs::copy(survey_.folder(), folder_ / "survey", fs::copy_options::recursive);
    fs::current_path(folder_);
  }
  ~Workplace() {
    std::error_code ignored;
    std::filesystem::current_path(before_, ignored);
    std::filesystem::remove_all(folder_, ignored);
  }
  Workplace(const Workplace&) = delete;
  Workplace& operator=(const Workplace&) = delete;

 private:
  TinySite survey_;
  std::filesystem::path before_;
  std::filesystem::path folder_;
};

}  // namespace rimehaul::testing
