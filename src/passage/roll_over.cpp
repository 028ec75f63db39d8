// Roll-over and pitch-over: the lean of gravity towards each edge of the support polygon.
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include "passage/forces.h"

namespace rimehaul::passage {

namespace {

using rig::SupportPoint;
using units::amount;
using units::count_of;
using units::kGravity;
using units::Metres;

/// One body on its support.
struct Body {
  Check check;
  const std::vector<SupportPoint>& polygon;
  const rig::Balance& balance;
  const terrain::AttitudeBox& box;
  const Tilt& tilt;
};

/// One edge worked out.
struct Lean {
  double along_normal = 0.0;         ///< most lean along the track towards the edge's side
  double across_normal = 0.0;        ///< most lean across
  double moment_newton_metre = 0.0;  ///< of the hitch, over the edge
  double width_m = 0.0;              ///< of the polygon across the edge
  double demand = 0.0;               ///< tangent
  double capacity = 0.0;             ///< tangent
};

/// How far inside the edge a corner or the hitch stands.
double inside_m(const rig::TipEdge& edge, SupportPoint place) {
  return ((edge.from.forward - place.forward) * edge.outward.forward +
          (edge.from.left - place.left) * edge.outward.left)
      .value();
}

double width_across(const rig::TipEdge& edge, const std::vector<SupportPoint>& polygon) {
  double width_m = 0.0;
  for (const SupportPoint corner : polygon) {
    width_m = larger(width_m, inside_m(edge, corner));
  }
  return width_m;
}

/// Moment of the hitch that helps the carrier over an edge: the part of pull or push across the
/// edge at the hitch's height, and its load up or down at its distance. Help against it is left
/// out.
double hitch_moment(const rig::TipEdge& edge, const Statics& statics) {
  if (!statics.footing.rig.trailer) {
    return 0.0;
  }
  const HitchForces& hitch = statics.hitch;
  const rig::BodyPoint& at = statics.footing.rig.carrier.hitch_at;
  const double out = edge.outward.forward;
  const double level_newton =
      above_zero(larger(-out * hitch.pull.value(), out * hitch.push.value()));
  const double inside = inside_m(edge, {.forward = at.forward, .left = at.left});
  const double upright_newton_metre =
      above_zero(larger(-hitch.down.value() * inside, hitch.uplift.value() * inside));
  return level_newton * at.up.value() + upright_newton_metre;
}

/// With outward normal (x forward, y left), the foot of gravity leans towards the edge by
/// -x along/normal - y lateral/normal (lateral counted to the right) of the height: each term at
/// its own most. The hitch's moment counts as if the centre of gravity stood nearer the edge, most
/// at the least normal load. Both bounds together bound the share.
Lean lean_over(const rig::TipEdge& edge, const Body& body, const Statics& statics,
               double moment_newton_metre) {
  const Tilt& tilt = body.tilt;
  Lean lean;
  lean.along_normal = edge.outward.forward < 0.0 ? tilt.back_normal : tilt.forward_normal;
  lean.across_normal = edge.outward.left < 0.0 ? tilt.right_normal : tilt.left_normal;
  lean.demand = std::abs(edge.outward.forward) * lean.along_normal +
                std::abs(edge.outward.left) * lean.across_normal;
  lean.moment_newton_metre = moment_newton_metre;
  lean.width_m = width_across(edge, body.polygon);
  const double pressed_newton = kGravity * body.balance.mass.value() * tilt.normal_least;
  const double inside = edge.inside.value() -
                        (moment_newton_metre == 0.0 ? 0.0 : moment_newton_metre / pressed_newton);
  const double tip = std::atan(inside / body.balance.centre.up.value());
  const double sunk =
      std::atan(low_side_of(statics.footing, body.check).deeper.value() / lean.width_m);
  lean.capacity = std::tan(statics.footing.rules.roll_over_reserve * tip - sunk);
  return lean;
}

/// The share of an edge, infinite where it has no usable capacity: the largest binds.
double urgency_of(const Lean& lean) {
  const double share = lean.demand / lean.capacity;
  const bool usable = lean.capacity > 0.0 && std::isfinite(share);
  return usable ? share : HUGE_VAL;
}

Finding written(const rig::TipEdge& edge, const Lean& lean, const Body& body,
                const Statics& statics) {
  const Tilt& tilt = body.tilt;
  const bool back = edge.outward.forward < 0.0;
  const bool right = edge.outward.left < 0.0;
  Worksheet sheet{body.check};
  sheet.any("i", amount(edge.inside), Origin::derived);
  sheet.positive("h", amount(body.balance.centre.up), Origin::load);
  sheet.any("x", count_of(edge.outward.forward), Origin::rig_sheet);
  sheet.any("y", count_of(edge.outward.left), Origin::rig_sheet);
  sheet.any("G", amount(back ? body.box.grade_high : body.box.grade_low.reversed()),
            Origin::heights);
  sheet.any("K", amount(right ? body.box.cross_high : body.box.cross_low.reversed()),
            Origin::heights);
  sheet.any("A", tangent(lean.along_normal), Origin::derived);
  sheet.any("C", tangent(lean.across_normal), Origin::derived);
  sheet.not_negative("M", moment(lean.moment_newton_metre), Origin::derived);
  sheet.positive("m", amount(body.balance.mass), Origin::load);
  sheet.positive("n", count_of(tilt.normal_least), Origin::derived);
  sheet.positive("w", amount(Metres{lean.width_m}), Origin::rig_sheet);
  const LowSide low = low_side_of(statics.footing, body.check);
  sheet.not_negative("d", amount(low.deeper), low.origin);
  sheet.share_of_one("r", statics.footing.rules.roll_over_reserve, Origin::rules);
  return sheet.compared(tangent(lean.demand), tangent(lean.capacity));
}

/// The edge that binds. `moment_over` gives the hitch's moment over an edge.
template <class MomentOver>
Finding judge_body(const Body& body, const Statics& statics, const MomentOver& moment_over) {
  const std::vector<rig::TipEdge> edges = rig::tip_edges(body.polygon, body.balance.centre);
  if (edges.empty()) {
    return unknown(body.check, "support polygon of three corners or more");
  }
  std::size_t worst = 0;
  Lean worst_lean = lean_over(edges[0], body, statics, moment_over(edges[0]));
  for (std::size_t edge = 1; edge < edges.size(); ++edge) {
    const Lean lean = lean_over(edges[edge], body, statics, moment_over(edges[edge]));
    if (urgency_of(lean) > urgency_of(worst_lean)) {
      worst = edge;
      worst_lean = lean;
    }
  }
  return written(edges[worst], worst_lean, body, statics);
}

Body carrier_of(const Statics& statics) {
  return {.check = Check::carrier_roll_over,
          .polygon = statics.footing.rig.carrier.support,
          .balance = statics.footing.weighed.carrier,
          .box = statics.footing.carrier,
          .tilt = statics.carrier};
}

}  // namespace

LowSide low_side_of(const Footing& footing, Check body) {
  const Metres by_strength = body == Check::trailer_roll_over ? footing.grip.trailer_side_sinkage
                                                              : footing.grip.side_sinkage;
  LowSide low{footing.rules.low_side_sinkage, Origin::rules};
  for (const LowSide& other :
       {LowSide{by_strength, Origin::grip}, LowSide{footing.in_new_snow, Origin::snow_report}}) {
    // What is no depth stays, and closes.
    if (low.deeper >= Metres{0} && !(other.deeper <= low.deeper)) {
      low = other;
    }
  }
  return low;
}

Finding judge_carrier_roll_over(const Statics& statics) {
  return judge_body(carrier_of(statics), statics,
                    [&](const rig::TipEdge& edge) { return hitch_moment(edge, statics); });
}

// As the header has them. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
double slowing_before_tip(const Statics& bent, const Statics& harsh, double allowed_share) {
  const Body body = carrier_of(bent);
  double least = HUGE_VAL;
  for (const rig::TipEdge& edge : rig::tip_edges(body.polygon, body.balance.centre)) {
    if (edge.outward.forward <= 0.0) {
      continue;
    }
    const Lean lean = lean_over(edge, body, bent, hitch_moment(edge, harsh));
    const double spare = allowed_share * lean.capacity - lean.demand;
    least =
        smaller(least, spare * units::kGravity * bent.carrier.normal_least / edge.outward.forward);
  }
  return least;
}

Finding judge_trailer_roll_over(const Statics& statics) {
  if (!statics.footing.rig.trailer) {
    return kept(Check::trailer_roll_over);
  }
  const std::vector<SupportPoint> support = rig::support_of(*statics.footing.rig.trailer);
  const Body body{.check = Check::trailer_roll_over,
                  .polygon = support,
                  .balance = statics.footing.weighed.trailer,
                  .box = statics.footing.trailer,
                  .tilt = statics.trailer};
  return judge_body(body, statics, [](const rig::TipEdge&) { return 0.0; });
}

}  // namespace rimehaul::passage
