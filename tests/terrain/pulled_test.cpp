// How far what is pulled may head off its line, against the tractrix.
#include "terrain/pulled.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using geo::Polyline;
using geo::Span;
using terrain::HeadingOff;
using testing::near;
using testing::point;
using units::Metres;

/// North for 50 m, then east: one corner of 90 degrees at 50 m.
Polyline corner() {
  return Polyline{{point(0, 0), point(0, 50), point(80, 50)}};
}

}  // namespace

TEST_CASE("before a bend nothing is off, at it all of it counts, after it less and less") {
  HeadingOff off{corner(), {Metres{2}, Metres{3}}};
  CHECK(off.on({Metres{0}, Metres{5}}) == 0.0);
  CHECK(off.on({Metres{41.9}, Metres{46.9}}) == 0.0);  // the hitch is at 49.9 m
  CHECK(near(off.on({Metres{42}, Metres{47}}), 90.0, 1e-9));
  CHECK(near(off.on({Metres{49}, Metres{54}}), 90.0, 1e-9));
  // 4 m past the corner: exp(-2 x 4 / (pi x 2)).
  CHECK(near(off.on({Metres{54}, Metres{59}}), 90.0 * std::exp(-4 / std::numbers::pi), 1e-9));
  CHECK(near(off.on({Metres{60}, Metres{65}}), 90.0 * std::exp(-10 / std::numbers::pi), 1e-9));
}

// The tractrix behind a straight way: tan(delta / 2) falls as exp(-s / d).
TEST_CASE("what is left of a bend is never less than the tractrix leaves") {
  for (const double drawbar : {1.0, 2.5, 6.0}) {
    HeadingOff off{corner(), {Metres{drawbar}, Metres{0}}};
    for (double past = 0.5; past < 25; past += 0.5) {
      const double tractrix =
          2 * std::atan(std::tan(std::numbers::pi / 4) * std::exp(-past / drawbar)) * 180 /
          std::numbers::pi;
      CHECK(off.on({Metres{50 + past}, Metres{50 + past}}) >= tractrix);
    }
  }
}

TEST_CASE("bends left and right add up, and a drawbar that is no number leaves all open") {
  const Polyline zigzag{{point(0, 0), point(0, 10), point(10, 20), point(10, 40)}};
  HeadingOff off{zigzag, {Metres{2}, Metres{2}}};
  CHECK(near(off.on({Metres{8}, Metres{23}}), 90.0, 1e-9));  // 45 degrees right, 45 left
  HeadingOff unknown{zigzag, {Metres{std::nan("")}, Metres{2}}};
  CHECK(std::isnan(unknown.on({Metres{0}, Metres{5}})));
}

}  // namespace rimehaul
