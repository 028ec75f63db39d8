// The words of card/words.h that say what to mind at marks, in zones and on trails.
#include "card/figures.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card::words {

namespace {

std::string carried(const trails::Mark& mark) {
  return mark.most_mass
             ? ", at most " + units::text_of(mark.most_mass->value(), 0, units::Round::down) +
                   " kg in all"
             : "";
}

/// As the driver meets it: "on the LEFT, 13 m from the line: keep to the right".
std::string beside(const trails::Mark& mark, trails::Way way) {
  const std::string away =
      mark.room
          ? ", " + units::text_of(mark.room->value(), 0, units::Round::down) + " m from the line"
          : "";
  if (!mark.side) {
    return away + ", side not told: know it before you go";
  }
  const bool on_left = (*mark.side == trails::Side::left) == (way == trails::Way::as_drawn);
  return (on_left ? " on the LEFT" : " on the RIGHT") + away +
         (on_left ? ": keep right" : ": keep left");
}

}  // namespace

std::string mark(const trails::Mark& mark, trails::Way way) {
  using enum trails::MarkKind;
  std::string named = std::string{trails::words_for(mark.kind)} + " " + mark.name;
  switch (mark.kind) {
    case bench:
      return named + ": keep to the shelf";
    case bridge:
      return named + ": straight and slow, one rig at a time" + carried(mark);
    case road_crossing:
    case piste_crossing:
      return named + ": stop, look, sound the horn, go when clear";
    case winch_cable:
      return named + ": call the groomer before entering; never cross a cable";
    case blasting:
      return named + ": enter only when it is called clear";
    case gate:
      return named + ": close it behind you";
    case radio_gate:
      return named + ": call, wait for your turn, call again when you are out";
    case creek_bridge:
      return named + ": stop and look, one rig at a time, nobody rides over it" + carried(mark);
    case cornice:
      return named + beside(mark, way);
    case drop:
      return named + beside(mark, way) + ", walking pace in poor light";
    case dead_zone:
      return named + ": no radio, call before entering";
    case refuge:
    case turning_room:
      break;
    case passing_place:
      return named + ": call and wait here for oncoming rigs";
    case check_in:
      return named + ": call in";
  }
  return named;
}

std::string zone(const trails::Zone& zone) {
  using enum trails::ZoneKind;
  std::string named = std::string{trails::words_for(zone.kind)} + " " + zone.name;
  switch (zone.kind) {
    case speed_limit:
      return named + ": " + (zone.speed ? "at most " + speed_limit_text(*zone.speed) : "closed");
    case release_area:
    case runout:
      return named + ": do not stop, one rig at a time";
    case forbidden:
      return named + ": do not enter";
    case open_ground:
      break;
  }
  return named;
}

std::string exposed(units::Metres on_this_leg) {
  return "do not stop: exposed to avalanches, as " +
         units::text_of(on_this_leg.value(), 0, units::Round::up) +
         " m of this leg are; one rig at a time";
}

std::string exposed_too() {
  return "do not stop: exposed";
}

std::string shared_with_skiers() {
  return "shared with skiers: slow, sound the horn at blind spots";
}

std::string single_lane_two_way() {
  return "one lane, both directions: call before entering";
}

std::string open_ground_not_marked() {
  return "open ground, not marked: steer by bearing and distance, turn back when in doubt";
}

std::string steer(const Course& course) {
  return "steer " + bearing_text(course.bearing) + " (grid) for " +
         units::text_of((course.span.to - course.span.from).value(), 0, units::Round::nearest) +
         " m";
}

std::string not_groomed() {
  return "not groomed";
}

}  // namespace rimehaul::card::words
