// Courses to steer: as few as stay by the line.
#include "card/courses.h"

#include <doctest/doctest.h>

#include <vector>

#include "near.h"

namespace rimehaul::card {

namespace {

using testing::near;
using units::Metres;

geo::Polyline line_of(std::vector<geo::MapPoint> points) {
  return geo::Polyline{std::move(points)};
}

geo::MapPoint at(double east, double north) {
  return {Metres{500'000 + east}, Metres{5'100'000 + north}};
}

}  // namespace

TEST_CASE("a corner is two courses, and points near a straight line are none of their own") {
  const auto courses = courses_along(
      line_of({at(0, 0), at(0.5, 50), at(0, 100), at(40, 100.9), at(80, 100)}), Metres{1});
  REQUIRE(courses.size() == 2);
  CHECK(near(courses[0].bearing.degrees(), 0.0, 1e-9));
  CHECK(courses[0].span.from == Metres{0});
  CHECK(near(courses[0].span.to, Metres{100.005}, Metres{1e-3}));
  CHECK(near(courses[1].bearing.degrees(), 90.0, 1e-9));
  CHECK(courses[1].span.from == courses[0].span.to);
}

TEST_CASE("no point of the line is farther from its courses than it may stray") {
  std::vector<geo::MapPoint> points;
  for (int i = 0; i <= 60; ++i) {
    points.push_back(at(i, 30.0 * i / 60.0 * (60.0 - i) / 15.0));
  }
  const geo::Polyline line = line_of(points);
  const auto tight = courses_along(line, Metres{0.5});
  const auto loose = courses_along(line, Metres{5});
  CHECK(loose.size() < tight.size());
  for (const Course& course : loose) {
    const geo::Segment piece{line.at(course.span.from), line.at(course.span.to)};
    for (double along = course.span.from.value(); along < course.span.to.value(); along += 0.5) {
      CHECK(geo::distance(piece, line.at(Metres{along})) <= Metres{5.001});
    }
  }
  CHECK(loose.front().span.from == Metres{0});
  CHECK(near(loose.back().span.to, line.length(), Metres{1e-9}));
}

}  // namespace rimehaul::card
