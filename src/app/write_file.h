// Writes files so that older ones stay whole until the new ones are complete.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "app/fresh_file.h"

namespace rimehaul::app {

struct FileToWrite {
  std::string path;
  std::string bytes;
};

/// Writes every file beside its place, brings it to the disk, and only then gives all of them their
/// names. A place that is a link is followed; a device or a pipe is written straight to. Throws
/// BadInput naming the file that cannot be written; nothing is left behind then, nor when a signal
/// ends the program. Files that were made already get their names with them.
void write_files(const std::vector<FileToWrite>& files,
                 const std::vector<std::unique_ptr<FreshFile>>& made = {});

/// The same for one.
void write_file(const std::string& path, std::string_view bytes);

}  // namespace rimehaul::app
