// A digest as text.
#include "base/digest.h"

#include <doctest/doctest.h>

#include <cstdint>

namespace rimehaul {

TEST_CASE("a digest is 64 lower-case digits, leading zeros kept, in the order of its bytes") {
  base::Digest digest;
  CHECK(digest.hex() == std::string(64, '0'));
  for (std::size_t i = 0; i < digest.bytes.size(); ++i) {
    digest.bytes.at(i) = static_cast<std::uint8_t>(i * 8 + 7);
  }
  CHECK(digest.hex() == "070f171f272f373f474f575f676f777f878f979fa7afb7bfc7cfd7dfe7eff7ff");
}

TEST_CASE("digests that differ in the last byte differ") {
  base::Digest one;
  base::Digest other;
  CHECK(one == other);
  other.bytes.back() = 1;
  CHECK(one != other);
  CHECK(one < other);
}

}  // namespace rimehaul
