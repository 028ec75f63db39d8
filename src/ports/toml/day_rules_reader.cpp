#include "ports/toml/day_rules_reader.h"

#include "ports/toml/snow_words.h"

namespace rimehaul::ports::toml {

namespace {

using units::Metres;
using units::Seconds;

constexpr double kSecondsPerMinute = 60.0;

void read_weather_rules(TableReader& top, passage::Rules& rules) {
  constexpr double kKilometresPerHour = 3.6;  // of one metre per second
  if (const auto wind = top.may<units::MetresPerSecond>("most_wind_kmh", {.above = 0, .to = 200})) {
    rules.most_wind = *wind / kKilometresPerHour;
  }
  rules.closed_in_rain = top.yes_no("closed_in_rain", Presence::may).value_or(rules.closed_in_rain);
  if (const auto minutes = top.may<double>("grooming_set_min", {.from = 0, .to = 1'440})) {
    rules.grooming_set = Seconds{*minutes * kSecondsPerMinute};
  }
  rules.wettest_creek_bridge = top.word("wettest_creek_bridge", wetness_words(), Presence::may)
                                   .value_or(rules.wettest_creek_bridge);
}

void read_passengers(TableReader in, passage::PassengerRule& rule) {
  rule.with_trailer = in.yes_no("with_trailer", Presence::may).value_or(rule.with_trailer);
  rule.wettest = in.word("wettest", wetness_words(), Presence::may).value_or(rule.wettest);
  rule.who = in.texts("who", Presence::may);
  in.refuse_rest();
}

void read_alone(TableReader in, passage::AloneRule& rule) {
  rule.allowed = in.yes_no("allowed", Presence::may).value_or(rule.allowed);
  rule.longest_dead_zone = in.may<Metres>("longest_dead_zone_m", {.from = 0, .to = 20'000})
                               .value_or(rule.longest_dead_zone);
  in.refuse_rest();
}

void read_tow_out(TableReader in, passage::TowOutRule& rule) {
  rule.rig = in.text("rig").value_or("");
  rule.must_be_ready = in.yes_no("must_be_ready").value_or(true);
  in.refuse_rest();
}

}  // namespace

void read_day_rules(TableReader& top, passage::Rules& rules) {
  read_weather_rules(top, rules);
  rules.longest_single_lane = top.may<Metres>("single_lane_m", {.from = 0, .to = 20'000});
  rules.strap_check =
      top.may<Metres>("strap_check_m", {.from = 50, .to = 2'000}).value_or(rules.strap_check);
  if (const auto minutes = top.may<double>("overdue_min", {.from = 5, .to = 240})) {
    rules.overdue = Seconds{*minutes * kSecondsPerMinute};
  }
  rules.control = top.text("control", Presence::may).value_or(rules.control);
  read_passengers(top.table("passengers"), rules.passengers);
  read_alone(top.table("alone"), rules.alone);
  if (auto tow_out = top.table_if_there("tow_out")) {
    read_tow_out(*tow_out, rules.tow_out);
  }
}

}  // namespace rimehaul::ports::toml
