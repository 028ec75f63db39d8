#include "card/strap_stop.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "card/notices.h"
#include "card/words.h"
#include "passage/bend.h"
#include "passage/footfall.h"
#include "passage/mark_rules.h"

namespace rimehaul::card {

using units::Metres;
using units::Slope;

namespace {

// What makes a place fit to stop at; estimates.
constexpr double kEarliestPart = 0.2;  ///< of the distance at which it must be found
constexpr Metres kOff{10};             ///< that a driver is off who goes by metres driven
constexpr Metres kTightestBend{40};    ///< a rig standing in a wider one is seen in time
constexpr Slope kLevel = Slope::from_percent(8);
constexpr Metres kBetweenRigs{1};  ///< that one passes another at

bool is_for_stopping(trails::MarkKind kind) {
  using enum trails::MarkKind;
  return kind == refuge || kind == turning_room || kind == passing_place || kind == check_in;
}

bool is_room_to_pass(trails::MarkKind kind) {
  return kind == trails::MarkKind::turning_room || kind == trails::MarkKind::passing_place;
}

// Either way round. NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool meet(const geo::Span& one, const geo::Span& other) {
  return !(one.to < other.from) && !(other.to < one.from);
}

bool is_level(const std::optional<passage::Lie>& lie) {
  return lie && lie->up_to.steepest_grade() <= kLevel && lie->up_to.steepest_cross() <= kLevel;
}

/// One leg, asked for places to stop at.
class LegToStopOn {
 public:
  LegToStopOn(const search::RouteLeg& part, const CardContext& context, const CardLeg& told)
      : part_{part},
        told_{told},
        leg_{context.scene.network.legs[static_cast<std::uint32_t>(part.leg)]},
        trail_{context.scene.network.trails[leg_.trail]},
        marks_{
            passage::marks_on(context.scene.network, {leg_.trail, leg_.span, leg_.way, leg_.line})},
        rig_length_{passage::overall_length(context.rig)},
        rig_width_{context.rig.carrier.overall_width} {
    if (context.rig.trailer) {
      rig_width_ = std::max(rig_width_, context.rig.trailer->overall_width);
    }
  }

  /// The first place from one metre of the leg to another.
  [[nodiscard]] std::optional<Metres> first_place(const geo::Span& between) const {
    const Metres reach = rig_length_ + kOff;
    const Metres last = std::min(between.to, leg_.line.length() - reach);
    for (Metres at{std::ceil(std::max(between.from, reach).value())}; at <= last; at += Metres{1}) {
      if (is_clear(at, {at - reach, at + reach})) {
        return at;
      }
    }
    return std::nullopt;
  }

 private:
  [[nodiscard]] bool is_clear(Metres at, const geo::Span& around) const {
    return lets_pass(at) && is_off_marks(around) && is_not_exposed(around) &&
           is_level_all_along(around) && is_straight(around);
  }

  [[nodiscard]] bool lets_pass(Metres at) const {
    const bool one_way = trail_.direction && *trail_.direction != trails::AllowedDirection::both;
    const bool wide = trail_.width && *trail_.width >= rig_width_ * 2.0 + kBetweenRigs;
    return one_way || wide || trail_.lanes.value_or(1) >= 2 ||
           std::ranges::any_of(marks_, [&](const passage::MarkOnStretch& placed) {
             const Metres half{0.5};  // places are tried each metre
             return is_room_to_pass(placed.mark->kind) && at >= placed.span.from - half &&
                    at <= placed.span.to + half;
           });
  }

  [[nodiscard]] bool is_off_marks(const geo::Span& around) const {
    return std::ranges::none_of(marks_, [&](const passage::MarkOnStretch& placed) {
      return !is_for_stopping(placed.mark->kind) && meet(placed.span, around);
    });
  }

  [[nodiscard]] bool is_not_exposed(const geo::Span& around) const {
    return std::ranges::none_of(told_.exposed,
                                [&](const geo::Span& span) { return meet(span, around); });
  }

  /// Every piece around is known and level, and nothing between them is missing.
  [[nodiscard]] bool is_level_all_along(const geo::Span& around) const {
    const Metres hair{1e-6};
    Metres known_to = around.from;
    for (const passage::PieceDrive& piece : part_.judgement.pieces) {
      if (!meet(piece.span, around)) {
        continue;
      }
      if (!is_level(piece.lie) || !(piece.span.from <= known_to + hair)) {
        return false;
      }
      known_to = std::max(known_to, piece.span.to);
    }
    return known_to + hair >= around.to;
  }

  [[nodiscard]] bool is_straight(const geo::Span& around) const {
    return passage::tightest_bend(leg_.line.part(around), rig_length_).radius >= kTightestBend;
  }

  const search::RouteLeg& part_;
  const CardLeg& told_;
  const trails::Leg& leg_;
  const trails::Trail& trail_;
  std::vector<passage::MarkOnStretch> marks_;
  Metres rig_length_;
  Metres rig_width_;
};

}  // namespace

void add_strap_stop(const search::Route& route, const CardContext& context,
                    std::vector<CardLeg>& legs) {
  const rig::Load& load = context.rig.load;
  if (!context.rig.trailer && !(load.bed > units::Kilograms{0})) {
    return;
  }
  const auto towing = passage::towing_of(context.rig);
  const Metres latest = std::min(context.scene.rules.strap_check, route.length / 2);
  Metres before{0};
  for (std::size_t i = 0; i < legs.size() && before <= latest; ++i) {
    const LegToStopOn leg{route.legs[i], context, legs[i]};
    if (const auto at = leg.first_place({latest * kEarliestPart - before, latest - before})) {
      add_notice(legs[i], {{*at, *at}, words::look_at_straps(towing)});
      return;
    }
    before += legs[i].length;
  }
  add_notice(legs.front(), {{Metres{0}, Metres{0}}, words::no_place_for_straps(latest, towing)});
}

}  // namespace rimehaul::card
