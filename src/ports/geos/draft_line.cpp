#include "ports/geos/draft_line.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "base/require.h"

namespace rimehaul::ports::geos {

using geo::MapPoint;
using units::Metres;

DraftLine::DraftLine(const geo::Polyline& drawn)
    : drawn_length_{drawn.length()},
      south_west_{drawn.points().front()},
      north_east_{drawn.points().front()} {
  points_.reserve(drawn.points().size());
  for (std::size_t i = 0; i < drawn.points().size(); ++i) {
    points_.push_back({.place = drawn.points()[i], .was = drawn.chainage(i)});
    widen_box(drawn.points()[i]);
  }
  points_.front().is_node = true;
  points_.back().is_node = true;
}

MapPoint DraftLine::end(End end) const {
  return end == End::start ? points_.front().place : points_.back().place;
}

bool DraftLine::is_at_end(MapPoint place) const {
  return geo::distance(place, points_.front().place) <= kHair ||
         geo::distance(place, points_.back().place) <= kHair;
}

DraftLine::Nearest DraftLine::nearest(MapPoint place) const {
  Nearest best{{0, points_.front().place}, geo::distance(place, points_.front().place)};
  for (std::size_t i = 0; i < segment_count(); ++i) {
    const MapPoint from = points_[i].place;
    const MapPoint to = points_[i + 1].place;
    const double share = geo::share_along({from, to}, place);
    const MapPoint foot = share == 1.0 ? to : geo::between({from, to}, share);
    const Metres away = geo::distance(place, foot);
    if (away < best.away) {
      best = {{i, foot}, away};
    }
  }
  return best;
}

void DraftLine::widen_box(MapPoint place) {
  south_west_ = {std::min(south_west_.east, place.east), std::min(south_west_.north, place.north)};
  north_east_ = {std::max(north_east_.east, place.east), std::max(north_east_.north, place.north)};
}

bool DraftLine::may_reach(MapPoint place, Metres reach) const {
  const Metres wide = reach + kHair;  // nodes move a line by a hair
  return south_west_.east - wide <= place.east && place.east <= north_east_.east + wide &&
         south_west_.north - wide <= place.north && place.north <= north_east_.north + wide;
}

Metres DraftLine::was_at(OnSegment at) const {
  const DraftPoint& from = points_[at.segment];
  const DraftPoint& to = points_[at.segment + 1];
  return from.was + geo::share_along({from.place, to.place}, at.place) * (to.was - from.was);
}

Metres DraftLine::now_at(Metres was) const {
  Metres now{0};
  for (std::size_t i = 0; i < segment_count(); ++i) {
    const Metres long_by = geo::distance(points_[i].place, points_[i + 1].place);
    const Metres was_from = points_[i].was;
    const Metres was_to = points_[i + 1].was;
    if (was <= was_to && was_from < was_to) {
      return now + std::clamp((was - was_from) / (was_to - was_from), 0.0, 1.0) * long_by;
    }
    now += long_by;
  }
  return now;
}

void DraftLine::put_nodes(std::vector<OnSegment> nodes) {
  const auto order_of = [this](const OnSegment& node) {
    const double share = geo::share_along(
        {points_[node.segment].place, points_[node.segment + 1].place}, node.place);
    return std::pair{node.segment, share};
  };
  std::ranges::stable_sort(nodes, {}, order_of);
  std::vector<DraftPoint> woven{points_.front()};
  auto next = nodes.begin();
  for (std::size_t i = 0; i < segment_count(); ++i) {
    DraftPoint end = points_[i + 1];
    for (; next != nodes.end() && next->segment == i; ++next) {
      if (geo::distance(next->place, woven.back().place) < kHair) {
        woven.back().place = next->place;
        woven.back().is_node = true;
      } else if (geo::distance(next->place, end.place) < kHair) {
        end.place = next->place;
        end.is_node = true;
      } else {
        woven.push_back({.place = next->place, .was = was_at(*next), .is_node = true});
      }
    }
    woven.push_back(end);
  }
  points_ = std::move(woven);
}

void DraftLine::drop_near(End end, Metres reach) {
  const MapPoint place = this->end(end);
  const auto droppable = [&](const DraftPoint& point) {
    return !point.is_node && geo::distance(point.place, place) < reach;
  };
  if (end == End::start) {
    const auto kept = std::find_if_not(points_.begin() + 1, points_.end(), droppable);
    points_.erase(points_.begin() + 1, kept);
  } else {
    const auto kept = std::find_if_not(points_.rbegin() + 1, points_.rend(), droppable);
    points_.erase(kept.base(), points_.end() - 1);
  }
}

Metres DraftLine::move_end(End end, MapPoint place) {
  DraftPoint& moving = end == End::start ? points_.front() : points_.back();
  const Metres moved = geo::distance(moving.place, place);
  moving.place = place;
  widen_box(place);
  if (moved > Metres{0}) {
    drop_near(end, std::max(moved, kHair));
  }
  return moved;
}

void DraftLine::trim(End end, OnSegment at) {
  const DraftPoint cut{.place = at.place, .was = was_at(at), .is_node = true};
  const auto segment = static_cast<std::ptrdiff_t>(at.segment);
  if (end == End::start) {
    points_.erase(points_.begin(), points_.begin() + segment + 1);
    points_.insert(points_.begin(), cut);
  } else {
    points_.erase(points_.begin() + segment + 1, points_.end());
    points_.push_back(cut);
  }
  drop_near(end, kHair);
}

bool DraftLine::is_line() const {
  return std::ranges::any_of(points_, [this](const DraftPoint& point) {
    return geo::distance(point.place, points_.front().place) > kHair;
  });
}

geo::Polyline DraftLine::line() const {
  std::vector<MapPoint> places(points_.size());
  std::ranges::transform(points_, places.begin(), &DraftPoint::place);
  return geo::Polyline{std::move(places)};
}

const MapPoint* Places::nearest_known(Cell cell, MapPoint place) const {
  const auto found = cells_.find(cell);
  if (found == cells_.end()) {
    return nullptr;
  }
  const auto away = [place](const MapPoint& known) { return geo::distance(known, place); };
  const auto best = std::ranges::min_element(found->second, {}, away);
  return away(*best) < kHair ? &*best : nullptr;
}

MapPoint Places::settle(MapPoint place) {
  const auto column = static_cast<long long>(std::floor(place.east / kHair));
  const auto row = static_cast<long long>(std::floor(place.north / kHair));
  const MapPoint* best = nullptr;
  for (long long east = column - 1; east <= column + 1; ++east) {
    for (long long north = row - 1; north <= row + 1; ++north) {
      const MapPoint* known = nearest_known({east, north}, place);
      const bool is_nearer =
          known != nullptr &&
          (best == nullptr || geo::distance(*known, place) < geo::distance(*best, place));
      best = is_nearer ? known : best;
    }
  }
  if (best != nullptr) {
    return *best;
  }
  cells_[{column, row}].push_back(place);
  return place;
}

}  // namespace rimehaul::ports::geos
