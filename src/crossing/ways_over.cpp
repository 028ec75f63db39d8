// The ways over a site's open ground that a rig may take, to be joined to its trails.
#include "crossing/ways_over.h"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include "crossing/drawn_way.h"
#include "crossing/gate.h"
#include "crossing/reach.h"
#include "passage/stretch_judge.h"

namespace rimehaul::crossing {

using passage::Judge;
using trails::OpenWay;
using units::Bearing;
using units::Metres;

namespace {

/// A way along open ground is worth its while where the trail itself is so much longer.
constexpr double kWorthwhile = 1.2;

/// One of the directions in which a rig comes to a gate or drives on from it.
struct Port {
  const Gate* gate;
  Bearing heading;
};

/// Who arrives goes straight on, more or less; from a station one may set out any of its ways.
std::vector<Port> ports_in(const Gate& gate) {
  std::vector<Port> ports;
  for (const Bearing onward : gate.onward) {
    ports.push_back({&gate, onward.opposite()});
    if (gate.at_station) {
      ports.push_back({&gate, onward});
    }
  }
  return ports;
}

std::vector<Port> ports_out(const Gate& gate) {
  std::vector<Port> ports;
  for (const Bearing onward : gate.onward) {
    ports.push_back({&gate, onward});
    if (gate.at_station) {
      ports.push_back({&gate, onward.opposite()});
    }
  }
  return ports;
}

/// The states at a port: its heading and those beside it.
std::vector<State> states_at(const Lattice& lattice, const Port& port) {
  std::vector<State> states;
  const auto cell = cell_of(lattice, port.gate->place);
  if (cell) {
    const Heading heading = heading_of(port.heading);
    for (const int turn : {0, -1, 1}) {
      states.push_back({*cell, turned(heading, turn)});
    }
  }
  return states;
}

/// What a trail over the zone would be.
trails::Trail as_trail(const trails::Zone& zone, std::string name, geo::Polyline line) {
  const trails::OpenGround& said = zone.crossing;
  return {.name = std::move(name),
          .line = std::move(line),
          .direction = trails::AllowedDirection::both,
          .width = said.width,
          .lanes = said.lanes,
          .groomed = false,
          .shared_with_skiers = said.shared_with_skiers,
          .hours = said.hours,
          .line_error = said.line_error,
          .sight = said.sight,
          .marker_spacing = {},
          .most_wind = said.most_wind,
          .file = zone.file,
          .marked = false,
          .least_visibility = said.least_visibility};
}

/// A way found between two gates.
struct Found {
  const Gate* from;
  const Gate* to;
  std::uint64_t price;
  std::vector<geo::MapPoint> points;
};

bool leads_along_one_trail(const Found& way) {
  const trails::OnTrail& from = way.from->where;
  const trails::OnTrail& to = way.to->where;
  Metres length{0};
  for (std::size_t i = 1; i < way.points.size(); ++i) {
    length += geo::distance(way.points[i - 1], way.points[i]);
  }
  const Metres along = from.at < to.at ? to.at - from.at : from.at - to.at;
  return from.trail == to.trail && along <= kWorthwhile * length;
}

/// The cheapest ways between the gates of one zone.
std::vector<Found> found_in(const OpenGround& ground, const std::vector<Gate>& gates) {
  std::vector<Found> found;
  for (const Gate& from : gates) {
    for (const Port& in : ports_in(from)) {
      const std::vector<State> starts = states_at(ground.lattice(), in);
      if (starts.empty()) {
        continue;
      }
      const Reach reach{ground.prices(), starts};
      for (const Gate& to : gates) {
        std::optional<Found> best;
        for (const Port& out : &to == &from ? std::vector<Port>{} : ports_out(to)) {
          for (const State goal : states_at(ground.lattice(), out)) {
            const std::optional<Way> way = reach.way_to(goal);
            if (!way || (best && best->price <= way->price)) {
              continue;
            }
            if (auto points = bent_to({from.place, to.place}, ground.lattice(), *way)) {
              best = Found{&from, &to, way->price, *std::move(points)};
            }
          }
        }
        if (best && !leads_along_one_trail(*best)) {
          found.push_back(*std::move(best));
        }
      }
    }
  }
  return found;
}

/// Judges drawn lines as trails of a scene of their own.
class LineJudge {
 public:
  LineJudge(const Judge& judge, units::Instant when)
      : scene_{judge.scene()},
        judge_{scene_, judge.rig(), judge.snow()},
        when_{when},
        trail_{scene_.network.trails.size()} {}
  LineJudge(const LineJudge&) = delete;
  LineJudge& operator=(const LineJudge&) = delete;

  /// Nothing: closed.
  [[nodiscard]] std::optional<double> share_of(const OpenWay& way) {
    scene_.network.trails.resize(trail_, way.as_trail);
    scene_.network.trails.push_back(way.as_trail);
    const geo::Polyline& line = way.as_trail.line;
    const passage::Stretch stretch{.trail = trail_,
                                   .span = {Metres{0}, line.length()},
                                   .way = trails::Way::as_drawn,
                                   .line = line};
    const passage::LegJudgement judged =
        judge_.judge_over(stretch, passage::ground_under(scene_, judge_.rig(), stretch), when_);
    return judged.verdict == passage::Verdict::closed ? std::nullopt : judged.share();
  }

 private:
  passage::Scene scene_;
  Judge judge_;
  units::Instant when_;
  std::size_t trail_;  ///< of the line that is judged, after all others
};

bool same_line(const geo::Polyline& one, const geo::Polyline& other) {
  return std::ranges::equal(one.points(), other.points());
}

/// Found ways as trails, each as straight as passes.
std::vector<OpenWay> drawn(const Judge& judge, const trails::Zone& zone, const OpenGround& ground,
                           const std::vector<Found>& found, units::Instant when) {
  LineJudge line_judge{judge, when};
  std::vector<OpenWay> ways;
  std::map<std::string, int> names;
  for (const Found& way : found) {
    const std::string name = zone.name + ", " + way.from->name + " to " + way.to->name;
    const auto as_way = [&](geo::Polyline line) {
      return OpenWay{as_trail(zone, name, std::move(line)), way.from->where, way.to->where};
    };
    OpenWay bent = as_way(rounded(way.points));
    OpenWay straight = as_way(rounded(straightened(way.points, ground)));
    const auto bent_share = line_judge.share_of(bent);
    const auto straight_share = line_judge.share_of(straight);
    if (!bent_share && !straight_share) {
      continue;
    }
    const bool straighter = straight_share && (!bent_share || *straight_share <= *bent_share);
    OpenWay chosen = straighter ? std::move(straight) : std::move(bent);
    const bool known = std::ranges::any_of(ways, [&](const OpenWay& other) {
      return same_line(other.as_trail.line, chosen.as_trail.line) ||
             same_line(other.as_trail.line, chosen.as_trail.line.reversed());
    });
    if (known) {
      continue;
    }
    const int count = ++names[name];
    if (count > 1) {
      chosen.as_trail.name += " (" + std::to_string(count) + ")";
    }
    ways.push_back(std::move(chosen));
  }
  return ways;
}

}  // namespace

std::vector<OpenWay> ways_over_open_ground(const Judge& judge, units::Instant when) {
  std::vector<OpenWay> all;
  for (const trails::Zone& zone : judge.scene().network.zones) {
    if (!trails::may_be_crossed(zone)) {
      continue;
    }
    const auto pitch = pitch_for(judge.rig(), *zone.crossing.width, judge.allowed_share());
    if (!pitch) {
      continue;
    }
    const std::vector<Gate> gates =
        gates_of(judge.scene().network, zone.region,
                 {.apart = kGatesApart, .inside = *zone.crossing.width / 2.0 + 2.0 * *pitch});
    if (gates.size() < 2) {
      continue;
    }
    const OpenGround ground{judge, zone, *pitch, when};
    std::vector<OpenWay> ways = drawn(judge, zone, ground, found_in(ground, gates), when);
    std::ranges::move(ways, std::back_inserter(all));
  }
  return all;
}

passage::Scene with_open_ground(const passage::Scene& scene, std::span<const Judge* const> judges,
                                units::Instant when) {
  std::vector<OpenWay> all;
  for (const Judge* judge : judges) {
    for (OpenWay& way : ways_over_open_ground(*judge, when)) {
      const bool known = std::ranges::any_of(all, [&](const OpenWay& other) {
        return same_line(other.as_trail.line, way.as_trail.line);
      });
      if (known) {
        continue;
      }
      int count = 1;
      const std::string name = way.as_trail.name;
      while (std::ranges::any_of(
          all, [&](const OpenWay& other) { return other.as_trail.name == way.as_trail.name; })) {
        way.as_trail.name = name + " [" + std::to_string(++count) + "]";
      }
      all.push_back(std::move(way));
    }
  }
  passage::Scene with = scene;
  with.network = trails::joined_with(scene.network, std::move(all));
  return with;
}

}  // namespace rimehaul::crossing
