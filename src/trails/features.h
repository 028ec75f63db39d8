// Stations, zones and marks: what lies at, around and on the trails.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geo/region.h"
#include "trails/trail.h"
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
  std::string file{};  ///< where it was read, for faults
};

enum class ZoneKind { forbidden, speed_limit, open_ground, release_area, runout };

/// How ground without a trail may be crossed: what a trail over it would say, in the same words.
/// Attributes that bear on safety have no default: `missing` names those not given.
struct OpenGround {
  std::optional<units::Metres> width;  ///< of the strip that must be free and open, edge to edge
  std::optional<int> lanes;            ///< 1 or more
  std::optional<bool> shared_with_skiers;
  std::optional<OpenHours> hours;
  std::optional<units::Metres> line_error;  ///< how far to each side a driver may stray
  std::optional<units::Metres> sight;       ///< none: the site's rule
  std::optional<units::MetresPerSecond> most_wind;
  std::optional<units::Metres> least_visibility;

  [[nodiscard]] std::vector<std::string> missing() const;
};

struct Zone {
  std::string name;
  ZoneKind kind = ZoneKind::forbidden;
  geo::Region region;
  std::optional<units::MetresPerSecond> speed;  ///< of a speed limit; missing closes the zone
  std::string file{};                           ///< where it was read, for faults
  OpenGround crossing{};                        ///< of open ground; of all else, nothing given
};

/// Open ground of which everything was said that bears on safety.
[[nodiscard]] bool may_be_crossed(const Zone& zone);

/// What a mark on a trail speaks of.
enum class MarkKind {
  bench,   ///< a shelf cut or groomed into the slope, with a surveyed attitude
  bridge,  ///< carries the trail over a gap, with a surveyed attitude and a mass limit
  road_crossing,
  piste_crossing,
  // The next five close their place unless today's status says clear.
  winch_cable,  ///< grooming by winch
  blasting,
  gate,
  radio_gate,    ///< a single lane that somebody lets one rig at a time into, by radio
  creek_bridge,  ///< snow over a creek, as surveyed and for a mass; in snow dry enough only
  cornice,       ///< beside the trail
  drop,          ///< beside the trail
  dead_zone,     ///< no radio
  refuge,
  turning_room,  ///< room to turn round
  passing_place,
  check_in,  ///< where the driver calls in
};

/// Attitude of a built structure, by survey, where the heights cannot see it.
struct Survey {
  units::Slope steepest_grade;  ///< size, either way
  units::Slope steepest_cross;  ///< size, either way
  units::Slope standard_deviation;
  units::Instant surveyed;
  std::optional<units::Instant> inspected{};  ///< last looked at; nothing: nobody said
};

/// Of a trail's line as drawn.
enum class Side { left, right };

/// A point or stretch of a trail that carries something a driver must know. A point has from == to.
struct Mark {
  std::string name;
  MarkKind kind = MarkKind::gate;
  std::string trail;
  geo::Span span{};                           ///< by chainage along the trail as drawn
  std::optional<Survey> survey;               ///< bench and both kinds of bridge
  std::optional<units::Kilograms> most_mass;  ///< both kinds of bridge
  std::optional<units::Metres> room;          ///< turning radius, or setback from cornice or drop
  std::optional<Side> side{};                 ///< on which a cornice or drop lies
};

/// Whether a mark of this kind closes its place unless today's status says clear.
[[nodiscard]] bool needs_daily_status(MarkKind kind);
/// Whether a mark of this kind is built or grown over what the heights see, so that only a survey
/// tells how it lies.
[[nodiscard]] bool needs_survey(MarkKind kind);
[[nodiscard]] bool carries_a_mass(MarkKind kind);
[[nodiscard]] const char* words_for(MarkKind kind);
[[nodiscard]] const char* words_for(ZoneKind kind);
[[nodiscard]] const char* words_for(StationKind kind);

}  // namespace rimehaul::trails
