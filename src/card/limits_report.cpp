// The grade limits of a rig by snow and load as plain data, and the outlines of what it may be
// driven on.
#include "card/limits_report.h"

#include <algorithm>
#include <cmath>

#include "card/rating_words.h"
#include "passage/estimates.h"

namespace rimehaul::card {

namespace {

using units::Kilograms;

/// What already stands on a rating, and what the rating is.
struct Room {
  Kilograms taken;
  Kilograms rated;
};

/// The most whole kilograms for which the share of the rating, reckoned as the check does, stays
/// allowed; 0 when there is no such room.
Kilograms room_on(Room room, double allowed_share) {
  const double most_kg = room.rated.value() * allowed_share - room.taken.value();
  if (!(most_kg > 0.0) || !std::isfinite(most_kg)) {
    return Kilograms{0};
  }
  const Kilograms more{std::floor(most_kg + 1.0)};  // rounding may have hidden the last kilogram
  for (const Kilograms load : {more, more - Kilograms{1}}) {
    if ((room.taken + load) / room.rated <= allowed_share) {
      return load;
    }
  }
  return std::max(more - Kilograms{2}, Kilograms{0});
}

rig::Load load_for(const rig::Rig& rig, LoadCase load_case, double allowed_share) {
  switch (load_case) {
    case LoadCase::empty: {
      rig::Load load = rig.load;
      load.bed = Kilograms{0};
      load.towed = Kilograms{0};
      load.passengers = 0;
      return load;
    }
    case LoadCase::as_given:
      return rig.load;
    case LoadCase::full:
      return full_load(rig, allowed_share);
  }
  return rig.load;
}

LimitsTable table_of(const rig::Rig& rig, LoadCase load_case, const LimitsQuestion& question) {
  LimitsTable table{.towing = rig.trailer ? rig.trailer->name : "",
                    .load_case = load_case,
                    .load = rig.load,
                    .rows = {}};
  for (const snow::Surface surface : question.surfaces) {
    for (const snow::Wetness wetness : question.classes) {
      const snow::SnowState snow{wetness, surface};
      table.rows.push_back({snow, passage::grade_limits({rig, question.rules, snow})});
    }
  }
  return table;
}

/// Empty, as given and full; a load that an earlier table has is not told twice.
void add_tables(rig::Rig rig, const LimitsQuestion& question, std::vector<LimitsTable>& tables) {
  const double share = passage::allowed_share_for(question.rules, rig.driver_level).value_or(0.0);
  const rig::Rig as_given = rig;
  std::vector<rig::Load> told;
  for (const LoadCase load_case : {LoadCase::empty, LoadCase::as_given, LoadCase::full}) {
    rig.load = load_for(as_given, load_case, share);
    if (std::ranges::find(told, rig.load) == told.end()) {
      told.push_back(rig.load);
      tables.push_back(table_of(rig, load_case, question));
    }
  }
}

OutlineSet outlines_of(const LimitsQuestion& question) {
  OutlineSet set{.towing = question.rig.trailer ? question.rig.trailer->name : "",
                 .load = question.rig.load,
                 .surface = question.surfaces.front(),
                 .outlines = {}};
  for (const snow::Wetness wetness : question.classes) {
    set.outlines.push_back(
        {wetness, passage::envelope_of({question.rig, question.rules, {wetness, set.surface}})});
  }
  return set;
}

}  // namespace

rig::Load full_load(const rig::Rig& rig, double allowed_share) {
  rig::Load load = rig.load;
  const Kilograms riders = load.passenger_mass * static_cast<double>(load.passengers);
  load.bed = std::min(room_on({Kilograms{0}, rig.carrier.bed_rating}, allowed_share),
                      room_on({riders, rig.carrier.payload_rating}, allowed_share));
  load.towed = Kilograms{0};
  if (rig.trailer) {
    load.towed =
        std::min(room_on({Kilograms{0}, rig.trailer->payload_rating}, allowed_share),
                 room_on({rig.trailer->empty.mass, rig.carrier.towed_mass_rating}, allowed_share));
  }
  return load;
}

LimitsReport limits_report(const LimitsQuestion& question) {
  LimitsReport report;
  report.rig = question.rig.name;
  report.driver_level = question.rig.driver_level;
  report.allowed_share =
      passage::allowed_share_for(question.rules, question.rig.driver_level).value_or(0.0);
  report.sight = question.rules.sight;
  report.local_clock = question.rules.local_clock;
  add_tables(question.rig, question, report.tables);
  if (question.rig.trailer) {
    add_tables(rig::without_trailer(question.rig), question, report.tables);
  }
  report.outlines = outlines_of(question);
  report.ratings = rating_lines(question.rig);
  report.estimates =
      passage::estimates_in({.rules = question.rules, .towing = passage::towing_of(question.rig)});
  return report;
}

bool any_open(const LimitsReport& report) {
  return std::ranges::any_of(report.outlines.outlines, [](const SnowOutline& outline) {
    return !outline.envelope.closed.has_value();
  });
}

}  // namespace rimehaul::card
