// One's own files on their way into a new site folder, and the folder on its way to its name.
#pragma once

#include <array>
#include <filesystem>
#include <list>
#include <string>
#include <string_view>
#include <vector>

#include "app/ending_signals.h"

namespace rimehaul::app {

/// Names in a site folder that the program keeps for files of its own.
inline constexpr std::array<std::string_view, 5> kOurNames{"site.toml", "rules.toml", "rigs.toml",
                                                           "snow.toml", "records.gpkg"};

/// Whether a name can stand in site.toml: one line of UTF-8, at most 200 bytes, no control letters.
[[nodiscard]] bool fits_site_file(const std::string& name);

/// Where a new site is to lie: absolute, in a folder that exists; nothing is there yet, or an empty
/// folder. Throws BadInput otherwise.
[[nodiscard]] std::filesystem::path place_for_site(const std::string& folder);

/// A folder beside the place, which goes away with all it holds unless it was given its name, also
/// when a signal ends the program.
class Unfinished {
 public:
  explicit Unfinished(std::filesystem::path place);
  ~Unfinished();
  Unfinished(const Unfinished&) = delete;
  Unfinished& operator=(const Unfinished&) = delete;

  [[nodiscard]] std::string folder() const { return folder_.string(); }
  /// Copies a file and those that belong to it by name; returns its name in the folder. Only
  /// regular files, no links. Throws BadInput.
  std::string take(const std::string& given);
  /// A file of that name in the folder. Throws BadInput.
  void write(const std::string& name, std::string_view bytes);
  /// Gives the folder its name. Throws BadInput.
  void finish();

 private:
  void copy(const std::filesystem::path& from, const std::string& given);

  std::filesystem::path place_;
  std::filesystem::path folder_;
  std::vector<std::filesystem::path> taken_;  ///< canonical
  std::list<SweptPath> swept_;                ///< the folder and what is in it
};

}  // namespace rimehaul::app
