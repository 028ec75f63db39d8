// The route card as plain data: what the driver needs, before anyone decides how it looks.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "card/made_from.h"
#include "day/departure_hours.h"
#include "geo/point.h"
#include "passage/judgement.h"
#include "rig/rig.h"
#include "search/route.h"
#include "snow/snow.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// A warning must be heeded for safety's sake; help is a place or fact of use on the way.
enum class NoticeKind { warning, help };

/// Something on the way that the driver must know of, with its place along the leg.
struct Notice {
  geo::Span span{};   ///< along the leg in driving direction; from == to: a point
  std::string words;  ///< "piste crossing Lower Run: stop, look, go when clear"
  NoticeKind kind = NoticeKind::warning;
};

/// The next place of a kind ahead on the route, seen from the start of a leg.
struct Ahead {
  std::optional<units::Metres> distance;  ///< nothing: there is none ahead
  std::string name;                       ///< of the place; empty without one
};

/// One leg as the driver reads it.
struct CardLeg {
  int number = 0;  ///< from 1
  std::string trail;
  geo::Span span{};  ///< by chainage along the trail as drawn
  trails::Way way = trails::Way::as_drawn;
  std::string from;  ///< station name, or "junction 7"
  std::string to;
  units::Instant entry;          ///< when the carrier's nose is reckoned to enter
  units::Seconds waits_before;   ///< at the station where it begins, until then
  units::Bearing start_bearing;  ///< grid bearing of its first metres
  units::Metres length;
  units::Metres climb;
  units::Metres drop;
  std::optional<passage::Steepness> up;
  std::optional<passage::Steepness> down;
  std::optional<passage::Steepness> across;
  passage::Verdict verdict = passage::Verdict::closed;
  std::string binding_check;  ///< title of the check that binds, of the leg or the turn into it
  std::string binding_key;    ///< the same, as in JSON
  double binding_share = 0.0;
  std::optional<units::Metres> binding_at;  ///< nothing: it holds for the whole leg
  units::MetresPerSecond speed;
  units::Seconds time;
  units::Litres fuel;
  std::vector<snow::SnowState> snow;
  std::vector<Notice> notices;     ///< marks, zones, dead zones, in driving order
  std::vector<geo::Span> exposed;  ///< to avalanches, by a decision: no part of the rig stops there
  Ahead turn_round;                ///< where this rig, trailer and all, has room to turn
  Ahead refuge;
};

/// A point of the route on the map, for GPX and for drawing.
struct TracePoint {
  geo::MapPoint place;
  std::optional<geo::Height> height;
  units::Metres chainage;  ///< along the whole route
  int leg = 0;             ///< index into legs
};

/// A card that was issued from a signed board: by what it is found in the records.
struct CardIssue {
  std::int64_t number = 0;
  std::int64_t board = 0;
  std::string route;      ///< its name
  std::string driver;     ///< to whom
  std::string signed_by;  ///< who stands for the board: "P. Example (planner)"
  std::string log_head;   ///< of the log before it: "17:0123456789abcdef0123"
};

struct RouteCard {
  int schema = 1;
  std::string site;
  std::string map_frame;
  std::string vertical_datum;
  std::string title;  ///< "Cable House to Fell Lodge"
  std::string rig;
  std::string carrier;
  std::string trailer;  ///< empty: none
  bool trailer_braked = false;
  std::string driver_level;
  rig::Load load;
  units::Kilograms total_mass;
  units::Kilograms tongue_mass;
  search::Preference prefer = search::Preference::safest;
  MadeFrom made_from;
  units::Instant depart;
  units::Instant arrive;
  units::LocalClock local_clock{};
  std::vector<snow::SnowState> snow;  ///< every state met on the way, sorted, each once
  snow::Told snow_told_by;
  std::optional<units::Instant> snow_valid_until;
  snow::DayWeather weather;
  passage::Verdict verdict = passage::Verdict::closed;
  double allowed_share = 0.0;
  double worst_share = 0.0;
  double confidence_k = 0.0;
  std::optional<CardIssue> issue{};    ///< nothing: planned by anybody
  std::vector<std::string> orders{};   ///< of named persons, in force
  std::string permitted_by;            ///< empty: nothing had to be permitted
  std::vector<std::string> permitted;  ///< the decisions that person has taken
  std::vector<CardLeg> legs;
  units::Metres length;
  units::Metres climb;
  units::Metres drop;
  units::Seconds time;  ///< waits included
  units::Seconds waits;
  std::optional<day::Departures> departures{};  ///< nothing: not asked for
  units::Litres fuel;
  units::Litres fuel_reserve;
  std::vector<std::string> fuel_warnings;
  std::vector<std::string> turn_back_triggers;
  std::vector<std::string> radio;   ///< check-ins and dead zones
  std::vector<std::string> people;  ///< who rides, and whether the driver goes alone
  std::vector<std::string> help;    ///< overdue, and the rig that tows out
  std::vector<std::string> pre_start_checks;
  std::vector<std::string> parking_steps;
  std::vector<std::string> cautions;
  std::vector<std::string> estimates;
  std::vector<std::string> heights_notes;  ///< source, date, declared error
  std::size_t places_rewalked = 0;
  std::vector<TracePoint> trace;
};

/// What the card needs to know beside the route.
struct CardContext {
  const passage::Scene& scene;
  const rig::Rig& rig;
  const snow::SnowAt& snow;
  const search::RouteQuestion& question;
  MadeFrom made_from;
  std::optional<units::Instant> snow_valid_until;
  std::vector<std::string> heights_notes;
  std::size_t places_rewalked = 0;
  std::optional<CardIssue> issue{};
  std::vector<std::string> orders{};
  const rig::Rig* tow_out = nullptr;         ///< that the rules name; nothing: none
  std::optional<units::Litres> fuel_back{};  ///< of the way back; nothing: none is open
  std::optional<day::Departures> departures{};
};

/// Writes the card of one route. Requires a route that has at least one leg.
[[nodiscard]] RouteCard make_card(const search::Route& route, const CardContext& context);

}  // namespace rimehaul::card
