// Texts run on as one.
#include "base/joined.h"

#include <doctest/doctest.h>

using rimehaul::base::joined;

TEST_CASE("parts are joined by what goes between them, and by nothing at the ends") {
  CHECK(joined({}, ", ").empty());
  CHECK(joined({"a"}, ", ") == "a");
  CHECK(joined({"a", "b", "c"}, "; ") == "a; b; c");
}
