// What a worked example on a page may set, by the symbols of the pages.
#pragma once

#include <functional>
#include <map>
#include <string>

#include "hazard/exposure.h"
#include "passage/bend.h"
#include "rig_on_slope.h"

namespace rimehaul::testing {

using passage::BulletinStep;
using units::ForceRatio;
using units::Kilograms;
using units::Metres;
using units::Newtons;
using units::Slope;

/// What an example may set.
struct Bench {
  RigOnSlope rig = testing::loaded_rig();
  double sign = 1.0;  ///< -1 where the page counts a fall as positive
  passage::Bend bend{.at = Metres{0}, .radius = Metres{0}, .window = Metres{0}};
  Metres trail_width{0};
  Metres sight{0};
  hazard::Exposure exposure;
  int level = 0;
  snow::DayWeather weather;
  Metres marker_spacing{0};
};

using Setter = std::function<void(Bench&, double)>;

inline void set_grade(terrain::AttitudeBox& box, double grade) {
  box.grade_low = box.grade_high = Slope::from_ratio(grade);
}

inline void set_cross(terrain::AttitudeBox& box, double cross) {
  box.cross_low = box.cross_high = Slope::from_ratio(cross);
}

/// A rectangle for the carrier's support, from its length and width.
inline void set_support(Bench& bench) {
  const Metres length = bench.rig.rig.carrier.contact_length;
  const Metres half = bench.rig.rig.carrier.gauge / 2.0;
  bench.rig.rig.carrier.support = {
      {Metres{0}, -half}, {length, -half}, {length, half}, {Metres{0}, half}};
}

inline std::map<std::string, Setter> setters_of_ground() {
  return {
      {"G_c", [](Bench& b, double v) { set_grade(b.rig.carrier, b.sign * v); }},
      {"K_c", [](Bench& b, double v) { set_cross(b.rig.carrier, v); }},
      {"G_t", [](Bench& b, double v) { set_grade(b.rig.trailer, b.sign * v); }},
      {"K_t", [](Bench& b, double v) { set_cross(b.rig.trailer, v); }},
      {"G_up", [](Bench& b, double v) { b.rig.trailer.grade_high = Slope::from_ratio(v); }},
      {"G_down", [](Bench& b, double v) { b.rig.trailer.grade_low = Slope::from_ratio(-v); }},
      {"f_c", [](Bench& b, double v) { b.rig.grip.carrier_resistance.high = ForceRatio{v}; }},
      {"f_t",
       [](Bench& b, double v) {
         b.rig.grip.trailer_resistance = {ForceRatio{v}, ForceRatio{v}};
         b.rig.grip.trailer_start = ForceRatio{v};
       }},
      {"f_t_low", [](Bench& b, double v) { b.rig.grip.trailer_resistance.low = ForceRatio{v}; }},
      {"mu", [](Bench& b, double v) { b.rig.grip.traction = ForceRatio{v}; }},
      {"mu_b", [](Bench& b, double v) { b.rig.grip.brake = ForceRatio{v}; }},
      {"mu_l", [](Bench& b, double v) { b.rig.grip.lateral = ForceRatio{v}; }},
      {"mu_tl", [](Bench& b, double v) { b.rig.grip.trailer_lateral = ForceRatio{v}; }},
  };
}

inline std::map<std::string, Setter> setters_of_rig() {
  return {
      {"m_c", [](Bench& b, double v) { b.rig.weighed.carrier.mass = Kilograms{v}; }},
      {"m_t", [](Bench& b, double v) { b.rig.weighed.trailer.mass = Kilograms{v}; }},
      {"m_h", [](Bench& b, double v) { b.rig.weighed.tongue_mass = Kilograms{v}; }},
      {"h_c", [](Bench& b, double v) { b.rig.weighed.carrier.centre.up = Metres{v}; }},
      {"x_c", [](Bench& b, double v) { b.rig.weighed.carrier.centre.forward = Metres{v}; }},
      {"y_c", [](Bench& b, double v) { b.rig.weighed.carrier.centre.left = Metres{v}; }},
      {"h_t", [](Bench& b, double v) { b.rig.weighed.trailer.centre.up = Metres{v}; }},
      {"x_t", [](Bench& b, double v) { b.rig.weighed.trailer.centre.forward = Metres{v}; }},
      {"h_h", [](Bench& b, double v) { b.rig.rig.carrier.hitch_at.up = Metres{v}; }},
      {"x_h", [](Bench& b, double v) { b.rig.rig.carrier.hitch_at.forward = Metres{v}; }},
      {"L", [](Bench& b, double v) { b.rig.rig.trailer->drawbar_length = Metres{v}; }},
      {"l",
       [](Bench& b, double v) {
         b.rig.rig.carrier.contact_length = Metres{v};
         set_support(b);
       }},
      {"gauge_c",
       [](Bench& b, double v) {
         b.rig.rig.carrier.gauge = Metres{v};
         set_support(b);
       }},
      {"gauge_t", [](Bench& b, double v) { b.rig.rig.trailer->gauge = Metres{v}; }},
      {"phi", [](Bench& b, double v) { b.rig.rig.carrier.track_weight_share = v; }},
      {"eta", [](Bench& b, double v) { b.rig.rig.carrier.driveline_efficiency = v; }},
      {"power", [](Bench& b, double v) { b.rig.rig.carrier.engine_power = units::Watts{v}; }},
      {"B",
       [](Bench& b, double v) {
         b.rig.rig.carrier.brake_force = Newtons{v};
         b.rig.rig.carrier.parking_brake_force = Newtons{v};
       }},
      {"trailers", [](Bench& b, double v) { v == 0 ? void(b.rig.without_trailer()) : void(); }},
  };
}

inline std::map<std::string, Setter> setters_of_rules() {
  return {
      {"r", [](Bench& b, double v) { b.rig.rules.roll_over_reserve = v; }},
      {"d", [](Bench& b, double v) { b.rig.rules.low_side_sinkage = Metres{v}; }},
      {"t", [](Bench& b, double v) { b.rig.rules.reaction = units::Seconds{v}; }},
      {"v", [](Bench& b, double v) { b.rig.rules.walking_pace = units::MetresPerSecond{v}; }},
      {"gamma", [](Bench& b, double v) { b.rig.rules.articulation = Slope::from_ratio(v); }},
      {"sight", [](Bench& b, double v) { b.sight = Metres{v}; }},
      {"N", [](Bench& b, double v) { b.rig.rules.markers_in_sight = v; }},
      {"spacing", [](Bench& b, double v) { b.marker_spacing = Metres{v}; }},
      {"seen", [](Bench& b, double v) { b.weather.visibility = Metres{v}; }},
      {"wind", [](Bench& b, double v) { b.weather.wind = units::MetresPerSecond{v}; }},
      {"most wind", [](Bench& b, double v) { b.rig.rules.most_wind = units::MetresPerSecond{v}; }},
      {"level", [](Bench& b, double v) { b.level = static_cast<int>(v); }},
      {"own slope", [](Bench& b, double v) { b.exposure.own_slope = Slope::from_ratio(v); }},
      {"start slope",
       [](Bench& b, double v) { b.rig.rules.start_slope_dry = Slope::from_ratio(v); }},
      {"keep off",
       [](Bench& b, double v) {
         for (BulletinStep& step : b.rig.rules.bulletin) {
           step.keep_off = Metres{v};
         }
       }},
      {"distance", [](Bench& b, double v) { b.exposure.to_steep_ground = Metres{v}; }},
  };
}

inline std::map<std::string, Setter> setters_of_limits() {
  const auto rated = [](double v) { return rig::Rating{Slope::from_ratio(v), {}}; };
  return {
      {"rated climb", [=](Bench& b, double v) { b.rig.rig.carrier.towing.climb = rated(v); }},
      {"rated descent", [=](Bench& b, double v) { b.rig.rig.carrier.towing.descent = rated(v); }},
      {"rated cross", [=](Bench& b, double v) { b.rig.rig.carrier.towing.cross = rated(v); }},
      {"trailer rated", [=](Bench& b, double v) { b.rig.rig.trailer->climb = rated(v); }},
      {"rated hitch",
       [](Bench& b, double v) { b.rig.rig.carrier.hitch_vertical_rating = Kilograms{v}; }},
      {"rated towed",
       [](Bench& b, double v) { b.rig.rig.carrier.towed_mass_rating = Kilograms{v}; }},
      {"rated payload",
       [](Bench& b, double v) { b.rig.rig.carrier.payload_rating = Kilograms{v}; }},
      {"rated sled", [](Bench& b, double v) { b.rig.rig.trailer->payload_rating = Kilograms{v}; }},
      {"payload", [](Bench& b, double v) { b.rig.weighed.payload = Kilograms{v}; }},
      {"towed load", [](Bench& b, double v) { b.rig.rig.load.towed = Kilograms{v}; }},
      {"passengers", [](Bench& b, double v) { b.rig.rig.load.passengers = static_cast<int>(v); }},
      {"seats",
       [](Bench& b, double v) { b.rig.rig.carrier.seats.resize(static_cast<std::size_t>(v)); }},
      {"R", [](Bench& b, double v) { b.bend.radius = Metres{v}; }},
      {"window", [](Bench& b, double v) { b.bend.window = Metres{v}; }},
      {"R_own", [](Bench& b, double v) { b.rig.rig.carrier.turning_radius = Metres{v}; }},
      {"w_c", [](Bench& b, double v) { b.rig.rig.carrier.overall_width = Metres{v}; }},
      {"l_c", [](Bench& b, double v) { b.rig.rig.carrier.overall_length = Metres{v}; }},
      {"c_c", [](Bench& b, double v) { b.rig.rig.carrier.contact_length = Metres{v}; }},
      {"w_t", [](Bench& b, double v) { b.rig.rig.trailer->overall_width = Metres{v}; }},
      {"c_t", [](Bench& b, double v) { b.rig.rig.trailer->contact_length = Metres{v}; }},
      {"trail width", [](Bench& b, double v) { b.trail_width = Metres{v}; }},
  };
}

inline std::map<std::string, Setter> all_setters() {
  std::map<std::string, Setter> setters = setters_of_ground();
  setters.merge(setters_of_rig());
  setters.merge(setters_of_rules());
  setters.merge(setters_of_limits());
  return setters;
}

}  // namespace rimehaul::testing
