// The files that something was made from, as they are kept in the records.
#pragma once

#include <string>

#include "card/made_from.h"
#include "day/record_book.h"

namespace rimehaul::app {

/// A file that was read, by the path that it is read at again.
struct FileToFreeze {
  std::string path;
  const card::InputFile& input;  ///< its name and digest, as the records bear them
};

/// Reads a file again and freezes it. Throws BadInput where it cannot be read, or is not any more
/// what was judged.
void freeze(const FileToFreeze& file, day::Writing& writing);

}  // namespace rimehaul::app
