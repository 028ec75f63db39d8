// What holds of all ground checks: bounds over a box, nothing unknown that passes, their order.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "near.h"
#include "passage/bend.h"
#include "rig_on_slope.h"

namespace rimehaul::passage {

namespace {

using testing::exactly;
using testing::kNoNumber;
using testing::loaded_rig;
using testing::RigOnSlope;
using units::ForceRatio;
using units::Kilograms;
using units::Metres;
using units::MetresPerSecond;
using units::Slope;

struct Range {
  double low;
  double high;
};

/// A box somewhere on driveable ground, from a hair to some 12 degrees wide.
terrain::AttitudeBox any_box(std::mt19937& dice) {
  std::uniform_real_distribution<double> slope(-0.35, 0.35);
  std::uniform_real_distribution<double> half(0.0, 0.1);
  const auto range = [&] {
    const double middle = slope(dice);
    const double width = half(dice);
    return Range{middle - width, middle + width};
  };
  const Range grade = range();
  const Range cross = range();
  return {Slope::from_ratio(grade.low), Slope::from_ratio(grade.high), Slope::from_ratio(cross.low),
          Slope::from_ratio(cross.high)};
}

/// A corner of the box for the first few, then anywhere in it.
terrain::AttitudeBox place_in(const terrain::AttitudeBox& box, int sample, std::mt19937& dice) {
  std::uniform_real_distribution<double> share(0.0, 1.0);
  const double g = sample < 8 ? (sample & 1) : share(dice);
  const double k = sample < 8 ? ((sample >> 1) & 1) : share(dice);
  const auto between = [](Slope low, Slope high, double part) {
    return low.ratio() * (1 - part) + high.ratio() * part;
  };
  return exactly(between(box.grade_low, box.grade_high, g),
                 between(box.cross_low, box.cross_high, k));
}

/// A rig whose numbers differ from trial to trial, some with a load high on the trailer.
RigOnSlope any_rig(std::mt19937& dice) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(dice);
  };
  RigOnSlope rig = loaded_rig();
  rig.weighed.carrier.mass = Kilograms{between(500, 900)};
  rig.weighed.carrier.centre = {Metres{between(0.3, 1.0)}, Metres{between(-0.1, 0.1)},
                                Metres{between(0.4, 0.9)}};
  rig.weighed.trailer.mass = Kilograms{between(100, 600)};
  rig.weighed.tongue_mass = rig.weighed.trailer.mass * between(0.0, 0.3);
  rig.weighed.trailer.centre.up = Metres{between(0.2, 1.3)};
  rig.rig.carrier.track_weight_share = between(0.5, 1.0);
  rig.rig.carrier.hitch_at.up = Metres{between(0.1, 0.6)};
  rig.rig.trailer->hitch_free_to_roll = between(0, 1) < 0.5;
  rig.rig.trailer->cross = rig.rig.carrier.towing.cross;
  rig.grip.traction = ForceRatio{between(0.1, 0.6)};
  rig.grip.brake = ForceRatio{between(0.1, 0.6)};
  rig.grip.lateral = ForceRatio{between(0.1, 0.6)};
  rig.grip.trailer_lateral = ForceRatio{between(0.1, 0.4)};
  rig.grip.carrier_resistance = {ForceRatio{between(0.0, 0.05)}, ForceRatio{between(0.05, 0.2)}};
  rig.grip.trailer_resistance = {ForceRatio{between(0.0, 0.05)}, ForceRatio{between(0.05, 0.2)}};
  rig.grip.trailer_start = ForceRatio{between(0.0, 0.3)};
  if (between(0, 1) < 0.3) {
    rig.without_trailer();
  }
  return rig;
}

std::vector<Finding> everything(const RigOnSlope& rig) {
  std::vector<Finding> findings = judge_ground(rig.footing());
  findings.push_back(judge_stopping(rig.footing(), {Metres{40}, kStraight}, 0.7).finding);
  return findings;
}

/// Whether a finding of one place lies within the bound that the box gave.
bool within(const Finding& place, const Finding& bound) {
  if (!bound.share) {
    return true;  // closed bounds everything
  }
  constexpr double kRounding = 1e-9;
  return place.share && *place.share <= *bound.share * (1 + kRounding);
}

/// Stopping is planned so that these keep what is allowed; where one does not as the rig stands, it
/// closes the place by itself, and stopping speaks of the brake alone.
bool closed_beside_stopping(const std::vector<Finding>& findings) {
  return std::ranges::any_of(findings, [](const Finding& finding) {
    using enum Check;
    const bool kept_while_braking =
        finding.check == carrier_side_slip || finding.check == carrier_roll_over ||
        finding.check == trailer_side_slip || finding.check == trailer_roll_over ||
        finding.check == jackknife;
    return kept_while_braking && stand_of(finding, 0.7) != Stand::passes;
  });
}

/// Whether each finding of one place lies within its bound.
bool all_within(const std::vector<Finding>& place, const std::vector<Finding>& bounds) {
  const bool by_brake_alone = closed_beside_stopping(bounds);
  for (std::size_t i = 0; i < place.size(); ++i) {
    const bool speaks_of_it = place[i].check != Check::stopping || !by_brake_alone;
    INFO(facts_of(place[i].check).key);
    CHECK((within(place[i], bounds[i]) || !speaks_of_it));
    if (speaks_of_it && !within(place[i], bounds[i])) {
      return false;
    }
  }
  return true;
}

struct Poison {
  const char* what;
  std::function<void(RigOnSlope&, double)> put;
};

std::vector<Poison> poisons() {
  const auto slope = [](double ratio) { return Slope::from_ratio(ratio); };
  return {
      {"carrier mass", [](auto& r, double v) { r.weighed.carrier.mass = Kilograms{v}; }},
      {"carrier height", [](auto& r, double v) { r.weighed.carrier.centre.up = Metres{v}; }},
      {"carrier centre", [](auto& r, double v) { r.weighed.carrier.centre.left = Metres{v}; }},
      {"trailer mass", [](auto& r, double v) { r.weighed.trailer.mass = Kilograms{v}; }},
      {"tongue mass", [](auto& r, double v) { r.weighed.tongue_mass = Kilograms{v}; }},
      {"trailer height", [](auto& r, double v) { r.weighed.trailer.centre.up = Metres{v}; }},
      {"trailer centre", [](auto& r, double v) { r.weighed.trailer.centre.forward = Metres{v}; }},
      {"hitch height", [](auto& r, double v) { r.rig.carrier.hitch_at.up = Metres{v}; }},
      {"hitch behind", [](auto& r, double v) { r.rig.carrier.hitch_at.forward = Metres{v}; }},
      {"drawbar", [](auto& r, double v) { r.rig.trailer->drawbar_length = Metres{v}; }},
      {"contact", [](auto& r, double v) { r.rig.carrier.contact_length = Metres{v}; }},
      {"track share", [](auto& r, double v) { r.rig.carrier.track_weight_share = v; }},
      {"efficiency", [](auto& r, double v) { r.rig.carrier.driveline_efficiency = v; }},
      {"power", [](auto& r, double v) { r.rig.carrier.engine_power = units::Watts{v}; }},
      {"brake", [](auto& r, double v) { r.rig.carrier.brake_force = units::Newtons{v}; }},
      {"parking", [](auto& r, double v) { r.rig.carrier.parking_brake_force = units::Newtons{v}; }},
      {"hitch rating",
       [](auto& r, double v) { r.rig.carrier.hitch_vertical_rating = Kilograms{v}; }},
      {"traction", [](auto& r, double v) { r.grip.traction = ForceRatio{v}; }},
      {"brake grip", [](auto& r, double v) { r.grip.brake = ForceRatio{v}; }},
      {"lateral", [](auto& r, double v) { r.grip.lateral = ForceRatio{v}; }},
      {"runner lateral", [](auto& r, double v) { r.grip.trailer_lateral = ForceRatio{v}; }},
      {"drag", [](auto& r, double v) { r.grip.carrier_resistance.high = ForceRatio{v}; }},
      {"runner drag", [](auto& r, double v) { r.grip.trailer_resistance.high = ForceRatio{v}; }},
      {"runner low drag", [](auto& r, double v) { r.grip.trailer_resistance.low = ForceRatio{v}; }},
      {"start", [](auto& r, double v) { r.grip.trailer_start = ForceRatio{v}; }},
      {"reserve", [](auto& r, double v) { r.rules.roll_over_reserve = v; }},
      {"sinkage", [](auto& r, double v) { r.rules.low_side_sinkage = Metres{v}; }},
      {"articulation", [=](auto& r, double v) { r.rules.articulation = slope(v); }},
      {"reaction", [](auto& r, double v) { r.rules.reaction = units::Seconds{v}; }},
      {"pace", [](auto& r, double v) { r.rules.walking_pace = units::MetresPerSecond{v}; }},
      {"rating", [=](auto& r, double v) { r.rig.carrier.towing.climb->steepest = slope(v); }},
      {"carrier grade", [=](auto& r, double v) { r.carrier.grade_low = slope(v); }},
      {"carrier grade up", [=](auto& r, double v) { r.carrier.grade_high = slope(v); }},
      {"carrier cross", [=](auto& r, double v) { r.carrier.cross_low = slope(v); }},
      {"carrier cross up", [=](auto& r, double v) { r.carrier.cross_high = slope(v); }},
      {"trailer grade", [=](auto& r, double v) { r.trailer.grade_low = slope(v); }},
      {"trailer grade up", [=](auto& r, double v) { r.trailer.grade_high = slope(v); }},
      {"trailer cross", [=](auto& r, double v) { r.trailer.cross_high = slope(v); }},
  };
}

/// The same amount, or no number both times.
bool same(units::Amount a, units::Amount b) {
  return a == b || (std::isnan(a.value) && std::isnan(b.value));
}

bool same_numbers(const Finding& a, const Finding& b) {
  return same(a.demand, b.demand) && same(a.capacity, b.capacity) && a.share == b.share;
}

}  // namespace

/// The rig with a part of its fuel still aboard.
RigOnSlope with_fuel(RigOnSlope rig, const rig::Balance& fuel, double part) {
  rig::Balance& carrier = rig.weighed.carrier;
  const Kilograms burning = fuel.mass * part;
  const Kilograms mass = carrier.mass + burning;
  const auto mixed = [&](Metres dry, Metres tank) {
    return (dry * carrier.mass.value() + tank * burning.value()) / mass.value();
  };
  carrier = {
      mass,
      {mixed(carrier.centre.forward, fuel.centre.forward),
       mixed(carrier.centre.left, fuel.centre.left), mixed(carrier.centre.up, fuel.centre.up)}};
  return rig;
}

TEST_CASE("with the tank partly full no share is over the larger of those with it full and empty") {
  std::mt19937 dice{4};
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(dice);
  };
  int compared = 0;
  for (int trial = 0; trial < 400; ++trial) {
    RigOnSlope dry = any_rig(dice);
    const rig::Balance fuel{
        Kilograms{between(5, 80)},
        {Metres{between(-0.5, 1.5)}, Metres{between(-0.4, 0.4)}, Metres{between(0.2, 1.0)}}};
    dry.carrier = dry.trailer = any_box(dice);
    const RigOnSlope full = with_fuel(dry, fuel, 1.0);
    std::vector<Finding> bounds = everything(dry);
    const std::vector<Finding> at_start = everything(full);
    for (std::size_t i = 0; i < bounds.size(); ++i) {
      if (binds_before(at_start[i], bounds[i])) {
        bounds[i] = at_start[i];
      }
    }
    const StopWithin within_sight{Metres{40}, kStraight};
    const auto speed = [&](const RigOnSlope& rig) {
      return judge_stopping(rig.footing(), within_sight, 0.7).speed;
    };
    const MetresPerSecond slower = std::min(speed(dry), speed(full));
    for (int sample = 0; sample < 10; ++sample) {
      const RigOnSlope rig = with_fuel(dry, fuel, between(0, 1));
      CHECK(all_within(everything(rig), bounds));
      CHECK((speed(rig) >= slower || closed_beside_stopping(bounds)));
      ++compared;
    }
  }
  CHECK(compared == 4000);
}

TEST_CASE("no place within a box exceeds the share that the box was given, for any rig") {
  std::mt19937 dice{20260211};
  int shares = 0;
  for (int trial = 0; trial < 300; ++trial) {
    RigOnSlope rig = any_rig(dice);
    rig.carrier = any_box(dice);
    rig.trailer = rig.rig.trailer ? any_box(dice) : rig.carrier;
    const std::vector<Finding> bounds = everything(rig);
    for (int sample = 0; sample < 60; ++sample) {
      RigOnSlope place = rig;
      place.carrier = place_in(rig.carrier, sample, dice);
      place.trailer = rig.rig.trailer ? place_in(rig.trailer, sample / 4 * 4 + 3 - sample % 4, dice)
                                      : place.carrier;
      const std::vector<Finding> found = everything(place);
      REQUIRE(found.size() == bounds.size());
      REQUIRE(all_within(found, bounds));
      for (std::size_t i = 0; i < found.size(); ++i) {
        shares += bounds[i].share && *bounds[i].share > 0.0 ? 1 : 0;
      }
    }
  }
  CHECK(shares > 50'000);  // the boxes are not merely closed
}

TEST_CASE("a wider box never has a smaller share") {
  std::mt19937 dice{5};
  for (int trial = 0; trial < 300; ++trial) {
    RigOnSlope rig = any_rig(dice);
    rig.carrier = any_box(dice);
    rig.trailer = rig.carrier;
    const std::vector<Finding> narrow = everything(rig);
    rig.carrier = rig.carrier.widened(Slope::from_ratio(0.02));
    rig.trailer = rig.carrier;
    const std::vector<Finding> wide = everything(rig);
    REQUIRE(all_within(narrow, wide));
  }
}

TEST_CASE("a number that is none closes every check that works with it, and changes no other") {
  RigOnSlope sound = loaded_rig();
  sound.carrier = {Slope::from_ratio(-0.12), Slope::from_ratio(0.1), Slope::from_ratio(-0.05),
                   Slope::from_ratio(0.06)};
  sound.trailer = sound.carrier;
  const std::vector<Finding> before = everything(sound);
  for (const Finding& finding : before) {
    INFO(facts_of(finding.check).key);
    REQUIRE(finding.share);
  }
  for (const Poison& poison : poisons()) {
    for (const double bad : {kNoNumber, HUGE_VAL, -HUGE_VAL}) {
      RigOnSlope rig = sound;
      poison.put(rig, bad);
      const std::vector<Finding> after = everything(rig);
      std::size_t closed = 0;
      for (std::size_t i = 0; i < after.size(); ++i) {
        INFO(std::string{poison.what});
        INFO(facts_of(after[i].check).key);
        const bool shut = stand_of(after[i], 1e9) == Stand::missing;
        const bool leans_on_others =
            after[i].check == Check::stopping && closed_beside_stopping(after);
        CHECK((shut || leans_on_others || same_numbers(after[i], before[i])));
        closed += shut ? 1U : 0U;
      }
      INFO(std::string{poison.what});
      CHECK(closed > 0);
    }
  }
}

TEST_CASE("the ground checks come in the order of the list, a trailer's own only with one") {
  RigOnSlope rig = loaded_rig();
  const auto in_order = [](const std::vector<Finding>& findings) {
    return std::ranges::is_sorted(findings, std::ranges::less{}, &Finding::check);
  };
  CHECK(judge_ground(rig.footing()).size() == 14);
  CHECK(in_order(judge_ground(rig.footing())));
  rig.without_trailer();
  CHECK(judge_ground(rig.footing()).size() == 9);
  CHECK(in_order(judge_ground(rig.footing())));
}

TEST_CASE("what is known to pass says nothing of what is missing or refused") {
  for (const Finding& finding : everything(loaded_rig())) {
    CHECK(finding.missing.empty());
    CHECK(finding.refused.empty());
    CHECK(finding.share);
  }
}

}  // namespace rimehaul::passage
