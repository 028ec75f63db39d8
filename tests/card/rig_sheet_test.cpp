// The rig sheet: masses, tip angles and ratings, against published and closed-form values.
#include "card/rig_sheet.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <numbers>
#include <string>

#include "card/limits_report.h"
#include "card/rig_words.h"
#include "near.h"
#include "passage/footing.h"

namespace rimehaul::card {

namespace {

using testing::near;
using units::Kilograms;
using units::Metres;

constexpr double kDegrees = 180.0 / std::numbers::pi;

rig::Rig bare_rig(Kilograms mass, rig::BodyPoint centre) {
  rig::Rig rig;
  rig.name = "Tester";
  rig.driver_level = "seasoned";
  rig::Carrier& carrier = rig.carrier;
  carrier.name = "Carrier";
  carrier.empty = {mass, centre};
  carrier.contact_length = Metres{2.2};
  carrier.gauge = Metres{1.0};
  carrier.contact_area = units::SquareMetres{0.5};
  carrier.bed_rating = Kilograms{200};
  carrier.payload_rating = Kilograms{200};
  carrier.fuel_density = units::KilogramsPerCubicMetre{800};
  carrier.support = {{Metres{0}, Metres{-0.5}},
                     {Metres{2.2}, Metres{-0.5}},
                     {Metres{2.2}, Metres{0.5}},
                     {Metres{0}, Metres{0.5}}};
  return rig;
}

const TipAngle& tip_over(const SheetBody& body, TipWay way) {
  for (const TipAngle& tip : body.tips) {
    if (tip.way == way) {
      return tip;
    }
  }
  FAIL("no such tip angle");
  return body.tips.front();
}

bool tells(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("skis 1.0 m and tracks 0.5 m apart tip sideways at 26.885, not 37.57 degrees") {
  // Skis at 1.3 m before the origin, tracks' rear at 0.9 m behind it, centre of gravity 0.2 m
  // behind it and 0.65 m up; here forward counts from the tracks' rear. Half-width abreast .329545
  // m.
  rig::Rig rig = bare_rig(Kilograms{300}, {Metres{0.7}, Metres{0}, Metres{0.65}});
  rig.carrier.support = {{Metres{0}, Metres{-0.25}},
                         {Metres{2.2}, Metres{-0.5}},
                         {Metres{2.2}, Metres{0.5}},
                         {Metres{0}, Metres{0.25}}};
  const RigSheet sheet = rig_sheet(rig, passage::default_rules());
  const double half_width = 0.25 + 0.25 * 0.7 / 2.2;
  CHECK(near(half_width, 0.329545, 1e-6));
  const TipAngle& right = tip_over(sheet.carrier, TipWay::over_the_right);
  CHECK(near(right.as_loaded.ratio(), half_width / 0.65, 1e-12));
  CHECK(near(right.as_loaded.degrees(), 26.885, 1e-3));
  CHECK(near(tip_over(sheet.carrier, TipWay::over_the_left).as_loaded.degrees(), 26.885, 1e-3));
  CHECK(near(tip_over(sheet.carrier, TipWay::over_the_rear).as_loaded.degrees(),
             std::atan(0.7 / 0.65) * kDegrees, 1e-9));
  CHECK(near(tip_over(sheet.carrier, TipWay::over_the_front).as_loaded.degrees(),
             std::atan(1.5 / 0.65) * kDegrees, 1e-9));
  CHECK(right.usable < right.as_loaded);
}

TEST_CASE("150 kg at 1.1 m on 450 kg at 0.55 m raise it to 0.6875 m: 42.274 to 36.027 degrees") {
  // h = sum m h / sum m; tip angle atan(t / 2h) with t = 1 m (static stability factor, NHTSA).
  rig::Rig rig = bare_rig(Kilograms{450}, {Metres{1.1}, Metres{0}, Metres{0.55}});
  rig.carrier.bed_at = {Metres{1.1}, Metres{0}, Metres{1.1}};
  rig.load.bed = Kilograms{150};
  const RigSheet sheet = rig_sheet(rig, passage::default_rules());
  CHECK(near(sheet.carrier.as_loaded.centre.up.value(), 0.6875, 1e-12));
  const TipAngle& right = tip_over(sheet.carrier, TipWay::over_the_right);
  CHECK(near(right.empty.degrees(), 42.274, 1e-3));
  CHECK(near(right.as_loaded.degrees(), 36.027, 1e-3));
  CHECK(near(sheet.total.value(), 600.0, 1e-12));
  // Weight over area: 600 kg x 9.80665 m/s2 on 0.5 m2.
  CHECK(near(sheet.pressure.value(), 600 * 9.80665 / 0.5 / 1000, 1e-9));
}

TEST_CASE("what the sheet calls usable is what roll-over is judged against") {
  rig::Rig rig = bare_rig(Kilograms{450}, {Metres{0.9}, Metres{0.1}, Metres{0.7}});
  const passage::Rules rules = passage::default_rules();
  const RigSheet sheet = rig_sheet(rig, rules);
  const rig::Weighed weighed = rig::weigh(rig);
  const snow::GripRow grip{};
  // Ground that falls away to the left: the left edge binds.
  const units::Slope cross = units::Slope::from_degrees(-10);
  const terrain::AttitudeBox box{{}, {}, cross, cross};
  const passage::Finding finding =
      passage::judge_carrier_roll_over({rig, weighed, grip, rules, box, box});
  const TipAngle& left = tip_over(sheet.carrier, TipWay::over_the_left);
  CHECK(near(finding.capacity.value, left.usable.ratio(), 1e-12));
  CHECK(left.usable < tip_over(sheet.carrier, TipWay::over_the_right).usable);
}

TEST_CASE("a load over its rating is told as overloaded, over the allowed share as closed") {
  rig::Rig rig = bare_rig(Kilograms{450}, {Metres{1.1}, Metres{0}, Metres{0.55}});
  rig.carrier.bed_at = {Metres{1.1}, Metres{0}, Metres{0.8}};
  rig.load.bed = Kilograms{140};
  const passage::Rules rules = passage::default_rules();
  CHECK(rig_sheet(rig, rules).within_ratings());
  rig.load.bed = Kilograms{141};
  const RigSheet over_allowed = rig_sheet(rig, rules);
  CHECK(!over_allowed.within_ratings());
  CHECK(tells(text_of(over_allowed, 80), "CLOSED: over what is allowed"));
  CHECK(!tells(text_of(over_allowed, 80), "OVERLOADED"));
  CHECK(load_headline(over_allowed).starts_with("CLOSED as loaded: "));
  rig.load.bed = Kilograms{140};
  CHECK(load_headline(rig_sheet(rig, rules)).empty());
  rig.load.bed = Kilograms{201};
  const RigSheet overloaded = rig_sheet(rig, rules);
  CHECK(tells(text_of(overloaded, 80), "OVERLOADED"));
  // At the head, before anything else of the load.
  const std::string headline = load_headline(overloaded);
  CHECK(headline.starts_with("OVERLOADED, not driven: "));
  CHECK(text_of(overloaded, 200).find(headline) < text_of(overloaded, 200).find("Mass in all"));
}

TEST_CASE("a rating that nobody gave is told as not given, so closed; and whose the others are") {
  rig::Rig rig = bare_rig(Kilograms{450}, {Metres{1.1}, Metres{0}, Metres{0.55}});
  rig.carrier.solo_empty.climb =
      rig::Rating{units::Slope::from_degrees(25), {rig::Standing::maker, "manual, p. 8"}};
  const RigSheet sheet = rig_sheet(rig, passage::default_rules());
  CHECK(sheet.ratings.front().in_force);
  const std::string text = text_of(sheet, 80);
  CHECK(tells(text, "in force: climb 25.0 deg (46.6 %), maker: manual, p. 8"));
  CHECK(tells(text, "descent not given, so closed"));
}

TEST_CASE("a centre of gravity that is not known has no tip angle, and says unknown") {
  const double none = std::numeric_limits<double>::quiet_NaN();
  const RigSheet sheet = rig_sheet(bare_rig(Kilograms{none}, {Metres{1}, Metres{0}, Metres{0.5}}),
                                   passage::default_rules());
  CHECK(std::isnan(tip_over(sheet.carrier, TipWay::over_the_right).as_loaded.ratio()));
  CHECK(tells(text_of(sheet, 80), "unknown"));
}

TEST_CASE("a full load is the last kilogram that the allowed share of the ratings lets on") {
  rig::Rig rig = bare_rig(Kilograms{450}, {Metres{1.1}, Metres{0}, Metres{0.55}});
  rig.load.passengers = 1;
  rig.load.passenger_mass = Kilograms{90};
  for (const double share : {0.3, 0.5, 0.7, 0.9, 1.0}) {
    CAPTURE(share);
    const rig::Load full = full_load(rig, share);
    rig::Rig loaded = rig;
    loaded.load = full;
    const bool riders_fit = 90.0 / 200.0 <= share;
    CHECK((full.bed > Kilograms{0}) == riders_fit);
    if (riders_fit) {
      const auto passes = [&](const rig::Rig& with) {
        return passage::stand_of(passage::judge_payload(with, rig::weigh(with)), share) ==
               passage::Stand::passes;
      };
      CHECK(passes(loaded));
      loaded.load.bed += Kilograms{1};
      CHECK(!passes(loaded));
    }
  }
}

// By hand: 48 kg x 9.80665 = 470.72 N; x 2.0 m = 941.4 N m, x 0.3 m = 141.2 N m.
TEST_CASE("the sheet tells what rests on the hitch, and its moments") {
  rig::Rig rig = bare_rig(Kilograms{450}, {Metres{1.1}, Metres{0}, Metres{0.55}});
  CHECK(hitch_lines(rig_sheet(rig, passage::default_rules())).empty());
  rig.carrier.hitch_at = {Metres{-0.3}, Metres{0}, Metres{0.4}};
  rig.trailer.emplace();
  rig.trailer->empty = {Kilograms{400}, {Metres{0.8}, Metres{0}, Metres{0.35}}};
  rig.trailer->tongue_share = 0.12;
  rig.trailer->drawbar_length = Metres{2};
  rig.trailer->contact_length = Metres{1.6};
  rig.trailer->gauge = Metres{1.2};
  const RigSheet sheet = rig_sheet(rig, passage::default_rules());
  REQUIRE(sheet.hitch.has_value());
  CHECK(near(sheet.hitch->about_runners.value(), 941.4384, 1e-4));
  CHECK(near(sheet.hitch->off_the_front.value(), 141.2158, 1e-4));
  const std::string text = text_of(sheet, 80);
  CHECK(
      tells(text, "carries 48.0 kg, standing on level ground, 2.00 m ahead of the middle of the"));
  CHECK(tells(text, "941 N m about them"));
  CHECK(tells(text, "takes 141 N m off the carrier's front"));
  CHECK(tells(text, "each 100 N of pull takes 40 N m more off it"));
  rig.carrier.hitch_at.forward = Metres{0.3};
  CHECK(tells(text_of(rig_sheet(rig, passage::default_rules()), 80),
              "adds 141 N m to the carrier's front"));
}

}  // namespace rimehaul::card
