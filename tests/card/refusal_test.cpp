#include <doctest/doctest.h>

#include "card/refusal.h"
#include "card/site_report.h"
#include "card/words.h"
#include "passage/demo_scene.h"
#include "search/causes.h"

namespace rimehaul::card {
namespace {

struct Asked {
  passage::Scene scene = testing::scene_of({testing::rolling()}, testing::two_ways());
  rig::Rig rig = testing::solo_rig();
  snow::ConstantSnow snow = testing::snow_of(snow::Wetness::wet);
  search::RouteQuestion question{
      .stations = {0, 1}, .depart = testing::mid_morning(), .permitted_by = {}};

  /// The causes are those of the obstacles, unless a test has told them.
  [[nodiscard]] Refusal refusal(search::NoRoute none) const {
    if (none.causes.empty()) {
      none.causes = search::causes_of(none, 0.7);
    }
    return make_refusal(none, {scene, rig, snow, question});
  }
};

bool says(const Refusal& refusal, const std::string& part) {
  return text_of(refusal, 200).find(part) != std::string::npos;
}

passage::LoadInterval kilograms(double from, double to) {
  return {units::Kilograms{from}, units::Kilograms{to}};
}

search::Obstacle too_steep() {
  search::Obstacle obstacle;
  obstacle.finding = passage::compare(passage::Check::climb_traction, {4000, units::Unit::newtons},
                                      {3000, units::Unit::newtons});
  obstacle.finding.at = units::Metres{40};
  return obstacle;
}

TEST_CASE("a refusal says which leg, which check, by how much, and what would open it") {
  search::Obstacle obstacle = too_steep();
  search::NoRoute none{"every way is closed", {obstacle}};
  none.causes = search::causes_of(none, 0.7);
  none.causes[0].lifts.loads.bed = {kilograms(0, 75)};
  none.causes[0].lifts.without_trailer = true;
  none.causes[0].lifts.snow = {{snow::Wetness::dry, snow::Surface::groomed}};
  const Refusal refusal = Asked{}.refusal(none);
  REQUIRE(refusal.legs.size() == 1);
  const std::string text = text_of(refusal, 200);
  for (const char* part :
       {"every way is closed", "Lower Way", "climb traction, on Lower Way",
        "at 40 m: 134 % of the limit", "demand 4000 N, capacity 3000 N",
        "lifted by bed load from 0 kg to 75 kg", "or by     no trailer",
        "or by     snow that is dry, groomed", "wet, groomed at the start; assumed"}) {
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
  CHECK(says(refusal, "say it by --visibility METRES"));
  search::NoRoute on_a_way{"not known", {obstacle}};
  on_a_way.way = {trails::LegId{0}};
  CHECK(says(Asked{}.refusal(on_a_way), "Opens by  telling what is not known"));
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

TEST_CASE("the same cause on all legs of the way is told once, with its worst place") {
  search::NoRoute none{"no open way", {too_steep(), too_steep(), too_steep()}};
  none.obstacles[1].leg = trails::LegId{4};
  none.obstacles[1].finding.share = 2.0;
  none.obstacles[2].leg = trails::LegId{4};
  none.obstacles[2].turn_from = trails::LegId{0};
  none.way = {trails::LegId{0}, trails::LegId{4}};
  const Asked asked;
  const Refusal refusal = asked.refusal(none);
  REQUIRE(refusal.legs.size() == 3);
  REQUIRE(refusal.causes.size() == 1);
  CHECK(refusal.causes[0].where == "on all 2 legs and 1 turn");
  CHECK(refusal.causes[0].worst == 1);
  CHECK(says(refusal, "- climb traction, on all 2 legs and 1 turn: at worst 200 % of the limit\n"));
  const std::string text = text_of(refusal, 200);
  const std::size_t first = text.find("climb traction");
  CHECK(text.find("climb traction", first + 1) == std::string::npos);
  CHECK(says(refusal, refusal.legs[0].trail + " 134 %, " + refusal.legs[1].trail + " 200 %"));
  none.way.push_back(trails::LegId{8});
  none.causes.clear();
  CHECK(asked.refusal(none).causes[0].where == "on 2 of 3 legs and 1 turn");
  none.way.clear();
  CHECK(asked.refusal(none).causes[0].where == "on 2 legs and 1 turn");
}

TEST_CASE("a site's rule against the trailer is one line, and the next says: no trailer") {
  search::Obstacle obstacle;
  obstacle.finding = passage::refusal(passage::Check::towing_in_wet_snow,
                                      "no trailer in snow wetter than very wet");
  search::NoRoute none{"no open way", {obstacle, obstacle}};
  none.obstacles[1].leg = trails::LegId{4};
  none.way = {trails::LegId{0}, trails::LegId{4}};
  none.causes = search::causes_of(none, 0.7);
  none.causes[0].lifts.without_trailer = true;
  none.opens.without_trailer = true;
  const Refusal refusal = Asked{}.refusal(none);
  CHECK(says(refusal,
             "- towing in wet snow, on all 2 legs: refused by the site's rules: no trailer "
             "in snow wetter than very wet\n"));
  CHECK(says(refusal, "    lifted by no trailer\n"));
  CHECK(says(refusal, "Opens by  no trailer\n"));
  CHECK(refusal.verdict() == passage::Verdict::closed);
}

TEST_CASE("a leg that some load opens is restricted to it, and so is a way") {
  search::Obstacle obstacle = too_steep();
  obstacle.opens.loads.towed = {kilograms(20.4, 139.7)};
  search::NoRoute none{"no open way", {obstacle}};
  none.way = {trails::LegId{0}};
  CHECK(Asked{}.refusal(none).legs[0].verdict == passage::Verdict::restricted);
  CHECK(Asked{}.refusal(none).legs[0].opens_it ==
        std::vector<std::string>{"towed load from 21 kg to 139 kg"});  // inwards
  CHECK(Asked{}.refusal(none).verdict() == passage::Verdict::closed);
  none.opens.loads = obstacle.opens.loads;
  const Refusal refusal = Asked{}.refusal(none);
  CHECK(refusal.verdict() == passage::Verdict::restricted);
  CHECK(says(refusal, "Opens by  towed load from 21 kg to 139 kg\n"));
  none.opens.and_decision = true;
  CHECK(says(Asked{}.refusal(none), "139 kg; with a named person's decision besides"));
  none.opens = {};
  CHECK(says(Asked{}.refusal(none), "Opens by  nothing that was tried: other loads, other snow\n"));
  none.other_ways = {{{trails::LegId{4}}, obstacle.opens}};
  CHECK(Asked{}.refusal(none).verdict() == passage::Verdict::restricted);
  CHECK(says(Asked{}.refusal(none), "Or take   " + Asked{}.refusal(none).other_ways[0].trails[0]));
}

TEST_CASE("loads, pairs of loads and snow are told in words that cannot be taken amiss") {
  using passage::LoadPlace;
  CHECK(words::opens_with_load(LoadPlace::bed, kilograms(0, 139)) ==
        "bed load from 0 kg to 139 kg");
  CHECK(words::opens_with_load(LoadPlace::towed, kilograms(0, 0)) == "towed load of 0 kg alone");
  CHECK(words::opens_with_loads({{}, {}, {{kilograms(0, 50), kilograms(10, 100)}}}) ==
        std::vector<std::string>{
            "bed load from 0 kg to 50 kg together with towed load from 10 kg to 100 kg"});
  using snow::Surface;
  using snow::Wetness;
  CHECK(words::opens_in_snow({{Wetness::dry, Surface::groomed}}) == "snow that is dry, groomed");
  CHECK(words::opens_in_snow({{Wetness::dry, Surface::groomed},
                              {Wetness::moist, Surface::groomed},
                              {Wetness::wet, Surface::groomed},
                              {Wetness::slush, Surface::groomed},
                              {Wetness::slush, Surface::fresh}}) ==
        "snow that is dry, moist or wet, groomed; slush, groomed or fresh");
  std::vector<snow::SnowState> dry;
  for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
    dry.push_back({Wetness::dry, static_cast<Surface>(surface)});
  }
  CHECK(words::opens_in_snow(dry) == "snow that is dry on any surface");
  search::Openings opens;
  opens.bed_without_trailer = {kilograms(0, 20)};
  opens.snow_without_trailer = {{Wetness::dry, Surface::groomed}};
  CHECK(words::openings(opens) ==
        std::vector<std::string>{"no trailer, and bed load from 0 kg to 20 kg",
                                 "no trailer, and snow that is dry, groomed"});
}

TEST_CASE("a trail outside its hours opens by another hour") {
  search::Obstacle obstacle;
  obstacle.finding =
      passage::refusal(passage::Check::hours, "trail Lower Way is open 16:00 to 20:00");
  CHECK(says(Asked{}.refusal({"closed", {obstacle}}),
             "lifted by an entry within the hours of the trail\n"));
}

TEST_CASE("company, no passengers and a later entry lift what they lift") {
  const auto told_of = [](const passage::Finding& finding) {
    search::Obstacle obstacle;
    obstacle.finding = finding;
    return Asked{}.refusal({"closed", {obstacle}});
  };
  using passage::Check;
  CHECK(says(told_of(passage::refusal(Check::alone, "without radio")),
             "lifted by a second rig or a second trained person along (--accompanied)\n"));
  CHECK(says(told_of(passage::refusal(Check::passengers, "nobody rides")),
             "lifted by no passengers (--passengers 0)\n"));
  CHECK(says(told_of(passage::refusal(Check::grooming, "has not set")),
             "lifted by a later entry, when the snow has set\n"));
  CHECK_FALSE(says(told_of(passage::refusal(Check::rain, "rain")), "lifted by a"));
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
