// Our own promises: kept quietly, broken loudly.
#include "base/require.h"

#include <doctest/doctest.h>

#include <string>

namespace rimehaul {

TEST_CASE("a promise that holds passes, a broken one says what broke") {
  CHECK_NOTHROW(base::require(true, "never read"));
  try {
    base::require(false, "the route outlived its site");
    FAIL("a broken promise went through");
  } catch (const base::OurFault& fault) {
    CHECK(std::string{fault.what()} == "the route outlived its site");
  }
}

}  // namespace rimehaul
