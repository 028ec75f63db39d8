// The files that something was made from, as they are kept in the records.
#pragma once

#include <cstdint>
#include <string>

#include "app/load_site.h"
#include "day/records.h"

namespace rimehaul::app {

struct FileToFreeze {
  std::int64_t bytes = 0;
  day::Frozen how = day::Frozen::whole;
  std::string content;  ///< empty where it is kept by its digest
};

/// Reads a file of the site again. Throws BadInput where it cannot be read, or is not any more what
/// was judged.
[[nodiscard]] FileToFreeze file_to_freeze(const LoadedSite& site, const card::InputFile& input);

}  // namespace rimehaul::app
