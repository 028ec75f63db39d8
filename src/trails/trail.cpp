// What a trail must say of itself before it may be driven.
#include "trails/trail.h"

namespace rimehaul::trails {

std::vector<std::string> Trail::missing() const {
  std::vector<std::string> names;
  const auto note = [&names](bool given, const char* column) {
    if (!given) {
      names.emplace_back(column);
    }
  };
  note(direction.has_value(), "direction");
  note(width.has_value(), "width_m");
  note(lanes.has_value(), "lanes");
  note(groomed.has_value(), "groomed");
  note(shared_with_skiers.has_value(), "skiers");
  note(hours.has_value(), "open_from");
  note(hours.has_value(), "open_to");
  note(line_error.has_value(), "error_m");
  return names;
}

}  // namespace rimehaul::trails
