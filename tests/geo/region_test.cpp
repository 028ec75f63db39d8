// Areas on the map, with holes, and the parts of a line in them.
#include "geo/region.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <vector>

#include "near.h"

namespace rimehaul {

namespace {

using geo::Polyline;
using geo::Region;
using geo::Span;
using geo::spans_inside;
using testing::near;
using units::Metres;

geo::MapPoint point(double east, double north) {
  return {Metres{east}, Metres{north}};
}

std::vector<geo::MapPoint> square(double low, double high) {
  return {point(low, low), point(high, low), point(high, high), point(low, high), point(low, low)};
}

/// A square of 100 m with a hole of 20 m in its middle.
Region holed_square() {
  return {{square(0, 100), square(40, 60)}};
}

void check_spans(const std::vector<Span>& found, const std::vector<Span>& wanted) {
  REQUIRE(found.size() == wanted.size());
  for (std::size_t i = 0; i < found.size(); ++i) {
    // Widened by at most a millimetre at each end, never narrowed.
    CHECK(found[i].from <= wanted[i].from);
    CHECK(found[i].to >= wanted[i].to);
    CHECK(near(found[i].from, wanted[i].from, Metres{0.001 + 1e-9}));
    CHECK(near(found[i].to, wanted[i].to, Metres{0.001 + 1e-9}));
  }
}

}  // namespace

TEST_CASE("the outline belongs to a region, its hole does not, the hole's outline does") {
  const Region region = holed_square();
  CHECK(contains(region, point(10, 10)));
  CHECK(contains(region, point(0, 50)));
  CHECK(contains(region, point(100, 100)));
  CHECK_FALSE(contains(region, point(50, 50)));
  CHECK(contains(region, point(40, 50)));
  CHECK_FALSE(contains(region, point(100.001, 50)));
  CHECK_FALSE(contains(region, point(-0.001, 50)));
}

TEST_CASE(
    "distance to a region is 0 inside and on it, and measured to the hole's edge in the hole") {
  const Region region = holed_square();
  CHECK(distance(region, point(10, 10)) == Metres{0});
  CHECK(distance(region, point(100, 50)) == Metres{0});
  CHECK(near(distance(region, point(103, 104)), Metres{5}, Metres{1e-12}));
  CHECK(near(distance(region, point(50, 52)), Metres{8}, Metres{1e-12}));
}

TEST_CASE("a line through the region and its hole is inside twice") {
  const Polyline line{{point(-50, 50), point(150, 50)}};
  check_spans(spans_inside(holed_square(), line),
              {{Metres{50}, Metres{90}}, {Metres{110}, Metres{150}}});
}

TEST_CASE("a line with a bend inside is one span, and one that starts inside starts at 0") {
  const Polyline line{{point(10, 10), point(20, 10), point(20, -30)}};
  check_spans(spans_inside(holed_square(), line), {{Metres{0}, Metres{20}}});
}

TEST_CASE("a line that runs along the outline is inside for as long as it does") {
  const Polyline line{{point(-20, 0), point(130, 0)}};
  check_spans(spans_inside(holed_square(), line), {{Metres{20}, Metres{120}}});
}

TEST_CASE("a line that misses, or touches one corner alone, is nowhere inside") {
  CHECK(spans_inside(holed_square(), Polyline{{point(-10, -10), point(-5, 200)}}).empty());
  CHECK(spans_inside(holed_square(), Polyline{{point(-50, 50), point(50, -50)}}).empty());
  CHECK(spans_inside(holed_square(), Polyline{{point(45, 45), point(55, 55)}}).empty());
}

TEST_CASE("spans agree with asking place by place, for random lines through a star") {
  Region star;
  star.rings.emplace_back();
  for (int i = 0; i <= 10; ++i) {
    star.rings[0].push_back(moved(point(0, 0), units::Bearing::from_degrees(36.0 * (i % 10)),
                                  Metres{i % 2 == 0 ? 100.0 : 45.0}));
  }
  const unsigned seed = 20260206;
  CAPTURE(seed);
  std::mt19937_64 random{seed};
  std::uniform_real_distribution<double> any{-120.0, 120.0};
  for (int i = 0; i < 40; ++i) {
    const Polyline line{{point(any(random), any(random)), point(any(random), any(random)),
                         point(any(random), any(random))}};
    const auto spans = spans_inside(star, line);
    for (double s = 0.05; s < line.length().value(); s += 0.5) {
      const Metres at{s};
      const bool in_span =
          std::ranges::any_of(spans, [&](Span span) { return span.from <= at && at <= span.to; });
      const bool inside = contains(star, line.at(at));
      // Within a millimetre of the outline either answer is right.
      const bool on_edge = inside != in_span && distance(star, line.at(at)) <= Metres{0.002};
      CHECK((inside == in_span || on_edge));
    }
  }
}

}  // namespace rimehaul
