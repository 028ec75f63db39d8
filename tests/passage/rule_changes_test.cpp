// Which rules may be changed by order, and which way a change leans.
#include "passage/rule_changes.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace rimehaul::passage {

namespace {

using units::Metres;
using units::MetresPerSecond;
using units::Seconds;

/// One rule told loosely, and the same told tightly.
struct Pair {
  const char* key;
  void (*loose)(Rules& rules);
  void (*tight)(Rules& rules);
};

const std::vector<Pair> kPairs{
    {"alone.allowed", [](Rules& rules) { rules.alone.allowed = true; },
     [](Rules& rules) { rules.alone.allowed = false; }},
    {"alone.longest_dead_zone_m", [](Rules& rules) { rules.alone.longest_dead_zone = Metres{500}; },
     [](Rules& rules) { rules.alone.longest_dead_zone = Metres{100}; }},
    {"closed_in_rain", [](Rules& rules) { rules.closed_in_rain = false; },
     [](Rules& rules) { rules.closed_in_rain = true; }},
    {"cornice_setback_m", [](Rules& rules) { rules.cornice_setback = Metres{5}; },
     [](Rules& rules) { rules.cornice_setback = Metres{20}; }},
    {"fuel_reserve", [](Rules& rules) { rules.fuel_reserve = 0.2; },
     [](Rules& rules) { rules.fuel_reserve = 0.5; }},
    {"grooming_set_min", [](Rules& rules) { rules.grooming_set.reset(); },
     [](Rules& rules) { rules.grooming_set = Seconds{3600}; }},
    {"markers_in_sight", [](Rules& rules) { rules.markers_in_sight = 1; },
     [](Rules& rules) { rules.markers_in_sight = 3; }},
    {"most_wind_kmh", [](Rules& rules) { rules.most_wind.reset(); },
     [](Rules& rules) { rules.most_wind = MetresPerSecond{10}; }},
    {"passengers.wettest", [](Rules& rules) { rules.passengers.wettest = snow::Wetness::wet; },
     [](Rules& rules) { rules.passengers.wettest = snow::Wetness::dry; }},
    {"passengers.with_trailer", [](Rules& rules) { rules.passengers.with_trailer = true; },
     [](Rules& rules) { rules.passengers.with_trailer = false; }},
    {"setback_m", [](Rules& rules) { rules.setback = Metres{2}; },
     [](Rules& rules) { rules.setback = Metres{4}; }},
    {"single_lane_m", [](Rules& rules) { rules.longest_single_lane.reset(); },
     [](Rules& rules) { rules.longest_single_lane = Metres{400}; }},
    {"tow_out.must_be_ready", [](Rules& rules) { rules.tow_out.must_be_ready = false; },
     [](Rules& rules) { rules.tow_out.must_be_ready = true; }},
    {"wettest_creek_bridge",
     [](Rules& rules) { rules.wettest_creek_bridge = snow::Wetness::moist; },
     [](Rules& rules) { rules.wettest_creek_bridge = snow::Wetness::dry; }},
    {"wettest_towing", [](Rules& rules) { rules.wettest_towing = snow::Wetness::slush; },
     [](Rules& rules) { rules.wettest_towing = snow::Wetness::moist; }},
};

}  // namespace

TEST_CASE("every rule open to orders is looser or tighter as its numbers say") {
  std::vector<std::string_view> keys;
  for (const Pair& pair : kPairs) {
    CAPTURE(pair.key);
    keys.emplace_back(pair.key);
    Rules loose = default_rules();
    Rules tight = default_rules();
    pair.loose(loose);
    pair.tight(tight);
    CHECK(leaning_of(pair.key, loose, tight) == Leaning::tighter);
    CHECK(leaning_of(pair.key, tight, loose) == Leaning::looser);
    CHECK(leaning_of(pair.key, tight, tight) == Leaning::same);
    CHECK(leaning_of(pair.key, loose, loose) == Leaning::same);
  }
  CHECK(keys == keys_open_to_orders());
  CHECK(std::ranges::is_sorted(keys));
}

TEST_CASE("two set limits are told apart as well as one and none") {
  Rules calm = default_rules();
  Rules windy = default_rules();
  calm.most_wind = MetresPerSecond{10};
  windy.most_wind = MetresPerSecond{12};
  CHECK(leaning_of("most_wind_kmh", calm, windy) == Leaning::looser);
  calm.grooming_set = Seconds{3600};
  windy.grooming_set = Seconds{1800};
  CHECK(leaning_of("grooming_set_min", calm, windy) == Leaning::looser);
  calm.longest_single_lane = Metres{100};
  windy.longest_single_lane = Metres{90};
  CHECK(leaning_of("single_lane_m", calm, windy) == Leaning::tighter);
}

TEST_CASE("what is no number is looser: tightness is to be proven") {
  Rules unclear = default_rules();
  unclear.setback = Metres{std::nan("")};
  CHECK(leaning_of("setback_m", default_rules(), unclear) == Leaning::looser);
  CHECK(leaning_of("setback_m", unclear, default_rules()) == Leaning::looser);
}

TEST_CASE("ratings, physics, errors, grip and the allowed share are open to no order") {
  const Rules rules = default_rules();
  for (const char* key :
       {"allowed_share", "confidence_k", "roll_over_reserve", "low_side_sinkage_m",
        "articulation_deg", "reaction_s", "start_slope_dry_deg", "grip", "walking_pace_kmh",
        "passenger_kg", "bulletin.level_3.keep_off_m", "driver.new.allowed_share", ""}) {
    CAPTURE(key);
    CHECK_FALSE(leaning_of(key, rules, rules).has_value());
  }
}

}  // namespace rimehaul::passage
