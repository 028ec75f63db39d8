// Turns: the ground and the bend where one leg runs into the next, and turning back.
#include <algorithm>
#include <cmath>
#include <utility>

#include "base/require.h"
#include "passage/bends.h"
#include "passage/judge.h"
#include "passage/snow_under.h"
#include "passage/stretch_judge.h"
#include "passage/turning_room.h"
#include "passage/worst.h"

namespace rimehaul::passage {

using trails::Leg;
using units::Metres;

namespace {

/// Beyond the rig's own length on each side of the junction.
constexpr Metres kMargin{1.0};

/// Two legs that meet.
struct Meeting {
  const Leg* before = nullptr;
  const Leg* after = nullptr;
};

/// The end of the one joined to the start of the other.
struct Joint {
  Meeting legs;
  geo::Polyline line;
  Metres junction;  ///< chainage along `line`
};

/// So far to each side of the junction some part of the rig stands on either leg.
Metres reach_of(const rig::Rig& rig) {
  return std::max(overall_length(rig), trailer_lag(rig) + rig.carrier.contact_length) + kMargin;
}

Joint joint_of(const Meeting& legs, Metres reach) {
  const Leg& before = *legs.before;
  const Metres from = before.line.length() - std::min(reach, before.line.length());
  const geo::Polyline tail = before.line.part({from, before.line.length()});
  const geo::Polyline head = legs.after->line.part({Metres{0}, reach});
  return {legs, tail.joined_with(head), tail.length()};
}

Stretch stretch_along(const Leg& leg) {
  return {.trail = leg.trail, .span = leg.span, .way = leg.way, .line = leg.line};
}

/// Whether the second leg is what comes next of the first one's trail. A trail that crosses itself
/// meets itself elsewhere too.
bool goes_on(const Meeting& legs) {
  const Leg& before = *legs.before;
  const Leg& after = *legs.after;
  const bool next = before.way == trails::Way::as_drawn ? after.span.from == before.span.to
                                                        : after.span.to == before.span.from;
  return before.trail == after.trail && before.way == after.way && next;
}

/// Marks of both legs by chainage along the joint. Where the trail does not go on over the
/// junction, marks on either side speak of the ground on that side only.
std::vector<MarkOnStretch> marks_at(const Joint& joint, const trails::Network& network) {
  const bool same_trail = goes_on(joint.legs);
  std::vector<MarkOnStretch> found;
  for (const MarkOnStretch& placed : marks_on(network, stretch_along(*joint.legs.before))) {
    const Metres shift = joint.junction - joint.legs.before->line.length();
    const Metres to = placed.span.to + shift;
    found.push_back(
        {placed.mark, {placed.span.from + shift, same_trail ? to : std::min(to, joint.junction)}});
  }
  for (const MarkOnStretch& placed : marks_on(network, stretch_along(*joint.legs.after))) {
    const Metres from = placed.span.from + joint.junction;
    found.push_back(
        {placed.mark,
         {same_trail ? from : std::max(from, joint.junction), placed.span.to + joint.junction}});
  }
  return found;
}

/// The width of the narrower of two trails; nothing when either is unknown.
std::optional<Metres> narrower(const trails::Trail& lhs, const trails::Trail& rhs) {
  if (!lhs.width.has_value() || !rhs.width.has_value()) {
    return std::nullopt;
  }
  return *lhs.width < *rhs.width ? lhs.width : rhs.width;
}

/// The ground under the joint, from nose to tail of the rig on both sides of the junction.
Worst judge_ground_of(const Judge& judge, const Joint& joint, units::Instant when) {
  const trails::Network& network = judge.scene().network;
  const trails::Trail& before = network.trails[joint.legs.before->trail];
  const trails::Trail& after = network.trails[joint.legs.after->trail];
  Course course = course_of(judge, after, marks_at(joint, network));
  course.sight = std::min(course.sight, course_of(judge, before, {}).sight);
  const Metres error = std::max(line_error_of(before), line_error_of(after));
  Worst worst;
  const SnowQuestion question{judge.snow(), joint.line, judge.tolerance(), when,
                              is_groomed(before) && is_groomed(after)};
  for (Footfall& footfall : footfalls(judge.scene(), joint.line, judge.rig(), error)) {
    footfall.radius = kStraight;  // a turn is crept, slower than walking pace: no bend pulls there
    for (const auto& state : snow_under(footfall, question)) {
      worst.offer_all(judge_place(course, footfall, {state, when}).findings, footfall.span.from);
    }
  }
  return worst;
}

/// Clear ground against what the rig needs to turn round.
Finding judge_room(const rig::Rig& rig, Metres room) {
  const Metres needed = room_to_turn_round(rig);
  Finding finding = room >= needed
                        ? kept(Check::turning)
                        : refusal(Check::turning, "no clear ground large enough to turn back");
  finding.inputs.add("room to turn", units::amount(room), Origin::trail)
      .add("room needed", units::amount(needed), Origin::rig_sheet);
  return finding;
}

TurnJudgement told(const Worst& worst, double allowed_share) {
  std::vector<Finding> findings = worst.of_every_check();
  Finding binding = findings[binding_of(findings)];
  return {verdict_of(findings, allowed_share), std::move(binding), std::move(findings)};
}

TurnJudgement judge_turning_back(const Judge& judge, const Leg& before, units::Instant when) {
  const trails::Trail& trail = judge.scene().network.trails[before.trail];
  const Course course = course_of(judge, trail, {});
  const Metres near = std::min(overall_length(judge.rig()), before.line.length());
  const geo::Polyline end = before.line.part({before.line.length() - near, before.line.length()});
  Footfall last = footfalls(judge.scene(), end, judge.rig(), line_error_of(trail)).back();
  last.radius = kStraight;
  const auto states =
      snow_under(last, {judge.snow(), end, judge.tolerance(), when, is_groomed(trail)});
  if (last.carrier.has_value() && last.trailer.has_value()) {
    last.carrier = for_every_heading(*last.carrier);
    last.trailer = for_every_heading(*last.trailer);
  }
  Worst worst;
  for (const auto& state : states) {
    worst.offer_all(judge_place(course, last, {state, when}).findings, Metres{0});
  }
  worst.offer(judge_room(judge.rig(), room_to_turn_back(judge.scene().network, before)), Metres{0});
  return told(worst, course.allowed_share);
}

}  // namespace

// The interface says from and to, in the order in which they are driven.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
TurnJudgement Judge::judge_turn(trails::LegId from, trails::LegId to, units::Instant entry) const {
  const Leg& before = scene_->network.legs.at(static_cast<std::size_t>(from));
  const Leg& after = scene_->network.legs.at(static_cast<std::size_t>(to));
  base::require(before.to == after.from, "a turn joins two legs that do not meet");
  if (to == trails::opposite_of(from)) {
    return judge_turning_back(*this, before, entry);
  }
  const Joint joint = joint_of({&before, &after}, reach_of(*rig_));
  Worst worst = judge_ground_of(*this, joint, entry);
  const trails::Trail& trail = scene_->network.trails[after.trail];
  const Metres room = turning_room_at(scene_->network, before.to);
  if (room >= room_to_turn_round(*rig_)) {
    worst.offer(judge_room(*rig_, room), joint.junction);
  } else {
    const Metres around = std::max(reach_of(*rig_), widest_window(*rig_) / 2);
    const geo::Polyline line = joint_of({&before, &after}, around).line;
    const auto width = narrower(scene_->network.trails[before.trail], trail);
    for (Finding& finding : judge_bends(line, width)) {
      worst.offer(finding, finding.at);
    }
  }
  return told(worst, allowed_share());
}

}  // namespace rimehaul::passage
