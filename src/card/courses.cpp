#include "card/courses.h"

#include <cstddef>

#include "base/require.h"

namespace rimehaul::card {

using units::Metres;

namespace {

/// Indices of the first and last point of a part of a line.
struct Part {
  std::size_t first;
  std::size_t last;
};

/// Adds the courses of a part, cut in two where it strays most as long as it strays too far.
void add_courses(const geo::Polyline& line, Part part, Metres stray, std::vector<Course>& courses) {
  const auto points = line.points();
  const geo::Segment chord{points[part.first], points[part.last]};
  Metres most{0};
  std::size_t farthest = part.first;
  for (std::size_t i = part.first + 1; i < part.last; ++i) {
    const Metres away = geo::distance(chord, points[i]);
    if (away > most) {
      most = away;
      farthest = i;
    }
  }
  if (most > stray) {
    add_courses(line, {part.first, farthest}, stray, courses);
    add_courses(line, {farthest, part.last}, stray, courses);
    return;
  }
  courses.push_back({{line.chainage(part.first), line.chainage(part.last)}, geo::bearing(chord)});
}

}  // namespace

std::vector<Course> courses_along(const geo::Polyline& line, Metres stray) {
  base::require(stray >= Metres{0}, "a line strays by 0 or more");
  std::vector<Course> courses;
  add_courses(line, {0, line.segment_count()}, stray, courses);
  return courses;
}

}  // namespace rimehaul::card
