#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "card/figures.h"

namespace rimehaul::card {
namespace {

TEST_CASE("a share just under the limit never reads as the limit, nor does one just over it") {
  CHECK(share_text(0.996) == "99.6 %");
  CHECK(share_text(0.9996) == "99.96 %");
  CHECK(share_text(1.0) == "100 %");
  CHECK(share_text(1.004) == "101 %");
  CHECK(least_share_text(0.389) == "38 %");
  CHECK(least_share_text(std::numeric_limits<double>::quiet_NaN()) == "unknown");
  CHECK(share_text(1.0 - 1e-15) == "just under 100 %");
  CHECK(share_text(1.0 + 1e-12) != "100 %");
}

TEST_CASE("a share is rounded up and what is allowed is rounded down") {
  CHECK(share_text(0.6101) == "62 %");
  CHECK(share_text(0.61) == "61 %");
  CHECK(share_text(0.0) == "0 %");
  CHECK(allowed_text(0.7) == "70 %");
  CHECK(allowed_text(0.699) == "69 %");
}

TEST_CASE("what is not known reads as unknown and never as a number") {
  const double nan = std::nan("");
  CHECK(share_text(nan) == "unknown");
  CHECK(duration_text(units::Seconds{nan}) == "unknown");
  CHECK(minutes_text(units::Seconds{std::numeric_limits<double>::infinity()}) == "unknown");
  CHECK(amount_text({nan, units::Unit::newtons}, Side::demand) == "unknown");
  CHECK(exact_text({nan, units::Unit::tangent}, Side::capacity) == "unknown");
}

TEST_CASE("speeds and fuel that is there are rounded down, ways and fuel that is needed up") {
  CHECK(speed_limit_text(units::MetresPerSecond{4.1}) == "14 km/h");
  CHECK(speed_limit_text(units::MetresPerSecond{1.0}) == "3.6 km/h");
  CHECK(speed_limit_text(units::MetresPerSecond{2.75}) == "9.9 km/h");
  CHECK(fuel_needed_text(units::Litres{1.11}) == "1.2 L");
  CHECK(fuel_there_text(units::Litres{29.96}) == "29.9 L");
  CHECK(distance_text(units::Metres{811.2}) == "812 m");
  CHECK(distance_text(units::Metres{1622.4}) == "1.63 km");
  CHECK(mass_text(units::Kilograms{1239.2}) == "1240 kg");
}

TEST_CASE("times are rounded up") {
  CHECK(duration_text(units::Seconds{60}) == "1 min 0 s");
  CHECK(duration_text(units::Seconds{59.2}) == "1 min 0 s");
  CHECK(duration_text(units::Seconds{45}) == "45 s");
  CHECK(minutes_text(units::Seconds{60}) == "1 min");
  CHECK(minutes_text(units::Seconds{61}) == "2 min");
  CHECK(minutes_text(units::Seconds{3'900}) == "1 h 05 min");
}

TEST_CASE("a steepness shows both angles with percent beside them, rounded up") {
  const auto steepness = [](double found_percent, double up_to_percent) {
    return steepness_text({units::Slope::from_percent(found_percent),
                           units::Slope::from_percent(up_to_percent), units::Metres{340}});
  };
  CHECK(steepness(12.63, 16.0) == "7.2 deg (12.7 %), up to 9.1 deg (16.0 %) at 340 m");
  CHECK(steepness(-1.0, 2.0) == "none, up to 1.2 deg (2.0 %) at 340 m");
  CHECK(steepness(-3.0, 0.0) == "none");
  CHECK(steepness(-3.0, -1.0) == "none");
  CHECK(steepness(1.0, std::nan("")) == "0.6 deg (1.0 %), up to unknown deg (unknown %) at 340 m");
}

TEST_CASE("places along a leg read as a point, a stretch, or all of it") {
  const units::Metres whole{800};
  CHECK(where_text({units::Metres{340}, units::Metres{340}}, whole) == "at 340 m");
  CHECK(where_text({units::Metres{120}, units::Metres{560}}, whole) == "from 120 m to 560 m");
  CHECK(where_text({units::Metres{0}, units::Metres{800}}, whole) == "all along");
}

TEST_CASE("bearings have three digits and 359.6 degrees is north") {
  CHECK(bearing_text(units::Bearing::from_degrees(7.2)) == "007 deg");
  CHECK(bearing_text(units::Bearing::from_degrees(359.6)) == "000 deg");
}

TEST_CASE("local time follows the site's offset over midnight") {
  const auto moment = *units::parse_instant("2026-02-01T05:30:00Z");
  CHECK(local_text(moment, units::LocalClock{-600}) == "2026-01-31 19:30");
  CHECK(local_text(moment, units::LocalClock{60}) == "2026-02-01 06:30");
  CHECK(local_and_zone_text(moment, units::LocalClock{-600}) ==
        "2026-01-31 19:30 (local time, UTC-10:00)");
  CHECK(zone_text(345) == "UTC+05:45");
  CHECK(zone_text(0) == "UTC+00:00");
  CHECK(told_text({"observed by N. N.", moment}, units::LocalClock{-600}) ==
        "observed by N. N., 2026-01-31 19:30");
  CHECK(told_text({"assumed for planning", {}}, units::LocalClock{-600}) == "assumed for planning");
}

TEST_CASE(
    "1.645 standard deviations are 95 % one-sided and 2 are 97.7 %, as normal tables have it") {
  CHECK(confidence_text(1.645) == "95 %");
  CHECK(confidence_text(2.0) == "97 %");
}

TEST_CASE("amounts to work with keep their digits; demands go up and capacities down") {
  CHECK(exact_text({0.126333, units::Unit::tangent}, Side::demand) == "0.12634 = 7.3 deg (12.7 %)");
  CHECK(exact_text({4104.66, units::Unit::newtons}, Side::demand) == "4104.7 N");
  CHECK(exact_text({4104.66, units::Unit::newtons}, Side::capacity) == "4104.6 N");
  CHECK(amount_text({4104.2, units::Unit::newtons}, Side::demand) == "4105 N");
  // A demand never reads as less than it is, a capacity never as more, whatever their sign.
  CHECK(exact_text({-0.008355, units::Unit::tangent}, Side::demand) ==
        "-0.00835 = -0.4 deg (-0.8 %)");
  CHECK(exact_text({-0.008355, units::Unit::tangent}, Side::capacity) ==
        "-0.00836 = -0.5 deg (-0.9 %)");
  CHECK(amount_text({510, units::Unit::minutes_of_day}, Side::input) == "08:30");
  CHECK(amount_text({2, units::Unit::number}, Side::input) == "2.00");
}

}  // namespace
}  // namespace rimehaul::card
