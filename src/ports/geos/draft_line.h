// A trail's line while it is being noded: ends move, junctions are put in, and each point remembers
// where it stood along the line as it was drawn.
#pragma once

#include <cstddef>
#include <map>
#include <span>
#include <utility>
#include <vector>

#include "geo/polyline.h"

namespace rimehaul::ports::geos {

/// Places closer together than this are one.
inline constexpr units::Metres kHair{0.001};

struct DraftPoint {
  geo::MapPoint place;
  units::Metres was;  ///< chainage along the line as drawn
  bool is_node = false;
};

enum class End { start, finish };

/// A point on one segment of a line.
struct OnSegment {
  std::size_t segment = 0;
  geo::MapPoint place;
};

class DraftLine {
 public:
  explicit DraftLine(const geo::Polyline& drawn);

  [[nodiscard]] std::span<const DraftPoint> points() const { return points_; }
  [[nodiscard]] std::size_t segment_count() const { return points_.size() - 1; }
  [[nodiscard]] geo::MapPoint end(End end) const;
  [[nodiscard]] bool is_at_end(geo::MapPoint place) const;
  [[nodiscard]] units::Metres drawn_length() const { return drawn_length_; }

  struct Nearest {
    OnSegment at;
    units::Metres away;
  };
  [[nodiscard]] Nearest nearest(geo::MapPoint place) const;
  /// False when no point of the line is within reach of a place; quick, and may say true too often.
  [[nodiscard]] bool may_reach(geo::MapPoint place, units::Metres reach) const;
  /// Chainage along the line as drawn of a point on a segment.
  [[nodiscard]] units::Metres was_at(OnSegment at) const;
  /// Chainage along the line as it is now of a chainage along the line as drawn; clamped to it.
  [[nodiscard]] units::Metres now_at(units::Metres was) const;

  /// Makes the places nodes of the line. One within a hair of a point moves that point there.
  void put_nodes(std::vector<OnSegment> nodes);
  /// Moves an end and drops points that are nearer to it than the move is long, nodes excepted.
  /// Returns how far it moved.
  units::Metres move_end(End end, geo::MapPoint place);
  /// Cuts off what lies between an end and a point on a segment.
  void trim(End end, OnSegment at);

  /// Whether two different points are left.
  [[nodiscard]] bool is_line() const;
  [[nodiscard]] geo::Polyline line() const;

 private:
  void drop_near(End end, units::Metres reach);
  void widen_box(geo::MapPoint place);

  std::vector<DraftPoint> points_;
  units::Metres drawn_length_;
  geo::MapPoint south_west_;  ///< of a box that holds the line
  geo::MapPoint north_east_;
};

/// Gives places within a hair of each other one place, the one that came first.
class Places {
 public:
  [[nodiscard]] geo::MapPoint settle(geo::MapPoint place);

 private:
  using Cell = std::pair<long long, long long>;
  [[nodiscard]] const geo::MapPoint* nearest_known(Cell cell, geo::MapPoint place) const;

  std::map<Cell, std::vector<geo::MapPoint>> cells_;
};

}  // namespace rimehaul::ports::geos
