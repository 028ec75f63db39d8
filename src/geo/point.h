// Places: on the map, on the globe, and heights above a datum.
#pragma once

#include <compare>

#include "units/bearing.h"
#include "units/quantities.h"

namespace rimehaul::geo {

/// A place in the site's one metric map frame.
struct MapPoint {
  units::Metres east;
  units::Metres north;

  friend auto operator<=>(const MapPoint&, const MapPoint&) = default;
};

[[nodiscard]] units::Metres distance(MapPoint lhs, MapPoint rhs);

/// A straight way between two places; both may be one place.
struct Segment {
  MapPoint from;
  MapPoint to;
};

[[nodiscard]] units::Bearing bearing(const Segment& segment);
/// The point `share` of the way along; 0 is `from`, 1 is `to`.
[[nodiscard]] MapPoint between(const Segment& segment, double share);
/// How far along lies the point nearest to a place: 0 at `from`, 1 at `to`; 0 if these are one.
[[nodiscard]] double share_along(const Segment& segment, MapPoint place);
[[nodiscard]] units::Metres distance(const Segment& segment, MapPoint place);

/// The point so far away in that direction.
[[nodiscard]] MapPoint moved(MapPoint from, units::Bearing direction, units::Metres far);

/// A place on the globe in WGS 84, degrees, positive north and east. Only ports make one.
struct GlobePoint {
  double latitude_deg = 0.0;
  double longitude_deg = 0.0;
};

/// A position above the site's vertical datum; the difference of two is Metres. Heights do not add.
class Height {
 public:
  constexpr Height() = default;
  constexpr explicit Height(double metres_above_datum) : metres_{metres_above_datum} {}

  [[nodiscard]] constexpr double above_datum_m() const { return metres_; }

  friend constexpr units::Metres operator-(Height lhs, Height rhs) {
    return units::Metres{lhs.metres_ - rhs.metres_};
  }
  friend constexpr Height operator+(Height a, units::Metres up) {
    return Height{a.metres_ + up.value()};
  }
  friend constexpr auto operator<=>(Height, Height) = default;

 private:
  double metres_ = 0.0;
};

}  // namespace rimehaul::geo
