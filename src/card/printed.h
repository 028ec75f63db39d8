// What printing hands around: finished sheets as bytes, and the symbol that a camera reads.
#pragma once

#include <string>
#include <vector>

namespace rimehaul::card {

struct Printed {
  std::string bytes;
  std::vector<std::string> figure_words;  ///< one for each figure, in order
};

/// A square symbol that a camera reads: side x side modules, row by row, true is dark.
struct QrSymbol {
  int side = 0;
  std::vector<bool> dark;
};

}  // namespace rimehaul::card
