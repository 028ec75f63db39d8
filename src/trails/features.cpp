// The words of this room for people, and which marks close their place until someone has looked.
#include "trails/features.h"

#include "base/require.h"

namespace rimehaul::trails {

bool needs_daily_status(MarkKind kind) {
  using enum MarkKind;
  return kind == winch_cable || kind == blasting || kind == gate || kind == radio_gate ||
         kind == creek_bridge;
}

bool needs_survey(MarkKind kind) {
  return kind == MarkKind::bench || carries_a_mass(kind);
}

bool carries_a_mass(MarkKind kind) {
  return kind == MarkKind::bridge || kind == MarkKind::creek_bridge;
}

const char* words_for(MarkKind kind) {
  switch (kind) {
    case MarkKind::bench:
      return "bench";
    case MarkKind::bridge:
      return "bridge";
    case MarkKind::road_crossing:
      return "road crossing";
    case MarkKind::piste_crossing:
      return "piste crossing";
    case MarkKind::winch_cable:
      return "winch cable";
    case MarkKind::blasting:
      return "blasting";
    case MarkKind::gate:
      return "gate";
    case MarkKind::radio_gate:
      return "radio gate";
    case MarkKind::creek_bridge:
      return "snow bridge over a creek";
    case MarkKind::cornice:
      return "cornice";
    case MarkKind::drop:
      return "drop";
    case MarkKind::dead_zone:
      return "radio dead zone";
    case MarkKind::refuge:
      return "refuge";
    case MarkKind::turning_room:
      return "room to turn";
    case MarkKind::passing_place:
      return "passing place";
    case MarkKind::check_in:
      return "radio check-in";
  }
  throw base::OurFault{"a mark is of no known kind"};
}

const char* words_for(ZoneKind kind) {
  switch (kind) {
    case ZoneKind::forbidden:
      return "forbidden";
    case ZoneKind::speed_limit:
      return "speed limit";
    case ZoneKind::open_ground:
      return "open ground";
    case ZoneKind::release_area:
      return "release area";
    case ZoneKind::runout:
      return "runout";
  }
  throw base::OurFault{"a zone is of no known kind"};
}

const char* words_for(StationKind kind) {
  switch (kind) {
    case StationKind::lift_station:
      return "lift station";
    case StationKind::hut:
      return "hut";
    case StationKind::workshop:
      return "workshop";
    case StationKind::fuel:
      return "fuel";
    case StationKind::lodging:
      return "lodging";
    case StationKind::refuge:
      return "refuge";
  }
  throw base::OurFault{"a station is of no known kind"};
}

std::vector<std::string> OpenGround::missing() const {
  std::vector<std::string> names;
  const auto note = [&names](bool given, const char* column) {
    if (!given) {
      names.emplace_back(column);
    }
  };
  note(width.has_value(), "width_m");
  note(lanes.has_value(), "lanes");
  note(shared_with_skiers.has_value(), "skiers");
  note(hours.has_value(), "open_from");
  note(hours.has_value(), "open_to");
  note(line_error.has_value(), "error_m");
  note(least_visibility.has_value(), "visibility_m");
  return names;
}

bool may_be_crossed(const Zone& zone) {
  return zone.kind == ZoneKind::open_ground && zone.crossing.missing().empty();
}

}  // namespace rimehaul::trails
