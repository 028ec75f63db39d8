// Zones that a line touches, and what they say.
#include "passage/zone_rules.h"

#include <doctest/doctest.h>

#include <cmath>

#include "passage/demo_scene.h"

namespace rimehaul::passage {

namespace {

using testing::place;
using units::Metres;
using units::MetresPerSecond;

Stand stand(const Finding& finding) {
  return stand_of(finding, 0.7);
}

trails::Zone square_zone(trails::ZoneKind kind, double west, double south, double side) {
  return {
      .name = "Kettle",
      .kind = kind,
      .region = {{{place(west, south), place(west + side, south), place(west + side, south + side),
                   place(west, south + side), place(west, south)}}},
      .speed = std::nullopt};
}

TEST_CASE("a line touches a zone when it comes as near as it may be off, and not a hair less") {
  const trails::Zone zone = square_zone(trails::ZoneKind::forbidden, 40, 3, 20);
  const geo::Polyline past{{place(0, 0), place(100, 0)}};
  CHECK(geo::touches(zone.region, past, Metres{3}));
  CHECK_FALSE(geo::touches(zone.region, past, Metres{2.999}));
  CHECK(geo::touches(zone.region, past, Metres{std::nan("")}));
  const geo::Polyline inside{{place(45, 10), place(50, 10)}};
  CHECK(geo::touches(zone.region, inside, Metres{0}));
  const geo::Polyline through{{place(0, 13), place(100, 13)}};
  CHECK(geo::touches(zone.region, through, Metres{0}));
  const geo::Polyline diagonal_past_corner{{place(30, 3), place(40, -7)}};
  // From the corner (40, 3) to the line E + N = 33 it is 10 / sqrt(2) metres.
  CHECK(geo::touches(zone.region, diagonal_past_corner, Metres{10 / std::sqrt(2.0) + 1e-6}));
  CHECK_FALSE(geo::touches(zone.region, diagonal_past_corner, Metres{10 / std::sqrt(2.0) - 1e-6}));
}

TEST_CASE("forbidden ground is refused, a speed limit slows, one without its speed is missing") {
  const geo::Polyline line{{place(0, 0), place(100, 0)}};
  std::vector<trails::Zone> zones{square_zone(trails::ZoneKind::open_ground, 40, -10, 20)};
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::passes);
  zones.push_back(square_zone(trails::ZoneKind::speed_limit, 40, -10, 20));
  zones.back().speed = MetresPerSecond{3};
  zones.push_back(square_zone(trails::ZoneKind::speed_limit, 10, -10, 20));
  zones.back().speed = MetresPerSecond{2};
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::passes);
  CHECK(judge_zones(zones, line, Metres{1}).speed == MetresPerSecond{2});
  zones.back().speed = MetresPerSecond{std::nan("")};
  CHECK(std::isnan(judge_zones(zones, line, Metres{1}).speed.value()));
  zones.back().speed.reset();
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::missing);
  zones.pop_back();
  zones.push_back(square_zone(trails::ZoneKind::forbidden, 90, -10, 20));
  CHECK(stand(judge_zones(zones, line, Metres{1}).finding) == Stand::refused);
}

TEST_CASE(
    "the lowest limit counts in whichever order zones come, and one that is no number stays") {
  const geo::Polyline line{{place(0, 0), place(100, 0)}};
  const auto limited_to = [&](double first, double second) {
    std::vector<trails::Zone> zones(2, square_zone(trails::ZoneKind::speed_limit, 40, -10, 20));
    zones[0].speed = MetresPerSecond{first};
    zones[1].speed = MetresPerSecond{second};
    return judge_zones(zones, line, Metres{1}).speed.value();
  };
  CHECK(limited_to(2, 3) == 2);
  CHECK(limited_to(3, 2) == 2);
  CHECK(std::isnan(limited_to(std::nan(""), 3)));
  CHECK(std::isnan(limited_to(3, std::nan(""))));
}

TEST_CASE("of several zones that close, the one that binds first is told") {
  const geo::Polyline line{{place(0, 0), place(100, 0)}};
  std::vector<trails::Zone> zones{square_zone(trails::ZoneKind::forbidden, 40, -10, 20),
                                  square_zone(trails::ZoneKind::forbidden, 60, -10, 20)};
  zones[1].name = "Hollow";
  CHECK(judge_zones(zones, line, Metres{1}).finding.refused == "forbidden ground 'Kettle'");
  zones.insert(zones.begin(), square_zone(trails::ZoneKind::speed_limit, 10, -10, 20));
  const Finding missing = judge_zones(zones, line, Metres{1}).finding;
  CHECK(stand(missing) == Stand::missing);
  CHECK(missing.missing == "speed of the speed limit 'Kettle'");
}

}  // namespace

}  // namespace rimehaul::passage
