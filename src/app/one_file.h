// Whether two paths lead to one file.
#pragma once

#include <filesystem>
#include <string>

namespace rimehaul::app {

/// Where a link leads in the end, whether or not something is there.
[[nodiscard]] std::filesystem::path end_of_links(std::filesystem::path path);

/// Whether two paths are one file, however they are spelt and whatever links lead there; also where
/// nothing is there yet. A pipe or a device is no such file.
[[nodiscard]] bool are_one_file(const std::string& one, const std::string& other);

}  // namespace rimehaul::app
