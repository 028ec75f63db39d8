// What was made of one's own files: a site folder, what it holds, and what must still be said.
#pragma once

#include <string>
#include <vector>

#include "card/site_report.h"

namespace rimehaul::card {

/// One thing that no file says and the program does not make up.
struct ToSay {
  std::string file;  ///< where to say it
  std::string key;   ///< under which key or column
  std::string what;  ///< what is wanted, and what holds until then
};

struct NewSite {
  int schema = 1;
  std::string folder;
  std::vector<std::string> files;  ///< in the folder
  std::vector<std::string> found;  ///< what the given files say of themselves
  std::vector<ToSay> to_say;
  SiteReport check;
};

/// As text, no line longer than `columns` (60 or more) except the faults of the check.
[[nodiscard]] std::string text_of(const NewSite& made, int columns);

}  // namespace rimehaul::card
