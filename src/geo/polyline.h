// A line on the map that knows how long it is: chainage runs from 0 at its first point.
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "geo/point.h"

namespace rimehaul::geo {

/// Part of a line, by chainage.
struct Span {
  units::Metres from;
  units::Metres to;

  friend bool operator==(const Span&, const Span&) = default;
};

/// A place on a line nearest to some point.
struct Foot {
  units::Metres at;    ///< chainage on the line
  units::Metres away;  ///< distance from the point to the line
};

/// An immutable line of two or more different points, all finite; repeated points are dropped.
class Polyline {
 public:
  /// Requires at least two different points, all finite (OurFault otherwise: readers check first).
  explicit Polyline(std::vector<MapPoint> points);

  [[nodiscard]] std::span<const MapPoint> points() const { return points_; }
  [[nodiscard]] std::size_t segment_count() const { return points_.size() - 1; }
  /// Chainage of point `index`.
  [[nodiscard]] units::Metres chainage(std::size_t index) const { return chainages_[index]; }
  [[nodiscard]] units::Metres length() const { return chainages_.back(); }

  /// The segment that holds a chainage, which is clamped to the line; at a point, the one after it.
  [[nodiscard]] std::size_t segment_at(units::Metres chainage) const;
  [[nodiscard]] Segment segment(std::size_t index) const {
    return {points_[index], points_[index + 1]};
  }
  [[nodiscard]] units::Bearing segment_bearing(std::size_t index) const;
  /// The point at a chainage, which is clamped to the line.
  [[nodiscard]] MapPoint at(units::Metres chainage) const;
  [[nodiscard]] units::Bearing bearing_at(units::Metres chainage) const;

  /// The part between two chainages, clamped; requires that something is left between them.
  [[nodiscard]] Polyline part(Span span) const;
  [[nodiscard]] Polyline reversed() const;
  /// This line followed by another that starts where it ends, or within a millimetre of it.
  [[nodiscard]] Polyline joined_with(const Polyline& next) const;
  [[nodiscard]] Foot nearest(MapPoint place) const;

 private:
  std::vector<MapPoint> points_;
  std::vector<units::Metres> chainages_;
};

}  // namespace rimehaul::geo
