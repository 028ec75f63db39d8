#include "ports/cairo/tag_attribute.h"

#include <algorithm>

#include "base/require.h"

namespace rimehaul::ports::cairo {

// As written: key, then name. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::string tag_attribute(std::string_view key, std::string_view name) {
  const bool is_plain = std::ranges::all_of(name, [](char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || letter == ' ';
  });
  base::require(is_plain, "places are named in small letters, digits and blanks");
  return std::string{key} + "='" + std::string{name} + "'";
}

}  // namespace rimehaul::ports::cairo
