#include <doctest/doctest.h>

#include "card/refusal.h"
#include "card/site_report.h"
#include "passage/demo_scene.h"

namespace rimehaul::card {
namespace {

struct Asked {
  passage::Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  rig::Rig rig = testing::solo_rig();
  snow::ConstantSnow snow = testing::snow_of(snow::Wetness::wet);
  search::RouteQuestion question{
      .stations = {0, 1}, .depart = testing::mid_morning(), .permitted_by = {}};

  [[nodiscard]] Refusal refusal(const search::NoRoute& none) const {
    return make_refusal(none, {scene, rig, snow, question});
  }
};

search::Obstacle too_steep() {
  search::Obstacle obstacle;
  obstacle.finding = passage::compare(passage::Check::climb_traction, {4000, units::Unit::newtons},
                                      {3000, units::Unit::newtons});
  obstacle.finding.at = units::Metres{40};
  return obstacle;
}

TEST_CASE("a refusal says which leg, which check, by how much, and what would open it") {
  search::Obstacle obstacle = too_steep();
  obstacle.open_bed_loads = {{units::Kilograms{0}, units::Kilograms{75}}};
  obstacle.open_without_trailer = true;
  obstacle.open_in = {{snow::Wetness::dry, snow::Surface::groomed}};
  const Refusal refusal = Asked{}.refusal({"every way is closed", {obstacle}});
  REQUIRE(refusal.legs.size() == 1);
  const std::string text = text_of(refusal, 80);
  for (const char* part :
       {"every way is closed", "Lower Way", "climb traction at 40 m", "134 % of the limit",
        "demand 4000 N, capacity 3000 N", "bed load from 0 kg to 75 kg", "no trailer",
        "dry, groomed", "wet, groomed at the start; assumed"}) {
    CAPTURE(part);
    CHECK(text.find(part) != std::string::npos);
  }
  CHECK(refusal.legs[0].stand == passage::Stand::exceeds);
  CHECK_FALSE(refusal.only_by_decision());
}

TEST_CASE("what is not known is refused with the option or file that would tell it") {
  search::Obstacle obstacle;
  obstacle.finding = passage::unknown(passage::Check::visibility, "how far one sees");
  const Refusal refusal = Asked{}.refusal({"not known", {obstacle}});
  CHECK(refusal.legs[0].stand == passage::Stand::missing);
  CHECK(refusal.legs[0].remedy.find("--visibility") != std::string::npos);
  CHECK(text_of(refusal, 80).find("not known: how far one sees") != std::string::npos);
}

TEST_CASE("when only a decision is wanting, the refusal says that a named person may take it") {
  search::Obstacle obstacle;
  obstacle.finding = passage::kept(passage::Check::avalanche);
  obstacle.finding.asks = "drive near steep ground";
  obstacle.decision = obstacle.finding.asks;
  const Refusal refusal = Asked{}.refusal({"a decision is wanting", {obstacle}});
  CHECK(refusal.only_by_decision());
  CHECK(text_of(refusal, 80).find("--permitted-by") != std::string::npos);
}

TEST_CASE("a turn in the way is told as a turn from one trail into the other") {
  search::Obstacle obstacle = too_steep();
  obstacle.leg = trails::LegId{4};
  obstacle.turn_from = trails::LegId{0};
  const Asked asked;
  const Refusal refusal = asked.refusal({"closed", {obstacle}});
  CHECK(refusal.legs[0].turn_from == "Lower Way");
  CHECK(text_of(refusal, 80).find("turn from Lower Way into ") != std::string::npos);
}

TEST_CASE("a site with doubts alone is usable, with one fault it is not") {
  SiteReport report;
  report.site = "Test Fell";
  report.faults = {{"a.gpkg", "trail X", "looks odd", "look", base::Weight::doubt}};
  CHECK(report.usable());
  CHECK(text_of(report, 80).find("0 faults, 1 doubt: usable") != std::string::npos);
  report.faults.push_back({"b.toml", "line 3", "is wrong", "mend it", base::Weight::fault});
  CHECK_FALSE(report.usable());
  const std::string text = text_of(report, 80);
  CHECK(text.find("fault: b.toml: line 3: is wrong; mend it\n") != std::string::npos);
  CHECK(text.find("1 fault, 1 doubt: not usable") != std::string::npos);
}

}  // namespace
}  // namespace rimehaul::card
