// Speed, time and fuel of a drive against closed forms worked out by hand.
#include "passage/drive.h"

#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "passage/demo_scene.h"
#include "passage/profile.h"

namespace rimehaul::passage {

namespace {

using testing::near;
using units::Metres;
using units::MetresPerSecond;
using units::Newtons;
using units::Slope;

/// A rig of 1100 kg on snow that holds it back with 8 % of what presses on it.
rig::Weighed weighed_1100_kg() {
  rig::Weighed weighed;
  weighed.carrier.mass = units::Kilograms{700};
  weighed.trailer.mass = units::Kilograms{400};
  return weighed;
}

snow::GripRow eight_per_cent() {
  snow::GripRow grip;
  grip.carrier_resistance = {units::ForceRatio{0.05}, units::ForceRatio{0.08}};
  grip.trailer_resistance = {units::ForceRatio{0.05}, units::ForceRatio{0.08}};
  return grip;
}

rig::Carrier thirsty_carrier() {
  rig::Carrier carrier = testing::plain_carrier();
  carrier.driveline_efficiency = 0.65;
  carrier.consumption = units::GramsPerKilowattHour{400};
  carrier.fuel_density = units::KilogramsPerCubicMetre{745};
  carrier.idle_consumption = units::LitresPerHour{1.0};
  return carrier;
}

TEST_CASE("1100 kg up 10 % through 8 % of drag needs 1932 N, 8 kW at 15 km/h and 0.44 L/km") {
  // Closed form: F = W (R + G) / sqrt(1 + G^2), W = 1100 x 9.80665 N, R = 0.08, G = 0.1.
  const Newtons pull = pull_needed(weighed_1100_kg(), eight_per_cent(), Slope::from_percent(10));
  CHECK(near(pull, Newtons{1100 * 9.80665 * 0.18 / std::sqrt(1.01)}, Newtons{1e-9}));
  CHECK(near(pull, Newtons{1932.08}, Newtons{0.005}));

  const MetresPerSecond speed{15 / 3.6};
  CHECK(near(pull * speed, units::Watts{8050}, units::Watts{0.5}));
  // 8.050 kW / 0.65 = 12.385 kW; x 400 g/kWh / 745 g/L.
  const units::LitresPerHour rate = fuel_rate(thirsty_carrier(), pull, speed);
  CHECK(near(rate, units::LitresPerHour{6.650}, units::LitresPerHour{0.0005}));
  CHECK(near(rate.value() / 15, 0.4433, 0.00005));
}

TEST_CASE("a kilowatt-hour at the crankshaft burns 0.362 to 0.604 L by the engine's consumption") {
  // Consumption over density, 745 g/L (closed form).
  rig::Carrier carrier = thirsty_carrier();
  carrier.driveline_efficiency = 1.0;
  carrier.idle_consumption = units::LitresPerHour{0};
  struct Row {
    double grams;
    double litres;
  };
  for (const Row& row : {Row{270, 0.362}, Row{320, 0.430}, Row{400, 0.537}, Row{450, 0.604}}) {
    carrier.consumption = units::GramsPerKilowattHour{row.grams};
    CHECK(near(fuel_rate(carrier, Newtons{500}, MetresPerSecond{2}).value(), row.litres, 5e-4));
  }
}

TEST_CASE("an engine that idles downhill still burns its idle fuel, and gets none back") {
  const Newtons pull = pull_needed(weighed_1100_kg(), eight_per_cent(), Slope::from_percent(-30));
  CHECK(pull < Newtons{0});
  CHECK(fuel_rate(thirsty_carrier(), pull, MetresPerSecond{3}) == units::LitresPerHour{1.0});
  CHECK(fuel_rate(thirsty_carrier(), Newtons{0}, MetresPerSecond{3}) == units::LitresPerHour{1.0});
}

TEST_CASE("the engine's power at the snow, over the pull, is the speed it can hold") {
  rig::Carrier carrier = thirsty_carrier();
  carrier.engine_power = units::Watts{20'000};
  CHECK(
      near(speed_of_power(carrier, Newtons{2'600}), MetresPerSecond{5.0}, MetresPerSecond{1e-12}));
  CHECK(std::isinf(speed_of_power(carrier, Newtons{0}).value()));
  CHECK(std::isnan(speed_of_power(carrier, Newtons{std::nan("")}).value()));
}

TEST_CASE("a bend is driven so that it asks a tenth of the weight sideways") {
  const double radius_m = 12.0;
  const double speed = speed_of_bend(Metres{radius_m}).value();
  CHECK(near(speed * speed / radius_m, 0.1 * 9.80665, 1e-12));
  CHECK(std::isnan(speed_of_bend(Metres{std::nan("")}).value()));
}

TEST_CASE("four metres on the map at 75 % are five metres over the snow") {
  CHECK(near(over_snow(Metres{4}, Slope::from_ratio(0.75)), Metres{5}, Metres{1e-12}));
  CHECK(near(over_snow(Metres{4}, Slope::from_ratio(-0.75)), Metres{5}, Metres{1e-12}));
}

TEST_CASE("a straight climb of 300 m at 10 % rises 30 m, and its fuel is force times way") {
  testing::TestGround ground;
  ground.ground = testing::plane(0.0, 0.1);
  const Scene scene = testing::scene_of(ground, testing::straight_trail(0));
  const rig::Rig rig = testing::solo_rig();
  const geo::Polyline& line = scene.network.legs[0].line;
  const auto trodden = footfalls(scene, line, rig, Metres{1});
  const auto profile = profile_of(scene.heights, line, trodden);
  REQUIRE(profile.has_value());
  const Way way = way_over(*profile);
  CHECK(near(way.climb, Metres{30}, Metres{1e-6}));
  CHECK(near(way.drop, Metres{0}, Metres{1e-6}));
  CHECK(near(way.over_snow, Metres{300 * std::sqrt(1.01)}, Metres{1e-6}));

  const snow::GripRow grip = eight_per_cent();
  const std::vector<const snow::GripRow*> grips(trodden.size(), &grip);
  const rig::Weighed weighed = rig::weigh(rig);
  // Closed form: energy at the snow = W (R + G) x 300 m, over driveline, times grams per joule.
  const double joules = units::weight_of(weighed.total()).value() * 0.18 * 300;
  const double grams = joules / 0.65 / 3.6e6 * 400;
  const units::Litres fuel = fuel_over(*profile, rig, grips, MetresPerSecond{4});
  CHECK(near(fuel, units::Litres{grams / 741}, units::Litres{1e-9}));
}

TEST_CASE("time and fuel are reckoned for the worst ground that lies between two known heights") {
  // Level from end to end, but up and down by 30 % in between.
  const Rise level{.in_plan = Metres{10},
                   .grade = Slope::from_percent(0),
                   .low = Slope::from_percent(-30),
                   .high = Slope::from_percent(30)};
  CHECK(near(way_over({level}).over_snow, Metres{10 * std::hypot(1.0, 0.3)}, Metres{1e-9}));
  CHECK(way_over({level}).climb == Metres{0});
  const rig::Rig rig = testing::solo_rig();
  const snow::GripRow grip = eight_per_cent();
  const auto litres = [&](const Rise& rise) {
    return fuel_over({rise}, rig, {&grip}, MetresPerSecond{4}).value();
  };
  const auto steady = [](double percent) {
    const Slope grade = Slope::from_percent(percent);
    return Rise{.in_plan = Metres{10}, .grade = grade, .low = grade, .high = grade};
  };
  // Half of it climbs at 30 %, half of it falls and gives nothing back.
  CHECK(near(litres(level), (litres(steady(30)) + litres(steady(-30))) / 2, 1e-12));
  CHECK(litres(level) > litres(steady(0)));
}

TEST_CASE("where two footfalls meet the heavier snow of both counts") {
  const rig::Rig rig = testing::solo_rig();
  const snow::GripRow light = eight_per_cent();
  snow::GripRow heavy = light;
  heavy.carrier_resistance.high = units::ForceRatio{0.2};
  const Slope grade = Slope::from_percent(2);
  const auto litres = [&](const snow::GripRow& before, const snow::GripRow& under) {
    return fuel_over({{.in_plan = Metres{10},
                       .grade = grade,
                       .low = grade,
                       .high = grade,
                       .before = 0,
                       .under = 1}},
                     rig, {&before, &under}, MetresPerSecond{4});
  };
  CHECK(litres(light, heavy) == litres(heavy, heavy));
  CHECK(litres(heavy, light) == litres(heavy, heavy));
  CHECK(litres(light, light) < litres(heavy, heavy));
}

TEST_CASE("a hole in the heights under the line leaves no profile") {
  testing::TestGround ground;
  ground.ground = testing::with_void(
      testing::plane(0.0, 0.1), [](double, double north) { return north > 140 && north < 160; });
  const Scene scene = testing::scene_of(ground, testing::straight_trail(0));
  const geo::Polyline& line = scene.network.legs[0].line;
  const auto trodden = footfalls(scene, line, testing::solo_rig(), Metres{1});
  CHECK_FALSE(profile_of(scene.heights, line, trodden).has_value());
}

TEST_CASE("where nothing is trodden there is no profile") {
  const Scene scene = testing::scene_of({}, testing::straight_trail(0));
  CHECK_FALSE(profile_of(scene.heights, scene.network.legs[0].line, {}).has_value());
}

TEST_CASE("two footfalls about one middle are one height, and add no way, time or fuel") {
  testing::TestGround ground;
  ground.ground = testing::plane(0.0, 0.1);
  const Scene scene = testing::scene_of(ground, testing::straight_trail(0));
  const rig::Rig rig = testing::solo_rig();
  const geo::Polyline& line = scene.network.legs[0].line;
  auto trodden = footfalls(scene, line, rig, Metres{1});
  const auto once = profile_of(scene.heights, line, trodden);
  trodden.insert(trodden.begin() + 4, trodden[4]);
  const auto twice = profile_of(scene.heights, line, trodden);
  REQUIRE(once.has_value());
  REQUIRE(twice.has_value());
  CHECK(twice->size() == once->size());
  CHECK(near(way_over(*twice).over_snow, Metres{300 * std::sqrt(1.01)}, Metres{1e-6}));
  CHECK(near(way_over(*twice).climb, Metres{30}, Metres{1e-6}));
  const snow::GripRow grip = eight_per_cent();
  const std::vector<const snow::GripRow*> grips(trodden.size(), &grip);
  CHECK(near(fuel_over(*twice, rig, grips, MetresPerSecond{4}),
             fuel_over(*once, rig, grips, MetresPerSecond{4}), units::Litres{1e-9}));
}

}  // namespace

}  // namespace rimehaul::passage
