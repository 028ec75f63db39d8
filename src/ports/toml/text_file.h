// Reads a text file that a stranger may have written: no devices, no way out of the folder, no
// flood.
#pragma once

#include <string>

namespace rimehaul::ports::toml {

/// A file of the site folder and what people call it.
struct TextFile {
  std::string path;
  std::string shown;  ///< relative to the folder, "rigs.toml"; names the file in faults
};

/// The bytes of a regular file of at most 1 MB and lines of at most 4096 bytes. A link must stay in
/// its folder. Throws BadInput otherwise.
[[nodiscard]] std::string guarded_text(const TextFile& file);

}  // namespace rimehaul::ports::toml
