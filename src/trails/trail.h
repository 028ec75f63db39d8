// Marked trails as people describe them. What nobody said stays unsaid, and unsaid closes a trail.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "geo/polyline.h"
#include "units/clock.h"

namespace rimehaul::trails {

/// In which direction a trail may be driven, along its line as drawn.
enum class AllowedDirection { forward, backward, both };

/// Daily hours in which a trail may be driven, local time; from <= to.
struct OpenHours {
  units::TimeOfDay from;
  units::TimeOfDay to;

  friend auto operator<=>(const OpenHours&, const OpenHours&) = default;
};

/// A marked trail. Attributes that bear on safety have no default: `missing` names those not given.
struct Trail {
  std::string name;
  geo::Polyline line;
  std::optional<AllowedDirection> direction;
  std::optional<units::Metres> width;  ///< driveable, edge to edge
  std::optional<int> lanes;            ///< 1 or more
  std::optional<bool> groomed;
  std::optional<bool> shared_with_skiers;
  std::optional<OpenHours> hours;
  std::optional<units::Metres> line_error;  ///< how far to each side the drawn line may be off
  std::optional<units::Metres> sight;       ///< least sight along the trail; none: the site's rule
  std::optional<units::Metres> marker_spacing;        ///< between trail markers
  std::optional<units::MetresPerSecond> most_wind{};  ///< where lower than the site's rule
  std::string file;                                   ///< where it was read, for faults and cards
  /// False: a way over open ground, on which nothing shows the way.
  bool marked = true;
  std::optional<units::Metres> least_visibility{};  ///< of a way that is not marked

  /// Names of the safety attributes that were not given, as they are called in the files.
  [[nodiscard]] std::vector<std::string> missing() const;
};

/// Whether a list of trails is all that there are, or some could not be read; of these it has been
/// told already, so what only follows from it need not be.
enum class TrailList { whole, some_left_out };

}  // namespace rimehaul::trails
