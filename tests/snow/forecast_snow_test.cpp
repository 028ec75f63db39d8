// What was observed, softened by the forecast: who counts when, on which ground, and what is
// unknown.
#include "snow/forecast_snow.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <optional>
#include <thread>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"

namespace rimehaul::snow {

namespace {

using testing::point;
using units::Celsius;
using units::Instant;
using units::Slope;

constexpr SnowState kDry{Wetness::dry, Surface::groomed};

/// On open ocean; 10 hours behind UTC, so that hours here are local ones.
constexpr geo::GlobePoint kSea{46.0, -153.0};

constexpr geo::GlobePoint kPolarNight{85.0, -153.0};

Instant local(double hour) {
  return {units::parse_instant("2026-02-01T10:00:00Z")->seconds +
          static_cast<std::int64_t>(hour * 3600)};
}

/// From 0 to 24, the same air and cloud all day.
Forecast steady(double air_c, double oktas) {
  Forecast forecast;
  forecast.source = "A. Example";
  forecast.reference = geo::Height{1000};
  for (int hour = 0; hour < 24; ++hour) {
    forecast.hours.push_back({.start = local(hour),
                              .air = Celsius{air_c},
                              .cloud = units::Oktas{oktas},
                              .rain = {},
                              .humidity = units::Percent{60}});
  }
  return forecast;
}

SnowReport report_with(std::optional<Forecast> forecast, SnowState state = kDry) {
  SnowReport report;
  report.bands.push_back(
      {.above = {}, .below = {}, .aspect_from = {}, .aspect_to = {}, .state = state});
  report.observer = "N. Example";
  report.observed = local(6);
  report.valid_until = local(21);
  report.forecast = std::move(forecast);
  return report;
}

ForecastSnow snow_of(SnowReport report) {
  return ForecastSnow{std::move(report), {.sun = {.at = kSea}, .horizons = nullptr}};
}

/// South-facing ground of 20 degrees at 1010 m.
PlaceAndHour sunny_side(double hour) {
  return {.height = geo::Height{1010},
          .aspect = units::Bearing::from_degrees(180),
          .when = local(hour),
          .slope = SlopeRange{Slope::from_degrees(19), Slope::from_degrees(20)}};
}

PlaceAndHour shady_side(double hour) {
  PlaceAndHour where = sunny_side(hour);
  where.aspect = units::Bearing::from_degrees(0);
  return where;
}

const SoftHour& hour_at(const std::vector<SoftHour>& hours, double hour) {
  return *std::ranges::find(hours, local(hour), &SoftHour::start);
}

std::optional<Wetness> wetness_at(const SnowAt& snow, const PlaceAndHour& where) {
  const auto state = snow.at(where);
  return state ? std::optional{state->wetness} : std::nullopt;
}

}  // namespace

TEST_CASE("an hour holds its first second and its last, and no other") {
  const std::vector<ForecastHour> hours = steady(1, 0).hours;
  CHECK(hour_holding(hours, local(6)) == 6U);
  CHECK(hour_holding(hours, {local(7).seconds - 1}) == 6U);
  CHECK(hour_holding(hours, local(7)) == 7U);
  CHECK_FALSE(hour_holding(hours, {local(0).seconds - 1}).has_value());
  CHECK_FALSE(hour_holding(hours, local(24)).has_value());
}

TEST_CASE("a report without a forecast answers exactly as it does today") {
  const ForecastSnow snow = snow_of(report_with({}));
  const ReportedSnow reported{report_with({})};
  for (double hour = 5; hour <= 22; hour += 0.25) {
    CHECK(snow.at(sunny_side(hour)) == reported.at(sunny_side(hour)));
  }
  CHECK(snow.told_by().words == reported.told_by().words);
  CHECK(snow.turning_moments({local(0), local(24)}) ==
        reported.turning_moments({local(0), local(24)}));
  CHECK(snow.hours_at(sunny_side(9)).empty());
}

TEST_CASE("an observation rules its own hour, whatever the forecast says") {
  // Rain enough for slush, all day long.
  Forecast rain = steady(5, 8);
  for (ForecastHour& hour : rain.hours) {
    hour.rain = units::MillimetresPerHour{20};
  }
  const ForecastSnow snow = snow_of(report_with(rain));
  CHECK(snow.at(sunny_side(6)) == kDry);
  CHECK(snow.at(sunny_side(6.999)) == kDry);
  CHECK(wetness_at(snow, sunny_side(7)) == Wetness::slush);
  CHECK_FALSE(snow.at(sunny_side(5.99)).has_value());
  CHECK_FALSE(snow.at(sunny_side(21.01)).has_value());
}

TEST_CASE("later the worst of two hours before and after counts") {
  // The polar night, and rain from 14 to 15 alone.
  Forecast shower = steady(5, 8);
  for (ForecastHour& hour : shower.hours) {
    hour.air = Celsius{hour.start == local(14) ? 5.0 : -20.0};
    hour.rain = units::MillimetresPerHour{hour.start == local(14) ? 20.0 : 0.0};
  }
  const ForecastSnow snow{report_with(shower), {.sun = {.at = kPolarNight}, .horizons = nullptr}};
  const auto hours = snow.hours_at(shady_side(9));
  REQUIRE(hour_at(hours, 14).state.has_value());
  CHECK(hour_at(hours, 14).state->wetness == Wetness::slush);
  REQUIRE(hour_at(hours, 13).state.has_value());
  CHECK(hour_at(hours, 13).state->wetness == Wetness::dry);
  CHECK(wetness_at(snow, shady_side(11.999)) == Wetness::dry);
  CHECK(wetness_at(snow, shady_side(12)) == Wetness::slush);
  CHECK(wetness_at(snow, shady_side(16.999)) == Wetness::slush);
  CHECK(wetness_at(snow, shady_side(17)) != Wetness::slush);
}

TEST_CASE("what was observed is never better for a forecast, and slush stays slush") {
  const SnowState seen{Wetness::very_wet, Surface::ice};
  const ForecastSnow snow = snow_of(report_with(steady(-10, 0), seen));
  for (double hour = 6; hour <= 21; hour += 0.5) {
    const auto state = snow.at(shady_side(hour));
    if (state) {
      CHECK(state->worst_with(seen) == *state);
    }
  }
  CHECK(snow.at(shady_side(6)) == seen);
}

TEST_CASE(
    "warm sun wets the sunny side first; the sum is at its worst on the ground that is asked") {
  const ForecastSnow snow = snow_of(report_with(steady(3, 0)));
  const auto sunny = snow.hours_at(sunny_side(9));
  const auto shady = snow.hours_at(shady_side(9));
  REQUIRE(sunny.size() == 18);
  CHECK(hour_at(sunny, 12).sun.value() > 600);
  CHECK(hour_at(shady, 12).sun.value() < 500);
  CHECK(hour_at(sunny, 12).water > hour_at(shady, 12).water);
  CHECK(wetness_at(snow, sunny_side(13)) >= Wetness::wet);
  // Aspect and slope that nobody told may be the sunniest.
  PlaceAndHour anywhere = sunny_side(9);
  anywhere.aspect.reset();
  anywhere.slope.reset();
  const auto unknown = snow.hours_at(anywhere);
  for (std::size_t i = 0; i < sunny.size(); ++i) {
    CHECK(unknown[i].sun >= sunny[i].sun);
    CHECK(unknown[i].water >= sunny[i].water);
  }
}

TEST_CASE("no aspect, slope or height near those asked is wetter than the answer, at random") {
  const ForecastSnow snow = snow_of(report_with(steady(4, 2)));
  PlaceAndHour wide = sunny_side(9);
  wide.slope = SlopeRange{Slope::from_degrees(10), Slope::from_degrees(20)};
  PlaceAndHour narrow = wide;
  narrow.slope = SlopeRange{Slope::from_degrees(15), Slope::from_degrees(15)};
  const auto all = snow.hours_at(wide);
  const auto one = snow.hours_at(narrow);
  for (std::size_t i = 0; i < all.size(); ++i) {
    CHECK(all[i].sun >= one[i].sun);
    CHECK(all[i].water >= one[i].water);
  }
}

TEST_CASE("sun in cold air is unknown, on the mountain's sunny side and for two hours around") {
  const ForecastSnow snow = snow_of(report_with(steady(-2, 0)));
  const auto hours = snow.hours_at(sunny_side(9));
  CHECK(hour_at(hours, 12).blind == Blind::to_sun);
  CHECK_FALSE(hour_at(hours, 12).state.has_value());
  CHECK_FALSE(snow.at(sunny_side(12)).has_value());
  // Before dawn it is known; the sun rises after half past seven here.
  CHECK(hour_at(hours, 6).state == kDry);
  // In the evening it is unknown until all that may have melted has frozen.
  CHECK(hour_at(hours, 18).blind == Blind::since_sun);
}

TEST_CASE("dawn light of a few watts does not close the mountain in frost") {
  const ForecastSnow snow = snow_of(report_with(steady(-4, 0)));
  const auto hours = snow.hours_at(shady_side(9));
  const auto lit = std::ranges::find_if(
      hours, [](const SoftHour& hour) { return hour.sun > units::WattsPerSquareMetre{1}; });
  REQUIRE(lit != hours.end());
  CHECK(lit->blind == Blind::no);
  CHECK(lit->state == kDry);
}

TEST_CASE("the evening freezes what was wet: refrozen, and only once it is so for two hours") {
  Forecast day = steady(3, 0);
  for (ForecastHour& hour : day.hours) {
    if (hour.start >= local(16)) {
      hour.air = Celsius{-4};
    }
  }
  day.hours[16].air = Celsius{1.5};
  day.hours[17].air = Celsius{1.5};
  SnowReport report = report_with(day);
  report.valid_until = local(24);
  const ForecastSnow snow = snow_of(report);
  const auto hours = snow.hours_at(sunny_side(9));
  REQUIRE(hours.back().state.has_value());
  CHECK(*hours.back().state == SnowState{Wetness::moist, Surface::refrozen});
  CHECK(hours.back().water.value() == 0.0);
  CHECK(hour_at(hours, 15).state->wetness >= Wetness::wet);
}

TEST_CASE("a forecast that ends too early, or begins too late, leaves the rest unknown") {
  Forecast dull = steady(-10, 8);
  dull.hours.resize(12);  // up to 12:00
  const ForecastSnow snow{report_with(dull), {.sun = {.at = kPolarNight}, .horizons = nullptr}};
  CHECK(snow.at(shady_side(9.999)) == kDry);
  CHECK_FALSE(snow.at(shady_side(10)).has_value());
  Forecast late = steady(-10, 8);
  late.hours.erase(late.hours.begin(), late.hours.begin() + 7);
  const ForecastSnow unseen = snow_of(report_with(late));
  CHECK(unseen.at(shady_side(6.5)) == kDry);
  CHECK_FALSE(unseen.at(shady_side(8)).has_value());
  CHECK(unseen.hours_at(shady_side(8)).empty());
  SnowReport undated = report_with(steady(-10, 8));
  undated.observed.reset();
  CHECK_FALSE(snow_of(undated).at(shady_side(8)).has_value());
  CHECK(snow_of(undated).hours_at(shady_side(8)).empty());
  CHECK(snow_of(undated).turning_moments({local(0), local(20)}).empty());
}

TEST_CASE("colder a kilometre higher up by 6.5 degrees, unless the forecast says otherwise") {
  Forecast forecast = steady(3, 0);
  CHECK(air_at(forecast, Celsius{3}, geo::Height{2000}) == Celsius{-3.5});
  CHECK(air_at(forecast, Celsius{3}, geo::Height{500}) == Celsius{6.25});
  forecast.lapse = units::CelsiusPerKilometre{0};
  CHECK(air_at(forecast, Celsius{3}, geo::Height{2000}) == Celsius{3});
  // The mountain's top is in the frost, where the sun blinds, while its foot softens.
  const ForecastSnow snow = snow_of(report_with(steady(3, 0)));
  PlaceAndHour top = sunny_side(9);
  top.height = geo::Height{2000};
  CHECK(hour_at(snow.hours_at(top), 12).blind == Blind::to_sun);
  CHECK(hour_at(snow.hours_at(sunny_side(9)), 12).blind == Blind::no);
}

TEST_CASE("within fifty metres of height the colder end may be blind, and then the place is") {
  const ForecastSnow snow = snow_of(report_with(steady(1.1, 0)));
  CHECK(hour_at(snow.hours_at(sunny_side(9)), 12).blind == Blind::to_sun);
  PlaceAndHour lower = sunny_side(9);
  lower.height = geo::Height{940};
  CHECK(hour_at(snow.hours_at(lower), 12).blind == Blind::no);
}

TEST_CASE("what the weather did before the snow was seen does not count") {
  Forecast shower = steady(5, 8);
  shower.hours[6].rain = units::MillimetresPerHour{6};
  SnowReport report = report_with(shower);
  report.observed = local(6.5);
  const ForecastSnow snow{report, {.sun = {.at = kPolarNight}, .horizons = nullptr}};
  const auto hours = snow.hours_at(shady_side(9));
  REQUIRE(hours.size() == 18);
  // Half an hour of 6 mm, and what air of 5 deg C melts under cloud.
  CHECK(testing::near(hours[0].water.value(), 3.2, 0.2));
}

TEST_CASE("a place of which the report does not speak has no hours") {
  const ForecastSnow snow = snow_of(report_with(steady(3, 0)));
  PlaceAndHour nowhere = sunny_side(9);
  nowhere.height = geo::Height{std::nan("")};
  CHECK(snow.hours_at(nowhere).empty());
  CHECK_FALSE(snow.at(nowhere).has_value());
}

TEST_CASE("what is not forecast counts at its bad side: clear for the sun, overcast at night") {
  Forecast bare = steady(3, 4);
  for (ForecastHour& hour : bare.hours) {
    hour.cloud.reset();
    hour.humidity.reset();
  }
  const auto cautious = snow_of(report_with(bare)).hours_at(sunny_side(9));
  const auto clear = snow_of(report_with(steady(3, 0))).hours_at(sunny_side(9));
  const auto overcast = snow_of(report_with(steady(3, 8))).hours_at(sunny_side(9));
  for (std::size_t i = 0; i < cautious.size(); ++i) {
    CHECK(cautious[i].sun == clear[i].sun);
    CHECK(cautious[i].water >= clear[i].water);
    CHECK(cautious[i].water >= overcast[i].water);
  }
}

TEST_CASE("the answers change at no other second than at those named") {
  SnowReport report = report_with(steady(3, 0));
  const ForecastSnow snow = snow_of(report);
  const units::Period day{local(0), local(24)};
  const std::vector<Instant> moments = snow.turning_moments(day);
  int changes = 0;
  for (const PlaceAndHour& ground : {sunny_side(0), shady_side(0)}) {
    PlaceAndHour where = ground;
    std::optional<SnowState> before = snow.at(where);
    for (Instant when{local(0).seconds + 1}; when <= local(24); ++when.seconds) {
      where.when = when;
      const std::optional<SnowState> now = snow.at(where);
      if (now != before) {
        ++changes;
        CHECK(std::ranges::binary_search(moments, when));
      }
      before = now;
    }
  }
  CHECK(changes >= 6);
}

TEST_CASE("a wall to the south keeps the sun off, and the snow drier") {
  auto ground =
      testing::source_of([](double, double north) { return north < -400 ? 1900.0 : 1000.0; }, 10,
                         {-2000, -2000, 2000, 2000});
  const auto horizons = std::make_shared<const terrain::Horizons>(
      ground, terrain::ReliefFrame{point(-2000, 2000), units::Metres{100}, 40, 40});
  const ForecastSnow walled{report_with(steady(3, 0)), {.sun = {.at = kSea}, .horizons = horizons}};
  const ForecastSnow open = snow_of(report_with(steady(3, 0)));
  PlaceAndHour where = sunny_side(9);
  where.place = point(10, 10);
  const auto shaded = walled.hours_at(where);
  const auto lit = open.hours_at(where);
  CHECK(hour_at(shaded, 12).sun < hour_at(lit, 12).sun * 0.5);
  CHECK(hour_at(shaded, 12).water < hour_at(lit, 12).water);
  // A place that is not told, or lies beyond the heights, has the sun.
  where.place.reset();
  CHECK(hour_at(walled.hours_at(where), 12).sun == hour_at(lit, 12).sun);
  where.place = point(9000, 0);
  CHECK(hour_at(walled.hours_at(where), 12).sun == hour_at(lit, 12).sun);
  // With the map's north turned by a right angle the wall stands in the east or west.
  const ForecastSnow turned{report_with(steady(3, 0)),
                            {.sun = {.at = kSea, .convergence_deg = 90}, .horizons = horizons}};
  where.place = point(10, 10);
  where.aspect = units::Bearing::from_degrees(90);
  CHECK(hour_at(turned.hours_at(where), 12).sun == hour_at(lit, 12).sun);
}

TEST_CASE("an hour's sun is the most on its class of ground: 2.5 and 15 degrees, 50 metres") {
  const Forecast clear = steady(3, 0);
  const ForecastSnow snow = snow_of(report_with(clear));
  const auto told_at = [&](const PlaceAndHour& where) {
    return hour_at(snow.hours_at(where), 10).sun.value();
  };
  const auto most = [&](double least_deg, double most_deg, double middle_deg) {
    double sum = 0.0;
    for (const SunStep& step : sun_steps({.at = kSea}, clear.hours[10])) {
      const auto lit = light_on(
          step,
          {.ground = {.slope =
                          SlopeRange{Slope::from_degrees(least_deg), Slope::from_degrees(most_deg)},
                      .aspect = AspectSpan{.middle_deg = middle_deg, .half_width_deg = 8.5}},
           .height = geo::Height{1050}},
          {.air = Celsius{3}, .humidity = units::Percent{60}, .cloud = units::Oktas{0}});
      sum += lit.sun.value() / 6.0;
    }
    return sum;
  };
  PlaceAndHour where = sunny_side(10);
  CHECK(testing::near(told_at(where), most(17.5, 20, 180), 1e-9));
  // In the morning a slope to the north-east has less and less the more it turns away.
  where.aspect = units::Bearing::from_degrees(47);
  CHECK(testing::near(told_at(where), most(17.5, 20, 45), 1e-9));
  CHECK(most(17.5, 20, 45) < 0.9 * most(17.5, 20, 60));
  // As steep as a wall, the steepest end stays short of upright.
  where.aspect = units::Bearing::from_degrees(180);
  where.slope = SlopeRange{Slope::from_degrees(88), Slope::from_degrees(88.5)};
  CHECK(testing::near(told_at(where), most(87.5, 89, 180), 1e-9));
  where.slope = SlopeRange{Slope::from_degrees(89.9), Slope::from_degrees(89.95)};
  CHECK(testing::near(told_at(where), most(87.5, 89, 180), 1e-9));
}

TEST_CASE("a wall hides the sun up to the sun's own upper edge, and no higher") {
  // The first pixel that surely stands so high is 600 m away from the middle of ours: at noon, with
  // the sun 27 degrees high, 30 degrees are hidden.
  auto ground =
      testing::source_of([](double, double north) { return north < -350 ? 1396.0 : 1000.0; }, 10,
                         {-2000, -2000, 2000, 2000});
  const auto horizons = std::make_shared<const terrain::Horizons>(
      ground, terrain::ReliefFrame{point(-2000, 2000), units::Metres{100}, 40, 40});
  PlaceAndHour where = sunny_side(9);
  where.place = point(10, 10);
  const Forecast clear = steady(3, 0);
  const ForecastSnow open = snow_of(report_with(clear));
  const ForecastSnow walled{report_with(clear), {.sun = {.at = kSea}, .horizons = horizons}};
  for (std::size_t hour = 9; hour < 16; ++hour) {
    CAPTURE(hour);
    bool all_hidden = true;
    bool none_hidden = true;
    for (const SunStep& step : sun_steps({.at = kSea}, clear.hours[hour])) {
      const double top_deg = 90.0 - step.sun.apparent_zenith_deg + kSunRadiusDeg;
      const double wall_deg = horizons->hidden_up_to_deg(
          {.from = *where.place,
           .height = geo::Height{1050},
           .towards = units::Bearing::from_degrees(step.sun.true_azimuth_deg)});
      const bool hidden = top_deg < wall_deg;
      all_hidden = all_hidden && hidden;
      none_hidden = none_hidden && !hidden;
    }
    const double lit = hour_at(open.hours_at(where), static_cast<double>(hour)).sun.value();
    const double there = hour_at(walled.hours_at(where), static_cast<double>(hour)).sun.value();
    CHECK((there < lit) == !none_hidden);
    CHECK((!all_hidden || there < 0.5 * lit));
  }
}

TEST_CASE("it says who observed, and whose forecast softens it") {
  const ForecastSnow snow = snow_of(report_with(steady(3, 0)));
  CHECK(snow.told_by().words ==
        "observed by N. Example; an hour later on softened by a forecast of A. Example");
  CHECK(snow.told_by().observed == local(6));
  CHECK_FALSE(snow.weather().rain.has_value());
}

TEST_CASE("several threads that ask at once are told the same") {
  const ForecastSnow shared = snow_of(report_with(steady(3, 0)));
  std::vector<std::optional<SnowState>> answers(4);
  std::vector<std::thread> asking;
  for (std::optional<SnowState>& answer : answers) {
    asking.emplace_back([&] {
      for (int i = 0; i < 50; ++i) {
        PlaceAndHour where = sunny_side(12);
        where.height = geo::Height{1000.0 + 10.0 * i};
        answer = shared.at(where);
      }
    });
  }
  for (std::thread& thread : asking) {
    thread.join();
  }
  const ForecastSnow alone = snow_of(report_with(steady(3, 0)));
  PlaceAndHour last = sunny_side(12);
  last.height = geo::Height{1490};
  for (const std::optional<SnowState>& answer : answers) {
    CHECK(answer == alone.at(last));
  }
}

TEST_CASE("nobody makes a forecast sharper than two hours, or lets no snow melt") {
  const SunSite sun{.at = kSea};
  CHECK_THROWS_AS(ForecastSnow(report_with({}), {.sun = sun, .horizons = nullptr, .melt = 0.0}),
                  base::OurFault);
  CHECK_THROWS_AS(
      ForecastSnow(report_with({}),
                   {.sun = sun, .horizons = nullptr, .melt = 1.0, .off = units::Seconds{7199}}),
      base::OurFault);
}

}  // namespace rimehaul::snow
