#include "card/help.h"

#include <algorithm>

#include "card/figures.h"
#include "card/words.h"
#include "passage/judge.h"

namespace rimehaul::card {

namespace {

using units::Metres;

/// The rig that comes to tow out: nothing behind it, no load, as full a tank as it has.
rig::Rig coming_empty(const rig::Rig& tow_out) {
  rig::Rig rig = rig::without_trailer(rig::without_cargo(tow_out));
  rig.load.passengers = 0;
  rig.load.fuel = rig.carrier.tank;
  rig.accompanied = true;  // of the rig that waits for it
  return rig;
}

/// What is left to tow when all that can be left behind is.
units::Kilograms least_mass(const rig::Rig& stranded) {
  rig::Rig rig = rig::without_trailer(rig::without_cargo(stranded));
  rig.load.passengers = 0;
  return rig::weigh(rig).total();
}

/// Numbers of the legs that the tow-out rig may not drive, by any permission.
std::vector<int> legs_closed_to(const rig::Rig& tow_out, const search::Route& route,
                                const CardContext& context) {
  const passage::Judge judge{context.scene, tow_out, context.snow};
  std::vector<int> closed;
  int number = 0;
  for (const search::RouteLeg& part : route.legs) {
    ++number;
    if (judge.judge(part.leg, part.entry).verdict == passage::Verdict::closed) {
      closed.push_back(number);
    }
  }
  return closed;
}

}  // namespace

std::vector<std::string> people_lines(const CardContext& context) {
  const passage::Rules& rules = context.scene.rules;
  std::vector<std::string> lines;
  if (context.rig.load.passengers == 0) {
    lines.push_back(words::nobody_rides());
  } else {
    lines = rules.passengers.who.empty() ? words::who_rides() : rules.passengers.who;
  }
  lines.push_back(context.rig.accompanied ? words::goes_accompanied() : words::goes_alone());
  return lines;
}

std::vector<std::string> help_lines(const search::Route& route, const CardContext& context) {
  const passage::Rules& rules = context.scene.rules;
  const units::Instant arrival = units::after(context.question.depart, route.time);
  const std::string from = local_text(units::after(arrival, rules.overdue), rules.local_clock);
  std::vector<std::string> lines{words::overdue_from(from, {rules.control})};
  if (context.tow_out == nullptr) {
    lines.push_back(words::no_tow_out_rig());
    return lines;
  }
  const rig::Rig tow_out = coming_empty(*context.tow_out);
  lines.push_back(words::tow_out_rig(tow_out.name, context.snow.weather().site.tow_out_ready));
  const units::Kilograms mass = rig::weigh(context.rig).total();
  if (!(mass <= tow_out.carrier.towed_mass_rating)) {
    lines.push_back(words::too_heavy_to_tow(
        {mass, least_mass(context.rig), tow_out.carrier.towed_mass_rating}));
  }
  if (const std::vector<int> closed = legs_closed_to(tow_out, route, context); !closed.empty()) {
    lines.push_back(words::out_of_reach_of(tow_out.name, closed));
  }
  return lines;
}

}  // namespace rimehaul::card
