// From the map frame to the globe and back, for GPX and for true north.
#pragma once

#include <memory>

#include "geo/map_frame.h"
#include "geo/point.h"

namespace rimehaul::ports::proj {

/// One transformation, horizontal only, ballpark forbidden, no network. Not shared between threads.
class Globe {
 public:
  /// Throws BadInput when no accurate operation exists between the frame and WGS 84.
  explicit Globe(const geo::MapFrame& frame);
  ~Globe();
  Globe(const Globe&) = delete;
  Globe& operator=(const Globe&) = delete;

  [[nodiscard]] geo::GlobePoint to_globe(geo::MapPoint place) const;
  [[nodiscard]] geo::MapPoint to_map(geo::GlobePoint place) const;
  /// Grid convergence at a place: true bearing = grid bearing + this, degrees.
  [[nodiscard]] double convergence_deg(geo::MapPoint place) const;

 private:
  struct Handles;
  std::unique_ptr<Handles> handles_;
};

}  // namespace rimehaul::ports::proj
