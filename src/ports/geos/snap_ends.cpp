// The step of noding that joins ends of trails to each other and to the trails they nearly reach.
#include <algorithm>
#include <numeric>
#include <optional>
#include <utility>

#include "ports/geos/draft.h"
#include "ports/geos/segments.h"

namespace rimehaul::ports::geos {

using geo::MapPoint;
using units::Metres;

namespace {

struct TrailEnd {
  std::size_t trail = 0;
  End end = End::start;
  MapPoint place;  ///< before any end was moved
};

using Cluster = std::vector<TrailEnd>;

std::vector<TrailEnd> ends_of(const Draft& draft) {
  std::vector<TrailEnd> ends;
  for (std::size_t i = 0; i < draft.lines.size(); ++i) {
    ends.push_back({i, End::start, draft.lines[i].end(End::start)});
    ends.push_back({i, End::finish, draft.lines[i].end(End::finish)});
  }
  return ends;
}

/// Ends that reach each other within `snap`, over others or directly. Two ends of one trail join
/// only where they are the same place: a loop that is nearly closed may be meant so.
std::vector<Cluster> clusters_of(const std::vector<TrailEnd>& ends, Metres snap) {
  std::vector<std::size_t> cluster_of(ends.size());
  std::iota(cluster_of.begin(), cluster_of.end(), std::size_t{0});
  for (std::size_t i = 0; i < ends.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Metres reach = ends[i].trail == ends[j].trail ? kHair : snap;
      const bool are_joined = geo::distance(ends[i].place, ends[j].place) <= reach;
      if (are_joined && cluster_of[i] != cluster_of[j]) {
        const auto [low, high] = std::minmax({cluster_of[i], cluster_of[j]});
        std::ranges::replace(cluster_of, high, low);
      }
    }
  }
  std::vector<Cluster> by_first(ends.size());
  for (std::size_t i = 0; i < ends.size(); ++i) {
    by_first[cluster_of[i]].push_back(ends[i]);
  }
  std::erase_if(by_first, [](const Cluster& cluster) { return cluster.empty(); });
  return by_first;
}

/// The member from which the farthest other member is nearest.
MapPoint middle_of(const Cluster& cluster) {
  const auto farthest = [&cluster](const TrailEnd& from) {
    Metres most{0};
    for (const TrailEnd& other : cluster) {
      most = std::max(most, geo::distance(from.place, other.place));
    }
    return most;
  };
  return std::ranges::min_element(cluster, {}, farthest)->place;
}

bool has_end_of(const Cluster& cluster, std::size_t trail) {
  return std::ranges::any_of(cluster, [trail](const TrailEnd& end) { return end.trail == trail; });
}

/// A trail that an end nearly reaches, or goes a little beyond.
struct Target {
  std::size_t trail = 0;
  OnSegment at;
  Metres away;
  TrailEnd from;
  std::optional<OnSegment> overshoot;  ///< where the end's own line meets the target before it
};

/// A segment, and the place to which its meeting with a line shall be nearest.
struct Sought {
  geo::Segment piece;
  MapPoint near;
};

std::optional<MapPoint> meeting_on(const Draft& draft, const Sought& sought,
                                   const DraftLine& line) {
  const auto away = [&sought](MapPoint place) { return geo::distance(sought.near, place); };
  std::optional<MapPoint> best;
  for (std::size_t i = 0; i < line.segment_count(); ++i) {
    const geo::Segment there{line.points()[i].place, line.points()[i + 1].place};
    const auto crossing = crossing_of(draft.context, {sought.piece, there});
    if (crossing && (!best || away(*crossing) < away(*best))) {
      best = crossing;
    }
  }
  return best;
}

/// Where the last stretch of an end's own line meets another line, nearest to the end.
std::optional<OnSegment> last_meeting(const Draft& draft, const TrailEnd& from,
                                      const DraftLine& other) {
  const DraftLine& own = draft.lines[from.trail];
  const std::size_t count = own.segment_count();
  Metres walked{0};
  for (std::size_t i = 0; i < count && walked <= 3 * draft.snap(); ++i) {
    const bool at_start = from.end == End::start;
    const std::size_t segment = at_start ? i : count - 1 - i;
    const MapPoint first = own.points()[segment].place;
    const MapPoint second = own.points()[segment + 1].place;
    const Sought sought{{first, second}, at_start ? first : second};
    if (const auto meeting = meeting_on(draft, sought, other)) {
      return OnSegment{segment, *meeting};
    }
    walked += geo::distance(first, second);
  }
  return std::nullopt;
}

std::optional<Target> target_on(const Draft& draft, const TrailEnd& from, std::size_t trail) {
  const DraftLine& line = draft.lines[trail];
  const DraftLine::Nearest nearest = line.nearest(from.place);
  if (!(nearest.away <= draft.snap())) {
    return std::nullopt;
  }
  Target target{trail, nearest.at, nearest.away, from, std::nullopt};
  if (nearest.away <= kHair) {
    target.at.place = from.place;  // it touches already: the other line gives way by a hair
    return target;
  }
  const auto meeting = last_meeting(draft, from, line);
  if (!meeting) {
    return target;
  }
  if (!(geo::distance(meeting->place, from.place) <= draft.snap())) {
    return std::nullopt;  // joined already, farther back than an end may be cut
  }
  target.overshoot = meeting;
  target.at = line.nearest(meeting->place).at;
  target.at.place = meeting->place;
  return target;
}

/// What the ends of a cluster reach on one trail, at the least distance.
std::optional<Target> best_target(const Draft& draft, const Cluster& cluster, std::size_t trail) {
  std::optional<Target> best;
  for (const TrailEnd& from : cluster) {
    if (!draft.lines[trail].may_reach(from.place, draft.snap())) {
      continue;
    }
    const auto target = target_on(draft, from, trail);
    if (target && (!best || target->away < best->away)) {
      best = target;
    }
  }
  return best;
}

/// The trails that a cluster reaches without having an end there, nearest first.
std::vector<Target> targets_of(Draft& draft, const Cluster& cluster) {
  std::vector<Target> targets;
  for (std::size_t trail = 0; trail < draft.lines.size(); ++trail) {
    const auto best =
        has_end_of(cluster, trail) ? std::optional<Target>{} : best_target(draft, cluster, trail);
    if (!best) {
      continue;
    }
    if (draft.is_on_bridge({trail, draft.lines[trail].was_at(best->at)})) {
      draft.doubt(best->from.trail,
                  {"it ends at the bridge of " + draft.name(trail) +
                       ", and an end on a bridge is taken for no junction",
                   "draw its end to where it may be driven on, or shorten the bridge's mark"});
      continue;
    }
    targets.push_back(*best);
  }
  std::ranges::stable_sort(targets, {}, &Target::away);
  return targets;
}

/// The place where two targets cross within reach of the end, so that all three meet there.
std::optional<MapPoint> common_crossing(const Draft& draft, const std::vector<Target>& targets) {
  if (targets.size() < 2) {
    return std::nullopt;
  }
  const MapPoint near = targets.front().from.place;
  const auto pieces = draft.lines[targets[0].trail].points();
  std::optional<MapPoint> best;
  for (std::size_t i = 0; i + 1 < pieces.size(); ++i) {
    const geo::Segment piece{pieces[i].place, pieces[i + 1].place};
    const auto crossing = meeting_on(draft, {piece, near}, draft.lines[targets[1].trail]);
    if (crossing && geo::distance(near, *crossing) <= draft.snap() &&
        (!best || geo::distance(near, *crossing) < geo::distance(near, *best))) {
      best = crossing;
    }
  }
  return best;
}

void move_members(Draft& draft, const Cluster& cluster, MapPoint place) {
  for (const TrailEnd& member : cluster) {
    const Metres moved = draft.lines[member.trail].move_end(member.end, place);
    if (!(moved <= draft.snap())) {
      draft.doubt(member.trail,
                  {"its end was moved by " + words_of(moved) + " to meet the ends near it",
                   "draw these ends to one place"});
    }
    if (!draft.lines[member.trail].is_line()) {
      draft.refuse(member.trail, {"both its ends join one place within " + words_of(draft.snap()) +
                                      ", so nothing is left of it",
                                  "draw it longer or take it out"});
    }
  }
}

void join_cluster(Draft& draft, const Cluster& cluster) {
  std::vector<Target> targets = targets_of(draft, cluster);
  if (targets.empty()) {
    if (cluster.size() > 1) {
      move_members(draft, cluster, middle_of(cluster));
    }
    return;
  }
  const Target& first = targets.front();
  const auto common = common_crossing(draft, targets);
  const MapPoint place = common.value_or(first.at.place);
  if (first.overshoot) {
    draft.lines[first.from.trail].trim(first.from.end, *first.overshoot);
  }
  move_members(draft, cluster, place);
  for (const Target& target : targets) {
    const DraftLine::Nearest nearest = draft.lines[target.trail].nearest(place);
    if (nearest.away <= kHair) {
      draft.lines[target.trail].put_nodes({{nearest.at.segment, place}});
    } else {
      draft.doubt(first.from.trail,
                  {"it ends within " + words_of(draft.snap()) + " of " + draft.name(target.trail) +
                       " too, but joins " + draft.name(first.trail) + " alone",
                   "draw its end to the trail it should join"});
    }
  }
}

}  // namespace

void snap_ends(Draft& draft) {
  for (const Cluster& cluster : clusters_of(ends_of(draft), draft.snap())) {
    join_cluster(draft, cluster);
  }
}

}  // namespace rimehaul::ports::geos
