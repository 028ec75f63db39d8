// The penalty on a share, against its closed form.
#include "passage/share_penalty.h"

#include <doctest/doctest.h>

#include <cmath>

#include "near.h"

namespace rimehaul::passage {

using testing::near;

TEST_CASE("the penalty on share runs from 1 to 2 and is infinite beyond what is allowed") {
  CHECK(share_penalty(0.0, 0.7) == 1.0);
  CHECK(near(share_penalty(0.7, 0.7), 2.0, 1e-12));
  CHECK(near(share_penalty(0.35, 0.7), 8.0 / 7.0, 1e-12));
  CHECK(std::isinf(share_penalty(0.7000001, 0.7)));
  CHECK(std::isinf(share_penalty(-0.1, 0.7)));
  CHECK(std::isinf(share_penalty(std::nan(""), 0.7)));
  CHECK(std::isinf(share_penalty(0.0, 0.0)));
}

}  // namespace rimehaul::passage
