// Bends as a driver takes them: rounding a drawn corner as far as the trail's width lets him.
#include "passage/bends.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "passage/footfall.h"

namespace rimehaul::passage {

using geo::MapPoint;
using units::Metres;

namespace {

/// Windows tried, in the longer of the rig's length and twice its least radius.
Metres unit_of_windows(const rig::Rig& rig) {
  return std::max(overall_length(rig), least_radius(rig) * 2.0);
}
constexpr std::array<double, 7> kWindows{1.0, 1.2, 1.4, 1.7, 2.0, 2.5, 3.0};
constexpr Metres kStep{0.5};

/// Mean place of a line between two chainages of it: the middles of its pieces, by their lengths.
MapPoint mean_of(const geo::Polyline& line, geo::Span span) {
  double east_m2 = 0.0;
  double north_m2 = 0.0;
  MapPoint from = line.at(span.from);
  Metres done = span.from;
  for (std::size_t i = line.segment_at(span.from); done < span.to; ++i) {
    const bool last = i + 1 >= line.segment_count() || line.chainage(i + 1) >= span.to;
    const Metres until = last ? span.to : line.chainage(i + 1);
    const MapPoint to = last ? line.at(span.to) : line.points()[i + 1];
    const MapPoint middle = geo::between({from, to}, 0.5);
    east_m2 += middle.east.value() * (until - done).value();
    north_m2 += middle.north.value() * (until - done).value();
    from = to;
    done = until;
  }
  const double over_m = (span.to - span.from).value();
  return {Metres{east_m2 / over_m}, Metres{north_m2 / over_m}};
}

/// A place on a line and the length around it that a mean is taken over.
struct Around {
  Metres at;
  Metres over;
};

Metres strays_at(const geo::Polyline& line, const Around& around) {
  const Metres at = around.at;
  // Nearer to an end the mean is taken over what there is on both sides alike.
  const Metres side = std::min({around.over / 2, at, line.length() - at});
  if (side <= Metres{0}) {
    return Metres{0};
  }
  return geo::distance(line.at(at), mean_of(line, {at - side, at + side}));
}

/// What judge_off_tracking() counts as cut off a corner: R (1 / cos(w / 4 R) - 1).
Metres cut_counted(const Bend& bend) {
  const double half_turn = bend.window / bend.radius / 4.0;
  return bend.radius * (1.0 / std::cos(half_turn) - 1.0);
}

DrivenBend judged(const rig::Rig& rig, const Bend& bend, std::optional<Metres> width) {
  DrivenBend driven{bend, {judge_turning(rig, bend), judge_off_tracking(rig, bend, width)}};
  for (Finding& finding : driven.findings) {
    finding.at = bend.at;
  }
  return driven;
}

const Finding& worse_of(const DrivenBend& driven) {
  return binds_before(driven.findings[0], driven.findings[1]) ? driven.findings[0]
                                                              : driven.findings[1];
}

}  // namespace

Metres widest_window(const rig::Rig& rig) {
  return unit_of_windows(rig) * kWindows.back();
}

Metres strays_from_its_mean(const geo::Polyline& line, Metres over) {
  Metres most{0};
  for (Metres at{0}; at < line.length(); at += kStep) {
    most = std::max(most, strays_at(line, {at, over}));
  }
  for (std::size_t i = 0; i < line.points().size(); ++i) {
    most = std::max(most, strays_at(line, {line.chainage(i), over}));
  }
  return most;
}

DrivenBend driven_bend(const rig::Rig& rig, const geo::Polyline& line, std::optional<Metres> width,
                       double allowed_share) {
  DrivenBend best = judged(rig, tightest_bend(line, overall_length(rig)), width);
  for (const double factor : kWindows) {
    if (stand_of(worse_of(best), allowed_share) == Stand::passes || !width.has_value()) {
      return best;
    }
    DrivenBend wider = judged(rig, tightest_bend(line, unit_of_windows(rig) * factor), width);
    const bool on_the_line =
        strays_from_its_mean(line, wider.bend.window / 2) <= cut_counted(wider.bend);
    if (on_the_line && binds_before(worse_of(best), worse_of(wider))) {
      best = std::move(wider);
    }
  }
  return best;
}

}  // namespace rimehaul::passage
