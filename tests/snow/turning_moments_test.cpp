// When the snow's answers may change: at no other second than at those named.
#include "snow/turning_moments.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "snow/snow.h"

namespace rimehaul::snow {

namespace {

using units::Instant;
using units::Period;

Instant at(const char* text) {
  return *units::parse_instant(text);
}

const Instant kDawn = at("2026-02-01T06:30:00Z");
const Instant kNoon = at("2026-02-01T12:00:00Z");
const Instant kDusk = at("2026-02-01T18:00:00Z");
const Period kDay{at("2026-02-01T00:00:00Z"), at("2026-02-01T23:59:59Z")};

SnowReport report_of_the_day() {
  SnowReport report;
  report.bands.push_back(
      {.above = {}, .below = {}, .aspect_from = {}, .aspect_to = {}, .state = {}});
  report.observed = kDawn;
  report.valid_until = kDusk;
  report.weather.site.marks = {{"Gate", true, kNoon}, {"Winch", true, {}}};
  report.weather.site.grooming = {{"Birk Way", at("2026-02-01T03:40:00Z")}};
  report.weather.site.last_weather = at("2026-01-30T20:00:00Z");
  return report;
}

/// All that is answered about a second.
struct Answers {
  std::optional<SnowState> snow;
  std::optional<bool> gate;

  friend bool operator==(const Answers&, const Answers&) = default;
};

Answers answers(const SnowAt& snow, Instant when) {
  return {.snow = snow.at({.height = geo::Height{1000}, .aspect = {}, .when = when}),
          .gate = snow.weather().site.is_clear("Gate", when)};
}

/// Seconds of the period at which an answer differs from the one a second before.
std::vector<Instant> changes_of(const SnowAt& snow, Period during) {
  std::vector<Instant> changes;
  for (Instant when{during.from.seconds + 1}; when <= during.to; ++when.seconds) {
    if (answers(snow, when) != answers(snow, {when.seconds - 1})) {
      changes.push_back(when);
    }
  }
  return changes;
}

}  // namespace

TEST_CASE("moments are put in order, each once, from after the first to the last of the period") {
  const Period during{{10}, {20}};
  CHECK(in_order_within({{20}, {9}, {11}, {10}, {21}, {11}}, during) ==
        std::vector<Instant>{{11}, {20}});
  CHECK(in_order_within({{10}}, {{10}, {10}}).empty());
  CHECK(in_order_within({{15}}, {{20}, {10}}).empty());
}

TEST_CASE("a report turns when it begins, ends, or a status in it runs out, and no second else") {
  const ReportedSnow snow{report_of_the_day()};
  const std::vector<Instant> moments = snow.turning_moments(kDay);
  CHECK(moments ==
        std::vector<Instant>{
            at("2026-02-01T03:40:00Z"), kDawn, {kNoon.seconds + 1}, {kDusk.seconds + 1}});
  const std::vector<Instant> changes = changes_of(snow, kDay);
  CHECK(changes.size() == 3);
  for (const Instant change : changes) {
    CHECK(std::ranges::find(moments, change) != moments.end());
  }
}

TEST_CASE("an undated report turns by its statuses alone, and last weather is a moment too") {
  SnowReport undated = report_of_the_day();
  undated.observed.reset();
  undated.valid_until.reset();
  CHECK(ReportedSnow{undated}.turning_moments({{0}, kDusk}) ==
        std::vector<Instant>{
            at("2026-01-30T20:00:00Z"), at("2026-02-01T03:40:00Z"), {kNoon.seconds + 1}});
}

TEST_CASE("a what-if turns only when its weather runs out") {
  const ConstantSnow always{{}, {}, "assumed for planning"};
  CHECK(always.turning_moments(kDay).empty());
  const ConstantSnow till_noon{{}, {}, {"assumed for planning", {}}, kNoon};
  CHECK(till_noon.turning_moments(kDay) == std::vector<Instant>{{kNoon.seconds + 1}});
  CHECK(changes_of(till_noon, kDay) == till_noon.turning_moments(kDay));
}

TEST_CASE("one class for another turns whenever the other does") {
  const ReportedSnow told{report_of_the_day()};
  const OtherSnow other{told, {Wetness::slush, Surface::ice}};
  CHECK(other.turning_moments(kDay) == told.turning_moments(kDay));
}

}  // namespace rimehaul::snow
