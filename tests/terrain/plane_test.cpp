// The plane under a rig: right in closed form, and never outside the bounds promised for it.
#include "terrain/plane.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul {

namespace {

using geo::Polyline;
using terrain::fitted_gradient;
using terrain::Footprint;
using terrain::GridFrame;
using terrain::GroundPiece;
using terrain::HeightMap;
using testing::map_of;
using testing::near;
using testing::point;
using testing::rough;
using testing::SurfaceSource;
using testing::whole_map;
using testing::with_void;
using units::Bearing;
using units::Metres;

Footprint footprint(double length, double gauge) {
  return {Metres{length}, Metres{gauge}};
}

class Dice {
 public:
  explicit Dice(unsigned seed) : random_{seed} {}
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(random_() >> 11U) * 0x1.0p-53;
  }
  int count(int low, int high) { return low + static_cast<int>(between(0, high - low + 1)); }

 private:
  std::mt19937_64 random_;
};

/// Rough ground of about 300 m x 300 m around (0, 0) on a raster that lies in some way.
HeightMap rough_map(GridFrame frame, std::int64_t cells, unsigned seed) {
  SurfaceSource source{frame, {cells, cells}, rough(seed, 0.6, 0.25)};
  return whole_map(source);
}

std::vector<HeightMap> rough_maps(unsigned seed) {
  const auto step = [](double east, double north) {
    return terrain::GridStep{Metres{east}, Metres{north}};
  };
  return {rough_map({point(-150, 150), {step(5, 0), step(0, -5)}}, 61, seed),
          rough_map({point(-150, -150), {step(1, 0), step(0, 1)}}, 301, seed + 1),
          rough_map({point(-30, 270), {step(4, -3), step(-3, -4)}}, 75, seed + 2),
          rough_map({point(-150, 150), {step(2, 0), step(0, -9)}}, 151, seed + 3)};
}

/// A line of several bends within 40 m of (0, 0) or so.
Polyline random_line(Dice& dice) {
  std::vector<geo::MapPoint> points{point(dice.between(-20, 20), dice.between(-20, 20))};
  double heading = dice.between(0, 360);
  for (int i = dice.count(2, 8); i > 0; --i) {
    const Bearing towards = Bearing::from_degrees(heading);
    points.push_back(geo::moved(points.back(), towards, Metres{dice.between(0.5, 12)}));
    heading += dice.between(0, 1) < 0.3 ? dice.between(-170, 170) : dice.between(-25, 25);
  }
  return Polyline{points};
}

terrain::Walk random_walk(Dice& dice) {
  return {.footprint = footprint(dice.between(0.8, 6), dice.between(0.4, 2.6)),
          .line_error = Metres{dice.between(0, 1) < 0.3 ? 0.0 : dice.between(0, 3)},
          .step = Metres{dice.between(0.7, 9)}};
}

const GroundPiece& piece_at(const std::vector<GroundPiece>& pieces, Metres at) {
  return *std::ranges::find_if(pieces,
                               [&](const GroundPiece& piece) { return at <= piece.span.to; });
}

/// From the back to the front of a footprint that follows the line.
Bearing chord_heading(const Polyline& line, Metres at, Metres length) {
  const auto back = line.at(at - length / 2.0);
  const auto front = line.at(at + length / 2.0);
  return geo::distance(back, front) > Metres{0.01} ? geo::bearing({back, front})
                                                   : line.bearing_at(at);
}

}  // namespace

TEST_CASE("the plane under a rig on a plane is that plane, whatever the heading") {
  const auto map = map_of(testing::plane(0.3, -0.4), 5.0);
  for (const double heading : {0.0, 33.0, 90.0, 217.5}) {
    const auto fit = fitted_gradient(map, point(12.3, -45.6), Bearing::from_degrees(heading),
                                     footprint(2.5, 1.2));
    REQUIRE(fit.has_value());
    CHECK(near(fit->east.ratio(), 0.3, 1e-10));
    CHECK(near(fit->north.ratio(), -0.4, 1e-10));
  }
}

TEST_CASE("astride a crest the plane is level, beside it the flank, between them in proportion") {
  // Roof z = -0.4 |E| sampled at a = -2 .. 2 in steps h of 1 m: slope at offset 1 m in closed form.
  const auto map = map_of(testing::ridge(0.4), 2.0);
  const auto slope_at = [&](double east) {
    return fitted_gradient(map, point(east, 1), Bearing::from_degrees(90), footprint(4, 1))
        ->east.ratio();
  };
  CHECK(near(slope_at(0.0), 0.0, 1e-12));
  CHECK(near(slope_at(-2.0), 0.4, 1e-12));
  CHECK(near(slope_at(3.0), -0.4, 1e-12));
  // Places -1, 0, 1, 2, 3 with heights -.4, 0, -.4, -.8, -1.2: sum(a z) / 10 = -2.4 / 10.
  CHECK(near(slope_at(1.0), -0.24, 1e-12));
}

TEST_CASE("a twist z = E N has the gradient of its middle under any footprint") {
  // Least squares of E N over a symmetric rectangle around (e, n) gives (n, e) for any heading.
  const auto map = map_of([](double e, double n) { return e * n / 100; }, 5.0);
  const auto fit =
      fitted_gradient(map, point(20, 30), Bearing::from_degrees(25), footprint(3, 1.5));
  REQUIRE(fit.has_value());
  CHECK(near(fit->east.ratio(), 0.30, 1e-10));
  CHECK(near(fit->north.ratio(), 0.20, 1e-10));
}

TEST_CASE("with a height missing under any part of it the rig stands on nothing known") {
  const auto map = map_of(
      with_void(testing::plane(0.1, 0), [](double e, double n) { return e == 10 && n == 10; }),
      5.0);
  const auto stands = [&](double east) {
    return fitted_gradient(map, point(east, 7), Bearing::from_degrees(90), footprint(2, 1))
        .has_value();
  };
  CHECK(stands(3.99));
  CHECK_FALSE(stands(4.01));
  CHECK_FALSE(stands(10.0));
  CHECK_FALSE(stands(15.99));
  CHECK(stands(16.01));
  CHECK_THROWS_AS(
      (void)fitted_gradient(map, point(0, 0), Bearing::from_degrees(90), footprint(0, 1)),
      base::OurFault);
}

TEST_CASE("a footprint without size, or of more cells than a plane is fitted to, is our fault") {
  const auto map = map_of(testing::plane(0.1, 0), 5.0);
  // Samples stand at most 2.5 m apart, and no more than 10'000 of these are taken: 25 km.
  for (const auto& [length, gauge] :
       {std::pair{0.0, 1.0}, std::pair{2.0, 0.0}, std::pair{std::nan(""), 1.0},
        std::pair{2.0, std::nan("")}, std::pair{25'003.0, 1.0}, std::pair{2.0, HUGE_VAL}}) {
    CHECK_THROWS_AS((void)fitted_gradient(map, point(0, 0), Bearing::from_degrees(90),
                                          footprint(length, gauge)),
                    base::OurFault);
  }
  // One that just fits is fitted; that long it only reaches beyond the heights.
  CHECK_FALSE(fitted_gradient(map, point(0, 0), Bearing::from_degrees(90), footprint(25'000, 1))
                  .has_value());
}

// The theorem the re-walk leans on: looking closer only ever finds less.
TEST_CASE("the plane under a rig anywhere on or beside a line lies within the bounds promised") {
  int judged = 0;
  for (unsigned seed = 1; seed <= 12; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    for (const HeightMap& map : rough_maps(seed * 10)) {
      for (int lines = 0; lines < 12; ++lines) {
        const Polyline line = random_line(dice);
        const terrain::Walk walk = random_walk(dice);
        const auto pieces = ground_under(map, line, walk);
        for (int places = 0; places < 25; ++places) {
          const Metres at{dice.between(0, line.length().value())};
          const double aside = dice.between(-1, 1);
          const Bearing along = line.bearing_at(at);
          const auto middle = geo::moved(line.at(at), Bearing::from_degrees(along.degrees() + 90),
                                         aside * walk.line_error);
          const auto& promised = piece_at(pieces, at).attitude;
          REQUIRE(promised.has_value());
          for (const Bearing heading : {along, chord_heading(line, at, walk.footprint.length)}) {
            const auto fit = fitted_gradient(map, middle, heading, walk.footprint);
            REQUIRE(fit.has_value());
            CHECK(promised->holds(attitude_of(*fit, heading)));
            ++judged;
          }
        }
      }
    }
  }
  CHECK(judged == 12 * 4 * 12 * 25 * 2);
}

TEST_CASE("where cells are wider than the rig, no place under it is steeper than promised") {
  int judged = 0;
  for (unsigned seed = 101; seed <= 106; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    for (const HeightMap& map : rough_maps(seed * 10)) {
      const Polyline line = random_line(dice);
      const terrain::Walk walk = random_walk(dice);
      if (map.frame().larger_step() <= walk.footprint.gauge) {
        continue;  // it stands on several cells, and on none of them alone
      }
      const auto pieces = ground_under(map, line, walk);
      for (int places = 0; places < 1500; ++places) {
        const Metres at{dice.between(0, line.length().value())};
        const Bearing heading = line.bearing_at(at);
        const Metres aside =
            dice.between(-1, 1) * walk.line_error + dice.between(-0.5, 0.5) * walk.footprint.gauge;
        const Metres ahead = dice.between(-0.5, 0.5) * walk.footprint.length;
        const auto place = geo::moved(geo::moved(line.at(at), heading, ahead),
                                      Bearing::from_degrees(heading.degrees() + 90), aside);
        const auto gradient = terrain::surface_gradient(map, place);
        REQUIRE(gradient.has_value());
        CHECK(piece_at(pieces, at).attitude->holds(attitude_of(*gradient, heading)));
        ++judged;
      }
    }
  }
  CHECK(judged > 10'000);
}

TEST_CASE("the grade of the line's own profile under the rig lies within the bounds promised") {
  for (unsigned seed = 201; seed <= 206; ++seed) {
    CAPTURE(seed);
    Dice dice{seed};
    for (const HeightMap& map : rough_maps(seed * 10)) {
      const Polyline line = random_line(dice);
      const terrain::Walk walk = random_walk(dice);
      if (line.length() < walk.footprint.length) {
        continue;
      }
      const auto pieces = ground_under(map, line, walk);
      for (int places = 0; places < 300; ++places) {
        const Metres half = walk.footprint.length / 2.0;
        const Metres at{dice.between(half.value(), (line.length() - half).value())};
        const auto back = map.at(line.at(at - half));
        const auto front = map.at(line.at(at + half));
        REQUIRE(back.has_value());
        REQUIRE(front.has_value());
        const double grade = (*front - *back) / walk.footprint.length;
        const auto& promised = piece_at(pieces, at).attitude;
        CHECK(promised->grade_low.ratio() <= grade);
        CHECK(promised->grade_high.ratio() >= grade);
      }
    }
  }
}

}  // namespace rimehaul
