#include "card/words.h"

#include <cmath>

#include "base/joined.h"
#include "card/figures.h"
#include "units/rounding.h"

namespace rimehaul::card::words {

namespace {

std::string metres_down(units::Metres metres) {
  return units::text_of(metres.value(), 0, units::Round::down) + " m";
}

std::string wind_text(units::MetresPerSecond wind, units::Round round) {
  return units::text_of(wind.value() * 3.6, 0, round) + " km/h";
}

std::string leg_number(int leg) {
  return "leg " + std::to_string(leg);
}

/// Less dense snow lets a rig sink deeper.
std::string density_words(const std::optional<units::KilogramsPerCubicMetre>& density) {
  return density ? " of " + units::text_of(density->value(), 0, units::Round::down) + " kg/m3" : "";
}

}  // namespace

std::string legs(const std::vector<int>& numbers) {
  std::vector<std::string> runs;
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const std::size_t first = i;
    while (i + 1 < numbers.size() && numbers[i + 1] == numbers[i] + 1) {
      ++i;
    }
    runs.push_back(
        std::to_string(numbers[first]) +
        (i == first ? "" : (i == first + 1 ? ", " : " to ") + std::to_string(numbers[i])));
  }
  return (numbers.size() == 1 ? "leg " : "legs ") + base::joined(runs, ", ");
}

std::string_view planning_aid() {
  return "A planning aid, not permission to drive.";
}

std::vector<std::string> cautions() {
  constexpr const char* kAvalanches =
      "Avalanche terrain needs the local forecast and a qualified person; ground that is not "
      "flagged here is not thereby safe.";
  return {
      "This card is a planning aid, not permission to drive.",
      "The operator's manual, local rules and the people on the hill outrank it.",
      kAvalanches,
      "Conditions worse than assumed mean stop and replan.",
      "Nobody stops below a slope, or below a machine that may slide.",
  };
}

std::string_view creep_round_turns() {
  return "Speeds hold along a leg: creep round the turns at junctions, slower than a walk.";
}

std::vector<std::string> pre_start_checks(const rig::Rig& rig) {
  std::vector<std::string> checks{
      "fluids at their marks, no leaks under the machine",
      "fuel as stated on this card, cap closed",
      "tracks: tension, belts and cleats whole; axle fastenings tight",
  };
  if (rig.carrier.kind == rig::CarrierKind::skis_and_tracks) {
    checks.emplace_back("skis: runners, pins and keels whole, not bent");
  }
  checks.emplace_back("service brake holds; parking brake holds on a slope");
  checks.emplace_back("steering free from stop to stop");
  checks.emplace_back("stop switch and lanyard stop the engine");
  checks.emplace_back("lights, beacon and horn work");
  checks.emplace_back("drive belts and seat belts whole and fastened");
  if (rig.trailer) {
    checks.emplace_back(rig.trailer->running == rig::TrailerRunning::runners
                            ? "trailer runners whole, free of ice"
                            : "trailer tracks whole, free of ice");
    checks.emplace_back("hitch pin in and clipped; safety strap or chain fastened");
  }
  checks.emplace_back(
      "load low, secured for full braking and for the slopes below; look again "
      "where this card says");
  checks.emplace_back("radio tried with someone who answers; their number known");
  return checks;
}

std::vector<std::string> parking_steps(const rig::Rig& rig) {
  std::vector<std::string> steps{
      "stop on level ground or across the slope on a bench, never nose-down above people",
      "off the trail, clear of lifts, doors, drains and overhanging snow",
      "parking brake on, lowest gear, engine off, key out",
      rig.trailer ? "chock carrier and trailer before unhitching" : "chock the tracks",
      "scrape the tracks free, so that they do not freeze in",
      "look round: leaks, loose bolts, load; report what you find",
      "call in: parked, where, who has the key",
  };
  return steps;
}

std::string_view preference(search::Preference prefer) {
  switch (prefer) {
    case search::Preference::safest:
      return "safest";
    case search::Preference::quickest:
      return "quickest";
    case search::Preference::least_fuel:
      return "least fuel";
  }
  return "";
}

std::string snow_state(const snow::SnowState& state) {
  return std::string{snow::words_for(state.wetness)} + ", " + snow::words_for(state.surface);
}

std::string snow_states(const std::vector<snow::SnowState>& states) {
  std::vector<std::string> parts;
  parts.reserve(states.size());
  for (const snow::SnowState& state : states) {
    parts.push_back(snow_state(state));
  }
  return base::joined(parts, "; ");
}

std::string weather(const snow::DayWeather& weather) {
  std::vector<std::string> parts;
  parts.push_back("visibility " +
                  (weather.visibility ? metres_down(*weather.visibility) : "unknown"));
  parts.push_back("wind " +
                  (weather.wind ? wind_text(*weather.wind, units::Round::up) : "unknown"));
  std::string bulletin = "avalanche bulletin ";
  bulletin += weather.bulletin_level ? std::to_string(*weather.bulletin_level) : "unknown";
  if (weather.bulletin_level && !weather.bulletin_source.empty()) {
    bulletin += " (" + weather.bulletin_source + ")";
  }
  parts.push_back(bulletin);
  if (weather.new_snow) {
    parts.push_back("new snow " +
                    units::text_of(weather.new_snow->value() * 100.0, 0, units::Round::up) + " cm" +
                    density_words(weather.new_snow_density));
  }
  if (weather.rain) {
    parts.emplace_back(*weather.rain ? "rain" : "no rain");
  }
  if (weather.temperature) {
    parts.push_back(units::text_of(weather.temperature->value(), 0, units::Round::nearest) +
                    " deg C");
  }
  return base::joined(parts, ", ");
}

std::string load(const rig::Load& load, std::string_view trailer) {
  std::vector<std::string> parts{"bed " + mass_text(load.bed)};
  if (!trailer.empty()) {
    parts.push_back("towed " + mass_text(load.towed));
  }
  const std::string each = " of " + mass_text(load.passenger_mass);
  if (load.passengers == 1) {
    parts.push_back("1 passenger" + each);
  } else {
    parts.push_back(load.passengers == 0 ? "no passengers"
                                         : std::to_string(load.passengers) + " passengers" + each);
  }
  parts.push_back("fuel " + fuel_there_text(load.fuel));
  return base::joined(parts, ", ");
}

std::string visibility_below(units::Metres least) {
  return "you see less than " + units::text_of(least.value(), 0, units::Round::up) + " m";
}

std::string snow_worse_than(const std::vector<LegsInSnow>& groups) {
  std::vector<std::string> parts;
  parts.reserve(groups.size());
  for (const LegsInSnow& group : groups) {
    parts.push_back((groups.size() == 1 ? "" : legs(group.legs) + group.part + ": ") +
                    snow_states(group.judged));
  }
  return "the snow is wetter, harder or newer than judged (" + base::joined(parts, " / ") + ")";
}

std::string wind_over(units::MetresPerSecond most) {
  return "wind over " + wind_text(most, units::Round::down);
}

std::string late_on_trail(std::string_view trail, units::TimeOfDay closes) {
  return "you would not be off " + std::string{trail} + " by " + units::text_of(closes);
}

std::string late_for_driver(std::string_view level, units::TimeOfDay ends) {
  return "you would not be there by " + units::text_of(ends) + ", until when drivers of level " +
         std::string{level} + " drive";
}

std::string snow_report_runs_out(std::string_view local_time) {
  return "it is past " + std::string{local_time} + ", when the snow report runs out";
}

std::string overdue_past(std::string_view local_time) {
  return "it is past " + std::string{local_time} +
         ": this card holds for this departure alone, as no report says how long";
}

std::string fuel_below(const LeastFuel& least) {
  return "there is less fuel than " + fuel_needed_text(least.at_start) + " at the start, or than " +
         fuel_needed_text(least.anywhere) + " (the reserve) anywhere";
}

std::string bulletin_above(int level) {
  return "the avalanche bulletin is raised above level " + std::to_string(level);
}

std::vector<std::string> always_turn_back() {
  return {
      "the rig slides, digs in or will not hold when braked",
      "a trail marker is missing, or the trail is blocked, cut up or drifted over",
      "the radio fails outside the dead zones stated here",
  };
}

std::string call_on_leaving(const Departure& departure) {
  return "call on leaving " + std::string{departure.station} +
         ": rig, people, this route, arrival about " + std::string{departure.arrival};
}

std::string call_at(std::string_view mark, int leg, std::string_view where) {
  return leg_number(leg) + " " + std::string{where} + ": call in at " + std::string{mark};
}

std::string no_radio(std::string_view mark, int leg, std::string_view where) {
  return leg_number(leg) + " " + std::string{where} + ": no radio (" + std::string{mark} +
         "), call before and after";
}

std::string call_on_arrival(std::string_view station) {
  return "call on arrival at " + std::string{station};
}

std::string fuel_short(const FuelShort& fuel) {
  return "fuel aboard " + fuel_there_text(fuel.aboard) +
         " does not cover this route and the reserve, " + fuel_needed_text(fuel.needed);
}

std::string no_fuel_to_return(units::Litres both_ways, const std::vector<std::string>& stations) {
  return "not enough to come back without refuelling: there and back with the reserve takes " +
         fuel_needed_text(both_ways) + "; " +
         (stations.empty() ? "there is no fuel on this way"
                           : "fuel on this way at " + base::joined(stations, ", ") +
                                 ", and then ask anew with what is aboard");
}

std::string no_way_back() {
  return "no way back is open to this rig in the snow of its arrival: know where it stays";
}

}  // namespace rimehaul::card::words
