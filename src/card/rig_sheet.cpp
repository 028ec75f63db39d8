// The sheet of a rig as it stands today: masses, balance, ratings, tip angles.
#include "card/rig_sheet.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>

#include "card/rating_words.h"
#include "passage/estimates.h"
#include "passage/footing.h"

namespace rimehaul::card {

namespace {

using rig::TipEdge;
using units::Kilograms;
using units::Slope;

constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

/// Width of a polygon across one of its edges.
double width_across(const TipEdge& edge, const std::vector<rig::SupportPoint>& polygon) {
  double width_m = 0.0;
  for (const rig::SupportPoint& corner : polygon) {
    width_m = std::max(width_m, ((edge.from.forward - corner.forward) * edge.outward.forward +
                                 (edge.from.left - corner.left) * edge.outward.left)
                                    .value());
  }
  return width_m;
}

/// What roll-over compares with on a body that nothing pulls: tan(r atan(i / h) - atan(d / w)).
Slope usable_of(const TipEdge& edge, const std::vector<rig::SupportPoint>& polygon,
                const passage::Rules& rules) {
  const double sunk = std::atan(rules.low_side_sinkage.value() / width_across(edge, polygon));
  const double tip = std::atan(edge.static_tip.ratio());
  return Slope::from_ratio(std::tan(rules.roll_over_reserve * tip - sunk));
}

/// The part of an edge's outward normal that points a way.
double towards(const TipEdge& edge, TipWay way) {
  switch (way) {
    case TipWay::over_the_right:
      return -edge.outward.left;
    case TipWay::over_the_left:
      return edge.outward.left;
    case TipWay::over_the_rear:
      return -edge.outward.forward;
    case TipWay::over_the_front:
      return edge.outward.forward;
  }
  return kNoNumber;
}

/// The gentlest slope that falls away this way and brings the body over some edge, given the
/// tangent that each edge stands; NaN when one of them is not known.
Slope gentlest(const std::vector<TipEdge>& edges, TipWay way, const std::vector<Slope>& stands) {
  constexpr double kSquareOn = 1e-9;  // an edge that runs along the fall is not tipped over
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < edges.size(); ++i) {
    const double part = towards(edges[i], way);
    if (part <= kSquareOn) {
      continue;
    }
    const double tangent = stands[i].ratio() / part;
    least = tangent < least ? tangent : least;
    if (std::isnan(tangent)) {
      return Slope::from_ratio(kNoNumber);
    }
  }
  return Slope::from_ratio(std::isfinite(least) ? least : kNoNumber);
}

std::vector<Slope> static_tips(const std::vector<TipEdge>& edges) {
  std::vector<Slope> tips;
  tips.reserve(edges.size());
  for (const TipEdge& edge : edges) {
    tips.push_back(edge.static_tip);
  }
  return tips;
}

void add_tips(SheetBody& body, const passage::Rules& rules) {
  const std::vector<TipEdge> loaded = rig::tip_edges(body.support, body.as_loaded.centre);
  const std::vector<TipEdge> empty = rig::tip_edges(body.support, body.empty.centre);
  std::vector<Slope> usable;
  for (const TipEdge& edge : loaded) {
    usable.push_back(usable_of(edge, body.support, rules));
    body.edges.push_back({edge, usable.back()});
  }
  for (const TipWay way : {TipWay::over_the_right, TipWay::over_the_left, TipWay::over_the_rear,
                           TipWay::over_the_front}) {
    body.tips.push_back({.way = way,
                         .as_loaded = gentlest(loaded, way, static_tips(loaded)),
                         .empty = gentlest(empty, way, static_tips(empty)),
                         .usable = gentlest(loaded, way, usable)});
  }
}

/// The same rig with its driver and fuel alone.
rig::Rig emptied(rig::Rig rig) {
  rig = rig::without_cargo(std::move(rig));
  rig.load.passengers = 0;
  return rig;
}

std::vector<NamedMass> masses_of_carrier(const rig::Rig& rig) {
  const rig::Carrier& carrier = rig.carrier;
  std::vector<NamedMass> masses{{"carrier, tank empty", carrier.empty},
                                {"driver", {carrier.driver_mass, carrier.driver_at}}};
  for (int passenger = 0; passenger < rig.load.passengers; ++passenger) {
    const auto seat = static_cast<std::size_t>(passenger);
    const bool seated = seat < carrier.seats.size();
    masses.push_back({seated ? "passenger" : "passenger without a seat",
                      {rig.load.passenger_mass,
                       seated ? carrier.seats[seat]
                              : rig::BodyPoint{units::Metres{kNoNumber}, units::Metres{kNoNumber},
                                               units::Metres{kNoNumber}}}});
  }
  masses.push_back({"bed load", {rig.load.bed, carrier.bed_at}});
  const Kilograms fuel{rig.load.fuel.value() * carrier.fuel_density.value() / 1000.0};
  masses.push_back({"fuel", {fuel, carrier.tank_at}});
  return masses;
}

SheetBody carrier_body(const rig::Rig& rig, const passage::Rules& rules) {
  const rig::Carrier& carrier = rig.carrier;
  SheetBody body{.name = carrier.name,
                 .provenance = provenance_words(carrier.provenance),
                 .masses = masses_of_carrier(rig),
                 .as_loaded = rig::weigh(rig).carrier,
                 .empty = rig::weigh(emptied(rig)).carrier,
                 .support = carrier.support,
                 .edges = {},
                 .tips = {},
                 .contact_length = carrier.contact_length,
                 .gauge = carrier.gauge,
                 .overall_width = carrier.overall_width,
                 .contact_area = carrier.contact_area};
  add_tips(body, rules);
  return body;
}

SheetBody trailer_body(const rig::Rig& rig, const passage::Rules& rules) {
  const rig::Trailer& trailer = *rig.trailer;
  SheetBody body{
      .name = trailer.name,
      .provenance = provenance_words(trailer.provenance),
      .masses = {{"trailer", trailer.empty}, {"trailer's load", {rig.load.towed, trailer.bed_at}}},
      .as_loaded = rig::weigh(rig).trailer,
      .empty = rig::weigh(emptied(rig)).trailer,
      .support = rig::support_of(trailer),
      .edges = {},
      .tips = {},
      .contact_length = trailer.contact_length,
      .gauge = trailer.gauge,
      .overall_width = trailer.overall_width,
      .contact_area = trailer.contact_area};
  add_tips(body, rules);
  return body;
}

std::vector<SheetRatings> ratings_of(const rig::Rig& rig) {
  const rig::Carrier& carrier = rig.carrier;
  const rig::SlopeRatings& in_force = rig::ratings_in_force(rig);
  std::vector<SheetRatings> ratings{
      {"alone, empty", &in_force == &carrier.solo_empty, carrier.solo_empty},
      {"alone, loaded", &in_force == &carrier.solo_loaded, carrier.solo_loaded},
      {"towing", &in_force == &carrier.towing, carrier.towing}};
  if (rig.trailer) {
    ratings.push_back(
        {"trailer's own", true, {rig.trailer->climb, rig.trailer->descent, rig.trailer->cross}});
  }
  return ratings;
}

std::vector<SheetLoad> loads_of(const rig::Rig& rig, const rig::Weighed& weighed) {
  using passage::Check;
  using units::amount;
  const rig::Carrier& carrier = rig.carrier;
  std::vector<SheetLoad> loads{
      {"passengers and bed load",
       passage::compare(Check::payload, amount(weighed.payload), amount(carrier.payload_rating))},
      {"bed load",
       passage::compare(Check::payload, amount(rig.load.bed), amount(carrier.bed_rating))}};
  if (rig.trailer) {
    loads.push_back({"trailer's load", passage::judge_trailer_payload(rig)});
    loads.push_back({"towed mass", passage::judge_towed_mass(rig, weighed)});
    loads.push_back({"tongue load on level ground",
                     passage::compare(Check::hitch_vertical, amount(weighed.tongue_mass),
                                      amount(carrier.hitch_vertical_rating))});
  }
  loads.push_back({"seats", passage::judge_seats(rig)});
  return loads;
}

void add_estimate(std::vector<std::string>& estimates, const std::string& what,
                  const rig::Provenance& provenance) {
  if (provenance.standing == rig::Standing::estimate) {
    estimates.push_back(what + " (" + provenance_words(provenance) + ")");
  }
}

std::vector<std::string> estimates_of(const RigSheet& sheet, const rig::Rig& rig,
                                      const passage::Rules& rules) {
  std::vector<std::string> estimates;
  add_estimate(estimates, "sheet of " + rig.carrier.name, rig.carrier.provenance);
  if (rig.trailer) {
    add_estimate(estimates, "sheet of " + rig.trailer->name, rig.trailer->provenance);
  }
  for (const SheetRatings& way : sheet.ratings) {
    for (const std::optional<rig::Rating>* rating :
         {&way.ratings.climb, &way.ratings.descent, &way.ratings.cross}) {
      if (*rating) {
        add_estimate(estimates, "a rating, " + way.way, (*rating)->provenance);
      }
    }
  }
  if (!rig.carrier.fuel_log) {
    estimates.emplace_back("fuel: as the sheet's consumption says, no fills logged to hold it to");
  }
  std::ranges::copy(passage::estimates_in({.rules = rules, .towing = passage::towing_of(rig)}),
                    std::back_inserter(estimates));
  return estimates;
}

}  // namespace

bool RigSheet::within_ratings() const {
  return std::ranges::all_of(loads, [&](const SheetLoad& kept) {
    return passage::stand_of(kept.finding, allowed_share) == passage::Stand::passes;
  });
}

RigSheet rig_sheet(const rig::Rig& rig, const passage::Rules& rules) {
  const rig::Weighed weighed = rig::weigh(rig);
  RigSheet sheet;
  sheet.rig = rig.name;
  sheet.driver_level = rig.driver_level;
  sheet.allowed_share = passage::allowed_share_for(rules, rig.driver_level).value_or(0.0);
  sheet.roll_over_reserve = rules.roll_over_reserve;
  sheet.kind = rig.carrier.kind;
  sheet.load = rig.load;
  sheet.carrier = carrier_body(rig, rules);
  if (rig.trailer) {
    sheet.trailer = trailer_body(rig, rules);
    sheet.hitch = HitchOnSheet{
        .on_carrier = rig.carrier.hitch_at,
        .ahead_of_trailer = rig.trailer->contact_length / 2.0 + rig.trailer->drawbar_length,
        .tongue = weighed.tongue_mass,
        .rated = rig.carrier.hitch_vertical_rating,
        .to_runners = rig.trailer->drawbar_length,
        .about_runners =
            units::moment_of(units::weight_of(weighed.tongue_mass), rig.trailer->drawbar_length),
        .off_the_front =
            units::moment_of(units::weight_of(weighed.tongue_mass), -rig.carrier.hitch_at.forward)};
  }
  sheet.total = weighed.total();
  sheet.pressure = units::weight_of(weighed.carrier.mass) * rig.carrier.track_weight_share /
                   rig.carrier.contact_area;
  sheet.ratings = ratings_of(rig);
  sheet.loads = loads_of(rig, weighed);
  sheet.estimates = estimates_of(sheet, rig, rules);
  sheet.local_clock = rules.local_clock;
  return sheet;
}

}  // namespace rimehaul::card
