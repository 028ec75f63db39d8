// Stations, zones and marks: what lies at, around and on the trails.
#pragma once

#include <optional>
#include <string>

#include "geo/region.h"
#include "units/clock.h"
#include "units/quantities.h"
#include "units/slope.h"

namespace rimehaul::trails {

enum class StationKind { lift_station, hut, workshop, fuel, lodging, refuge };

struct Station {
  std::string name;
  StationKind kind = StationKind::hut;
  geo::MapPoint place;
  /// Radius of the ground kept clear for turning round; 0: none; not given: unknown, so none.
  std::optional<units::Metres> turning_radius;
};

enum class ZoneKind { forbidden, speed_limit, open_ground, release_area, runout };

struct Zone {
  std::string name;
  ZoneKind kind = ZoneKind::forbidden;
  geo::Region region;
  std::optional<units::MetresPerSecond> speed;  ///< of a speed limit; missing closes the zone
};

/// What a mark on a trail speaks of.
enum class MarkKind {
  bench,   ///< a shelf cut or groomed into the slope, with a surveyed attitude
  bridge,  ///< carries the trail over a gap, with a surveyed attitude and a mass limit
  road_crossing,
  piste_crossing,
  winch_cable,  ///< grooming by winch: closed unless today's status says clear
  blasting,     ///< closed unless today's status says clear
  gate,         ///< closed unless today's status says clear
  cornice,      ///< beside the trail
  drop,         ///< beside the trail
  dead_zone,    ///< no radio
  refuge,
  turning_room,  ///< room to turn round
  passing_place,
  check_in,  ///< where the driver calls in
};

/// What was said of a mark today.
enum class DailyStatus { clear, not_clear };

/// Attitude of a built structure, by survey, where the heights cannot see it.
struct Survey {
  units::Slope steepest_grade;  ///< size, either way
  units::Slope steepest_cross;  ///< size, either way
  units::Slope standard_deviation;
  units::Instant surveyed;
  bool inspected_since_weather = false;  ///< re-inspected after the last wind, snowfall or slide
};

/// A point or stretch of a trail that carries something a driver must know. A point has from == to.
struct Mark {
  std::string name;
  MarkKind kind = MarkKind::gate;
  std::string trail;
  geo::Span span{};                           ///< by chainage along the trail as drawn
  std::optional<Survey> survey;               ///< bench and bridge
  std::optional<units::Kilograms> most_mass;  ///< bridge
  std::optional<units::Metres> room;          ///< turning radius, or setback from cornice or drop
  std::optional<DailyStatus> status;          ///< nothing: nobody said
};

/// Whether a mark of this kind closes its place unless today's status says clear.
[[nodiscard]] bool needs_daily_status(MarkKind kind);
[[nodiscard]] const char* words_for(MarkKind kind);
[[nodiscard]] const char* words_for(ZoneKind kind);
[[nodiscard]] const char* words_for(StationKind kind);

}  // namespace rimehaul::trails
