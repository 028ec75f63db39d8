// Where carrier and trailer tread: bounds that hold for every place the rig can be.
#include "passage/footfall.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <random>

#include "near.h"
#include "passage/demo_scene.h"
#include "passage/turning.h"
#include "terrain/plane.h"

namespace rimehaul::passage {

namespace {

using terrain::Attitude;
using terrain::AttitudeBox;
using testing::near;
using testing::place;
using units::Bearing;
using units::Metres;
using units::Slope;

constexpr unsigned kSeed = 20260201;

Scene scene_on(testing::Surface surface) {
  testing::TestGround ground;
  ground.ground = std::move(surface);
  return testing::scene_of(ground, testing::straight_trail(0));
}

/// Ground that rises and rolls in both directions, gradients up to about 20 degrees.
testing::Surface rough() {
  return [](double east, double north) {
    return 1000 + 0.1 * north + 3 * std::sin(east / 17) + 2.5 * std::cos(north / 13 + east / 29);
  };
}

/// A trail up, round a hairpin of 4 m radius, and back down beside itself.
geo::Polyline hairpin() {
  std::vector<geo::MapPoint> points{place(0, 0), place(0, 60)};
  for (int degrees = 20; degrees <= 180; degrees += 20) {
    const double angle = degrees * std::numbers::pi / 180;
    points.push_back(place(4 - 4 * std::cos(angle), 60 + 4 * std::sin(angle)));
  }
  points.push_back(place(8, 0));
  return geo::Polyline{points};
}

const Footfall& at(const std::vector<Footfall>& found, Metres chainage) {
  for (const Footfall& footfall : found) {
    if (footfall.span.from <= chainage && chainage <= footfall.span.to) {
      return footfall;
    }
  }
  FAIL("the footfalls leave a gap");
  return found.front();
}

TEST_CASE("on an even slope carrier and trailer stand as the slope and the heading say") {
  const Scene scene = scene_on(testing::plane(0.12, 0.2));
  for (const double bearing_deg : {0.0, 37.0, 90.0, 200.0, 315.0}) {
    const Bearing heading = Bearing::from_degrees(bearing_deg);
    const geo::Polyline line{{place(0, 0), geo::moved(place(0, 0), heading, Metres{50})}};
    const double grade = 0.12 * heading.sine() + 0.2 * heading.cosine();
    const double cross = 0.2 * heading.sine() - 0.12 * heading.cosine();
    for (const Footfall& step : footfalls(scene, line, testing::towing_rig(), Metres{1})) {
      for (const auto& box : {step.carrier, step.trailer}) {
        REQUIRE(box.has_value());
        CHECK(near(box->grade_low.ratio(), grade, 2e-9));
        CHECK(near(box->grade_high.ratio(), grade, 2e-9));
        CHECK(near(box->cross_low.ratio(), cross, 2e-9));
        CHECK(near(box->cross_high.ratio(), cross, 2e-9));
      }
    }
  }
}

TEST_CASE("wherever the carrier stands on its piece, off the line by its error, the bounds hold") {
  const Scene scene = scene_on(rough());
  const rig::Rig rig = testing::towing_rig();
  const geo::Polyline line = hairpin();
  const std::vector<Footfall> found = footfalls(scene, line, rig, Metres{1});
  std::mt19937 random{kSeed};
  std::uniform_real_distribution<double> anywhere(0, line.length().value());
  std::uniform_real_distribution<double> aside(-1, 1);
  for (int i = 0; i < 2000; ++i) {
    const Metres chainage{anywhere(random)};
    const Bearing heading = line.bearing_at(chainage);
    const Bearing right = Bearing::from_degrees(heading.degrees() + 90);
    const geo::MapPoint middle = geo::moved(line.at(chainage), right, Metres{aside(random)});
    const auto gradient = terrain::fitted_gradient(scene.heights, middle, heading,
                                                   {rig.carrier.contact_length, rig.carrier.gauge});
    REQUIRE(gradient.has_value());
    const Footfall& step = at(found, chainage);
    CAPTURE(kSeed);
    CAPTURE(chainage.value());
    REQUIRE(step.carrier.has_value());
    CHECK(step.carrier->widened(Slope::from_ratio(1e-9))
              .holds(terrain::attitude_of(*gradient, heading)));
  }
}

TEST_CASE("a trailer pulled round a hairpin stands within its bounds, whichever way it points") {
  const Scene scene = scene_on(rough());
  const rig::Rig rig = testing::towing_rig();
  const geo::Polyline line = hairpin();
  const std::vector<Footfall> found = footfalls(scene, line, rig, Metres{1});
  const Metres hitch_behind{rig.carrier.contact_length.value() / 2 -
                            rig.carrier.hitch_at.forward.value()};
  // The trailer follows its hitch as a drawbar does: always straight towards it.
  geo::MapPoint trailer = line.at(Metres{10} - hitch_behind - rig.trailer->drawbar_length);
  std::size_t judged = 0;
  for (double s = 10; s < line.length().value(); s += 0.05) {
    const geo::MapPoint hitch = line.at(Metres{s} - hitch_behind);
    const Bearing heading = geo::bearing({trailer, hitch});
    trailer = geo::moved(hitch, heading.opposite(), rig.trailer->drawbar_length);
    const auto gradient = terrain::fitted_gradient(
        scene.heights, trailer, heading, {rig.trailer->contact_length, rig.trailer->gauge});
    REQUIRE(gradient.has_value());
    const Footfall& step = at(found, Metres{s});
    REQUIRE(step.trailer.has_value());
    CAPTURE(s);
    CHECK(step.trailer->widened(Slope::from_ratio(1e-9))
              .holds(terrain::attitude_of(*gradient, heading)));
    ++judged;
  }
  CHECK(judged > 2000);
}

TEST_CASE("a hole in the heights under the trailer alone leaves the carrier known") {
  const Scene scene = scene_on(testing::with_void(
      testing::plane(0, 0.1), [](double, double north) { return 48 < north && north < 52; }));
  const geo::Polyline line{{place(0, 0), place(0, 100)}};
  const std::vector<Footfall> found = footfalls(scene, line, testing::towing_rig(), Metres{1});
  // Cells of 5 m: without the centre at 50 m, ground is known to 45 and from 55.
  CHECK(at(found, Metres{40}).carrier.has_value());
  CHECK(at(found, Metres{40}).trailer.has_value());
  CHECK_FALSE(at(found, Metres{50}).carrier.has_value());
  CHECK_FALSE(at(found, Metres{50}).trailer.has_value());
  CHECK(at(found, Metres{62}).carrier.has_value());
  CHECK_FALSE(at(found, Metres{62}).trailer.has_value());
  CHECK(at(found, Metres{70}).trailer.has_value());
}

TEST_CASE("where the line starts, the trailer stands on what there is of it") {
  // Steep before the start, level after it.
  const Scene scene = scene_on(
      [](double, double north) { return 1000 + (north < -20 ? 0.5 * (-20 - north) : 0.0); });
  const geo::Polyline line{{place(0, 0), place(0, 100)}};
  const std::vector<Footfall> found = footfalls(scene, line, testing::towing_rig(), Metres{0});
  REQUIRE(found.front().trailer.has_value());
  CHECK(near(found.front().trailer->steepest_grade().ratio(), 0.0, 2e-9));
}

TEST_CASE("the aspect is the way the ground falls, and is unknown where it may be level") {
  const geo::Polyline line{{place(0, 0), place(30, 50)}};
  const Scene east_facing = scene_on(testing::hillside(15, 90));
  for (const Footfall& step : footfalls(east_facing, line, testing::solo_rig(), Metres{1})) {
    REQUIRE(step.aspect.has_value());
    CHECK(near(step.aspect->degrees(), 90.0, 1e-6));
  }
  const Scene level = scene_on(testing::plane(0.001, 0));
  for (const Footfall& step : footfalls(level, line, testing::solo_rig(), Metres{1})) {
    CHECK_FALSE(step.aspect.has_value());
  }
}

TEST_CASE("ground as steep as its slope may be off may be level, so its aspect is unknown") {
  const geo::Polyline line{{place(0, 0), place(0, 50)}};
  const auto aspect = [&line](double falls_east) {
    Scene scene = scene_on(testing::plane(-falls_east, 0));
    scene.rules.confidence_k = 0;
    scene.trust.sub_cell = Slope::from_ratio(0.125);
    REQUIRE(slope_tolerance(scene, testing::solo_rig().carrier.gauge)->ratio() == 0.125);
    return footfalls(scene, line, testing::solo_rig(), Metres{1}).at(3).aspect;
  };
  CHECK_FALSE(aspect(0.125).has_value());
  CHECK(aspect(0.12500001).has_value());
}

TEST_CASE("a rig is as long as carrier, hitch, drawbar and half the runners; the lag is by hand") {
  // Carrier 3.0, hitch 0.3 behind the contact, drawbar 2.2, half of 1.6.
  CHECK(near(overall_length(testing::towing_rig()), Metres{6.3}, Metres{1e-12}));
  // Middle of 1.8 m of contact to the hitch 0.9 + 0.3, drawbar 2.2.
  CHECK(near(trailer_lag(testing::towing_rig()), Metres{3.4}, Metres{1e-12}));
  CHECK(overall_length(testing::solo_rig()) == Metres{3.0});
  CHECK(trailer_lag(testing::solo_rig()) == Metres{0});
}

TEST_CASE("a rig that may head any way meets the whole slope either way") {
  const AttitudeBox box{Slope::from_ratio(-0.1), Slope::from_ratio(0.3), Slope::from_ratio(-0.4),
                        Slope::from_ratio(0.2)};
  const AttitudeBox any = for_every_heading(box);
  CHECK(near(any.grade_high.ratio(), 0.5, 1e-12));
  CHECK(near(any.cross_low.ratio(), -0.5, 1e-12));
}

TEST_CASE("a slope's tolerance is k sigma, with what hides between cells where they are wide") {
  Scene scene = scene_on(testing::plane(0, 0));
  const Slope sigma = *terrain::gradient_sigma(scene.heights.frame(), scene.trust);
  REQUIRE(sigma.ratio() > 0);
  CHECK(near(slope_tolerance(scene, Metres{5})->ratio(), 1.645 * sigma.ratio(), 1e-12));
  CHECK(near(slope_tolerance(scene, Metres{4.99})->ratio(), 1.645 * sigma.ratio() + 0.005, 1e-12));
  // Brought from a map whose heights lie further apart, fine cells know no more than those did.
  scene.trust.measured_step = Metres{6};
  CHECK(near(slope_tolerance(scene, Metres{5.99})->ratio(), 1.645 * sigma.ratio() + 0.005, 1e-12));
  CHECK(near(slope_tolerance(scene, Metres{6})->ratio(), 1.645 * sigma.ratio(), 1e-12));
  scene.trust.measured_step = Metres{0};
  scene.trust.sub_cell.reset();
  CHECK(slope_tolerance(scene, Metres{5}).has_value());
  CHECK_FALSE(slope_tolerance(scene, Metres{4.99}).has_value());
  scene.rules.confidence_k = std::nan("");
  CHECK_FALSE(slope_tolerance(scene, Metres{5}).has_value());
  scene = scene_on(testing::plane(0, 0));
  scene.trust.errors.clear();
  CHECK_FALSE(slope_tolerance(scene, Metres{5}).has_value());
}

TEST_CASE("a trailer that cannot follow its tightest bend may lie a drawbar's length inside it") {
  // Hitch 3 m behind the middle, drawbar 5 m: at a radius of sqrt(25 - 9) = 4 m it turns on the
  // spot. Where it goes then is not known, but no further from its carrier than 3 + 5 m.
  rig::Rig rig = testing::towing_rig();
  rig.carrier.hitch_at.forward = Metres{-2.1};
  rig.trailer->drawbar_length = Metres{5};
  REQUIRE_FALSE(sweep_of(rig, least_radius(rig)).has_value());
  const geo::Polyline doubles_back{{place(0, 0), place(0, 60), place(1, 0)}};
  REQUIRE(tightest_bend(doubles_back, overall_length(rig)).radius < Metres{4});
  const auto steepest_beside = [&](double aside_m) {
    testing::TestGround ground;
    ground.ground = [=](double east, double) {
      return 1000 + (east < -aside_m ? 0.5 * (-aside_m - east) : 0.0);
    };
    ground.cell_m = 1.25;  // wider than the gauge, so that the surface itself is bounded
    ground.extent = {-60, -60, 60, 120};
    const Scene scene = testing::scene_of(ground, testing::straight_trail(0));
    const Footfall step = at(footfalls(scene, doubles_back, rig, Metres{0}), Metres{20});
    REQUIRE(step.trailer.has_value());
    CHECK(near(step.carrier->steepest_cross().ratio(), 0.0, 1e-6));
    return step.trailer->steepest_cross().ratio();
  };
  // 8 m, and half its gauge of 1.2 m.
  CHECK(near(steepest_beside(7.5), 0.5, 1e-6));
  CHECK(near(steepest_beside(8.75), 0.0, 1e-6));
}

TEST_CASE("neither the error nor what hides between cells may take anything off the other") {
  Scene scene = scene_on(testing::plane(0, 0));
  scene.trust.sub_cell = Slope::from_ratio(0);
  CHECK(slope_tolerance(scene, Metres{4}).has_value());
  for (const double bad : {-0.001, -10.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    scene.trust.sub_cell = Slope::from_ratio(bad);
    CHECK_FALSE(slope_tolerance(scene, Metres{4}).has_value());
  }
  scene.trust.sub_cell = Slope::from_ratio(10);
  scene.rules.confidence_k = -1;
  CHECK_FALSE(slope_tolerance(scene, Metres{4}).has_value());
  CHECK_FALSE(slope_tolerance(scene, Metres{5}).has_value());
}

}  // namespace

}  // namespace rimehaul::passage
