// The same reason on many legs is one cause.
#include "search/causes.h"

#include <doctest/doctest.h>

#include "passage/course.h"

using namespace rimehaul;
using namespace rimehaul::search;
using passage::Check;

namespace {

constexpr double kAllowed = 0.7;

passage::Finding share_of(Check check, double share) {
  passage::Finding finding = passage::kept(check);
  finding.share = share;
  return finding;
}

Obstacle obstacle_on(std::uint32_t leg, std::vector<passage::Finding> findings) {
  Obstacle obstacle;
  obstacle.leg = trails::LegId{leg};
  obstacle.finding = findings.front();
  obstacle.findings = std::move(findings);
  return obstacle;
}

}  // namespace

TEST_CASE("findings of one check in the same words are one cause; its worst place is kept") {
  NoRoute none;
  none.obstacles = {obstacle_on(0, {share_of(Check::climb_traction, 0.8)}),
                    obstacle_on(2, {share_of(Check::climb_traction, 1.2)}),
                    obstacle_on(4, {share_of(Check::climb_traction, 0.9)})};
  const auto causes = causes_of(none, kAllowed);
  REQUIRE(causes.size() == 1);
  CHECK(causes[0].obstacles == std::vector<std::size_t>{0, 1, 2});
  CHECK(causes[0].worst == 1);
  CHECK(causes[0].finding.share == 1.2);
}

TEST_CASE("other words, other gaps and other stands are other causes") {
  passage::Finding asks = share_of(Check::avalanche, 0.0);
  asks.asks = "to drive too near";
  NoRoute none;
  none.obstacles = {
      obstacle_on(0, {passage::refusal(Check::direction, "trail A is one-way"),
                      passage::unknown(Check::avalanche, "the bulletin")}),
      obstacle_on(2, {passage::refusal(Check::direction, "trail B is one-way"), asks}),
      obstacle_on(4, {share_of(Check::avalanche, 0.9)})};
  CHECK(causes_of(none, kAllowed).size() == 5);
}

TEST_CASE("the cause at most places comes first, of equals the one that binds") {
  NoRoute none;
  none.obstacles = {
      obstacle_on(0, {share_of(Check::climb_traction, 5.0),
                      passage::refusal(Check::towing_in_wet_snow, "no trailer")}),
      obstacle_on(2, {share_of(Check::jackknife, 9.0), share_of(Check::climb_traction, 5.0),
                      passage::refusal(Check::towing_in_wet_snow, "no trailer")})};
  const auto causes = causes_of(none, kAllowed);
  REQUIRE(causes.size() == 3);
  CHECK(causes[0].finding.check == Check::towing_in_wet_snow);
  CHECK(causes[1].finding.check == Check::climb_traction);
  CHECK(causes[2].finding.check == Check::jackknife);
}

TEST_CASE("places are told in driving order, a leg before the turn into it") {
  NoRoute none;
  none.obstacles = {obstacle_on(6, {share_of(Check::payload, 0.8)}),
                    obstacle_on(2, {share_of(Check::payload, 0.8)}),
                    obstacle_on(2, {share_of(Check::payload, 0.8)}),
                    obstacle_on(9, {share_of(Check::payload, 0.8)})};
  none.obstacles[1].turn_from = trails::LegId{6};
  none.way = {trails::LegId{9}, trails::LegId{6}, trails::LegId{2}};
  const auto causes = causes_of(none, kAllowed);
  REQUIRE(causes.size() == 1);
  CHECK(causes[0].obstacles == std::vector<std::size_t>{3, 0, 2, 1});
}

TEST_CASE("snow that nobody told of is one cause, though several checks lack it") {
  const std::string snow = "snow at this place and hour";
  NoRoute none;
  none.obstacles = {obstacle_on(0, {passage::unknown(Check::snow_known, snow),
                                    passage::unknown(Check::avalanche, snow)}),
                    obstacle_on(2, {passage::unknown(Check::avalanche, "the bulletin")})};
  const auto causes = causes_of(none, kAllowed);
  REQUIRE(causes.size() == 2);
  CHECK(causes[0].finding.check == Check::snow_known);
  CHECK(causes[1].finding.missing == "the bulletin");
}

TEST_CASE("where there are no heights, snow and ground around are no causes of their own") {
  const std::string none_here = passage::kNoHeightsHere;
  NoRoute none;
  none.obstacles = {obstacle_on(0, {passage::unknown(Check::heights_known, none_here),
                                    passage::unknown(Check::snow_known, none_here),
                                    passage::unknown(Check::avalanche, none_here)}),
                    obstacle_on(2, {passage::unknown(Check::snow_known, "grip of this snow")})};
  const auto causes = causes_of(none, kAllowed);
  REQUIRE(causes.size() == 2);
  CHECK(causes[0].finding.check == Check::heights_known);
  CHECK(causes[1].finding.missing == "grip of this snow");
}

TEST_CASE("an obstacle whose findings nobody filled in counts with the one that binds") {
  NoRoute none;
  none.obstacles = {obstacle_on(0, {share_of(Check::payload, 0.8)})};
  none.obstacles[0].findings.clear();
  REQUIRE(causes_of(none, kAllowed).size() == 1);
  CHECK(causes_of(none, kAllowed)[0].finding.check == Check::payload);
  CHECK(causes_of({}, kAllowed).empty());
}
