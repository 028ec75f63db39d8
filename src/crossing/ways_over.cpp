// The ways over a site's open ground that a rig may take, to be joined to its trails.
#include "crossing/ways_over.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "crossing/drawn_way.h"
#include "crossing/found_way.h"
#include "passage/stretch_judge.h"

namespace rimehaul::crossing {

using passage::Judge;
using trails::OpenWay;
using units::Metres;

namespace {

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

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): the one is the other or is not
bool same_line(const geo::Polyline& one, const geo::Polyline& other) {
  return std::ranges::equal(one.points(), other.points());
}

/// Whether a line is among those of some ways, driven the one way or the other.
bool is_known(const geo::Polyline& line, const std::vector<OpenWay>& ways) {
  return std::ranges::any_of(ways, [&](const OpenWay& way) {
    return same_line(way.as_trail.line, line) || same_line(way.as_trail.line, line.reversed());
  });
}

/// A found way as a trail, as straight as passes; nothing where it is closed.
std::optional<OpenWay> drawn(const FoundWay& way, const trails::Zone& zone,
                             const OpenGround& ground, LineJudge& judge) {
  const std::string name = zone.name + ", " + way.from.gate->name + " to " + way.to.gate->name;
  const auto as_way = [&](geo::Polyline line) {
    return OpenWay{as_trail(zone, name, std::move(line)), way.from.gate->where, way.to.gate->where};
  };
  OpenWay bent = as_way(rounded(way.points));
  OpenWay straight = as_way(rounded(straightened(way.points, ground)));
  const auto bent_share = judge.share_of(bent);
  const auto straight_share = judge.share_of(straight);
  if (straight_share && (!bent_share || *straight_share <= *bent_share)) {
    return straight;
  }
  return bent_share ? std::optional{std::move(bent)} : std::nullopt;
}

/// All that are found as trails, each line once and each with its own name.
std::vector<OpenWay> all_drawn(const std::vector<FoundWay>& found, const trails::Zone& zone,
                               const OpenGround& ground, LineJudge& judge) {
  std::vector<OpenWay> ways;
  std::map<std::string, int> names;
  for (const FoundWay& way : found) {
    std::optional<OpenWay> open = drawn(way, zone, ground, judge);
    if (!open || is_known(open->as_trail.line, ways)) {
      continue;
    }
    const int count = ++names[open->as_trail.name];
    if (count > 1) {
      open->as_trail.name += " (" + std::to_string(count) + ")";
    }
    ways.push_back(*std::move(open));
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
    LineJudge line_judge{judge, when};
    std::vector<OpenWay> ways = all_drawn(found_ways(ground, gates), zone, ground, line_judge);
    std::ranges::move(ways, std::back_inserter(all));
  }
  return all;
}

std::vector<OpenWay> ways_for_any(std::span<const Judge* const> judges, units::Instant when) {
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
  return all;
}

}  // namespace rimehaul::crossing
