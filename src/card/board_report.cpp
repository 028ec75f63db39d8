#include "card/board_report.h"

#include <algorithm>

#include "card/figures.h"
#include "card/notices.h"
#include "card/trip_words.h"
#include "card/words.h"
#include "passage/estimates.h"

namespace rimehaul::card {

namespace {

const std::string& trail_of(trails::LegId leg, const trails::Network& network) {
  return network.trails[network.legs[static_cast<std::size_t>(leg)].trail].name;
}

/// Where on a way of several legs it binds, between which junctions; empty for any other.
std::string where_on_way(const day::BoardCell& cell, const trails::Network& network) {
  const auto* way = std::get_if<search::FixedWay>(&cell.trip);
  if (way == nullptr || way->legs.size() < 2 || !cell.leg) {
    return "";
  }
  const trails::Leg& leg = network.legs[static_cast<std::size_t>(*cell.leg)];
  const std::string from = name_of(network, leg.from);
  return cell.turn_from ? "at " + from : "from " + from + " to " + name_of(network, leg.to);
}

BoardRow row_of(const day::BoardCell& cell, const trails::Network& network) {
  const std::vector<std::string> places = places_of(cell.trip, network);
  BoardRow row{.from = places.front(),
               .to = places.back(),
               .snow = cell.snow.value_or(snow::SnowState{}),
               .verdict = cell.verdict};
  row.binding = cell.binding;
  row.stand = cell.stand;
  row.trail = cell.leg ? trail_of(*cell.leg, network) : "";
  row.turn_from = cell.turn_from ? trail_of(*cell.turn_from, network) : "";
  row.where_on_trail = where_on_way(cell, network);
  row.way = trails_along(cell.way, network);
  row.why = cell.why;
  if (cell.fuel_to_spare) {
    row.why = "too little fuel: the way needs " + fuel_needed_text(cell.fuel) +
              ", and above the reserve there is " + fuel_there_text(*cell.fuel_to_spare);
  }
  row.decision = cell.decision;
  row.worst_share = cell.worst_share;
  row.time = cell.time;
  row.length = cell.length;
  row.fuel = cell.fuel;
  row.loads = cell.loads;
  row.and_decision = cell.and_decision;
  return row;
}

}  // namespace

BoardReport board_report(const day::DayBoard& board, const passage::Scene& scene,
                         const rig::Rig& rig) {
  BoardReport report;
  report.site = scene.site_name;
  report.rig = rig.name;
  report.trailer = rig.trailer ? rig.trailer->name : "";
  report.driver_level = rig.driver_level;
  report.load = rig.load;
  report.allowed_share = passage::allowed_share_for(scene.rules, rig.driver_level).value_or(0.0);
  report.local_clock = scene.rules.local_clock;
  for (const day::BoardCell& cell : board.cells) {
    report.rows.push_back(row_of(cell, scene.network));
    report.places_rewalked += cell.places_rewalked;
    const snow::SnowState& snow = report.rows.back().snow;
    if (std::ranges::find(report.snows, snow) == report.snows.end()) {
      report.snows.push_back(snow);
    }
  }
  report.estimates = passage::estimates_in(
      {.rules = scene.rules, .towing = passage::towing_of(rig), .snow = report.snows});
  return report;
}

std::string reason_of(const BoardRow& row) {
  if (!row.binding) {
    return row.why;
  }
  std::string reason{passage::facts_of(row.binding->check).title};
  if (!words::has_place(row.binding->check)) {
    return reason;
  }
  reason += row.turn_from.empty() ? " on " + row.trail
            : row.turn_from == row.trail
                ? " at a turn on " + row.trail
                : " at the turn from " + row.turn_from + " into " + row.trail;
  return reason + (row.where_on_trail.empty() ? "" : ", " + row.where_on_trail);
}

}  // namespace rimehaul::card
