// The words of card/words.h about people on board, calls for help, and what the day may bring.
#include "card/figures.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card::words {

std::string nobody_rides() {
  return "nobody rides beside the driver: this route was judged without passengers";
}

std::vector<std::string> who_rides() {
  return {"passengers in seats only: belt on, helmet on, feet in, hands off the controls",
          "nobody on the bed, the trailer or the hitch; nobody who cannot hold on and do as told"};
}

std::string goes_alone() {
  return "no second rig and nobody trained goes along: stay with the machine, call before leaving "
         "it";
}

std::string goes_accompanied() {
  return "goes accompanied: in sight of each other, one at a time where it is steep";
}

std::string overdue_from(std::string_view local_time, const Control& control) {
  return "overdue from " + std::string{local_time} + ": " +
         (control.name.empty() ? "whoever took the call on leaving" : std::string{control.name}) +
         " calls, then sends help along this route";
}

std::string no_tow_out_rig() {
  return "the site names no rig to tow out: know who would come before you start";
}

std::string tow_out_rig(std::string_view rig, std::optional<bool> ready) {
  const std::string named = "tow-out rig: " + std::string{rig};
  if (!ready) {
    return named + "; nobody said whether it stands ready today: ask";
  }
  return named + (*ready ? ", told to stand ready today" : ", not ready today");
}

// As the line reads. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
std::string tow_out_untold(std::string_view rig, std::string_view ended) {
  return "tow-out rig: " + std::string{rig} + "; what was said of it ran out " +
         std::string{ended} + ": ask";
}

std::string too_heavy_to_tow(const TowMass& mass) {
  const std::string least =
      mass_text(mass.least) + " with its driver alone, without load and unhitched";
  const std::string may_tow =
      "it may tow " + units::text_of(mass.most.value(), 0, units::Round::down) + " kg";
  const bool can_be_towed = mass.least <= mass.most;
  return can_be_towed
             ? may_tow + " and this rig weighs " + mass_text(mass.rig) +
                   ": unload and unhitch first; it weighs " + least
             : may_tow + " and CANNOT TOW THIS RIG AT ALL: it weighs " + mass_text(mass.rig) +
                   ", and still " + least + "; know who else would come before you start";
}

std::string out_of_reach_of(std::string_view rig, const std::vector<int>& numbers) {
  return std::string{rig} + " may not drive " + legs(numbers) +
         " in this snow: there help comes another way";
}

namespace {

std::string fastenings(passage::Towing towing) {
  return towing == passage::Towing::yes ? "straps, load, hitch pin and trailer" : "straps and load";
}

}  // namespace

std::string look_at_straps(passage::Towing towing) {
  return "stop, level and clear as far as known: look again at " + fastenings(towing);
}

std::string no_place_for_straps(units::Metres within, passage::Towing towing) {
  return "no place on the first " + distance_text(within) +
         " is known to be fit to stop at: look twice at " + fastenings(towing) +
         " before setting out";
}

std::string call_control(std::string_view control) {
  return control.empty() ? "the site names nobody to call: know whom before you start"
                         : "call " + std::string{control};
}

std::string named_on_trail(const trails::Mark& mark) {
  return std::string{trails::words_for(mark.kind)} + " " + mark.name + " on " + mark.trail;
}

std::string mark_today(const trails::Mark& mark, bool clear, std::string_view until) {
  return named_on_trail(mark) + (clear ? ": told clear" : ": not clear, so closed") +
         (until.empty() ? "" : " until " + std::string{until});
}

std::string mark_untold_today(const trails::Mark& mark, std::string_view ended) {
  return named_on_trail(mark) +
         (ended.empty() ? ": nobody said whether it is clear, so closed"
                        : ": what was said of it ran out " + std::string{ended} + ", so closed");
}

std::string look_at_crossings(std::string_view crossings) {
  return "stop, look and sound the horn at " + std::string{crossings};
}

std::string report_ran_out(std::string_view local_time) {
  return "the site's report ran out " + std::string{local_time} +
         ": what it said of marks, grooming and help is not known now, and closed where the rules "
         "need it";
}

std::string wind_rule(std::optional<units::MetresPerSecond> most) {
  return most ? "closed in " + wind_over(*most) : "the site sets no limit to the wind";
}

std::string single_lane_rule(units::Metres longest) {
  return "one lane driven both ways, nowhere to pass and no radio gate: " +
         units::text_of(longest.value(), 0, units::Round::down) + " m at most";
}

std::string setback_rule(const Setbacks& setbacks) {
  const auto metres = [](units::Metres length) {
    return units::text_of(length.value(), 1, units::Round::up) + " m";
  };
  return "keep " + metres(setbacks.from_drops) + " from drops, " + metres(setbacks.from_cornices) +
         " from cornices";
}

std::string grooming_today(int ready, std::string_view others, units::Seconds set) {
  const std::string trails = std::to_string(ready) + (ready == 1 ? " trail has" : " trails have") +
                             " set for " + minutes_text(set) + " since grooming";
  return others.empty() ? trails : trails + "; closed until they have: " + std::string{others};
}

std::string closed_in_rain() {
  return "rain closes everything";
}

std::string passengers_rule(const passage::PassengerRule& rule) {
  return std::string{"passengers: in snow no wetter than "} + snow::words_for(rule.wettest) +
         (rule.with_trailer ? "" : ", not while a trailer is towed");
}

std::string alone_rule(const passage::AloneRule& rule) {
  if (!rule.allowed) {
    return "nobody drives alone";
  }
  return rule.longest_dead_zone > units::Metres{0}
             ? "alone through no more than " +
                   units::text_of(rule.longest_dead_zone.value(), 0, units::Round::down) +
                   " m without radio"
             : "alone only where the radio reaches";
}

std::string overdue_rule(units::Seconds overdue) {
  return "a rig is looked for " + minutes_text(overdue) + " after its reckoned arrival";
}

std::string it_rains() {
  return "it begins to rain";
}

std::string status_runs_out(const EndOfStatus& end) {
  return "you would not be past " + std::string{end.mark} + " by " + std::string{end.local_time} +
         ", until when it was told clear";
}

}  // namespace rimehaul::card::words
