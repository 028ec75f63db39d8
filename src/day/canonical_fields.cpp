#include "day/canonical_fields.h"

namespace rimehaul::day {

CanonicalFields& CanonicalFields::add(std::string_view text) {
  text_ += std::to_string(text.size());
  text_ += ':';
  text_ += text;
  text_ += '\n';
  return *this;
}

CanonicalFields& CanonicalFields::add(std::int64_t number) {
  return add(std::string_view{std::to_string(number)});
}

CanonicalFields& CanonicalFields::add(units::Instant moment) {
  return add(std::string_view{units::text_of(moment)});
}

CanonicalFields& CanonicalFields::add(const base::Digest& digest) {
  return add(std::string_view{digest.hex()});
}

}  // namespace rimehaul::day
