// How shares move: as the same place judged with the change really made.
#include "card/what_if.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "card/explanation.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {
namespace {

/// A place half up a straight trail, whose ground climbs and falls away to one side.
struct OnASlope {
  explicit OnASlope(double grade = 0.1, double across = 0.05)
      : scene{testing::scene_of({testing::plane(across, grade)}, testing::straight_trail(0))} {}

  passage::Scene scene;
  rig::Rig rig = testing::towing_rig();
  snow::ConstantSnow snow = testing::snow_of(snow::Wetness::moist);

  [[nodiscard]] ExplainedWay explained(WhatIf asked = WhatIf::no) const {
    const passage::Judge judge{scene, rig, snow};
    return explain(judge, {0, units::Metres{100}}, Directions::forward, testing::mid_morning(),
                   asked)
        .ways.at(0);
  }
};

std::optional<double> share_of(const ExplainedWay& way, passage::Check check) {
  const auto found = std::ranges::find_if(way.findings, [&](const ExplainedFinding& explained) {
    return explained.finding.check == check;
  });
  REQUIRE(found != way.findings.end());
  return found->finding.share;
}

/// What a change makes of a share; the share itself where it does not move.
std::optional<double> changed(const MovingShare& moving, std::string_view change) {
  const auto found = std::ranges::find(moving.then, change, &ChangedShare::change);
  return found == moving.then.end() ? moving.now : found->share;
}

/// Every share is what the place really comes to with the change made.
void compare(const OnASlope& as_asked, const OnASlope& with_change, std::string_view change) {
  CAPTURE(change);
  const ExplainedWay way = as_asked.explained(WhatIf::yes);
  const ExplainedWay then = with_change.explained();
  REQUIRE(way.what_if.size() > 10);
  for (const MovingShare& moving : way.what_if) {
    CAPTURE(passage::facts_of(moving.check).key);
    const auto told = changed(moving, change);
    const auto found = share_of(then, moving.check);
    CHECK(told.has_value() == found.has_value());
    if (told && found) {
      CHECK(std::abs(*told - *found) <= 5e-4);
    }
  }
}

}  // namespace

TEST_CASE("nothing is told of what might be unless it is asked for") {
  CHECK(OnASlope{}.explained().what_if.empty());
}

TEST_CASE("more load, wetter snow and higher centres are as if they were asked for") {
  OnASlope bed;
  bed.rig.load.bed += units::Kilograms{10};
  compare(OnASlope{}, bed, "10 kg more on the bed");
  OnASlope towed;
  towed.rig.load.towed += units::Kilograms{10};
  compare(OnASlope{}, towed, "10 kg more on the trailer");
  OnASlope wet;
  wet.snow = testing::snow_of(snow::Wetness::wet);
  compare(OnASlope{}, wet, "a class wetter");
}

TEST_CASE("slush has no wetter class, and a rig alone no trailer to load") {
  OnASlope slush;
  slush.snow = testing::snow_of(snow::Wetness::slush);
  slush.rig = testing::solo_rig();
  for (const MovingShare& moving : slush.explained(WhatIf::yes).what_if) {
    for (const ChangedShare& then : moving.then) {
      CHECK(then.change != "a class wetter");
      CHECK(then.change != "10 kg more on the trailer");
    }
  }
}

TEST_CASE("a degree more is a degree of the box that is judged, by hand for the ratings") {
  const OnASlope site;
  const ExplainedWay way = site.explained(WhatIf::yes);
  const double degree = std::numbers::pi / 180.0;
  const auto moved = [&](passage::Check check, std::string_view change) {
    const auto found = std::ranges::find(way.what_if, check, &MovingShare::check);
    REQUIRE(found != way.what_if.end());
    return *changed(*found, change) / *found->now;
  };
  // The box as found, turned; then the heights' error is added as ever.
  const double error =
      way.ground.carrier->up_to.grade_high.ratio() - way.ground.carrier->found.grade_high.ratio();
  const auto demanded = [&](double ratio, double turn) {
    return std::tan(std::atan(ratio) + turn) + error;
  };
  const double grade = way.ground.carrier->found.grade_high.ratio();
  CHECK(moved(passage::Check::climb_rating, "1 deg more up") ==
        doctest::Approx(demanded(grade, degree) / demanded(grade, 0)).epsilon(1e-6));
  CHECK(moved(passage::Check::climb_rating, "1 deg more down") ==
        doctest::Approx(demanded(grade, -degree) / demanded(grade, 0)).epsilon(1e-6));
  CHECK(moved(passage::Check::cross_rating, "1 deg more across") > 1.0);
  CHECK(moved(passage::Check::carrier_roll_over, "centres 0.1 m higher") > 1.0);
  CHECK(moved(passage::Check::payload, "1 deg more up") == 1.0);
}

TEST_CASE("a rig of the same balance 0.1 m higher tips as told") {
  OnASlope high;
  rig::Carrier& carrier = high.rig.carrier;
  for (rig::BodyPoint* at :
       {&carrier.empty.at, &carrier.driver_at, &carrier.bed_at, &carrier.tank_at}) {
    at->up += units::Metres{0.1};
  }
  for (rig::BodyPoint& seat : carrier.seats) {
    seat.up += units::Metres{0.1};
  }
  high.rig.trailer->empty.at.up += units::Metres{0.1};
  high.rig.trailer->bed_at.up += units::Metres{0.1};
  compare(OnASlope{}, high, "centres 0.1 m higher");
}

TEST_CASE("the text tells the changes and where one would be over what is allowed") {
  const OnASlope site{0.2, 0.0};
  const passage::Judge judge{site.scene, site.rig, site.snow};
  const std::string text = text_of(explain(judge, {0, units::Metres{100}}, Directions::forward,
                                           testing::mid_morning(), WhatIf::yes),
                                   100);
  CHECK(text.find("What if, each alone") != std::string::npos);
  CHECK(text.find("a class wetter") != std::string::npos);
  CHECK(text.find("(over)") != std::string::npos);
}

}  // namespace rimehaul::card
