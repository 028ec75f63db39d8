#include "app/plain_words.h"

#include "app/status.h"
#include "base/one_line.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::app {

void expect_plain_words(const std::vector<std::string>& words) {
  constexpr std::size_t kMostBytes = 4096;  // as long as a path may be
  for (std::size_t i = 0; i < words.size(); ++i) {
    const std::string place = "word " + std::to_string(i + 1) + " of the command";
    if (words[i].empty()) {
      throw WrongUsage{place + " is empty; write what belongs there, or leave the option out"};
    }
    if (words[i].size() > kMostBytes) {
      throw WrongUsage{place + " is longer than 4096 bytes; write a shorter one"};
    }
    const std::string shown = place + ", \"" + ports::gdal::printable(words[i]) + "\", ";
    if (!ports::gdal::is_utf8(words[i])) {
      throw WrongUsage{shown + "is not UTF-8; write names in UTF-8"};
    }
    if (base::has_controls(words[i])) {
      throw WrongUsage{shown + "holds control characters; write it as one line of plain letters"};
    }
  }
}

}  // namespace rimehaul::app
