#include "ports/cairo/axis.h"

#include <doctest/doctest.h>

#include <limits>
#include <vector>

using namespace rimehaul::ports::cairo;

TEST_CASE("an axis lays values evenly, and marks every whole multiple of its step") {
  const Axis up{{-10.0, 10.0}, {200.0, 100.0}};
  CHECK(up.at(-10.0) == 200.0);
  CHECK(up.at(0.0) == 150.0);
  CHECK(up.at(10.0) == 100.0);

  CHECK(marked_values({-10.0, 10.0}, 5.0) == std::vector<double>{-10.0, -5.0, 0.0, 5.0, 10.0});
  CHECK(marked_values({1.0, 9.9}, 5.0) == std::vector<double>{5.0});
  CHECK(marked_values({1.0, 4.0}, 5.0).empty());
  // 0.3 / 0.1 is a hair under 3: rounding takes no mark away.
  CHECK(marked_values({0.0, 0.3}, 0.1).size() == 4);
  CHECK(marked_values({0.0, 10.0}, 0.0).empty());
  CHECK(marked_values({0.0, 10.0}, -1.0).empty());
  CHECK(marked_values({0.0, std::numeric_limits<double>::infinity()}, 1.0).empty());
  CHECK(marked_values({std::numeric_limits<double>::quiet_NaN(), 1.0}, 1.0).empty());
}
