// Bends read from a drawn line, and the steady turn of a carrier with a trailer through them.
#include "passage/turning.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include "passage/forces.h"
#include "passage/tilt.h"
#include "passage/worksheet.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::Metres;

/// A chord from one place of the line to another, and the length of line between them.
struct Chord {
  double east;
  double north;
  double arc_m;
};

Chord chord_between(const geo::Polyline& line, double from_m, double to_m) {
  const geo::MapPoint from = line.at(Metres{from_m});
  const geo::MapPoint to = line.at(Metres{to_m});
  return {.east = (to.east - from.east).value(),
          .north = (to.north - from.north).value(),
          .arc_m = to_m - from_m};
}

/// An arc that turns by half a circle has a chord of 2/pi of its length. A shorter one says that
/// the line turns by more than that within a half window, where a deflection would wrap round.
bool turns_back(const Chord& chord) {
  return !(std::hypot(chord.east, chord.north) > chord.arc_m * 2.0 * std::numbers::inv_pi);
}

/// On a circle a chord points as the line does at the middle of its arc, so two chords that meet
/// deflect by (a + b) / 2 / R. Where the whole turn lies between the half windows, an arc that
/// touches both has R = min(a, b) / tan(deflection / 2), which is the tighter beyond 133 degrees.
double radius_between(const Chord& before, const Chord& after) {
  if (turns_back(before) || turns_back(after)) {
    return 0.0;
  }
  const double cross = before.east * after.north - before.north * after.east;
  const double dot = before.east * after.east + before.north * after.north;
  const double deflection = std::atan2(std::abs(cross), dot);
  const double as_arc = (before.arc_m + after.arc_m) / 2.0 / deflection;
  const double as_fillet = std::min(before.arc_m, after.arc_m) / std::tan(deflection / 2.0);
  const double radius = std::min(as_arc, std::max(as_fillet, 0.0));
  return std::min(radius, kStraight.value());
}

/// Where the deflection may be largest. The mean direction over a half window changes linearly with
/// the place between those where a vertex enters or leaves it, so its extremes lie there; a few
/// places between serve the chords, which follow the mean direction closely but not exactly.
std::vector<double> places_to_look(const geo::Polyline& line, double half_m) {
  constexpr double kPlacesPerHalf = 4.0;
  std::vector<double> places;
  const double length_m = line.length().value();
  const auto steps = static_cast<std::size_t>(std::ceil(length_m * kPlacesPerHalf / half_m));
  places.reserve(steps + 3 * line.points().size() + 1);
  for (std::size_t step = 0; step <= steps; ++step) {
    places.push_back(length_m * static_cast<double>(step) / static_cast<double>(steps));
  }
  for (std::size_t vertex = 0; vertex < line.points().size(); ++vertex) {
    const double at_m = line.chainage(vertex).value();
    places.insert(places.end(), {at_m - half_m, at_m, at_m + half_m});
  }
  return places;
}

double offset_inside(double radius, double reach_m) {
  return std::sqrt(radius * radius + reach_m * reach_m);
}

/// Outermost and innermost radius of a turn.
struct Edges {
  double outer_m;
  double inner_m;
};

/// The nose stands no further ahead of the contact's middle than the overall length less half the
/// contact: an upper bound, for the tail stands at or behind the contact's rear.
Edges edges_of_carrier(const rig::Carrier& carrier, double radius) {
  const double half_width = carrier.overall_width.value() / 2.0;
  const double nose = (carrier.overall_length - carrier.contact_length / 2.0).value();
  return {.outer_m = offset_inside(radius + half_width, nose), .inner_m = radius - half_width};
}

Edges edges_of_trailer(const rig::Trailer& trailer, double radius) {
  const double half_width = trailer.overall_width.value() / 2.0;
  const double half_length = trailer.contact_length.value() / 2.0;
  return {.outer_m = offset_inside(radius + half_width, half_length),
          .inner_m = radius - half_width};
}

/// Radius that the middle of the trailer's contact follows: the hitch runs at
/// sqrt(R^2 + e^2), the trailer at right angles to its drawbar at sqrt(R^2 + e^2 - L^2).
/// NaN when that is not positive.
double trailer_radius(const rig::Rig& rig, double radius) {
  const double behind = hitch_behind_middle(rig.carrier).value();
  const double drawbar = rig.trailer->drawbar_length.value();
  const double square = radius * radius + behind * behind - drawbar * drawbar;
  return square > 0.0 && drawbar >= 0.0 ? std::sqrt(square) : std::nan("");
}

/// What a steady turn leaves of a drawn corner, its deflection taken over half a window.
double corner_cut(const Bend& bend) {
  const double radius = bend.radius.value();
  const double half_turn = bend.window.value() / 4.0 / radius;
  constexpr double kQuarterTurn = std::numbers::pi / 2.0;
  return half_turn < kQuarterTurn ? radius * (1.0 / std::cos(half_turn) - 1.0)
                                  : std::numeric_limits<double>::quiet_NaN();
}

}  // namespace

Bend tightest_bend(const geo::Polyline& line, Metres window) {
  const bool usable = std::isfinite(window.value()) && window > Metres{0};
  if (!usable) {
    return {.at = Metres{0}, .radius = Metres{0}, .window = window};
  }
  const double length_m = line.length().value();
  const double half_m = std::min(window.value(), length_m) / 2.0;
  const double least_arm_m = std::min(half_m / 2.0, length_m / 2.0);
  Bend tightest{.at = line.length() / 2.0, .radius = kStraight, .window = Metres{2.0 * half_m}};
  for (const double at_m : places_to_look(line, half_m)) {
    const double before_m = std::min(half_m, at_m);
    const double after_m = std::min(half_m, length_m - at_m);
    if (before_m < least_arm_m || after_m < least_arm_m) {
      continue;
    }
    const double radius = radius_between(chord_between(line, at_m - before_m, at_m),
                                         chord_between(line, at_m, at_m + after_m));
    if (!(radius >= tightest.radius.value())) {
      tightest.at = Metres{at_m};
      tightest.radius = Metres{radius};
    }
  }
  return tightest;
}

Metres least_radius(const rig::Rig& rig) {
  const double own = rig.carrier.turning_radius.value();
  if (!rig.trailer) {
    return Metres{own};
  }
  const double behind = hitch_behind_middle(rig.carrier).value();
  const double drawbar = rig.trailer->drawbar_length.value();
  const double towing = std::sqrt(above_zero(drawbar * drawbar - behind * behind));
  return Metres{larger(own, towing)};
}

std::optional<Sweep> sweep_of(const rig::Rig& rig, Metres radius) {
  Edges edges = edges_of_carrier(rig.carrier, radius.value());
  double off_tracking = 0.0;
  if (rig.trailer) {
    const double trailer_m = trailer_radius(rig, radius.value());
    const Edges trailer = edges_of_trailer(*rig.trailer, trailer_m);
    off_tracking = radius.value() - trailer_m;
    edges.outer_m = larger(edges.outer_m, trailer.outer_m);
    edges.inner_m = smaller(edges.inner_m, trailer.inner_m);
  }
  const double width_m = edges.outer_m - edges.inner_m;
  if (!std::isfinite(width_m) || !std::isfinite(off_tracking) || radius < Metres{0}) {
    return std::nullopt;
  }
  return Sweep{.off_tracking = Metres{off_tracking}, .width = Metres{width_m}};
}

Finding judge_turning(const rig::Rig& rig, const Bend& bend) {
  Worksheet sheet{Check::turning};
  const Metres least = least_radius(rig);
  sheet.not_negative("R_own", amount(rig.carrier.turning_radius), Origin::rig_sheet);
  if (rig.trailer) {
    sheet.any("e", amount(hitch_behind_middle(rig.carrier)), Origin::rig_sheet);
    sheet.not_negative("L", amount(rig.trailer->drawbar_length), Origin::rig_sheet);
  }
  sheet.not_negative("R_least", amount(least), Origin::derived);
  sheet.not_negative("R", amount(bend.radius), Origin::trail);
  return sheet.compared(amount(least), amount(bend.radius));
}

Finding judge_off_tracking(const rig::Rig& rig, const Bend& bend,
                           std::optional<Metres> trail_width) {
  if (!trail_width) {
    return unknown(Check::off_tracking, "width of the trail");
  }
  Worksheet sheet{Check::off_tracking};
  sheet.not_negative("R", amount(bend.radius), Origin::trail);
  sheet.positive("window", amount(bend.window), Origin::rig_sheet);
  sheet.positive("w_c", amount(rig.carrier.overall_width), Origin::rig_sheet);
  sheet.positive("l_c", amount(rig.carrier.overall_length), Origin::rig_sheet);
  sheet.positive("c_c", amount(rig.carrier.contact_length), Origin::rig_sheet);
  if (rig.trailer) {
    sheet.any("e", amount(hitch_behind_middle(rig.carrier)), Origin::rig_sheet);
    sheet.not_negative("L", amount(rig.trailer->drawbar_length), Origin::rig_sheet);
    sheet.positive("w_t", amount(rig.trailer->overall_width), Origin::rig_sheet);
    sheet.positive("c_t", amount(rig.trailer->contact_length), Origin::rig_sheet);
  }
  const std::optional<Sweep> sweep = sweep_of(rig, bend.radius);
  const double cut_m = corner_cut(bend);
  if (!sweep || !std::isfinite(cut_m)) {
    return sheet.refused("the rig cannot follow a bend as tight as this");
  }
  sheet.any("swept", amount(sweep->width), Origin::derived);
  sheet.not_negative("cut", amount(Metres{cut_m}), Origin::derived);
  return sheet.compared(amount(sweep->width + Metres{cut_m}), amount(*trail_width));
}

}  // namespace rimehaul::passage
