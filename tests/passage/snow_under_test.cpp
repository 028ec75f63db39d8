// No place on a footfall meets snow that was not asked for.
#include "passage/snow_under.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "passage/demo_scene.h"
#include "passage/judge.h"
#include "terrain/gradient.h"
#include "terrain/stretch.h"

using namespace rimehaul;
using namespace rimehaul::testing;
using passage::Footfall;
using passage::snow_under;
using snow::SnowState;
using States = std::vector<std::optional<SnowState>>;

namespace {

constexpr SnowState kDry{snow::Wetness::dry, snow::Surface::groomed};
constexpr SnowState kWet{snow::Wetness::wet, snow::Surface::groomed};

/// Dry above 1000 m, wet below; and wet wherever the ground faces between east and south.
snow::ReportedSnow report() {
  const geo::Height line{1000};
  return snow::ReportedSnow{
      {.bands = {{.above = line, .below = {}, .aspect_from = {}, .aspect_to = {}, .state = kDry},
                 {.above = {}, .below = line, .aspect_from = {}, .aspect_to = {}, .state = kWet},
                 {.above = {},
                  .below = {},
                  .aspect_from = units::Bearing::from_degrees(90),
                  .aspect_to = units::Bearing::from_degrees(180),
                  .state = kWet}},
       .weather = plain_weather(),
       .observer = "N. Warden",
       .observed = mid_morning(),
       .valid_until = units::Instant{mid_morning().seconds + 3600}}};
}

terrain::AttitudeBox box(double grade, double cross, double spread) {
  const auto slope = [](double ratio) { return units::Slope::from_ratio(ratio); };
  return {slope(grade - spread), slope(grade + spread), slope(cross - spread),
          slope(cross + spread)};
}

/// 5 m of a line to the north, at a height, on ground that tilts so.
Footfall northbound(double height_m, const terrain::AttitudeBox& ground) {
  return {.span = {units::Metres{40}, units::Metres{45}},
          .middle = place(0, 42.5),
          .heading = units::Bearing::from_degrees(0),
          .height = geo::Height{height_m},
          .aspect = std::nullopt,
          .carrier = ground,
          .trailer = ground};
}

States asked(Footfall footfall, std::optional<units::Bearing> aspect) {
  footfall.aspect = aspect;
  const snow::ReportedSnow snow = report();
  const geo::Polyline line{{place(0, 0), place(0, 100)}};
  return snow_under(footfall, {snow, line, units::Slope::from_percent(1), mid_morning(), true});
}

}  // namespace

TEST_CASE("a climb across the snow line meets the snow of both sides, a level way beside it one") {
  const auto south = units::Bearing::from_degrees(200);  // clear of the wet sector
  CHECK(asked(northbound(1000.4, box(0.2, -0.08, 0.001)), south) == States{kDry, kWet});
  CHECK(asked(northbound(1000.6, box(0.2, -0.08, 0.001)), south) == States{kDry});
  CHECK(asked(northbound(999.4, box(0.2, -0.08, 0.001)), south) == States{kWet});
}

TEST_CASE("ground that may face into a sector meets that sector's snow") {
  // Climbing to the north the ground faces south: 180 is the sector's edge.
  const auto just_out = units::Bearing::from_degrees(185);
  CHECK(asked(northbound(1100, box(0.2, -0.04, 0.001)), just_out) == States{kDry});
  CHECK(asked(northbound(1100, box(0.2, -0.01, 0.05)), just_out) == States{kDry, kWet});
}

TEST_CASE("ground that may be level may face anywhere") {
  const auto north = units::Bearing::from_degrees(0);
  CHECK(asked(northbound(1100, box(-0.03, 0.0, 0.005)), north) == States{kDry});
  CHECK(asked(northbound(1100, box(-0.014, 0.0, 0.005)), north) == States{kDry, kWet});
}

TEST_CASE("ground that just may be level may face anywhere") {
  const snow::ReportedSnow snow = report();
  const geo::Polyline line{{place(0, 0), place(0, 100)}};
  Footfall footfall = northbound(1100, box(-0.25, 0.0, 0.0));
  footfall.aspect = units::Bearing::from_degrees(0);
  const auto states = [&](double tolerance) {
    return snow_under(footfall,
                      {snow, line, units::Slope::from_ratio(tolerance), mid_morning(), true});
  };
  CHECK(states(0.2499) == States{kDry});
  CHECK(states(0.25) == States{kDry, kWet});
}

TEST_CASE("ground of which it is not known how it lies, or how well, may face anywhere") {
  const snow::ReportedSnow snow = report();
  const geo::Polyline line{{place(0, 0), place(0, 100)}};
  Footfall footfall = northbound(1100, box(-0.03, 0.0, 0.005));
  footfall.aspect = units::Bearing::from_degrees(0);
  std::optional<units::Slope> tolerance = units::Slope::from_percent(1);
  REQUIRE(snow_under(footfall, {snow, line, tolerance, mid_morning(), true}) == States{kDry});
  tolerance.reset();
  CHECK(snow_under(footfall, {snow, line, tolerance, mid_morning(), true}) == States{kDry, kWet});
  tolerance = units::Slope::from_percent(1);
  footfall.carrier.reset();
  CHECK(snow_under(footfall, {snow, line, tolerance, mid_morning(), true}) == States{kDry, kWet});
}

TEST_CASE("a footfall round a corner meets the snow of every way that the ground faces there") {
  // Ground that falls ahead faces north before the corner, east behind it.
  const snow::ReportedSnow snow = report();
  Footfall footfall = northbound(1100, box(-0.3, 0.0, 0.005));
  footfall.aspect = units::Bearing::from_degrees(0);
  const auto states = [&](const geo::Polyline& line) {
    return snow_under(footfall, {snow, line, units::Slope::from_percent(1), mid_morning(), true});
  };
  CHECK(states(geo::Polyline{{place(0, 0), place(0, 20), place(0, 42.5), place(50, 42.5)}}) ==
        States{kDry, kWet});
  CHECK(states(geo::Polyline{{place(0, 0), place(0, 20), place(0, 45.5), place(50, 45.5)}}) ==
        States{kDry});
  // 45 degrees to the left and 45 to the right are 90 of turning.
  CHECK(states(geo::Polyline{{place(0, 0), place(0, 41), place(-2, 43), place(-2, 60)}}) ==
        States{kDry, kWet});
}

TEST_CASE("no snow is asked for beyond the aspects that the box lets the ground have") {
  // Falling by 0.3 to 0.4 ahead and as much to the right: atan(0.3 / 0.4) to atan(0.4 / 0.3).
  const auto facing = [](double from_deg, double to_deg, SnowState state) {
    return snow::SnowBand{.above = {},
                          .below = {},
                          .aspect_from = units::Bearing::from_degrees(from_deg),
                          .aspect_to = units::Bearing::from_degrees(to_deg),
                          .state = state};
  };
  const auto asked_with_dry_in = [&](double from_deg, double to_deg) {
    const snow::ReportedSnow snow{
        {.bands = {facing(from_deg, to_deg, kDry), facing(to_deg + 0.01, from_deg - 0.01, kWet)},
         .weather = plain_weather(),
         .observer = "N. Warden",
         .observed = mid_morning(),
         .valid_until = units::Instant{mid_morning().seconds + 3600}}};
    Footfall footfall = northbound(1100, box(-0.35, 0.35, 0.05));
    footfall.aspect = units::Bearing::from_degrees(45);
    const geo::Polyline line{{place(0, 0), place(0, 100)}};
    return snow_under(footfall, {snow, line, units::Slope::from_percent(1), mid_morning(), true});
  };
  CHECK(asked_with_dry_in(36.8, 53.2) == States{kDry});
  CHECK(asked_with_dry_in(37.0, 53.2) == States{kDry, kWet});
  CHECK(asked_with_dry_in(36.8, 53.0) == States{kDry, kWet});
}

TEST_CASE("3 cm of new snow make a groomed surface a fresh one, and leave ice what it is") {
  const auto under = [](snow::Surface surface, std::optional<double> new_snow_m) {
    snow::DayWeather weather = plain_weather();
    weather.new_snow = new_snow_m ? std::optional{units::Metres{*new_snow_m}} : std::nullopt;
    const snow::ConstantSnow snow{{snow::Wetness::moist, surface}, weather, "test"};
    const geo::Polyline line{{place(0, 0), place(0, 100)}};
    return snow_under(northbound(900, box(0.1, 0, 0)),
                      {snow, line, units::Slope::from_percent(1), mid_morning(), true});
  };
  const auto moist = [](snow::Surface surface) {
    return States{SnowState{snow::Wetness::moist, surface}};
  };
  CHECK(under(snow::Surface::groomed, 0.0) == moist(snow::Surface::groomed));
  CHECK(under(snow::Surface::groomed, 0.029) == moist(snow::Surface::groomed));
  CHECK(under(snow::Surface::groomed, 0.03) == moist(snow::Surface::fresh));
  CHECK(under(snow::Surface::groomed, std::nan("")) == moist(snow::Surface::fresh));
  CHECK(under(snow::Surface::ice, 0.5) == moist(snow::Surface::ice));
  CHECK(under(snow::Surface::groomed, std::nullopt) == States{std::nullopt});  // nobody has said
}

TEST_CASE("where nobody grooms, what the report calls groomed counts as fresh, and ice as ice") {
  const auto ungroomed = [](snow::Surface surface) {
    const snow::ConstantSnow snow{{snow::Wetness::wet, surface}, plain_weather(), "test"};
    const geo::Polyline line{{place(0, 0), place(0, 100)}};
    return snow_under(northbound(900, box(0.1, 0, 0)),
                      {snow, line, units::Slope::from_percent(1), mid_morning(), false});
  };
  using enum snow::Surface;
  CHECK(ungroomed(groomed) == States{SnowState{snow::Wetness::wet, fresh}});
  CHECK(ungroomed(fresh) == States{SnowState{snow::Wetness::wet, fresh}});
  CHECK(ungroomed(ice) == States{SnowState{snow::Wetness::wet, ice}});
}

TEST_CASE("a leg of an ungroomed trail is judged in fresh snow") {
  TestTrails all = two_ways();
  const rig::Rig rig = solo_rig();
  const snow::ConstantSnow snow = snow_of(snow::Wetness::moist);
  for (const std::optional<bool> groomed : {std::optional{true}, std::optional{false}, {}}) {
    for (trails::Trail& trail : all.trails) {
      trail.groomed = groomed;
    }
    const passage::Scene scene = scene_of({}, all);
    const passage::Judge judge{scene, rig, snow};
    const snow::Surface trodden =
        groomed.value_or(false) ? snow::Surface::groomed : snow::Surface::fresh;
    const passage::LegJudgement judged = judge.judge(trails::LegId{0}, mid_morning());
    REQUIRE(judged.snow.size() == 1);
    CHECK(judged.snow.front() == SnowState{snow::Wetness::moist, trodden});
  }
}

TEST_CASE("a turn between two trails is groomed only where both are") {
  TestTrails all = two_ways();
  const rig::Rig rig = solo_rig();
  const snow::ConstantSnow snow = snow_of(snow::Wetness::moist);
  const auto climb_share = [&](bool way_groomed, bool link_groomed) {
    all.trails[0].groomed = way_groomed;
    all.trails[2].groomed = link_groomed;
    const passage::Scene scene =
        scene_of({.ground = [](double, double north_m) { return 1000 + 0.1 * north_m; }}, all);
    REQUIRE(scene.network.legs[8].trail == 2);
    const passage::Judge judge{scene, rig, snow};
    for (const passage::Finding& finding :
         judge.judge_turn(trails::LegId{0}, trails::LegId{8}, mid_morning()).findings) {
      if (finding.check == passage::Check::climb_traction) {
        return finding.share.value();
      }
    }
    return std::nan("");
  };
  const double groomed = climb_share(true, true);
  const double fresh = climb_share(false, false);
  CHECK(groomed < fresh);
  CHECK(climb_share(true, false) == fresh);
  CHECK(climb_share(false, true) == fresh);
}

TEST_CASE("snow that changes whenever it is asked counts as unknown and closes") {
  const passage::Finding finding = passage::snow_that_turns();
  CHECK(finding.check == passage::Check::snow_known);
  CHECK(passage::stand_of(finding, 1.0) == passage::Stand::missing);
  CHECK(finding.missing == "snow that stays while the leg is driven");
}

TEST_CASE("no known height, no known snow") {
  Footfall footfall = northbound(1100, box(0.1, 0.0, 0.01));
  footfall.height.reset();
  CHECK(asked(footfall, std::nullopt) == States{std::nullopt});
}

TEST_CASE("whatever snow a place on a footfall has was asked for, on rolling ground") {
  const passage::Scene scene = scene_of({.ground =
                                             [](double east_m, double north_m) {
                                               return 1000.0 + 3.0 * std::sin(east_m / 25.0) +
                                                      3.0 * std::cos(north_m / 30.0);
                                             }},
                                        two_ways());
  const rig::Rig rig = solo_rig();
  const snow::ReportedSnow snow = report();
  const passage::Judge judge{scene, rig, snow};
  std::size_t places = 0;
  std::size_t overlooked = 0;
  std::size_t mixed = 0;
  for (const trails::Leg& leg : scene.network.legs) {
    const passage::SnowQuestion question{snow, leg.line, judge.tolerance(), mid_morning(), true};
    for (const Footfall& footfall : passage::footfalls(scene, leg.line, rig, units::Metres{1})) {
      const States states = snow_under(footfall, question);
      mixed += states.size() > 1 ? 1U : 0U;
      for (int i = 0; i <= 10; ++i) {
        const geo::MapPoint there =
            leg.line.at(footfall.span.from + 0.1 * i * (footfall.span.to - footfall.span.from));
        const auto gradient = terrain::surface_gradient(scene.heights, there);
        REQUIRE(gradient.has_value());
        const bool level = !(terrain::slope_of(*gradient) > *judge.tolerance());
        const auto state =
            snow.at({*scene.heights.at(there), level ? std::nullopt : terrain::aspect_of(*gradient),
                     mid_morning()});
        overlooked += std::ranges::find(states, state) == states.end() ? 1U : 0U;
        ++places;
      }
    }
  }
  CHECK(overlooked == 0);
  CHECK(places > 5000);
  CHECK(mixed > 50);
}
