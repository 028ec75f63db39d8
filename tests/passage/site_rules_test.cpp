// Rules of the site that need no ground: trails, hours, drivers, wind, sight, zones and marks.
#include "passage/site_rules.h"

#include <doctest/doctest.h>

#include <cmath>

#include "near.h"
#include "passage/demo_scene.h"
#include "passage/mark_rules.h"
#include "passage/zone_rules.h"

namespace rimehaul::passage {

namespace {

using testing::place;
using units::Metres;
using units::MetresPerSecond;
using units::Seconds;

trails::Trail some_trail() {
  return testing::plain_trail("North Way", {place(0, 0), place(100, 0)});
}

Stand stand(const Finding& finding) {
  return stand_of(finding, 0.7);
}

bool names(const Finding& finding, const char* what) {
  return finding.missing.find(what) != std::string::npos;
}

TEST_CASE("a trail of which everything was said passes; whatever is left out closes it by name") {
  CHECK(stand(judge_trail_attributes(some_trail())) == Stand::passes);
  trails::Trail trail = some_trail();
  trail.width.reset();
  trail.shared_with_skiers.reset();
  const Finding finding = judge_trail_attributes(trail);
  CHECK(stand(finding) == Stand::missing);
  CHECK(names(finding, "width_m"));
  CHECK(names(finding, "skiers"));
  CHECK(names(finding, "North Way"));
}

TEST_CASE("an attribute that makes no sense is as good as none") {
  trails::Trail trail = some_trail();
  trail.line_error = Metres{std::nan("")};
  CHECK(names(judge_trail_attributes(trail), "error_m"));
  trail = some_trail();
  trail.lanes = 0;
  CHECK(names(judge_trail_attributes(trail), "lanes"));
}

TEST_CASE("a one-way trail may be driven its way only") {
  trails::Trail trail = some_trail();
  trail.direction = trails::AllowedDirection::backward;
  CHECK(stand(judge_direction(trail, trails::Way::against)) == Stand::passes);
  CHECK(stand(judge_direction(trail, trails::Way::as_drawn)) == Stand::refused);
  trail.direction = trails::AllowedDirection::forward;
  CHECK(stand(judge_direction(trail, trails::Way::against)) == Stand::refused);
  CHECK(stand(judge_direction(trail, trails::Way::as_drawn)) == Stand::passes);
  trail.direction.reset();
  CHECK(stand(judge_direction(trail, trails::Way::as_drawn)) == Stand::missing);
}

Finding in_hours(const char* entry, double lasting_s) {
  trails::Trail trail = some_trail();
  trail.hours = trails::OpenHours{{8 * 60}, {16 * 60}};
  Rules rules = testing::plain_rules();
  rules.utc_offset_minutes = -600;
  return judge_hours(trail, {*units::parse_instant(entry), Seconds{lasting_s}}, rules);
}

TEST_CASE("a trail open 08:00 to 16:00 local is entered from 08:00:00 and left by 16:00:00") {
  // Ten hours behind universal time: 18:00Z is 08:00.
  CHECK(stand(in_hours("2026-02-01T18:00:00Z", 60)) == Stand::passes);
  CHECK(stand(in_hours("2026-02-01T17:59:59Z", 60)) == Stand::refused);
  CHECK(stand(in_hours("2026-02-02T01:59:00Z", 60)) == Stand::passes);
  CHECK(stand(in_hours("2026-02-02T01:59:00Z", 60.5)) == Stand::refused);
  CHECK(stand(in_hours("2026-02-02T01:59:01Z", 60)) == Stand::refused);
  CHECK(stand(in_hours("2026-02-02T12:00:00Z", 60)) == Stand::refused);
}

TEST_CASE("a trail that is always open may be driven over midnight; one without hours may not") {
  trails::Trail trail = some_trail();
  const Stay over_midnight{*units::parse_instant("2026-02-01T23:59:00Z"), Seconds{600}};
  CHECK(stand(judge_hours(trail, over_midnight, testing::plain_rules())) == Stand::passes);
  trail.hours.reset();
  CHECK(stand(judge_hours(trail, over_midnight, testing::plain_rules())) == Stand::missing);
}

TEST_CASE("a driver's level must be in the rules, and only some may tow") {
  const Rules rules = testing::plain_rules();
  rig::Rig rig = testing::towing_rig();
  CHECK(stand(judge_driver_level(rig, rules)) == Stand::passes);
  rig.driver_level = "new";
  CHECK(stand(judge_driver_level(rig, rules)) == Stand::refused);
  rig.trailer.reset();
  CHECK(stand(judge_driver_level(rig, rules)) == Stand::passes);
  rig.driver_level = "visitor";
  const Finding finding = judge_driver_level(rig, rules);
  CHECK(stand(finding) == Stand::missing);
  CHECK(names(finding, "visitor"));
}

TEST_CASE("nobody tows in snow wetter than the site and the driver's level allow") {
  Rules rules = testing::plain_rules();
  const rig::Rig rig = testing::towing_rig();
  const auto in = [&](snow::Wetness wetness) {
    return stand(judge_towing_in_wet_snow(rig, rules, {wetness, snow::Surface::groomed}));
  };
  CHECK(in(snow::Wetness::very_wet) == Stand::passes);
  CHECK(in(snow::Wetness::slush) == Stand::refused);
  rules.driver_levels[0].wettest_towing = snow::Wetness::moist;
  CHECK(in(snow::Wetness::moist) == Stand::passes);
  CHECK(in(snow::Wetness::wet) == Stand::refused);
  rules.wettest_towing = snow::Wetness::dry;
  CHECK(in(snow::Wetness::moist) == Stand::refused);
  rules.driver_levels.clear();
  CHECK(in(snow::Wetness::dry) == Stand::missing);
}

TEST_CASE("wind at the site's most passes, a hair more is refused, unknown wind is missing") {
  Rules rules = testing::plain_rules();
  snow::DayWeather weather = testing::plain_weather();
  weather.wind = MetresPerSecond{20};
  CHECK(stand(judge_wind(weather, rules)) == Stand::passes);
  weather.wind = MetresPerSecond{20.001};
  CHECK(stand(judge_wind(weather, rules)) == Stand::refused);
  weather.wind = MetresPerSecond{std::nan("")};
  CHECK(stand(judge_wind(weather, rules)) == Stand::refused);
  weather.wind.reset();
  CHECK(stand(judge_wind(weather, rules)) == Stand::missing);
  rules.most_wind.reset();
  CHECK(stand(judge_wind(weather, rules)) == Stand::passes);
}

TEST_CASE("sight is the trail's or the site's, no further than one sees, halved on a single lane") {
  const Rules rules = testing::plain_rules();
  snow::DayWeather weather = testing::plain_weather();
  trails::Trail trail = some_trail();
  CHECK(sight_along(trail, rules, weather) == Metres{60});
  trail.sight.reset();
  CHECK(sight_along(trail, rules, weather) == Metres{30});
  weather.visibility = Metres{20};
  CHECK(sight_along(trail, rules, weather) == Metres{20});
  trail.lanes = 1;
  CHECK(sight_along(trail, rules, weather) == Metres{10});
  trail.direction = trails::AllowedDirection::forward;
  CHECK(sight_along(trail, rules, weather) == Metres{20});
  trail.direction.reset();
  trail.lanes.reset();
  CHECK(sight_along(trail, rules, weather) == Metres{10});
  weather.visibility = Metres{std::nan("")};
  CHECK(std::isnan(sight_along(trail, rules, weather).value()));
}

trails::Zone square_zone(trails::ZoneKind kind, double west, double south, double side) {
  return {
      .name = "Kettle",
      .kind = kind,
      .region = {{{place(west, south), place(west + side, south), place(west + side, south + side),
                   place(west, south + side), place(west, south)}}},
      .speed = std::nullopt};
}

TEST_CASE("a line touches a zone when it comes as near as it may be off, and not a hair less") {
  const trails::Zone zone = square_zone(trails::ZoneKind::forbidden, 40, 3, 20);
  const geo::Polyline past{{place(0, 0), place(100, 0)}};
  CHECK(geo::touches(zone.region, past, Metres{3}));
  CHECK_FALSE(geo::touches(zone.region, past, Metres{2.999}));
  CHECK(geo::touches(zone.region, past, Metres{std::nan("")}));
  const geo::Polyline inside{{place(45, 10), place(50, 10)}};
  CHECK(geo::touches(zone.region, inside, Metres{0}));
  const geo::Polyline through{{place(0, 13), place(100, 13)}};
  CHECK(geo::touches(zone.region, through, Metres{0}));
  const geo::Polyline diagonal_past_corner{{place(30, 3), place(40, -7)}};
  // From the corner (40, 3) to the line E + N = 33 it is 10 / sqrt(2) metres.
  CHECK(geo::touches(zone.region, diagonal_past_corner, Metres{10 / std::sqrt(2.0) + 1e-6}));
  CHECK_FALSE(geo::touches(zone.region, diagonal_past_corner, Metres{10 / std::sqrt(2.0) - 1e-6}));
}

TEST_CASE("forbidden ground is refused, a speed limit slows, one without its speed is missing") {
  const geo::Polyline line{{place(0, 0), place(100, 0)}};
  std::vector<trails::Zone> zones{square_zone(trails::ZoneKind::open_ground, 40, -10, 20)};
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::passes);
  zones.push_back(square_zone(trails::ZoneKind::speed_limit, 40, -10, 20));
  zones.back().speed = MetresPerSecond{3};
  zones.push_back(square_zone(trails::ZoneKind::speed_limit, 10, -10, 20));
  zones.back().speed = MetresPerSecond{2};
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::passes);
  CHECK(judge_zones(zones, line, Metres{1}).speed == MetresPerSecond{2});
  zones.back().speed = MetresPerSecond{std::nan("")};
  CHECK(std::isnan(judge_zones(zones, line, Metres{1}).speed.value()));
  zones.back().speed.reset();
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::missing);
  zones.pop_back();
  zones.push_back(square_zone(trails::ZoneKind::forbidden, 90, -10, 20));
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::refused);
}

trails::Mark mark_of(trails::MarkKind kind) {
  trails::Mark mark;
  mark.name = "M";
  mark.kind = kind;
  mark.trail = "North Way";
  mark.span = {Metres{20}, Metres{40}};
  return mark;
}

Finding judged(const trails::Mark& mark) {
  return judge_mark(mark, testing::plain_rules(), {units::Kilograms{1000}, testing::mid_morning()});
}

TEST_CASE("gates, blasting and winch cables are closed until today's status says clear") {
  using trails::MarkKind;
  for (const MarkKind kind : {MarkKind::gate, MarkKind::blasting, MarkKind::winch_cable}) {
    trails::Mark mark = mark_of(kind);
    CHECK(stand(judged(mark)) == Stand::missing);
    mark.status = trails::DailyStatus::not_clear;
    CHECK(stand(judged(mark)) == Stand::refused);
    mark.status = trails::DailyStatus::clear;
    CHECK(stand(judged(mark)) == Stand::passes);
  }
}

TEST_CASE("a drop beside the trail needs its setback, the least of which is allowed") {
  trails::Mark mark = mark_of(trails::MarkKind::drop);
  CHECK(stand(judged(mark)) == Stand::missing);
  mark.room = testing::plain_rules().setback;
  CHECK(stand(judged(mark)) == Stand::passes);
  mark.room = *mark.room - Metres{0.001};
  CHECK(stand(judged(mark)) == Stand::refused);
  mark.room = Metres{std::nan("")};
  CHECK(stand(judged(mark)) == Stand::refused);
}

trails::Mark surveyed_bridge() {
  trails::Mark mark = mark_of(trails::MarkKind::bridge);
  mark.survey = trails::Survey{units::Slope::from_degrees(4), units::Slope::from_degrees(2),
                               units::Slope::from_percent(1),
                               *units::parse_instant("2026-01-20T00:00:00Z"), true};
  mark.most_mass = units::Kilograms{2000};
  return mark;
}

TEST_CASE("a bridge carries the rig only if surveyed, inspected and strong enough") {
  trails::Mark mark = surveyed_bridge();
  CHECK(stand(judged(mark)) == Stand::passes);
  CHECK(judged(mark).share == std::optional{0.5});
  mark.most_mass = units::Kilograms{1400};
  CHECK(stand(judged(mark)) == Stand::exceeds);
  mark.most_mass.reset();
  CHECK(stand(judged(mark)) == Stand::missing);
  mark = surveyed_bridge();
  mark.survey->inspected_since_weather = false;
  CHECK(stand(judged(mark)) == Stand::refused);
  mark = surveyed_bridge();
  mark.survey->surveyed = *units::parse_instant("2026-02-02T00:00:00Z");
  CHECK(stand(judged(mark)) == Stand::refused);
  mark.survey.reset();
  CHECK(stand(judged(mark)) == Stand::missing);
}

TEST_CASE("a survey stands for its slopes either way, k standard deviations added") {
  const Rules rules = testing::plain_rules();
  const auto lie = surveyed_lie(surveyed_bridge(), rules, testing::mid_morning());
  REQUIRE(lie.has_value());
  CHECK(testing::near_degrees(lie->found.grade_high, 4, 1e-9));
  CHECK(testing::near_degrees(lie->found.cross_low, -2, 1e-9));
  const double more = 1.645 * 0.01;
  CHECK(testing::near(lie->up_to.grade_low.ratio(), lie->found.grade_low.ratio() - more, 1e-12));
  CHECK(testing::near(lie->up_to.cross_high.ratio(), lie->found.cross_high.ratio() + more, 1e-12));
  trails::Mark mark = surveyed_bridge();
  mark.survey->steepest_cross = units::Slope::from_ratio(std::nan(""));
  CHECK_FALSE(surveyed_lie(mark, rules, testing::mid_morning()).has_value());
}

TEST_CASE("marks lie the other way round when a trail is driven against its drawing") {
  trails::Network network;
  network.trails = {some_trail()};
  network.marks = {mark_of(trails::MarkKind::gate)};
  const Stretch stretch{.trail = 0,
                        .span = {Metres{10}, Metres{90}},
                        .way = trails::Way::against,
                        .line = network.trails[0].line.part({Metres{10}, Metres{90}}).reversed()};
  const auto found = marks_on(network, stretch);
  REQUIRE(found.size() == 1);
  CHECK(found[0].span == geo::Span{Metres{50}, Metres{70}});
  network.marks[0].span = {Metres{95}, Metres{99}};
  CHECK(marks_on(network, stretch).empty());
  network.marks[0].span = {Metres{90}, Metres{99}};
  CHECK(marks_on(network, stretch).size() == 1);
}

}  // namespace

}  // namespace rimehaul::passage
