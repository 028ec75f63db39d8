#include "app/one_file.h"

#include <system_error>

namespace rimehaul::app {

namespace fs = std::filesystem;

fs::path end_of_links(fs::path path) {
  std::error_code trouble;
  for (int links = 0; links < 40 && fs::is_symlink(fs::symlink_status(path, trouble)); ++links) {
    const fs::path next = fs::read_symlink(path, trouble);
    path = next.is_absolute() ? next : path.parent_path() / next;
  }
  return path;
}

// Either order will do. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool are_one_file(const std::string& one, const std::string& other) {
  std::error_code trouble;
  const fs::file_status status = fs::status(one, trouble);
  if (fs::exists(status) && !fs::is_regular_file(status) && !fs::is_directory(status)) {
    return false;
  }
  // The second holds for what is there, also by a hard link; the first for what is not.
  return fs::weakly_canonical(end_of_links(one), trouble) ==
             fs::weakly_canonical(end_of_links(other), trouble) ||
         fs::equivalent(one, other, trouble);
}

}  // namespace rimehaul::app
