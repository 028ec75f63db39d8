#include "card/payload_report.h"

#include <algorithm>

#include "card/notices.h"
#include "card/refusal.h"
#include "passage/estimates.h"

namespace rimehaul::card {

namespace {

/// Turns places of a search into what people read.
class Teller {
 public:
  explicit Teller(const PayloadContext& context)
      : network_{context.judge.scene().network},
        rig_{context.judge.rig()},
        rules_{context.judge.scene().rules},
        allowed_share_{context.judge.allowed_share()} {}

  [[nodiscard]] PayloadFinding told(const day::BindsAt& binds) const {
    return {.finding = binds.finding,
            .stand = passage::stand_of(binds.finding, allowed_share_),
            .place = place_of(binds)};
  }

  [[nodiscard]] PayloadClosed told(const day::ClosedWith& closed) const {
    PayloadClosed told_of;
    if (closed.at.has_value()) {
      told_of.at = told({closed.at->finding, closed.at->leg, closed.at->turn_from});
      told_of.at->decision = closed.at->decision;
    } else if (closed.fuel_to_spare.has_value()) {
      told_of.fuel_short = not_enough_fuel(rig_, rules_, closed.fuel);
    }
    return told_of;
  }

  [[nodiscard]] PayloadEnd told(const day::LoadEnd& end) const {
    PayloadEnd told_of{.load = end.load, .binds = told(end.binds)};
    if (end.beyond.has_value()) {
      told_of.beyond = told(*end.beyond);
    }
    return told_of;
  }

  [[nodiscard]] std::vector<PayloadRange> told(const std::vector<day::LoadRange>& ranges) const {
    std::vector<PayloadRange> told_of;
    told_of.reserve(ranges.size());
    for (const day::LoadRange& range : ranges) {
      told_of.push_back({told(range.from), told(range.to)});
    }
    return told_of;
  }

 private:
  [[nodiscard]] PayloadPlace place_of(const day::BindsAt& binds) const {
    const trails::Leg& leg = network_.legs[static_cast<std::uint32_t>(binds.leg)];
    PayloadPlace place{.trail = network_.trails[leg.trail].name,
                       .from = name_of(network_, leg.from),
                       .to = name_of(network_, leg.to)};
    if (binds.turn_from.has_value()) {
      const trails::Leg& before = network_.legs[static_cast<std::uint32_t>(*binds.turn_from)];
      place.turn_from = network_.trails[before.trail].name;
    }
    const units::Metres along = binds.turn_from.has_value() ? units::Metres{0} : binds.finding.at;
    place.trail_at = leg.way == trails::Way::as_drawn ? leg.span.from + along : leg.span.to - along;
    return place;
  }

  const trails::Network& network_;
  const rig::Rig& rig_;
  const passage::Rules& rules_;
  double allowed_share_;
};

PayloadCell cell_of(const day::LoadedWay& way) {
  if (way.route.has_value()) {
    return {.open = true, .share = way.route->worst_share};
  }
  const std::string_view by = way.closed.at.has_value()
                                  ? passage::facts_of(way.closed.at->finding.check).title
                                  : std::string_view{"fuel"};
  return {.closed_by = std::string{by}};
}

PayloadGrid grid_of(const day::LoadGrid& grid) {
  PayloadGrid told{.bed = grid.bed, .towed = grid.towed};
  std::ranges::transform(grid.cells, std::back_inserter(told.cells), cell_of);
  return told;
}

/// Every snow that is met with the load as asked, or with the first load that is open.
std::vector<snow::SnowState> snow_on(const day::Payload& payload) {
  const auto open = std::ranges::find_if(
      payload.both.cells, [](const day::LoadedWay& way) { return way.route.has_value(); });
  const bool in_grid = open != payload.both.cells.end();
  const search::Route* route = payload.as_asked.route ? &*payload.as_asked.route
                               : in_grid              ? &*open->route
                                                      : nullptr;
  std::vector<snow::SnowState> states;
  if (route == nullptr) {
    return states;
  }
  for (const search::RouteLeg& leg : route->legs) {
    for (const snow::SnowState& state : leg.judgement.snow) {
      if (std::ranges::find(states, state) == states.end()) {
        states.push_back(state);
      }
    }
  }
  return states;
}

}  // namespace

PayloadReport payload_report(const day::Payload& payload, const PayloadContext& context) {
  const passage::Scene& scene = context.judge.scene();
  const rig::Rig& rig = context.judge.rig();
  const Teller teller{context};
  PayloadReport report;
  report.site = scene.site_name;
  report.title = title_of(scene.network, context.question);
  report.way = trails_along(context.way, scene.network);
  for (const trails::LegId id : context.way) {
    const geo::Span& span = scene.network.legs[static_cast<std::uint32_t>(id)].span;
    report.length += span.to - span.from;
  }
  report.rig = rig.name;
  report.trailer = rig.trailer ? rig.trailer->name : "";
  report.driver_level = rig.driver_level;
  report.load = rig.load;
  report.permitted_by = context.question.permitted_by;
  report.snow = snow_on(payload);
  report.snow_told_by = context.judge.snow().told_by();
  report.weather = context.judge.snow().weather();
  report.depart = context.question.depart;
  report.local_clock = scene.rules.local_clock;
  report.allowed_share = context.judge.allowed_share();
  report.step = payload.step;
  report.open_as_asked = payload.as_asked.route.has_value();
  if (report.open_as_asked) {
    report.binds_as_asked = teller.told(payload.as_asked.binds());
  } else {
    report.closed_as_asked = teller.told(payload.as_asked.closed);
  }
  report.bed = teller.told(payload.bed);
  report.towed = teller.told(payload.towed);
  report.both = grid_of(payload.both);
  report.places_rewalked = payload.places_rewalked;
  report.estimates = passage::estimates_in(
      {.rules = scene.rules, .towing = passage::towing_of(rig), .snow = report.snow});
  return report;
}

bool any_open(const PayloadReport& report) {
  return !report.bed.empty() || !report.towed.empty() ||
         std::ranges::any_of(report.both.cells, &PayloadCell::open);
}

}  // namespace rimehaul::card
