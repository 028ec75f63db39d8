// The step of noding that finds the place on a trail which stands for each station.
#include <algorithm>
#include <optional>

#include "ports/geos/draft.h"

namespace rimehaul::ports::geos {

using geo::MapPoint;
using trails::Station;
using units::Metres;

namespace {

struct Reach {
  std::size_t station = 0;
  std::size_t trail = 0;
  DraftLine::Nearest nearest;
  MapPoint wish;  ///< where the station would best join
};

/// The node nearest to a station among those within `snap` of its foot on the line: better than a
/// new junction a few steps beside it.
struct StationAndFoot {
  MapPoint station;
  MapPoint foot;
};

MapPoint wish_on(const DraftLine& line, StationAndFoot at, Metres snap) {
  const auto& [station, foot] = at;
  std::optional<MapPoint> best;
  for (const DraftPoint& point : line.points()) {
    if (point.is_node && geo::distance(point.place, foot) <= snap &&
        (!best || geo::distance(point.place, station) < geo::distance(*best, station))) {
      best = point.place;
    }
  }
  return best.value_or(foot);
}

std::optional<Reach> nearest_trail(const Draft& draft, const Station& station) {
  std::optional<Reach> best;
  for (std::size_t trail = 0; trail < draft.lines.size(); ++trail) {
    const DraftLine::Nearest nearest = draft.lines[trail].nearest(station.place);
    if (!best || nearest.away < best->nearest.away) {
      best = Reach{0, trail, nearest, nearest.at.place};
    }
  }
  return best;
}

base::Fault unreached(const Draft& draft, const Station& station,
                      const std::optional<Reach>& reach) {
  const std::string nearest = reach ? "; the nearest is " + draft.name(reach->trail) + ", " +
                                          words_of(reach->nearest.away) + " away, and " +
                                          words_of(3 * draft.snap()) + " is the most"
                                    : "";
  return {.file = station.file,
          .place = "station " + station.name,
          .problem = "no trail reaches the station" + nearest,
          .remedy = "draw a trail to it or move the station"};
}

/// The stations that a trail reaches, those nearest to where they would join first.
std::vector<Reach> reached(Draft& draft, const std::vector<Station>& stations) {
  std::vector<Reach> reaches;
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const MapPoint place = stations[i].place;
    auto reach = nearest_trail(draft, stations[i]);
    if (!reach || !(reach->nearest.away <= 3 * draft.snap())) {
      if (draft.trail_list == trails::TrailList::whole) {
        draft.faults.push_back(unreached(draft, stations[i], reach));
      }
      continue;
    }
    reach->station = i;
    reach->wish =
        wish_on(draft.lines[reach->trail], {place, reach->nearest.at.place}, draft.snap());
    reaches.push_back(*reach);
  }
  std::ranges::stable_sort(reaches, {}, [&stations](const Reach& reach) {
    return geo::distance(reach.wish, stations[reach.station].place);
  });
  return reaches;
}

const Joined* taken_at(const std::vector<Joined>& joined, MapPoint place) {
  const auto found = std::ranges::find_if(
      joined, [place](const Joined& known) { return geo::distance(known.place, place) <= kHair; });
  return found == joined.end() ? nullptr : &*found;
}

}  // namespace

std::vector<Joined> join_stations(Draft& draft, const std::vector<Station>& stations) {
  std::vector<Joined> joined;
  for (const Reach& reach : reached(draft, stations)) {
    const Station& station = stations[reach.station];
    DraftLine& line = draft.lines[reach.trail];
    // The line may have got nodes since it was measured, so the segment is looked up anew.
    const OnSegment foot = line.nearest(station.place).at;
    const bool wish_is_free = taken_at(joined, reach.wish) == nullptr;
    const MapPoint place = wish_is_free ? reach.wish : foot.place;
    if (const Joined* taken = taken_at(joined, place)) {
      draft.faults.push_back({.file = station.file,
                              .place = "station " + station.name,
                              .problem = "it joins its trail at the same place as station " +
                                         stations[taken->station].name,
                              .remedy = "move one of the two along the trail, or make them one"});
      continue;
    }
    if (geo::distance(place, foot.place) <= kHair) {
      line.put_nodes({{foot.segment, place}});
    }
    joined.push_back({reach.station, place});
  }
  return joined;
}

}  // namespace rimehaul::ports::geos
