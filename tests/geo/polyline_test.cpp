// Lines that know how long they are.
#include "geo/polyline.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "base/require.h"
#include "near.h"

namespace rimehaul {

namespace {

using geo::MapPoint;
using geo::Polyline;
using testing::near;
using units::Metres;

constexpr Metres kHair{1e-9};

geo::MapPoint point(double east, double north) {
  return {Metres{east}, Metres{north}};
}

/// East 30 m, then north 40 m, then east 10 m.
Polyline staircase() {
  return Polyline{{point(0, 0), point(30, 0), point(30, 40), point(40, 40)}};
}

bool near_point(MapPoint a, MapPoint b) {
  return near(distance(a, b), Metres{0}, kHair);
}

}  // namespace

TEST_CASE("chainage runs along the line, and places before and behind it are its ends") {
  const Polyline line = staircase();
  CHECK(line.length() == Metres{80});
  CHECK(line.segment_count() == 3);
  CHECK(line.chainage(2) == Metres{70});
  CHECK(near_point(line.at(Metres{0}), point(0, 0)));
  CHECK(near_point(line.at(Metres{45}), point(30, 15)));
  CHECK(near_point(line.at(Metres{80}), point(40, 40)));
  CHECK(near_point(line.at(Metres{-5}), point(0, 0)));
  CHECK(near_point(line.at(Metres{99}), point(40, 40)));
}

TEST_CASE("at a corner the line already heads the new way, a step before it the old") {
  const Polyline line = staircase();
  CHECK(line.segment_at(Metres{29.999}) == 0);
  CHECK(line.segment_at(Metres{30}) == 1);
  CHECK(near(line.bearing_at(Metres{29.999}).degrees(), 90, 1e-12));
  CHECK(near(line.bearing_at(Metres{30}).degrees(), 0, 1e-12));
  CHECK(line.segment_at(Metres{80}) == 2);
  CHECK(line.segment_at(Metres{-1}) == 0);
}

TEST_CASE("repeated points are dropped, fewer than two different ones are our fault") {
  CHECK(Polyline{{point(0, 0), point(0, 0), point(1, 0), point(1, 0)}}.segment_count() == 1);
  CHECK_THROWS_AS((Polyline{{point(0, 0), point(0, 0)}}), base::OurFault);
  CHECK_THROWS_AS((Polyline{std::vector<MapPoint>{}}), base::OurFault);
  CHECK_THROWS_AS((Polyline{{point(0, 0), point(NAN, 0)}}), base::OurFault);
  CHECK_THROWS_AS((Polyline{{point(0, 0), point(0, INFINITY)}}), base::OurFault);
}

TEST_CASE("a part keeps the corners inside it and has the length asked for") {
  const Polyline part = staircase().part({Metres{10}, Metres{75}});
  CHECK(near(part.length(), Metres{65}, kHair));
  REQUIRE(part.points().size() == 4);
  CHECK(near_point(part.points()[0], point(10, 0)));
  CHECK(near_point(part.points()[1], point(30, 0)));
  CHECK(near_point(part.points()[3], point(35, 40)));
  CHECK(staircase().part({Metres{-9}, Metres{999}}).length() == Metres{80});
  CHECK(staircase().part({Metres{30}, Metres{70}}).segment_count() == 1);
  CHECK_THROWS_AS((void)staircase().part({Metres{20}, Metres{20}}), base::OurFault);
  CHECK_THROWS_AS((void)staircase().part({Metres{80}, Metres{90}}), base::OurFault);
}

TEST_CASE("driven back, a line is as long and every place lies as far from the other end") {
  const Polyline line = staircase();
  const Polyline back = line.reversed();
  CHECK(back.length() == line.length());
  for (double s = 0; s <= 80; s += 3.7) {
    CHECK(near_point(back.at(Metres{80 - s}), line.at(Metres{s})));
  }
}

TEST_CASE("lines join where they touch within a millimetre, further apart is our fault") {
  const Polyline first{{point(0, 0), point(10, 0)}};
  const Polyline joined = first.joined_with(Polyline{{point(10.0009, 0), point(10, 5)}});
  CHECK(joined.segment_count() == 2);
  CHECK(near(joined.length(), Metres{15}, Metres{1e-6}));
  CHECK_THROWS_AS((void)first.joined_with(Polyline{{point(10.0011, 0), point(10, 5)}}),
                  base::OurFault);
}

TEST_CASE("the nearest place of a line is no further than any place sampled along it") {
  const unsigned seed = 20260205;
  CAPTURE(seed);
  std::mt19937_64 random{seed};
  std::uniform_real_distribution<double> any{-60.0, 100.0};
  const Polyline line = staircase();
  for (int i = 0; i < 200; ++i) {
    const MapPoint place = point(any(random), any(random));
    const geo::Foot foot = line.nearest(place);
    CHECK(near(distance(line.at(foot.at), place), foot.away, kHair));
    Metres least{INFINITY};
    for (double s = 0; s <= 80; s += 0.1) {
      least = std::min(least, distance(line.at(Metres{s}), place));
    }
    CHECK(foot.away <= least + kHair);
    CHECK(near(foot.away, least, Metres{0.05}));
  }
}

}  // namespace rimehaul
