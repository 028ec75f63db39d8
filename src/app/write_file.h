// Writes a file so that an older one stays whole until the new one is complete.
#pragma once

#include <string>
#include <string_view>

namespace rimehaul::app {

/// Writes through a temporary file beside the target and renames it. Throws BadInput naming the
/// file when it cannot be written; nothing is left behind then.
void write_file(const std::string& path, std::string_view bytes);

}  // namespace rimehaul::app
