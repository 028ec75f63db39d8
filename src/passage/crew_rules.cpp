#include "passage/crew_rules.h"

#include <algorithm>

namespace rimehaul::passage {

using units::Metres;

namespace {

const DriverLevel* level_of(const rig::Rig& rig, const Rules& rules) {
  const auto level = std::ranges::find(rules.driver_levels, rig.driver_level, &DriverLevel::name);
  return level == rules.driver_levels.end() ? nullptr : &*level;
}

Finding unknown_level(Check check, const rig::Rig& rig) {
  return unknown(check, "driver level '" + rig.driver_level + "' in the rules");
}

Finding judge_dead_zone(const MarkOnStretch& zone, Metres longest) {
  const Metres length = zone.span.to - zone.span.from;
  if (!(length > Metres{0})) {
    return unknown(Check::alone, "how long the dead zone '" + zone.mark->name + "' is");
  }
  Finding finding = held_to(Check::alone, units::amount(length), units::amount(longest),
                            "without radio in " + zone.mark->name + ", and nobody with it");
  finding.inputs.add("length without radio", units::amount(length), Origin::mark)
      .add("longest alone", units::amount(longest), Origin::rules);
  return finding;
}

}  // namespace

Finding judge_driver_level(const rig::Rig& rig, const Rules& rules) {
  const DriverLevel* level = level_of(rig, rules);
  if (level == nullptr) {
    return unknown_level(Check::driver_level, rig);
  }
  if (rig.trailer.has_value() && !level->may_tow) {
    return refusal(Check::driver_level, "drivers of level '" + level->name + "' may not tow");
  }
  return kept(Check::driver_level, rig.trailer.has_value()
                                       ? "the level is known and may tow"
                                       : "the level is known, nothing is towed");
}

Finding judge_driver_hours(const rig::Rig& rig, Stay stay, const Rules& rules) {
  const DriverLevel* level = level_of(rig, rules);
  if (level == nullptr) {
    return unknown_level(Check::driver_level, rig);
  }
  if (!level->hours.has_value()) {
    return kept(Check::driver_level, "the level is known and drives at any hour");
  }
  return held_to_hours({.check = Check::driver_level,
                        .hours = *level->hours,
                        .refused = "drivers of level '" + level->name + "' drive",
                        .always = "the level is known and drives at any hour",
                        .origin = Origin::rules},
                       stay, rules);
}

Finding judge_towing_in_wet_snow(const rig::Rig& rig, const Rules& rules, snow::SnowState state) {
  const DriverLevel* level = level_of(rig, rules);
  if (level == nullptr) {
    return unknown_level(Check::towing_in_wet_snow, rig);
  }
  const snow::Wetness wettest = std::min(rules.wettest_towing, level->wettest_towing);
  if (state.wetness <= wettest) {
    return kept(Check::towing_in_wet_snow, "the snow is no wetter than site and level allow");
  }
  return refusal(Check::towing_in_wet_snow,
                 std::string{"no trailer in snow wetter than "} + snow::words_for(wettest));
}

Finding judge_passengers(const rig::Rig& rig, const Rules& rules) {
  if (rig.load.passengers == 0) {
    return kept(Check::passengers, "there are none");
  }
  const DriverLevel* level = level_of(rig, rules);
  if (level == nullptr) {
    return unknown_level(Check::passengers, rig);
  }
  if (!level->may_carry_passengers) {
    return refusal(Check::passengers, "drivers of level '" + level->name + "' carry no passengers");
  }
  if (rig.trailer.has_value() && !rules.passengers.with_trailer) {
    return refusal(Check::passengers, "nobody rides while a trailer is towed");
  }
  return kept(Check::passengers, "the level may carry them, behind no trailer or with leave");
}

Finding judge_passengers_in_snow(const rig::Rig& rig, const Rules& rules, snow::SnowState state) {
  if (rig.load.passengers == 0 || state.wetness <= rules.passengers.wettest) {
    return kept(Check::passengers, "there are none, or the snow is dry enough for them");
  }
  return refusal(Check::passengers, std::string{"no passengers in snow wetter than "} +
                                        snow::words_for(rules.passengers.wettest));
}

Finding judge_alone(const rig::Rig& rig, const Rules& rules,
                    const std::vector<MarkOnStretch>& marks) {
  if (rig.accompanied) {
    return kept(Check::alone, "somebody goes along");
  }
  if (!rules.alone.allowed) {
    return refusal(Check::alone, "nobody drives alone at this site");
  }
  Finding worst = kept(Check::alone, "the rules let a rig go alone, and the radio reaches here");
  for (const MarkOnStretch& placed : marks) {
    if (placed.mark->kind != trails::MarkKind::dead_zone) {
      continue;
    }
    Finding there = judge_dead_zone(placed, rules.alone.longest_dead_zone);
    there.at = std::max(placed.span.from, Metres{0});
    if (binds_before(there, worst) || tells_more(there, worst)) {
      worst = std::move(there);
    }
  }
  return worst;
}

}  // namespace rimehaul::passage
