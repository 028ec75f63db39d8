// A finished sheet as bytes, with the words that stand in for its pictures.
#pragma once

#include <string>
#include <vector>

namespace rimehaul::card {

struct Printed {
  std::string bytes;
  std::vector<std::string> figure_words;  ///< one for each figure, in order
};

}  // namespace rimehaul::card
