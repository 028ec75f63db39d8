// Fields run together so that no two lists of fields give one text.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/digest.h"
#include "units/clock.h"

namespace rimehaul::day {

/// Each field is its length in bytes, a colon, its bytes and a line feed.
class CanonicalFields {
 public:
  /// `kind` names what is told and the version of its list of fields.
  explicit CanonicalFields(std::string_view kind) { add(kind); }

  CanonicalFields& add(std::string_view text);
  CanonicalFields& add(std::int64_t number);
  CanonicalFields& add(units::Instant moment);
  CanonicalFields& add(const base::Digest& digest);

  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

}  // namespace rimehaul::day
