// The step of noding that finds where trails cross, touch, or run over each other.
#include <geos_c.h>

#include <algorithm>
#include <map>
#include <numeric>
#include <optional>
#include <tuple>
#include <utility>

#include "base/require.h"
#include "ports/geos/draft.h"
#include "ports/geos/segments.h"

namespace rimehaul::ports::geos {

using geo::MapPoint;
using units::Metres;

namespace {

struct PieceOfTrail {
  std::size_t trail = 0;
  std::size_t segment = 0;
  geo::Segment ends;
};

std::vector<PieceOfTrail> pieces_of(const Draft& draft) {
  std::vector<PieceOfTrail> pieces;
  for (std::size_t trail = 0; trail < draft.lines.size(); ++trail) {
    const auto points = draft.lines[trail].points();
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      pieces.push_back({trail, i, {points[i].place, points[i + 1].place}});
    }
  }
  return pieces;
}

struct TwoPieces {
  const PieceOfTrail& one;
  const PieceOfTrail& other;
};

/// For each piece, the later pieces whose boxes come within a hair of its own, in order.
std::vector<std::vector<std::size_t>> candidates_of(const Draft& draft,
                                                    const std::vector<PieceOfTrail>& pieces) {
  const Context& context = draft.context;
  std::vector<Geometry> boxes;
  std::vector<std::size_t> numbers(pieces.size());
  std::iota(numbers.begin(), numbers.end(), std::size_t{0});
  const Tree tree{GEOSSTRtree_create_r(context.get(), 10), {context.get()}};
  base::require(tree != nullptr, "GEOS could not make a tree");
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    boxes.push_back(context.rectangle({pieces[i].ends.from, pieces[i].ends.to, kHair}));
    GEOSSTRtree_insert_r(context.get(), tree.get(), boxes.back().get(), &numbers[i]);
  }
  std::vector<std::vector<std::size_t>> candidates(pieces.size());
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    std::vector<std::size_t> found;
    GEOSSTRtree_query_r(
        context.get(), tree.get(), boxes[i].get(),
        // The order of the two is GEOS's. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
        [](void* item, void* list) {
          static_cast<std::vector<std::size_t>*>(list)->push_back(*static_cast<std::size_t*>(item));
        },
        &found);
    std::erase_if(found, [i](std::size_t other) { return other <= i; });
    std::ranges::sort(found);
    candidates[i] = std::move(found);
  }
  return candidates;
}

/// Where two pieces meet; the point that two pieces of one trail share anyway is no meeting.
std::vector<MapPoint> meetings_between(const Draft& draft, const TwoPieces& two) {
  std::vector<MapPoint> places = meetings_of(draft.context, {two.one.ends, two.other.ends});
  if (two.one.trail == two.other.trail && two.other.segment == two.one.segment + 1) {
    const MapPoint shared = two.one.ends.to;
    std::erase_if(places,
                  [shared](MapPoint place) { return geo::distance(place, shared) <= kHair; });
  }
  return places;
}

/// Trail, trail, and the chainage along the first at which they cross without meeting.
using Overpass = std::tuple<std::size_t, std::size_t, Metres>;

class Meetings {
 public:
  explicit Meetings(Draft& draft) : draft_{&draft}, nodes_(draft.lines.size()) {}

  void add(const TwoPieces& two, MapPoint place) {
    const auto& [one, other] = two;
    const OnTrail on_one = on_trail(one, place);
    const OnTrail on_other = on_trail(other, place);
    const bool is_end =
        draft_->lines[one.trail].is_at_end(place) || draft_->lines[other.trail].is_at_end(place);
    const bool by_bridge =
        is_end ? draft_->is_on_bridge(on_one) || draft_->is_on_bridge(on_other)
               : draft_->crosses_at_bridge(on_one) || draft_->crosses_at_bridge(on_other);
    if (by_bridge) {
      overpasses_.emplace_back(one.trail, other.trail, on_one.was);
      return;
    }
    const MapPoint settled = places_.settle(place);
    nodes_[one.trail].push_back({one.segment, settled});
    nodes_[other.trail].push_back({other.segment, settled});
  }

  void put() {
    for (std::size_t trail = 0; trail < nodes_.size(); ++trail) {
      draft_->lines[trail].put_nodes(std::move(nodes_[trail]));
    }
    report_overpasses();
  }

 private:
  [[nodiscard]] OnTrail on_trail(const PieceOfTrail& piece, MapPoint place) const {
    return {piece.trail, draft_->lines[piece.trail].was_at({piece.segment, place})};
  }

  void report_overpasses() {
    std::ranges::sort(overpasses_);
    std::optional<Overpass> last;
    for (const Overpass& here : overpasses_) {
      const auto& [one, other, was] = here;
      const bool is_same = last && std::get<0>(*last) == one && std::get<1>(*last) == other &&
                           was - std::get<2>(*last) <= draft_->snap();
      if (!is_same) {
        draft_->doubt(
            one, {"at " + words_of(was) + " it meets " + draft_->name(other) +
                      " at a bridge, which is taken for no junction",
                  "see that one passes under the other; if they do meet, move the bridge's mark"});
      }
      last = here;
    }
  }

  Draft* draft_;
  Places places_;
  std::vector<std::vector<OnSegment>> nodes_;
  std::vector<Overpass> overpasses_;
};

/// A stretch between two neighbouring points, whichever way it is drawn.
using Stretch = std::pair<MapPoint, MapPoint>;

/// Refuses trails that share a stretch: which of them describes it cannot be told.
void refuse_overlaps(Draft& draft) {
  std::map<Stretch, OnTrail> owners;
  std::vector<std::pair<std::size_t, std::size_t>> told;
  for (std::size_t trail = 0; trail < draft.lines.size(); ++trail) {
    const auto points = draft.lines[trail].points();
    for (std::size_t i = 0; i + 1 < points.size(); ++i) {
      if (!(geo::distance(points[i].place, points[i + 1].place) > kHair)) {
        continue;
      }
      const Stretch stretch = std::minmax(points[i].place, points[i + 1].place);
      const auto [owner, is_new] = owners.try_emplace(stretch, OnTrail{trail, points[i].was});
      const std::pair pair{owner->second.trail, trail};
      if (is_new || std::ranges::find(told, pair) != told.end()) {
        continue;
      }
      told.push_back(pair);
      const std::string where = "at " + words_of(points[i].was) + " it runs over ";
      if (pair.first == trail) {
        draft.refuse(trail, {where + "itself", "draw each stretch once"});
        continue;
      }
      draft.refuse(trail,
                   {where + draft.name(pair.first) + ", there at " + words_of(owner->second.was),
                    "cut one of the two where they meet, so that each stretch is drawn once"});
      draft.refuse(pair.first);
    }
  }
}

}  // namespace

void node_meetings(Draft& draft) {
  const std::vector<PieceOfTrail> pieces = pieces_of(draft);
  const auto candidates = candidates_of(draft, pieces);
  Meetings meetings{draft};
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    for (const std::size_t j : candidates[i]) {
      for (const MapPoint place : meetings_between(draft, {pieces[i], pieces[j]})) {
        meetings.add({pieces[i], pieces[j]}, place);
      }
    }
  }
  meetings.put();
  refuse_overlaps(draft);
}

}  // namespace rimehaul::ports::geos
