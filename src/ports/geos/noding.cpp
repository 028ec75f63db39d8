#include "ports/geos/noding.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "base/require.h"
#include "ports/geos/draft.h"
#include "ports/geos/zones.h"

namespace rimehaul::ports::geos {

using geo::MapPoint;
using trails::Cut;
using trails::Trail;
using units::Metres;

namespace {

/// Legs shorter than this are more often a slip of the pen than a stretch of trail.
constexpr Metres kShortLeg{20.0};

/// How many legs meet at each node, and the station there.
struct Meeting {
  int legs = 0;
  std::optional<std::size_t> station;
};
using MeetingsByPlace = std::map<MapPoint, Meeting>;

MeetingsByPlace meetings_of(const Draft& draft, const std::vector<Joined>& joined) {
  MeetingsByPlace meetings;
  for (const DraftLine& line : draft.lines) {
    for (const DraftPoint& point : line.points()) {
      if (point.is_node) {
        meetings[point.place].legs += 2;
      }
    }
    meetings[line.end(End::start)].legs -= 1;
    meetings[line.end(End::finish)].legs -= 1;
  }
  for (const Joined& join : joined) {
    meetings[join.place].station = join.station;
  }
  return meetings;
}

/// "nothing is near", or the nearest trail or station and how far it is.
std::string nearest_to(const Draft& draft, std::size_t own, MapPoint end) {
  std::optional<Metres> best;
  std::string words = "no other trail is near";
  for (std::size_t i = 0; i < draft.lines.size(); ++i) {
    const Metres away = draft.lines[i].nearest(end).away;
    if (i != own && away <= 20 * draft.snap() && (!best || away < *best)) {
      best = away;
      words = draft.name(i) + " is " + words_of(away) + " away";
    }
  }
  return words;
}

void doubt_dangling(Draft& draft, const MeetingsByPlace& meetings) {
  for (std::size_t i = 0; i < draft.lines.size(); ++i) {
    for (const End end : {End::start, End::finish}) {
      const MapPoint place = draft.lines[i].end(end);
      const Meeting& meeting = meetings.at(place);
      if (meeting.legs == 1 && !meeting.station) {
        draft.doubt(i, {std::string{"its "} + (end == End::start ? "start" : "end") +
                            " meets no trail and no station; " + nearest_to(draft, i, place),
                        "draw it to where it leads; ends join within " + words_of(draft.snap())});
      }
    }
  }
}

void doubt_short_legs(Draft& draft, const trails::Network& network) {
  for (const trails::Leg& leg : network.legs) {
    const Metres length = leg.line.length();
    if (leg.way == trails::Way::as_drawn && length < kShortLeg) {
      draft.doubt(leg.trail,
                  {"between " + words_of(leg.span.from) + " and " + words_of(leg.span.to) +
                       " it is cut into a leg of " + words_of(length) + " only",
                   "see whether two junctions there should be one"});
    }
  }
}

/// Chainages of the nodes along the line as it is now.
std::vector<Cut> cuts_of(const Draft& draft, const std::vector<Trail>& trails,
                         const MeetingsByPlace& meetings) {
  std::vector<Cut> cuts;
  for (std::size_t i = 0; i < trails.size(); ++i) {
    Metres at{0};
    const auto points = draft.lines[i].points();
    for (std::size_t j = 0; j < points.size(); ++j) {
      at += j == 0 ? Metres{0} : geo::distance(points[j - 1].place, points[j].place);
      if (points[j].is_node) {
        cuts.push_back({i, at, points[j].place, meetings.at(points[j].place).station});
      }
    }
  }
  return cuts;
}

void remap_marks(std::vector<trails::Mark>& marks, const std::vector<Trail>& trails,
                 const Draft& draft) {
  for (trails::Mark& mark : marks) {
    const auto trail = std::ranges::find(trails, mark.trail, &Trail::name);
    if (trail != trails.end()) {
      const DraftLine& line = draft.lines[static_cast<std::size_t>(trail - trails.begin())];
      mark.span = {line.now_at(mark.span.from), line.now_at(mark.span.to)};
    }
  }
}

/// Leaves out what bears the name of an earlier one: several files may have been read.
template <class Named>
void refuse_doubles(std::vector<Named>& things, const char* what,
                    std::vector<base::Fault>& faults) {
  std::vector<Named> kept;
  for (Named& thing : things) {
    if (std::ranges::find(kept, thing.name, &Named::name) == kept.end()) {
      kept.push_back(std::move(thing));
      continue;
    }
    faults.push_back({.file = thing.file,
                      .place = std::string{what} + " " + thing.name,
                      .problem = "the name is given twice in the site's files",
                      .remedy = "give each its own name"});
  }
  things = std::move(kept);
}

void leave_out(std::vector<Trail>& trails, std::vector<std::size_t> refused) {
  std::ranges::sort(refused, std::greater{});
  refused.erase(std::unique(refused.begin(), refused.end()), refused.end());
  for (const std::size_t trail : refused) {
    trails.erase(trails.begin() + static_cast<std::ptrdiff_t>(trail));
  }
}

/// Lines with nodes; trails that cannot be noded are left out, which starts the work anew.
Draft noded(NetworkParts& parts, Metres snap, std::vector<base::Fault>& faults) {
  while (true) {
    Draft draft{parts.trails, parts.marks, snap};
    snap_ends(draft);
    if (draft.refused.empty()) {
      node_meetings(draft);
    }
    if (draft.refused.empty()) {
      return draft;
    }
    std::ranges::copy_if(draft.faults, std::back_inserter(faults), [](const base::Fault& fault) {
      return fault.weight == base::Weight::fault;
    });
    leave_out(parts.trails, draft.refused);
  }
}

}  // namespace

base::Reading<trails::Network> node_network(NetworkParts parts, Metres snap) {
  base::require(Metres{0} <= snap && snap <= Metres{1000}, "the snapping tolerance is no length");
  base::Reading<trails::Network> reading;
  const std::size_t trails_given = parts.trails.size();
  refuse_doubles(parts.trails, "trail", reading.faults);
  refuse_doubles(parts.stations, "station", reading.faults);
  auto zones = valid_zones(parts.zones);
  std::ranges::move(zones.faults, std::back_inserter(reading.faults));
  Draft draft = noded(parts, snap, reading.faults);
  draft.trail_list =
      parts.trails.size() < trails_given ? trails::TrailList::some_left_out : parts.trail_list;
  const std::vector<Joined> joined = join_stations(draft, parts.stations);
  const MeetingsByPlace meetings = meetings_of(draft, joined);
  remap_marks(parts.marks, parts.trails, draft);
  for (std::size_t i = 0; i < parts.trails.size(); ++i) {
    parts.trails[i].line = draft.lines[i].line();
  }
  const std::vector<Cut> cuts = cuts_of(draft, parts.trails, meetings);
  doubt_dangling(draft, meetings);
  reading.data = trails::make_network(std::move(parts.trails), std::move(parts.stations),
                                      std::move(zones.data), std::move(parts.marks), cuts);
  doubt_short_legs(draft, reading.data);
  std::ranges::move(draft.faults, std::back_inserter(reading.faults));
  return reading;
}

}  // namespace rimehaul::ports::geos
