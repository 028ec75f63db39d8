// The steady turn of a carrier with a trailer through a bend.
#include "passage/turning.h"

#include <cmath>
#include <limits>
#include <numbers>

#include "passage/forces.h"
#include "passage/tilt.h"
#include "passage/worksheet.h"

namespace rimehaul::passage {

namespace {

using units::amount;
using units::Metres;

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
  return {.outer_m = std::hypot(radius + half_width, nose), .inner_m = radius - half_width};
}

Edges edges_of_trailer(const rig::Trailer& trailer, double radius) {
  const double half_width = trailer.overall_width.value() / 2.0;
  const double half_length = trailer.contact_length.value() / 2.0;
  return {.outer_m = std::hypot(radius + half_width, half_length), .inner_m = radius - half_width};
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
  // A trailer's radius that is no number, or no finite one, leaves no finite width either.
  if (!std::isfinite(width_m) || radius < Metres{0}) {
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
