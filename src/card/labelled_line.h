// A line of a report that is told with a label beside it.
#pragma once

#include <string>

namespace rimehaul::card {

struct LabelledLine {
  std::string label;
  std::string text;
};

}  // namespace rimehaul::card
