#include "base/joined.h"

namespace rimehaul::base {

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
  std::string all;
  for (const std::string& part : parts) {
    if (!all.empty()) {
      all += between;
    }
    all += part;
  }
  return all;
}

}  // namespace rimehaul::base
