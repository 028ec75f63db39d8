#include "geo/polyline.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "base/require.h"

namespace rimehaul::geo {

using units::Metres;

namespace {

bool finite(MapPoint point) {
  return std::isfinite(point.east.value()) && std::isfinite(point.north.value());
}

}  // namespace

Polyline::Polyline(std::vector<MapPoint> points) : points_{std::move(points)} {
  base::require(std::ranges::all_of(points_, finite), "a line has points that are not finite");
  points_.erase(std::unique(points_.begin(), points_.end()), points_.end());
  base::require(points_.size() >= 2, "a line needs two different points");
  chainages_.reserve(points_.size());
  chainages_.push_back(Metres{0});
  for (std::size_t i = 1; i < points_.size(); ++i) {
    chainages_.push_back(chainages_.back() + distance(points_[i - 1], points_[i]));
  }
}

std::size_t Polyline::segment_at(Metres chainage) const {
  const auto after = std::upper_bound(chainages_.begin(), chainages_.end(), chainage);
  const auto index = static_cast<std::size_t>(after - chainages_.begin());
  return std::clamp<std::size_t>(index, 1, points_.size() - 1) - 1;
}

units::Bearing Polyline::segment_bearing(std::size_t index) const {
  return bearing(segment(index));
}

MapPoint Polyline::at(Metres chainage) const {
  const std::size_t index = segment_at(chainage);
  const Metres long_by = chainages_[index + 1] - chainages_[index];
  const double share = std::clamp((chainage - chainages_[index]) / long_by, 0.0, 1.0);
  return between(segment(index), share);
}

units::Bearing Polyline::bearing_at(Metres chainage) const {
  return segment_bearing(segment_at(chainage));
}

Polyline Polyline::part(Span span) const {
  const Metres begin = std::max(span.from, Metres{0});
  const Metres end = std::min(span.to, length());
  base::require(begin < end, "a part of a line has no length");
  std::vector<MapPoint> kept{at(begin)};
  for (std::size_t i = 0; i < points_.size(); ++i) {
    if (begin < chainages_[i] && chainages_[i] < end) {
      kept.push_back(points_[i]);
    }
  }
  kept.push_back(at(end));
  return Polyline{std::move(kept)};
}

Polyline Polyline::reversed() const {
  return Polyline{std::vector<MapPoint>{points_.rbegin(), points_.rend()}};
}

Polyline Polyline::joined_with(const Polyline& next) const {
  base::require(distance(points_.back(), next.points_.front()) <= Metres{0.001},
                "two lines to be joined do not touch");
  std::vector<MapPoint> all{points_};
  all.insert(all.end(), next.points_.begin() + 1, next.points_.end());
  return Polyline{std::move(all)};
}

Foot Polyline::nearest(MapPoint place) const {
  Foot best{.at = Metres{0}, .away = distance(points_.front(), place)};
  for (std::size_t i = 0; i < segment_count(); ++i) {
    const double share = share_along(segment(i), place);
    const MapPoint foot = between(segment(i), share);
    const Metres away = distance(foot, place);
    if (away < best.away) {
      best = {.at = chainages_[i] + share * (chainages_[i + 1] - chainages_[i]), .away = away};
    }
  }
  return best;
}

}  // namespace rimehaul::geo
