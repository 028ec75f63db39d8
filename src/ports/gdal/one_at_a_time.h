// One holder of a file at a time within this program: SQLite keeps other programs out by locks that
// any closing of the file in this one would drop.
#pragma once

#include <string>

#include "units/quantities.h"

namespace rimehaul::ports::gdal {

class OneAtATime {
 public:
  /// Waits so long for whoever holds the file of that canonical path; throws BadInput, with the
  /// name for people, when that is not enough.
  struct File {
    std::string path;
    std::string shown;
  };
  OneAtATime(const File& file, units::Seconds patience);
  ~OneAtATime();
  OneAtATime(const OneAtATime&) = delete;
  OneAtATime& operator=(const OneAtATime&) = delete;

 private:
  std::string path_;
};

}  // namespace rimehaul::ports::gdal
