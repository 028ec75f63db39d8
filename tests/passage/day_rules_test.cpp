// Rules about the day: wind, rain, grooming, the tow-out rig.
#include "passage/day_rules.h"

#include <doctest/doctest.h>

#include <cmath>

#include "passage/demo_scene.h"
#include "passage/site_rules.h"

namespace rimehaul::passage {

namespace {

using testing::place;
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

TEST_CASE("wind at the site's most passes, a hair more is refused, unknown wind is missing") {
  Rules rules = testing::plain_rules();
  const trails::Trail trail = some_trail();
  snow::DayWeather weather = testing::plain_weather();
  weather.wind = MetresPerSecond{20};
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::passes);
  weather.wind = MetresPerSecond{20.001};
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::refused);
  weather.wind = MetresPerSecond{std::nan("")};
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::refused);
  weather.wind.reset();
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::missing);
  rules.most_wind.reset();
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::passes);
}

TEST_CASE("of the site's and the trail's most wind the lower counts") {
  Rules rules = testing::plain_rules();
  trails::Trail trail = some_trail();
  snow::DayWeather weather = testing::plain_weather();
  weather.wind = MetresPerSecond{12};
  trail.most_wind = MetresPerSecond{12};
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::passes);
  trail.most_wind = MetresPerSecond{11.999};
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::refused);
  trail.most_wind = MetresPerSecond{std::nan("")};
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::refused);
  trail.most_wind = MetresPerSecond{30};
  rules.most_wind = MetresPerSecond{11};
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::refused);
  rules.most_wind.reset();
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::passes);
  weather.wind.reset();
  CHECK(stand(judge_wind(weather, trail, rules)) == Stand::missing);
}

TEST_CASE("rain closes, and so does not knowing whether it rains, unless the rules let it") {
  Rules rules = default_rules();
  snow::DayWeather weather = testing::plain_weather();
  CHECK(stand(judge_rain(weather, rules)) == Stand::passes);
  weather.rain = true;
  CHECK(stand(judge_rain(weather, rules)) == Stand::refused);
  weather.rain.reset();
  CHECK(stand(judge_rain(weather, rules)) == Stand::missing);
  CHECK(names(judge_rain(weather, rules), "rains"));
  rules.closed_in_rain = false;
  CHECK(stand(judge_rain(weather, rules)) == Stand::passes);
}

TEST_CASE("groomed snow sets for as long as the rules ask, to the second") {
  Rules rules = default_rules();
  rules.grooming_set = Seconds{7200};
  const units::Instant finished = *units::parse_instant("2026-02-01T04:00:00Z");
  const snow::SiteStatus status{.marks = {}, .grooming = {{"North Way", finished}}};
  const auto at = [&](const char* entry, const trails::Trail& trail) {
    return stand(judge_grooming(trail, rules, status, *units::parse_instant(entry)));
  };
  CHECK(at("2026-02-01T06:00:00Z", some_trail()) == Stand::passes);
  CHECK(at("2026-02-01T05:59:59Z", some_trail()) == Stand::refused);
  CHECK(at("2026-02-01T03:00:00Z", some_trail()) == Stand::refused);
  trails::Trail other = some_trail();
  other.name = "South Way";
  CHECK(at("2026-02-01T06:00:00Z", other) == Stand::missing);
  other.groomed = false;
  CHECK(at("2026-02-01T06:00:00Z", other) == Stand::passes);
  rules.grooming_set.reset();
  CHECK(at("2026-02-01T05:59:59Z", some_trail()) == Stand::passes);
}

TEST_CASE(
    "a trail that does not say whether it is groomed is closed for that, not for its setting") {
  Rules rules = default_rules();
  rules.grooming_set = Seconds{7200};
  trails::Trail trail = some_trail();
  trail.groomed.reset();
  CHECK(stand(judge_trail_attributes(trail)) == Stand::missing);
  CHECK(names(judge_trail_attributes(trail), "groomed"));
  CHECK(stand(judge_grooming(trail, rules, {}, testing::mid_morning())) == Stand::passes);
}

TEST_CASE("where the rules ask for a tow-out rig, today's report must say that it stands ready") {
  Rules rules = default_rules();
  snow::SiteStatus status;
  CHECK(stand(judge_tow_out(rules, status)) == Stand::passes);
  rules.tow_out = {"Old Hare", true};
  CHECK(stand(judge_tow_out(rules, status)) == Stand::missing);
  status.tow_out_ready = false;
  CHECK(stand(judge_tow_out(rules, status)) == Stand::refused);
  status.tow_out_ready = true;
  CHECK(stand(judge_tow_out(rules, status)) == Stand::passes);
}

}  // namespace

}  // namespace rimehaul::passage
