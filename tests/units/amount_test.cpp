// Numbers that carry the unit they are shown in.
#include "units/amount.h"

#include <doctest/doctest.h>

#include <cmath>

namespace rimehaul {

namespace {

using units::amount;
using units::Amount;
using units::sign_of;
using units::Unit;

}  // namespace

TEST_CASE("each quantity becomes an amount in its own unit") {
  CHECK(amount(units::Metres{3}) == Amount{3, Unit::metres});
  CHECK(amount(units::Kilograms{450}) == Amount{450, Unit::kilograms});
  CHECK(amount(units::Newtons{12}) == Amount{12, Unit::newtons});
  CHECK(amount(units::Slope::from_ratio(0.25)) == Amount{0.25, Unit::tangent});
  CHECK(amount(units::Bearing::from_degrees(270)) == Amount{270, Unit::degrees});
  CHECK(amount(units::ForceRatio{0.3}) == Amount{0.3, Unit::number});
  CHECK(units::count_of(4) == Amount{4, Unit::number});
}

TEST_CASE("units print by their international signs") {
  CHECK(sign_of(Unit::metres) == "m");
  CHECK(sign_of(Unit::kilopascals) == "kPa");
  CHECK(sign_of(Unit::newton_metres) == "N m");
  CHECK(sign_of(Unit::metres_per_second2) == "m/s2");
  CHECK(sign_of(Unit::tangent).empty());
  CHECK(sign_of(Unit::number).empty());
}

TEST_CASE("an amount that nobody gave is unknown and equals nothing") {
  const Amount nobody_gave;
  CHECK(std::isnan(nobody_gave.value));
  CHECK_FALSE(nobody_gave == nobody_gave);
}

}  // namespace rimehaul
