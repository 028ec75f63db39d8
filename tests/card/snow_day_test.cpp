// What is said of a day's snow: when it is wet, when refrozen, when nobody knows.
#include "card/snow_day.h"

#include <doctest/doctest.h>

namespace rimehaul::card {
namespace {

using snow::Blind;
using snow::SnowState;
using snow::Surface;
using snow::Wetness;

constexpr SnowState kDry{Wetness::dry, Surface::groomed};
constexpr SnowState kWet{Wetness::wet, Surface::groomed};
constexpr SnowState kRefrozen{Wetness::moist, Surface::refrozen};

/// An hour from 08:00 on for each state; nothing is blind to the sun.
SnowDay day_of(const std::vector<std::optional<SnowState>>& states) {
  SnowDay day;
  day.observed = kDry;
  units::Instant start = *units::parse_instant("2026-02-01T08:00:00Z");
  for (const std::optional<SnowState>& state : states) {
    SnowHour hour{.start = start, .air = {}, .soft = {}, .counts = {}};
    hour.soft.start = start;
    hour.soft.state = state;
    hour.soft.blind = state ? Blind::no : Blind::to_sun;
    day.hours.push_back(hour);
    start.seconds += snow::kSecondsInHour;
  }
  return day;
}

using Sentences = std::vector<std::string>;

}  // namespace

TEST_CASE(
    "a day that goes wet and freezes over is told in two sentences, each with its two hours") {
  CHECK(sentences_of(day_of({kDry, kDry, kDry, kWet, kWet, kRefrozen})) ==
        Sentences{"likely wet from 11:00 +- 2 h", "refrozen by 13:00 +- 2 h"});
  CHECK(sentences_of(day_of({kWet, kWet})) == Sentences{"likely wet from 08:00 +- 2 h"});
}

TEST_CASE("water over 15 % is called very wet or worse") {
  const SnowState slush{Wetness::slush, Surface::groomed};
  CHECK(sentences_of(day_of({kDry, kWet, slush})) ==
        Sentences{"likely wet from 09:00 +- 2 h", "very wet or worse from 10:00 +- 2 h"});
  CHECK(state_text(slush, SaidBy::forecast) == "very wet or worse, groomed");
  CHECK(state_text(slush, SaidBy::seen) == "slush groomed");
  CHECK(state_text(kRefrozen, SaidBy::forecast) == "refrozen");
  CHECK(state_text(kDry, SaidBy::forecast) == "dry groomed");
  CHECK(state_text({}, SaidBy::nobody) == "unknown");
}

TEST_CASE("hours in which the sun shines on cold snow are told as unknown, with the reason") {
  CHECK(sentences_of(day_of({kDry, {}, {}, kRefrozen})) ==
        Sentences{"from 09:00 on unknown: sun on the snow with the air at or under 1 degree C",
                  "refrozen by 11:00 +- 2 h"});
}

TEST_CASE("a day that stays dry, and one without word or forecast, say so") {
  CHECK(sentences_of(day_of({kDry, kDry})) ==
        Sentences{"not likely wet before 10:00, where the forecast ends"});
  CHECK(sentences_of(day_of({})) ==
        Sentences{"no forecast that holds: as observed, for as long as the report holds"});
  SnowDay unseen = day_of({kDry});
  unseen.observed.reset();
  CHECK(sentences_of(unseen) == Sentences{"the report does not speak of this place: unknown"});
}

}  // namespace rimehaul::card
