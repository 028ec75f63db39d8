#include "card/notices.h"

#include <algorithm>
#include <cstdint>

#include "card/courses.h"
#include "card/figures.h"
#include "card/words.h"
#include "passage/stretch_judge.h"
#include "passage/turning_room.h"

namespace rimehaul::card {

namespace {

const trails::Leg& leg_of(const trails::Network& network, trails::LegId id) {
  return network.legs[static_cast<std::uint32_t>(id)];
}

NoticeKind kind_of(trails::MarkKind kind) {
  using enum trails::MarkKind;
  const bool helps =
      kind == refuge || kind == turning_room || kind == passing_place || kind == check_in;
  return helps ? NoticeKind::help : NoticeKind::warning;
}

/// A leg's speed keeps to the limits on it already.
NoticeKind kind_of(trails::ZoneKind kind) {
  return kind == trails::ZoneKind::speed_limit ? NoticeKind::help : NoticeKind::warning;
}

void add_trail_notices(const trails::Trail& trail, const trails::Leg& leg,
                       std::vector<Notice>& notices) {
  const geo::Span whole{units::Metres{0}, leg.line.length()};
  if (trail.shared_with_skiers.value_or(true)) {
    notices.push_back({whole, words::shared_with_skiers()});
  }
  if (trail.direction == trails::AllowedDirection::both && trail.lanes.value_or(1) < 2) {
    notices.push_back({whole, words::single_lane_two_way()});
  }
  if (!trail.marked) {
    notices.push_back({whole, words::open_ground_not_marked()});
    for (const Course& course : courses_along(leg.line, passage::line_error_of(trail) / 2.0)) {
      notices.push_back({course.span, words::steer(course), NoticeKind::help});
    }
  } else if (!trail.groomed.value_or(false)) {
    notices.push_back({whole, words::not_groomed(), NoticeKind::help});
  }
}

/// A place of one kind on the whole route, by chainage along it.
struct Place {
  units::Metres along;
  std::string name;
};

Ahead first_after(const std::vector<Place>& places, units::Metres start) {
  // Half a metre ahead at least: the place one stands on is not ahead.
  const units::Metres least = start + units::Metres{0.5};
  const Place* nearest = nullptr;
  for (const Place& place : places) {
    if (place.along > least && (nearest == nullptr || place.along < nearest->along)) {
      nearest = &place;
    }
  }
  return nearest == nullptr ? Ahead{} : Ahead{nearest->along - start, nearest->name};
}

bool shelters(trails::StationKind kind) {
  using enum trails::StationKind;
  return kind == hut || kind == lodging || kind == refuge;
}

/// Turn-rounds and refuges of the whole route.
struct Places {
  units::Metres room;  ///< that the rig needs to turn round
  std::vector<Place> turn_rounds;
  std::vector<Place> refuges;
};

void add_station(const trails::Station& station, units::Metres along, Places& places) {
  if (station.turning_radius && *station.turning_radius >= places.room) {
    places.turn_rounds.push_back({along, station.name});
  }
  if (shelters(station.kind)) {
    places.refuges.push_back({along, station.name});
  }
}

void add_mark(const trails::Mark& mark, units::Metres along, Places& places) {
  if (mark.kind == trails::MarkKind::turning_room && mark.room && *mark.room >= places.room) {
    places.turn_rounds.push_back({along, mark.name});
  }
  if (mark.kind == trails::MarkKind::refuge) {
    places.refuges.push_back({along, mark.name});
  }
}

}  // namespace

std::vector<Notice> notices_along(const trails::Network& network, const trails::Leg& leg) {
  std::vector<Notice> notices;
  add_trail_notices(network.trails[leg.trail], leg, notices);
  for (const trails::Mark& mark : network.marks) {
    if (const auto span = span_on_leg(mark, network, leg)) {
      notices.push_back({*span, words::mark(mark, leg.way), kind_of(mark.kind)});
    }
  }
  for (const trails::Zone& zone : network.zones) {
    if (zone.kind == trails::ZoneKind::open_ground) {
      continue;
    }
    for (const geo::Span& span : geo::spans_inside(zone.region, leg.line)) {
      notices.push_back({span, words::zone(zone), kind_of(zone.kind)});
    }
  }
  std::ranges::stable_sort(notices, {}, [](const Notice& notice) { return notice.span.from; });
  return notices;
}

void add_notice(CardLeg& leg, Notice notice) {
  leg.notices.push_back(std::move(notice));
  std::ranges::stable_sort(leg.notices, {}, [](const Notice& each) { return each.span.from; });
}

std::vector<WaysOut> ways_out(const trails::Network& network, const rig::Rig& rig,
                              const search::Route& route) {
  Places places{passage::room_to_turn_round(rig), {}, {}};
  std::vector<units::Metres> starts;
  units::Metres along{0};
  for (const search::RouteLeg& part : route.legs) {
    const trails::Leg& leg = leg_of(network, part.leg);
    starts.push_back(along);
    for (const trails::Mark& mark : network.marks) {
      if (const auto span = span_on_leg(mark, network, leg)) {
        add_mark(mark, along + span->from, places);
      }
    }
    along += leg.line.length();
    if (const auto station = network.junctions[static_cast<std::uint32_t>(leg.to)].station) {
      add_station(network.stations[*station], along, places);
    }
  }
  std::vector<WaysOut> out;
  out.reserve(starts.size());
  for (const units::Metres start : starts) {
    out.push_back({first_after(places.turn_rounds, start), first_after(places.refuges, start)});
  }
  return out;
}

std::vector<std::string> radio_lines(const search::Route& route, const CardContext& context) {
  const trails::Network& network = context.scene.network;
  const auto& stations = context.question.stations;
  const units::LocalClock& local_clock = context.scene.rules.local_clock;
  const units::Instant arrival = units::after(context.question.depart, route.time);
  const std::string arrives = units::text_of(local_clock.time_of_day(arrival));
  std::vector<std::string> lines{
      words::call_control(context.scene.rules.control),
      words::call_on_leaving({network.stations[stations.front()].name, arrives})};
  int number = 0;
  for (const search::RouteLeg& part : route.legs) {
    ++number;
    const trails::Leg& leg = leg_of(network, part.leg);
    std::vector<Notice> calls;
    for (const trails::Mark& mark : network.marks) {
      const auto span = span_on_leg(mark, network, leg);
      if (!span) {
        continue;
      }
      const std::string where = where_text(*span, leg.line.length());
      if (mark.kind == trails::MarkKind::check_in) {
        calls.push_back({*span, words::call_at(mark.name, number, where)});
      } else if (mark.kind == trails::MarkKind::dead_zone) {
        calls.push_back({*span, words::no_radio(mark.name, number, where)});
      }
    }
    std::ranges::stable_sort(calls, {}, [](const Notice& call) { return call.span.from; });
    for (Notice& call : calls) {
      lines.push_back(std::move(call.words));
    }
  }
  lines.push_back(words::call_on_arrival(network.stations[stations.back()].name));
  return lines;
}

std::vector<std::string> trails_along(const std::vector<trails::LegId>& way,
                                      const trails::Network& network) {
  std::vector<std::string> names;
  for (const trails::LegId id : way) {
    const trails::Leg& leg = network.legs[static_cast<std::uint32_t>(id)];
    const std::string& name = network.trails[leg.trail].name;
    if (names.empty() || names.back() != name) {
      names.push_back(name);
    }
  }
  return names;
}

std::string name_of(const trails::Network& network, trails::JunctionId junction) {
  const auto index = static_cast<std::uint32_t>(junction);
  const auto station = network.junctions[index].station;
  return station ? network.stations[*station].name : "junction " + std::to_string(index + 1);
}

}  // namespace rimehaul::card
