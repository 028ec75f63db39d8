// The rules a site starts from.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <vector>

#include "near.h"
#include "passage/estimates.h"
#include "passage/rules.h"

namespace rimehaul::passage {

namespace {

using testing::near_degrees;

bool names(const std::vector<std::string>& estimates, const std::string& words) {
  return std::ranges::any_of(
      estimates, [&](const std::string& line) { return line.find(words) != std::string::npos; });
}

}  // namespace

TEST_CASE("by default steep ground begins at 30 degrees, at 25 in moist or wetter snow") {
  CHECK(near_degrees(default_rules().start_slope_dry, 30.0, 1e-9));
  CHECK(near_degrees(default_rules().start_slope_wet, 25.0, 1e-9));
}

TEST_CASE("by default each bulletin level is at least as strict as the one below it") {
  const auto bulletin = default_rules().bulletin;
  for (std::size_t level = 1; level < bulletin.size(); ++level) {
    CAPTURE(level + 1);
    const BulletinStep& below = bulletin.at(level - 1);
    const BulletinStep& step = bulletin.at(level);
    CHECK(step.keep_off >= below.keep_off);
    CHECK((below.decision_may_permit || !step.decision_may_permit));
    CHECK((step.all_closed || !below.all_closed));
  }
  CHECK(bulletin.front().keep_off > units::Metres{0});
  CHECK_FALSE(bulletin.at(3).decision_may_permit);
  CHECK(bulletin.at(4).all_closed);
}

TEST_CASE("slush with a trailer is closed by default, for every level of driver") {
  const Rules rules = default_rules();
  CHECK(rules.wettest_towing < snow::Wetness::slush);
  REQUIRE_FALSE(rules.driver_levels.empty());
  for (const DriverLevel& level : rules.driver_levels) {
    CHECK(level.wettest_towing < snow::Wetness::slush);
    CHECK(level.allowed_share <= rules.allowed_share);
  }
}

TEST_CASE("the lower of the site's and the driver's share is allowed") {
  Rules rules = default_rules();
  CHECK(allowed_share_for(rules, "new") == 0.5);
  CHECK(allowed_share_for(rules, "seasoned") == 0.7);
  rules.allowed_share = 0.4;
  CHECK(allowed_share_for(rules, "new") == 0.4);
  rules.allowed_share = 1.0;
  CHECK(allowed_share_for(rules, "seasoned") == 0.7);
}

TEST_CASE("a driver's level that is not in the rules, or a share that is none, allows nothing") {
  Rules rules = default_rules();
  CHECK_FALSE(allowed_share_for(rules, "").has_value());
  CHECK_FALSE(allowed_share_for(rules, "New").has_value());
  for (const double share : {0.0, -0.5, 1.001, std::nan("")}) {
    CAPTURE(share);
    rules.allowed_share = share;
    CHECK_FALSE(allowed_share_for(rules, "seasoned").has_value());
  }
  rules = default_rules();
  rules.driver_levels.front().allowed_share = std::nan("");
  CHECK_FALSE(allowed_share_for(rules, "new").has_value());
}

TEST_CASE("defaults in force are named as estimates, and a site's own number is not") {
  Rules rules = default_rules();
  CHECK(names(estimates_in({rules}), "reaction time 2.0 s"));
  CHECK(names(estimates_in({rules}), "roll-over reserve: 0.60"));
  CHECK(names(estimates_in({rules}), "allowed share 0.70"));
  CHECK(names(estimates_in({rules}), "bulletin level"));
  CHECK(names(estimates_in({rules}), "seasoned driver"));
  CHECK(names(estimates_in({rules}), "grip: all but"));
  rules.reaction = units::Seconds{2.5};
  rules.bulletin.front().keep_off = units::Metres{20};
  rules.driver_levels.pop_back();
  CHECK_FALSE(names(estimates_in({rules}), "reaction time"));
  CHECK_FALSE(names(estimates_in({rules}), "bulletin level"));
  CHECK_FALSE(names(estimates_in({rules}), "seasoned driver"));
}

TEST_CASE("the estimates of a site that says nothing are the defaults of the site's format") {
  const std::vector<std::string> said =
      estimates_in({.rules = default_rules(), .towing = Towing::yes});
  for (const std::string words :
       {"low side sinks 0.05 m deeper", "carrier and trailer at 30", "sight 30 m",
        "setback 10.0 m from cornices", "looked at again after 500 m",
        "a rig is looked for 30 min after its time", "visibility of 2.0 marker spacings",
        "passenger with gear 90 kg", "fuel reserve 33 % of the tank", "may release from 25"}) {
    CAPTURE(words);
    CHECK(names(said, words));
  }
}

TEST_CASE("a rule that the site says is no estimate, also where it says what the default does") {
  Rules rules = default_rules();
  CHECK(names(estimates_in({rules}), "setback 3.0 m from drops"));
  CHECK(names(estimates_in({rules}), "no passengers in snow wetter than wet"));
  rules.said = {"cornice_setback_m", "passengers", "passengers.wettest"};
  CHECK_FALSE(names(estimates_in({rules}), "from cornices"));
  CHECK_FALSE(names(estimates_in({rules}), "no passengers in snow wetter than wet"));
  CHECK(names(estimates_in({rules}), "setback 3.0 m from drops"));
}

TEST_CASE("how wet passengers and snow bridges may have it is the default's or the site's word") {
  constexpr const char* kPassengers = "no passengers in snow wetter than wet";
  constexpr const char* kBridges = "snow bridges over creeks carry in dry snow only";
  Rules rules = default_rules();
  CHECK(names(estimates_in({rules}), kPassengers));
  CHECK(names(estimates_in({rules}), kBridges));
  rules.said = {"wettest_creek_bridge"};
  CHECK(names(estimates_in({rules}), kPassengers));
  CHECK_FALSE(names(estimates_in({rules}), kBridges));
  rules.said = {};
  rules.passengers.wettest = snow::Wetness::moist;
  rules.wettest_creek_bridge = snow::Wetness::moist;
  CHECK_FALSE(names(estimates_in({rules}), kPassengers));
  CHECK_FALSE(names(estimates_in({rules}), kBridges));
}

TEST_CASE("what bears on trailers alone is no estimate of a rig without one") {
  const Rules rules = default_rules();
  CHECK(names(estimates_in({.rules = rules, .towing = Towing::yes}), "carrier and trailer at"));
  CHECK_FALSE(names(estimates_in({.rules = rules, .towing = Towing::no}), "carrier and trailer"));
  CHECK(names(estimates_in({.rules = rules, .towing = Towing::no}), "reaction time 2.0 s"));
}

TEST_CASE("grip is no estimate where the site measured all that bears on the rig") {
  using snow::SnowState;
  using units::ForceRatio;
  const SnowState measured{snow::Wetness::moist, snow::Surface::groomed};
  const SnowState other{snow::Wetness::wet, snow::Surface::groomed};
  snow::MeasuredGrip entry;
  entry.state = measured;
  entry.traction = ForceRatio{0.3};
  entry.brake = ForceRatio{0.2};
  entry.lateral = ForceRatio{0.2};
  entry.carrier_resistance = snow::ForceRange{ForceRatio{0.02}, ForceRatio{0.1}};
  Rules rules = default_rules();
  rules.grip = snow::GripLaw{{entry}};
  const auto told = [&](Towing towing, std::vector<SnowState> snow) {
    return names(estimates_in({rules, towing, std::move(snow)}), "grip");
  };
  CHECK_FALSE(told(Towing::no, {measured}));
  CHECK(told(Towing::no, {measured, other}));
  CHECK(told(Towing::no, {}));
  CHECK(told(Towing::yes, {measured}));  // nobody pulled the runners
  entry.standing = snow::GripStanding::published;
  rules.grip = snow::GripLaw{{entry}};
  CHECK(told(Towing::no, {measured}));
}

TEST_CASE("grip that the site measured in part still leaves an estimate") {
  Rules rules = default_rules();
  snow::MeasuredGrip pulls;
  pulls.traction = units::ForceRatio{0.3};
  rules.grip = snow::GripLaw{{pulls}};
  CHECK(names(estimates_in({rules}), "where the site has not measured it"));
}

TEST_CASE("steps of the bulletin are the same only if all that they say is") {
  const BulletinStep step{units::Metres{40}, true, false};
  CHECK(step == BulletinStep{units::Metres{40}, true, false});
  CHECK_FALSE(step == BulletinStep{units::Metres{41}, true, false});
  CHECK_FALSE(step == BulletinStep{units::Metres{40}, false, false});
  CHECK_FALSE(step == BulletinStep{units::Metres{40}, true, true});
}

TEST_CASE("levels of driver are the same only if all that they say is") {
  const trails::OpenHours day{{8 * 60}, {16 * 60}};
  const DriverLevel level{"new", 0.5, true, true, snow::Wetness::wet, day};
  const auto changed = [&](auto&& change) {
    DriverLevel other = level;
    change(other);
    return other;
  };
  CHECK(level == changed([](DriverLevel&) {}));
  CHECK_FALSE(level == changed([](DriverLevel& other) { other.name = "old"; }));
  CHECK_FALSE(level == changed([](DriverLevel& other) { other.allowed_share = 0.6; }));
  CHECK_FALSE(level == changed([](DriverLevel& other) { other.may_tow = false; }));
  CHECK_FALSE(level == changed([](DriverLevel& other) { other.may_carry_passengers = false; }));
  CHECK_FALSE(level ==
              changed([](DriverLevel& other) { other.wettest_towing = snow::Wetness::moist; }));
  CHECK_FALSE(level == changed([](DriverLevel& other) { other.hours.reset(); }));
}

}  // namespace rimehaul::passage
