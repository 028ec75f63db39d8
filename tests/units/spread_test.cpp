// Spread of a few numbers: Student's t against scipy, and a worked sample.
#include "units/spread.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdio>
#include <sstream>
#include <string>

namespace rimehaul::units {
namespace {

/// What python3 prints.
std::string python(const std::string& program) {
  std::string said;
  FILE* pipe = popen(("/usr/bin/python3 -c \"" + program + "\" 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  char buffer[256];
  while (std::fgets(buffer, sizeof buffer, pipe) != nullptr) {
    said += buffer;
  }
  REQUIRE_MESSAGE(pclose(pipe) == 0, "package python3-scipy is needed: " << said);
  return said;
}

/// -1, 1, 0, 0, ...: mean 0, sum of squares 2.
std::vector<double> about_zero(int count) {
  std::vector<double> numbers(static_cast<std::size_t>(count), 0.0);
  numbers[0] = -1.0;
  numbers[1] = 1.0;
  return numbers;
}

}  // namespace

TEST_CASE("Student's t is scipy's, never below it, and by a thousandth above it at most") {
  std::istringstream said{python(
      "from scipy.stats import t; print(*[repr(float(t.ppf(0.95, d))) for d in range(4, 30)])")};
  for (int degrees = 4; degrees < 30; ++degrees) {
    CAPTURE(degrees);
    double student = 0.0;
    said >> student;
    REQUIRE_FALSE(said.fail());
    const int count = degrees + 1;
    const auto spread = spread_of(about_zero(count));
    REQUIRE(spread.has_value());
    const double reach = std::sqrt(2.0 / degrees) * std::sqrt(1.0 + 1.0 / count);
    CHECK(spread->high / reach >= student);
    CHECK(spread->high / reach <= student + (degrees <= 20 ? 0.001 : 0.03));
    CHECK(spread->low == -spread->high);
  }
}

TEST_CASE("five numbers by hand: mean 0.24, s 0.0158, the next no less than 0.2031") {
  // Squares of -0.02, -0.01, 0, 0.01, 0.02 add up to 0.001; s = sqrt(0.001 / 4) = 0.015811;
  // 2.132 x 0.015811 x sqrt(1.2) = 0.036926.
  const auto spread = spread_of({0.22, 0.23, 0.24, 0.25, 0.26});
  REQUIRE(spread.has_value());
  CHECK(spread->count == 5);
  CHECK(spread->mean == doctest::Approx(0.24));
  CHECK(spread->deviation == doctest::Approx(0.0158114).epsilon(1e-5));
  CHECK(spread->low == doctest::Approx(0.24 - 0.036926).epsilon(1e-4));
  CHECK(spread->high == doctest::Approx(0.24 + 0.036926).epsilon(1e-4));
}

TEST_CASE("four numbers say nothing, nor do five of which one is none") {
  CHECK_FALSE(spread_of({1, 1, 1, 1}).has_value());
  CHECK_FALSE(spread_of({1, 1, 1, 1, std::nan("")}).has_value());
}

}  // namespace rimehaul::units
