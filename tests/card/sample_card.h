// A small route card built by hand, for golden text and JSON.
#pragma once

#include "card/route_card.h"

namespace rimehaul::testing {

inline passage::Steepness steep(double found_deg, double up_to_deg, double at_m) {
  return {units::Slope::from_degrees(found_deg), units::Slope::from_degrees(up_to_deg),
          units::Metres{at_m}};
}

inline card::CardLeg sample_leg(int number) {
  card::CardLeg leg;
  leg.number = number;
  leg.trail = "North Traverse";
  leg.span = {units::Metres{0}, units::Metres{811.2}};
  leg.from = "Cable House";
  leg.to = "junction 4";
  leg.entry = *units::parse_instant("2026-02-01T17:30:00Z");
  leg.start_bearing = units::Bearing::from_degrees(44.7);
  leg.length = units::Metres{811.2};
  leg.climb = units::Metres{119.01};
  leg.drop = units::Metres{3};
  leg.up = steep(7.21, 9.01, 340);
  leg.down = steep(1, 2.5, 20);
  leg.across = steep(3, 5.04, 412.4);
  leg.verdict = passage::Verdict::open;
  leg.binding_check = "climb traction";
  leg.binding_key = "climb_traction";
  leg.binding_share = 0.6101;
  leg.binding_at = units::Metres{340};
  leg.speed = units::MetresPerSecond{4.1};
  leg.time = units::Seconds{197.2};
  leg.fuel = units::Litres{1.11};
  leg.snow = {{snow::Wetness::moist, snow::Surface::groomed}};
  leg.notices = {{{units::Metres{120}, units::Metres{120}}, "piste crossing Lower Run: stop"},
                 {{units::Metres{0}, units::Metres{811.2}}, "shared with skiers: slow"},
                 {{units::Metres{500}, units::Metres{560.4}}, "runout Gully B: do not stop"}};
  leg.turn_round = {units::Metres{900}, "Fell Lodge"};
  return leg;
}

inline card::RouteCard sample_card() {
  card::RouteCard card;
  card.site = "Test Fell";
  card.map_frame = "WGS 84 / UTM zone 5N";
  card.vertical_datum = "Test datum";
  card.title = "Cable House to Fell Lodge";
  card.rig = "Hare with sled";
  card.carrier = "Hare";
  card.trailer = "Long Sled";
  card.driver_level = "seasoned";
  card.load = {units::Kilograms{60}, units::Kilograms{150}, 1, units::Kilograms{90},
               units::Litres{29.96}};
  card.total_mass = units::Kilograms{1239.2};
  card.tongue_mass = units::Kilograms{26};
  card.made_from.made = *units::parse_instant("2026-02-01T16:00:00Z");
  card.depart = *units::parse_instant("2026-02-01T17:30:00Z");
  card.arrive = *units::parse_instant("2026-02-01T17:37:01Z");
  card.local_clock = units::LocalClock{-600};
  card.snow = {{snow::Wetness::dry, snow::Surface::groomed},
               {snow::Wetness::moist, snow::Surface::groomed}};
  card.snow_told_by = {"assumed for planning", {}};
  card.weather.visibility = units::Metres{199.9};
  card.weather.bulletin_level = 2;
  card.weather.bulletin_source = "morning desk";
  card.verdict = passage::Verdict::restricted;
  card.allowed_share = 0.7;
  card.worst_share = 0.6101;
  card.confidence_k = 1.645;
  card.permitted_by = "N. Example";
  card.permitted = {"leg 2: drive 40 m from ground that may release"};
  card.legs = {sample_leg(1), sample_leg(2)};
  card.legs[1].trail =
      "The Long Way Round Behind the Second Hut and Along the Old Snow Fence to the Lodge";
  card.legs[1].verdict = passage::Verdict::restricted;
  card.legs[1].binding_share = 0.4;
  card.legs[1].up.reset();
  card.legs[1].down = steep(-1, 1.39, 700);  // only climbs, as far as anybody can tell
  card.legs[1].notices.clear();
  card.length = units::Metres{1622.4};
  card.climb = units::Metres{238.02};
  card.drop = units::Metres{6};
  card.time = units::Seconds{421};
  card.fuel = units::Litres{2.22};
  card.fuel_reserve = units::Litres{13.4};
  card.fuel_warnings = {"not enough to come back without refuelling"};
  card.turn_back_triggers = {"you see less than 100 m", "wind over 60 km/h"};
  card.radio = {"call on leaving Cable House", "call on arrival at Fell Lodge"};
  card.people = {"the driver goes alone"};
  card.help = {"overdue from 2026-02-01 08:08"};
  card.pre_start_checks = {"fluids at their marks"};
  card.parking_steps = {"parking brake on"};
  card.cautions = {"This card is a planning aid, not permission to drive."};
  card.estimates = {"reaction time 2 s"};
  base::Digest digest;
  digest.bytes.fill(0xAB);
  card.made_from.inputs = {{"heights.tif", "heights", "2026-01-05", digest},
                           {"trails.gpkg", "trails", "", digest}};
  card.heights_notes = {"invented for the tests, 2026"};
  card.made_from.versions = {"rimehaul 0.1.0", "GDAL 3.6.2"};
  card.places_rewalked = 1622;
  card.trace = {{{units::Metres{500'000}, units::Metres{5'100'000}}, geo::Height{1200}, {}, 0},
                {{units::Metres{500'100}, units::Metres{5'100'000}}, {}, units::Metres{100}, 1}};
  return card;
}

}  // namespace rimehaul::testing
