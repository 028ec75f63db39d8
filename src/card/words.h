// Every sentence that a card says to people, in one place, so that a second language can come.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "card/courses.h"
#include "passage/judge.h"
#include "rig/rig.h"
#include "search/route.h"
#include "snow/snow.h"
#include "trails/features.h"
#include "units/clock.h"

namespace rimehaul::card::words {

/// The one line that stands on everything the program prints.
[[nodiscard]] std::string_view planning_aid();
[[nodiscard]] std::vector<std::string> cautions();
/// Which the card of a route says besides.
[[nodiscard]] std::string_view creep_round_turns();
/// What to look over before starting, fitted to the rig: skis, runners and hitch only where it has
/// them.
[[nodiscard]] std::vector<std::string> pre_start_checks(const rig::Rig& rig);
[[nodiscard]] std::vector<std::string> parking_steps(const rig::Rig& rig);

[[nodiscard]] std::string_view preference(search::Preference prefer);
/// "moist, groomed"
[[nodiscard]] std::string snow_state(const snow::SnowState& state);
/// "dry, groomed; moist, groomed"
[[nodiscard]] std::string snow_states(const std::vector<snow::SnowState>& states);
/// "visibility 200 m, wind unknown, ..." on the safe side: visibility down, wind up.
[[nodiscard]] std::string weather(const snow::DayWeather& weather);
/// "bed 150 kg, towed 100 kg, 1 passenger of 90 kg, fuel 30.0 L"
[[nodiscard]] std::string load(const rig::Load& load, std::string_view trailer);

// What to mind at a mark, in a zone, or on a trail as a whole.
[[nodiscard]] std::string mark(const trails::Mark& mark, trails::Way way);
[[nodiscard]] std::string zone(const trails::Zone& zone);
[[nodiscard]] std::string shared_with_skiers();
[[nodiscard]] std::string single_lane_two_way();
[[nodiscard]] std::string not_groomed();
[[nodiscard]] std::string open_ground_not_marked();
/// "steer 085 deg (grid) for 120 m"
[[nodiscard]] std::string steer(const Course& course);

/// "leg 2", "legs 1, 3 to 5": numbers in order, runs of them told by their ends.
[[nodiscard]] std::string legs(const std::vector<int>& numbers);

// Findings.
[[nodiscard]] std::string_view stand(passage::Stand stand);
/// Fuel that a finding came out with: "with the tank empty".
[[nodiscard]] std::string_view tank(passage::Tank tank);
[[nodiscard]] std::string_view origin(passage::Origin origin);
[[nodiscard]] std::string_view grip_standing(snow::GripStanding standing);
/// How a finding came out, in one line: "62 % of the limit", "not known: visibility".
[[nodiscard]] std::string outcome(const passage::Finding& finding);
/// Whether a check speaks of a place of the leg, not of the whole of it, the load or the day.
[[nodiscard]] bool has_place(passage::Check check);
/// Where to say what a check does not know.
[[nodiscard]] std::string where_to_say(const passage::Finding& finding);

// What would open a leg, a way, or lift a cause.
/// "bed load from 0 kg to 139 kg": ends rounded inwards.
[[nodiscard]] std::string opens_with_load(passage::LoadPlace place,
                                          const passage::LoadInterval& interval);
/// One line per interval or pair of intervals.
[[nodiscard]] std::vector<std::string> opens_with_loads(const passage::OpenLoads& loads);
/// "snow that is dry on any surface; moist or wet, groomed"
[[nodiscard]] std::string opens_in_snow(const std::vector<snow::SnowState>& states);
/// What lifts the refusal of a check that is neither of ground nor of load; empty: nothing known.
[[nodiscard]] std::string opens_otherwise(passage::Check check);
[[nodiscard]] std::string_view with_decision_besides();
[[nodiscard]] std::string opens_by_decision();
[[nodiscard]] std::string opens_by_decision(std::string_view decision);
/// One line for each thing that opens by itself.
[[nodiscard]] std::vector<std::string> openings(const search::Openings& opens);
/// Where something is not known, nothing else can open.
[[nodiscard]] std::string_view opens_once_told();
/// What was tried where nothing opens.
enum class Towing { no, yes };
[[nodiscard]] std::string nothing_opens(Towing towing);

// Reasons to turn back, with their numbers.
[[nodiscard]] std::string visibility_below(units::Metres least);
/// Legs that were judged in the same snow, or a part of one leg.
struct LegsInSnow {
  std::vector<snow::SnowState> judged;
  std::vector<int> legs;  ///< numbers, in order
  std::string part{};     ///< " from 0 m to 420 m"; empty: all of them
};
/// Leg by leg where they were not all judged in the same snow.
[[nodiscard]] std::string snow_worse_than(const std::vector<LegsInSnow>& groups);
[[nodiscard]] std::string wind_over(units::MetresPerSecond most);
[[nodiscard]] std::string late_for_driver(std::string_view level, units::TimeOfDay ends);
[[nodiscard]] std::string late_on_trail(std::string_view trail, units::TimeOfDay closes);
[[nodiscard]] std::string snow_report_runs_out(std::string_view local_time);
/// Where no report says how long the snow and the weather hold.
[[nodiscard]] std::string overdue_past(std::string_view local_time);
struct LeastFuel {
  units::Litres at_start;
  units::Litres anywhere;  ///< the reserve
};
[[nodiscard]] std::string fuel_below(const LeastFuel& least);
[[nodiscard]] std::string bulletin_above(int level);
/// What holds on every route: worse than assumed, sliding, a mark or marker that is missing.
[[nodiscard]] std::vector<std::string> always_turn_back();

[[nodiscard]] std::string it_rains();
struct EndOfStatus {
  std::string_view mark;
  std::string_view local_time;
};
[[nodiscard]] std::string status_runs_out(const EndOfStatus& end);

// People, and help.
[[nodiscard]] std::string nobody_rides();
/// Where the site says nothing of its own; common practice, no source.
[[nodiscard]] std::vector<std::string> who_rides();
[[nodiscard]] std::string goes_alone();
[[nodiscard]] std::string goes_accompanied();
struct Control {
  std::string_view name;  ///< whom to call and how; empty: not said
};
[[nodiscard]] std::string overdue_from(std::string_view local_time, const Control& control);
[[nodiscard]] std::string no_tow_out_rig();
[[nodiscard]] std::string tow_out_rig(std::string_view rig, std::optional<bool> ready);
/// `ended`: when the report that spoke of it ran out.
[[nodiscard]] std::string tow_out_untold(std::string_view rig, std::string_view ended);
struct TowMass {
  units::Kilograms rig;    ///< that is to be towed out, as it stands
  units::Kilograms least;  ///< the same with its driver and fuel alone: no load, nothing hitched
  units::Kilograms most;   ///< that the other may tow
};
/// What a rig that is heavier than the other may tow can do about it, or that nothing helps.
[[nodiscard]] std::string too_heavy_to_tow(const TowMass& mass);
[[nodiscard]] std::string out_of_reach_of(std::string_view rig, const std::vector<int>& numbers);
[[nodiscard]] std::string look_at_straps(passage::Towing towing);
/// Instead, where no place within so far is known to be fit to stop at.
[[nodiscard]] std::string no_place_for_straps(units::Metres within, passage::Towing towing);
/// "do not stop: exposed to avalanches, as 186 m of this leg are; one rig at a time"
[[nodiscard]] std::string exposed(units::Metres on_this_leg);
/// Of each further stretch of the leg.
[[nodiscard]] std::string exposed_too();

// What holds at the site today.
/// "winch cable Fell Winch on Top Road: told clear until 2026-02-01 10:30"
[[nodiscard]] std::string mark_today(const trails::Mark& mark, bool clear, std::string_view until);
/// `ended`: when the last word on it ran out; empty: there was none.
[[nodiscard]] std::string mark_untold_today(const trails::Mark& mark, std::string_view ended);
/// "piste crossing Blue Run on Piste Link"
[[nodiscard]] std::string named_on_trail(const trails::Mark& mark);
[[nodiscard]] std::string look_at_crossings(std::string_view crossings);
[[nodiscard]] std::string report_ran_out(std::string_view local_time);
/// Nothing: the site sets no limit.
[[nodiscard]] std::string wind_rule(std::optional<units::MetresPerSecond> most);
[[nodiscard]] std::string single_lane_rule(units::Metres longest);
struct Setbacks {
  units::Metres from_drops;
  units::Metres from_cornices;
};
[[nodiscard]] std::string setback_rule(const Setbacks& setbacks);
/// `others`: groomed trails that have not set, or of which nobody said when they were groomed.
[[nodiscard]] std::string grooming_today(int ready, std::string_view others, units::Seconds set);
[[nodiscard]] std::string closed_in_rain();
[[nodiscard]] std::string passengers_rule(const passage::PassengerRule& rule);
[[nodiscard]] std::string alone_rule(const passage::AloneRule& rule);
[[nodiscard]] std::string overdue_rule(units::Seconds overdue);

// Radio.
[[nodiscard]] std::string call_control(std::string_view control);
struct Departure {
  std::string_view station;
  std::string_view arrival;  ///< local time at the end of the route
};
[[nodiscard]] std::string call_on_leaving(const Departure& departure);
[[nodiscard]] std::string call_at(std::string_view mark, int leg, std::string_view where);
[[nodiscard]] std::string no_radio(std::string_view mark, int leg, std::string_view where);
[[nodiscard]] std::string call_on_arrival(std::string_view station);

// Fuel.
struct FuelShort {
  units::Litres aboard;
  units::Litres needed;
};
[[nodiscard]] std::string fuel_short(const FuelShort& fuel);
/// `stations`: where fuel is to be had on the way.
[[nodiscard]] std::string no_fuel_to_return(units::Litres both_ways,
                                            const std::vector<std::string>& stations);
[[nodiscard]] std::string no_way_back();

}  // namespace rimehaul::card::words
