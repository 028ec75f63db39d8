#include "app/route_hours.h"

#include "app/status.h"

namespace rimehaul::app {

namespace {

constexpr double kSecondsPerMinute = 60.0;
/// A cautious default; estimate.
constexpr double kLate_min = 15.0;

bool windows_wanted(const HoursOptions& hours) {
  return hours.windows || hours.arrive_by || hours.late_min || hours.turn_round_min;
}

}  // namespace

AskedHours hours_asked(const RouteOptions& options, const LocalNow& present) {
  const units::Instant depart = departure(options.way.depart, present);
  if (options.hours.arrive_by) {
    const units::Instant arrive = departure(options.hours.arrive_by, present, "--arrive-by");
    if (arrive <= depart) {
      throw WrongUsage{"--arrive-by " + *options.hours.arrive_by +
                       " is over; name an hour after the present, or say --now"};
    }
    return {.depart = depart, .arrive_by = arrive, .looked_at = {depart, arrive}};
  }
  const units::Instant midnight = present.local_clock.next_day_begins(depart);
  return {.depart = depart, .looked_at = {depart, {midnight.seconds - 1}}};
}

units::Seconds reserve_asked(const HoursOptions& hours) {
  return units::Seconds{hours.late_min.value_or(kLate_min) * kSecondsPerMinute};
}

std::optional<AskedBack> way_back_asked(const LoadedSite& site, const RigOptions& out,
                                        const HoursOptions& hours) {
  if (!hours.turn_round_min) {
    return std::nullopt;
  }
  if (!out.towed_kg && hours.back_towed_kg.value_or(0.0) > 0.0) {
    throw WrongUsage{"the rig " + out.name + " tows nothing; leave out --return-towed-load"};
  }
  RigOptions loaded = out;
  loaded.bed_kg = hours.back_bed_kg ? hours.back_bed_kg : loaded.bed_kg;
  loaded.towed_kg = hours.back_towed_kg ? hours.back_towed_kg : loaded.towed_kg;
  return AskedBack{rig_as_loaded(site, loaded),
                   units::Seconds{*hours.turn_round_min * kSecondsPerMinute}};
}

std::optional<day::Departures> departures_asked(const RouteOptions& options,
                                                const JudgedHours& judged,
                                                const search::RouteQuestion& question,
                                                const std::optional<AskedBack>& back) {
  if (!windows_wanted(options.hours)) {
    return std::nullopt;
  }
  const day::DeparturesQuestion asked{.trip = day::Stops{question.stations},
                                      .hours = judged.hours.horizon(),
                                      .late = reserve_asked(options.hours),
                                      .permission = search::permission_of(question),
                                      .arrive_by = question.arrive_by};
  const trails::Network& network = judged.judge.scene().network;
  if (!back.has_value()) {
    return day::departures_of(network, judged.hours, asked, std::nullopt);
  }
  const passage::Judge judge_back = judged.judge.with_rig(back->rig);
  const passage::RememberingJudge remembering{judge_back, judged.ground};
  return day::departures_of(network, judged.hours, asked,
                            day::WayBack{remembering, back->turn_round});
}

}  // namespace rimehaul::app
