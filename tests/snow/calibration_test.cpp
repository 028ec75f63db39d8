// A site's record gives back the melt it was made with, widens the hours, and never sharpens them.
#include "snow/calibration.h"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

namespace rimehaul::snow {

namespace {

using units::Instant;
using units::Slope;

const SofteningSite kSite{.sun = {.at = {46.0, -153.0}}, .horizons = nullptr};

/// A sunny day; the air is warmer from day to day.
SnowReport day_of(int day) {
  const Instant midnight{units::parse_instant("2026-02-01T10:00:00Z")->seconds + day * 86'400};
  Forecast forecast{.source = "A. Example", .reference = geo::Height{1000}, .hours = {}};
  for (int hour = 8; hour < 24; ++hour) {
    const double air = hour < 17 ? 2.0 + 0.5 * day : -4.0;
    forecast.hours.push_back({.start = {midnight.seconds + hour * kSecondsInHour},
                              .air = units::Celsius{air},
                              .cloud = units::Oktas{static_cast<double>(day)},
                              .rain = {},
                              .humidity = units::Percent{60}});
  }
  SnowReport report;
  report.bands.push_back(
      {.above = {}, .below = {}, .aspect_from = {}, .aspect_to = {}, .state = {}});
  report.observer = "N. Example";
  report.observed = forecast.hours.front().start;
  report.valid_until = Instant{midnight.seconds + 22 * kSecondsInHour};
  report.forecast = forecast;
  return report;
}

PlaceAndHour ground(Instant when, double aspect_deg) {
  return {.height = geo::Height{1010},
          .aspect = units::Bearing::from_degrees(aspect_deg),
          .when = when,
          .slope = SlopeRange{Slope::from_degrees(14), Slope::from_degrees(15)}};
}

/// What somebody sees on four sides of the mountain from 9 to 12, an hour after the report and
/// later, if snow melts by a factor and is so many hours ahead of the forecast.
std::vector<SeenDay> record(double melt, int days, int hours_ahead = 0) {
  SofteningSite site = kSite;
  site.melt = melt;
  std::vector<SeenDay> record;
  for (int day = 0; day < days; ++day) {
    SeenDay seen{.report = day_of(day), .seen = {}};
    const ForecastSnow snow{seen.report, site};
    for (const double aspect : {0.0, 90.0, 180.0, 270.0}) {
      for (const SoftHour& hour : snow.hours_at(ground(seen.report.observed.value(), aspect))) {
        const Instant when{hour.start.seconds + (30 * 60) - hours_ahead * kSecondsInHour};
        const std::int64_t into = when.seconds - seen.report.observed->seconds;
        if (into >= kSecondsInHour && into < 4 * kSecondsInHour && hour.state) {
          seen.seen.push_back({ground(when, aspect), *class_of(hour.water)});
        }
      }
    }
    record.push_back(seen);
  }
  return record;
}

}  // namespace

TEST_CASE("the factor that a record was made with is found again, or the next greater one alike") {
  for (const double melt : {0.4, 0.7, 1.0, 1.3}) {
    const auto found = calibrated(record(melt, 6), kSite);
    REQUIRE(found.has_value());
    // In the first hours each class is met in an interval of factors of some per cent.
    CHECK(found->melt >= melt / 1.05);
    CHECK(found->melt <= melt * 1.16);
    CHECK(found->met >= found->seen * 19 / 20);
    CHECK(found->days == 6);
    CHECK(found->off == kHoursOff);
  }
}

TEST_CASE("of factors that foretell as much, the greatest counts") {
  // All dry: whatever is small enough fits as well.
  std::vector<SeenDay> days = record(0.4, 6);
  const auto found = calibrated(days, kSite);
  REQUIRE(found.has_value());
  SofteningSite next = kSite;
  next.melt = found->melt * 1.05;
  int met = 0;
  for (const SeenDay& day : days) {
    const ForecastSnow snow{day.report, next};
    for (const SeenWetness& seen : day.seen) {
      for (const SoftHour& hour : snow.hours_at(seen.where)) {
        const std::int64_t into = seen.where.when.seconds - hour.start.seconds;
        const bool here = into >= 0 && into < kSecondsInHour && hour.state.has_value();
        met += here && class_of(hour.water) == seen.wetness ? 1 : 0;
      }
    }
  }
  CHECK(met < found->met);
}

TEST_CASE("too few observations, days, or wet hours say nothing") {
  CHECK_FALSE(calibrated({}, kSite).has_value());
  CHECK_FALSE(calibrated(record(0.7, kFewestDays - 1), kSite).has_value());
  CHECK(calibrated(record(0.7, kFewestDays), kSite).has_value());
  std::vector<SeenDay> few = record(0.7, kFewestDays);
  for (SeenDay& day : few) {
    day.seen.resize(3);
  }
  CHECK_FALSE(calibrated(few, kSite).has_value());
  std::vector<SeenDay> all_dry = record(0.7, kFewestDays);
  for (SeenDay& day : all_dry) {
    for (SeenWetness& seen : day.seen) {
      seen.wetness = Wetness::dry;
    }
  }
  CHECK_FALSE(calibrated(all_dry, kSite).has_value());
}

TEST_CASE("of wet hours the fewest that count are enough, and one less is not") {
  for (const int wet_kept : {kFewestWet, kFewestWet - 1}) {
    std::vector<SeenDay> days = record(0.4, 8);
    int wet = 0;
    for (SeenDay& day : days) {
      std::erase_if(day.seen, [&](const SeenWetness& seen) {
        return seen.wetness > Wetness::dry && ++wet > wet_kept;
      });
      // Dawn was dry on every side, on every day.
      const Instant dawn = {day.report.observed->seconds + 60};
      for (const double aspect : {0.0, 90.0, 180.0, 270.0}) {
        day.seen.push_back({ground(dawn, aspect), Wetness::dry});
      }
    }
    REQUIRE(wet > kFewestWet);
    CHECK(calibrated(days, kSite).has_value() == (wet_kept == kFewestWet));
  }
}

TEST_CASE("what was seen outside the forecast, or where it is blind, does not count") {
  std::vector<SeenDay> days = record(0.7, kFewestDays);
  const auto before = calibrated(days, kSite);
  REQUIRE(before.has_value());
  days.front().seen.push_back(
      {ground({days.front().report.observed->seconds - 86'400}, 180), Wetness::wet});
  SeenDay cold{.report = day_of(0), .seen = {}};
  for (ForecastHour& hour : cold.report.forecast->hours) {
    hour.air = units::Celsius{-1};
  }
  cold.seen.push_back({ground({cold.report.observed->seconds + 4 * 3600}, 180), Wetness::wet});
  days.push_back(cold);
  const auto after = calibrated(days, kSite);
  REQUIRE(after.has_value());
  CHECK(after->seen == before->seen);
  CHECK(after->days == before->days);
  CHECK(after->melt == before->melt);
}

TEST_CASE("snow that was ahead of the forecast widens the hours, and slush at dawn refuses all") {
  std::vector<SeenDay> days = record(0.7, 6);
  const auto sharp = calibrated(days, kSite);
  REQUIRE(sharp.has_value());
  // Rain is forecast for noon, and makes the snow very wet three hours before.
  SnowReport& report = days.back().report;
  report.forecast->hours[4].rain = units::MillimetresPerHour{6};
  const Instant early{report.forecast->hours[4].start.seconds - 3 * kSecondsInHour};
  days.back().seen.push_back({ground(early, 0), Wetness::very_wet});
  const auto wider = calibrated(days, kSite);
  REQUIRE(wider.has_value());
  CHECK(wider->melt == sharp->melt);
  CHECK(wider->off == units::Seconds{3 * 3600.0});
  days.back().seen.push_back({ground(early, 0), Wetness::slush});
  CHECK_FALSE(calibrated(days, kSite).has_value());
}

}  // namespace rimehaul::snow
