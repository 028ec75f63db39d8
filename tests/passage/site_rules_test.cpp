// Rules of the site about its trails: what was said of them, direction, hours, sight.
#include "passage/site_rules.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <optional>

#include "passage/demo_scene.h"
#include "passage/rig_on_slope.h"

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
  for (const double bad : {-0.1, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    trail = some_trail();
    trail.width = Metres{bad};
    CHECK(judge_trail_attributes(trail).missing == "width_m that makes sense of trail North Way");
    trail = some_trail();
    trail.line_error = Metres{bad};
    CHECK(judge_trail_attributes(trail).missing == "error_m that makes sense of trail North Way");
  }
}

TEST_CASE("what nobody said of a trail is told once, not as something that makes no sense") {
  trails::Trail trail = some_trail();
  trail.width.reset();
  trail.lanes.reset();
  trail.line_error.reset();
  const Finding finding = judge_trail_attributes(trail);
  CHECK(stand(finding) == Stand::missing);
  CHECK(names(finding, "lanes"));
  CHECK(names(finding, "error_m"));
  CHECK_FALSE(names(finding, "makes sense"));
  CHECK_FALSE(names(finding, "make sense"));
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
  rules.local_clock = units::LocalClock{-600};
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
  // Entered half an hour after it opens, left a minute after it shuts.
  CHECK(stand(in_hours("2026-02-01T18:30:00Z", 7.5 * 3600)) == Stand::passes);
  CHECK(stand(in_hours("2026-02-01T18:30:00Z", 7.5 * 3600 + 60)) == Stand::refused);
}

Finding on_the_day_of_change(const units::LocalClock& local_clock, double lasting_s) {
  trails::Trail trail = some_trail();
  trail.hours = trails::OpenHours{{0}, {4 * 60}};
  Rules rules = testing::plain_rules();
  rules.local_clock = local_clock;
  return judge_hours(trail, {*units::parse_instant("2026-03-29T00:30:00Z"), Seconds{lasting_s}},
                     rules);
}

TEST_CASE("a trail that shuts at 04:00 is left an hour earlier in the night of summer time") {
  const units::Instant change = *units::parse_instant("2026-03-29T01:00:00Z");
  const units::LocalClock forward{60, {{.from = change, .minutes = 120}}};
  // Entered at 01:30; half an hour on the clock shows 03:00.
  CHECK(stand(on_the_day_of_change(forward, 1.5 * 3600)) == Stand::passes);
  CHECK(stand(on_the_day_of_change(forward, 1.5 * 3600 + 1)) == Stand::refused);
  // Put back, the clock gives no hour away: the time that passes counts.
  const units::LocalClock back{60, {{.from = change, .minutes = 0}}};
  CHECK(stand(on_the_day_of_change(back, 2.5 * 3600)) == Stand::passes);
  CHECK(stand(on_the_day_of_change(back, 2.5 * 3600 + 1)) == Stand::refused);
}

TEST_CASE("hours are told with when the trail opens and shuts, the entry and the time on it") {
  const Finding finding = in_hours("2026-02-01T18:30:00Z", 90);
  CHECK(testing::input_of(finding, "open from") == 8 * 60);  // all by the minutes of the day
  CHECK(testing::input_of(finding, "open to") == 16 * 60);
  CHECK(testing::input_of(finding, "entry") == 8 * 60 + 30);
  CHECK(testing::input_of(finding, "time on the trail") == 90);
  // Left at 08:31:30, of the 16:00 by which it must be.
  CHECK(finding.demand.value == 8 * 60 + 31.5);
  CHECK(finding.capacity.value == 16 * 60);
}

TEST_CASE("where something else closes a trail its hours are those of the entry") {
  trails::Trail trail = some_trail();
  trail.hours = trails::OpenHours{{8 * 60}, {16 * 60}};
  const auto entering = [&](const char* at) {
    return judge_hours(trail, {*units::parse_instant(at), std::nullopt}, testing::plain_rules());
  };
  CHECK(stand(entering("2026-02-01T07:59:59Z")) == Stand::refused);
  CHECK(stand(entering("2026-02-01T15:59:59Z")) == Stand::passes);
  CHECK(stand(entering("2026-02-01T16:00:01Z")) == Stand::refused);
  CHECK(stand(judge_hours(trail,
                          {*units::parse_instant("2026-02-01T12:00:00Z"),
                           Seconds{std::numeric_limits<double>::infinity()}},
                          testing::plain_rules())) == Stand::refused);
}

TEST_CASE("a trail that is always open may be driven over midnight; one without hours may not") {
  trails::Trail trail = some_trail();
  const Stay over_midnight{*units::parse_instant("2026-02-01T23:59:00Z"), Seconds{600}};
  CHECK(stand(judge_hours(trail, over_midnight, testing::plain_rules())) == Stand::passes);
  trail.hours.reset();
  CHECK(stand(judge_hours(trail, over_midnight, testing::plain_rules())) == Stand::missing);
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

TEST_CASE("visibility that nobody gave leaves the trail's sight; no visibility mends a sight") {
  const Rules rules = testing::plain_rules();
  snow::DayWeather weather = testing::plain_weather();
  trails::Trail trail = some_trail();
  weather.visibility.reset();
  CHECK(sight_along(trail, rules, weather) == Metres{60});
  trail.sight = Metres{std::nan("")};
  CHECK(std::isnan(sight_along(trail, rules, weather).value()));
  weather.visibility = Metres{20};
  CHECK(std::isnan(sight_along(trail, rules, weather).value()));
}

}  // namespace

}  // namespace rimehaul::passage
