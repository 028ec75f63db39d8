// Bounds over an arc of headings against every heading in it.
#include "terrain/heading_arc.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

#include "near.h"

namespace rimehaul {

namespace {

using terrain::Gradient;
using terrain::HeadingArc;
using testing::near;
using units::Bearing;
using units::Slope;

struct Arc {
  double reference_deg;
  double left_deg;
  double right_deg;
};

terrain::AttitudeBox by_every_heading(Gradient gradient, const Arc& arc) {
  const auto at = [&](double turn) {
    const auto here = attitude_of(gradient, Bearing::from_degrees(arc.reference_deg + turn));
    return terrain::AttitudeBox{here.grade, here.grade, here.cross, here.cross};
  };
  terrain::AttitudeBox box = at(arc.left_deg);
  const int steps = 20'000;
  for (int i = 0; i <= steps; ++i) {
    box = box.with(at(arc.left_deg + (arc.right_deg - arc.left_deg) * i / steps));
  }
  return box;
}

void check_same(const terrain::AttitudeBox& a, const terrain::AttitudeBox& b, double within) {
  CHECK(near(a.grade_low.ratio(), b.grade_low.ratio(), within));
  CHECK(near(a.grade_high.ratio(), b.grade_high.ratio(), within));
  CHECK(near(a.cross_low.ratio(), b.cross_low.ratio(), within));
  CHECK(near(a.cross_high.ratio(), b.cross_high.ratio(), within));
}

}  // namespace

TEST_CASE("over an arc of headings grade and cross-slope are bounded exactly") {
  const unsigned seed = 20260201;
  CAPTURE(seed);
  std::mt19937_64 random{seed};
  std::uniform_real_distribution<double> any{-1.0, 1.0};
  for (int i = 0; i < 60; ++i) {
    const Gradient gradient{Slope::from_ratio(any(random)), Slope::from_ratio(any(random))};
    const Arc arc{any(random) * 360, -89.9 * std::abs(any(random)), 89.9 * std::abs(any(random))};
    const HeadingArc headings = HeadingArc{Bearing::from_degrees(arc.reference_deg)}
                                    .reaching(arc.left_deg)
                                    .reaching(arc.right_deg);
    // 20'000 headings over less than 180 degrees miss an extreme by (1/2)(pi/40'000)^2 at most.
    check_same(headings.attitudes_on(gradient), by_every_heading(gradient, arc), 1e-8);
  }
}

TEST_CASE("one heading gives one attitude, and more than half a turn every one") {
  const Gradient gradient{Slope::from_ratio(0.3), Slope::from_ratio(0.4)};
  const HeadingArc one{Bearing::from_degrees(123)};
  check_same(one.attitudes_on(gradient), by_every_heading(gradient, {123, 0, 0}), 1e-12);
  const HeadingArc wide = one.reaching(-100).reaching(81);
  const auto box = wide.attitudes_on(gradient);
  CHECK(near(box.grade_low.ratio(), -0.5, 1e-12));
  CHECK(near(box.grade_high.ratio(), 0.5, 1e-12));
  CHECK(near(box.cross_low.ratio(), -0.5, 1e-12));
  CHECK(near(box.cross_high.ratio(), 0.5, 1e-12));
}

TEST_CASE("the widest angle of an arc counts, and a right angle is the most that matters") {
  const HeadingArc arc = HeadingArc{Bearing::from_degrees(10)}.reaching(-20).reaching(30);
  CHECK(near(arc.largest_sine_from(0), 0.5, 1e-12));
  CHECK(near(arc.largest_sine_from(30), std::sin(50 * 3.14159265358979323846 / 180), 1e-12));
  CHECK(arc.reaching(100).largest_sine_from(0) == 1.0);
  CHECK(HeadingArc{Bearing::from_degrees(10)}.largest_sine_from(0) == 0.0);
}

}  // namespace rimehaul
