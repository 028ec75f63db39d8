// The slope audit: stretches that exceed, found where closed forms put them, and as the judge does.
#include "audit/slope_audit.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

#include "near.h"
#include "passage/demo_scene.h"

using namespace rimehaul;
using namespace rimehaul::testing;
using audit::Band;
using passage::Check;
using passage::Stand;
using trails::Way;
using units::Metres;

namespace {

/// A site, a rig and one snow, audited trail by trail.
struct Audited {
  Audited(passage::Scene of_scene, rig::Rig of_rig, snow::Wetness wetness = snow::Wetness::dry)
      : scene{std::move(of_scene)},
        bare{audit::without_errors(scene)},
        rig{std::move(of_rig)},
        snow{snow_of(wetness)},
        judge{scene, rig, snow},
        as_measured{bare, rig, snow} {}
  Audited(const Audited&) = delete;
  Audited& operator=(const Audited&) = delete;

  [[nodiscard]] audit::TrailAudit trail(std::size_t index, Way way = Way::as_drawn) const {
    return audit::audit_trail(audit::measure(scene, rig, {index, way}), {judge, as_measured},
                              mid_morning());
  }

  passage::Scene scene;
  passage::Scene bare;
  rig::Rig rig;
  snow::ConstantSnow snow;
  passage::Judge judge;
  passage::Judge as_measured;
};

std::vector<audit::AuditedPlace> of_check(const audit::TrailAudit& audited, Check check) {
  std::vector<audit::AuditedPlace> found;
  for (const audit::AuditedPlace& place : audited.exceedances) {
    if (place.finding.check == check && place.on == audit::On::trail) {
      found.push_back(place);
    }
  }
  return found;
}

/// Level, then a ramp northward from 150 m to 200 m, then level again.
Surface ramp(double tangent) {
  return [=](double /*east_m*/, double north_m) {
    return 1000.0 + tangent * std::clamp(north_m - 150.0, 0.0, 50.0);
  };
}

const double kRatedClimb = std::tan(25.0 * std::numbers::pi / 180.0);

}  // namespace

TEST_CASE("on an even slope the climb rating exceeds from end to end, by tan / tan(25 deg)") {
  const double tangent = 0.40;
  const Audited site{scene_of({.ground = plane(0, tangent)}, straight_trail(0)), solo_rig()};
  const auto audited = site.trail(0);
  const auto climb = of_check(audited, Check::climb_rating);
  REQUIRE(climb.size() == 1);
  CHECK(near(climb[0].span.from, Metres{0}, Metres{1e-6}));
  CHECK(near(climb[0].span.to, Metres{300}, Metres{1e-6}));
  CHECK(climb[0].stand == Stand::exceeds);
  // Closed form: demand over capacity are tangents; the error is added as a tangent.
  const double tolerance = site.judge.tolerance()->ratio();
  REQUIRE(climb[0].found_share.has_value());
  CHECK(near(*climb[0].found_share, tangent / kRatedClimb, 1e-6));
  CHECK(near(*climb[0].finding.share, (tangent + tolerance) / kRatedClimb, 1e-6));
  CHECK(*climb[0].found_share < *climb[0].finding.share);
  CHECK(near(audited.lengths.total(), Metres{300}, Metres{1e-6}));
}

TEST_CASE("a ramp within a level trail exceeds where the tracks touch it, to within one piece") {
  const Audited site{scene_of({.ground = ramp(0.40), .cell_m = 1.0, .extent = {-60, -60, 60, 380}},
                              straight_trail(0)),
                     solo_rig()};
  const Metres piece = site.scene.rules.piece_length;
  const Metres beyond = piece + site.rig.carrier.contact_length / 2 + Metres{1};  // and one cell
  for (const Way way : {Way::as_drawn, Way::against}) {
    const auto steep = of_check(site.trail(0, way),
                                way == Way::as_drawn ? Check::climb_rating : Check::descent_rating);
    REQUIRE(steep.size() == 1);
    CHECK(steep[0].span.from <= Metres{150});
    CHECK(steep[0].span.from >= Metres{150} - beyond);
    CHECK(steep[0].span.to >= Metres{200});
    CHECK(steep[0].span.to <= Metres{200} + beyond);
    CHECK(steep[0].at >= steep[0].span.from);
    CHECK(steep[0].at <= steep[0].span.to);
    CHECK(geo::distance(steep[0].place, place(0, steep[0].at.value())) < Metres{1e-6});
  }
}

TEST_CASE("one step to either side of the allowed share: none exceeds below, all does above") {
  const Audited probe{scene_of({.ground = plane(0, 0.2)}, straight_trail(0)), solo_rig()};
  const double limit = 0.7 * kRatedClimb - probe.judge.tolerance()->ratio();
  const Audited below{scene_of({.ground = plane(0, limit - 1e-6)}, straight_trail(0)), solo_rig()};
  const Audited above{scene_of({.ground = plane(0, limit + 1e-6)}, straight_trail(0)), solo_rig()};
  CHECK(of_check(below.trail(0), Check::climb_rating).empty());
  CHECK(of_check(above.trail(0), Check::climb_rating).size() == 1);
}

TEST_CASE("a hole in the heights is a stretch that is not known, and the rest stays known") {
  const auto hole = with_void(
      plane(0, 0.02), [](double, double north_m) { return north_m > 140.0 && north_m < 160.0; });
  const Audited site{scene_of({.ground = hole}, straight_trail(0)), solo_rig()};
  const auto audited = site.trail(0);
  const auto unknown = of_check(audited, Check::heights_known);
  REQUIRE(unknown.size() == 1);
  CHECK(unknown[0].stand == Stand::missing);
  CHECK_FALSE(unknown[0].finding.missing.empty());
  CHECK_FALSE(unknown[0].found_share.has_value());
  CHECK(unknown[0].span.from <= Metres{140});
  CHECK(unknown[0].span.to >= Metres{160});
  CHECK(unknown[0].span.from > Metres{110});
  CHECK(unknown[0].span.to < Metres{190});
  // Other checks may close more around the hole, never less.
  CHECK(audited.lengths.of(Band::closed) >= unknown[0].span.to - unknown[0].span.from);
  CHECK(near(audited.lengths.total(), Metres{300}, Metres{1e-6}));
}

TEST_CASE("what holds for a whole trail is one exceedance from end to end, over its legs") {
  passage::Scene scene = scene_of({.ground = rolling()}, two_ways());
  scene.network.trails[0].marker_spacing.reset();
  const Audited site{std::move(scene), solo_rig()};
  const auto audited = site.trail(0);
  const auto sight = of_check(audited, Check::visibility);
  REQUIRE(audit::measure(site.scene, site.rig, {0, Way::as_drawn}).legs.size() > 1);
  REQUIRE(sight.size() == 1);
  CHECK(near(sight[0].span.from, Metres{0}, Metres{1e-6}));
  CHECK(near(sight[0].span.to, site.scene.network.trails[0].line.length(), Metres{1e-6}));
  CHECK(near(audited.lengths.of(Band::closed), audited.lengths.total(), Metres{1e-6}));
  CHECK(audited.tightest.empty());
}

TEST_CASE("hours that the drive does not keep exceed, though no single footfall tells") {
  passage::Scene scene = scene_of({.ground = rolling()}, two_ways());
  scene.network.trails[0].hours = trails::OpenHours{{600}, {960}};  // from 10:00; it is 9:00
  const Audited site{std::move(scene), solo_rig()};
  CHECK(of_check(site.trail(0), Check::hours).size() == 1);
}

TEST_CASE("a leg that is closed has an exceedance on it, a leg that is not closed has none") {
  std::size_t closed = 0;
  std::size_t open = 0;
  for (const double steep : {0.02, 0.12, 0.2}) {
    for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
      for (const bool tows : {false, true}) {
        const Surface ground = [=](double east_m, double north_m) {
          return 1200.0 + steep * north_m + 6.0 * std::sin(east_m / 60.0);
        };
        const Audited site{scene_of({.ground = ground}, two_ways()),
                           tows ? towing_rig() : solo_rig(), static_cast<snow::Wetness>(wetness)};
        for (std::size_t trail = 0; trail < site.scene.network.trails.size(); ++trail) {
          for (const Way way : {Way::as_drawn, Way::against}) {
            const auto audited = site.trail(trail, way);
            for (const audit::MeasuredLeg& leg :
                 audit::measure(site.scene, site.rig, {trail, way}).legs) {
              const bool told =
                  std::ranges::any_of(audited.exceedances, [&](const audit::AuditedPlace& place) {
                    return place.on == audit::On::trail &&
                           place.span.from < leg.stretch.span.to - Metres{1e-6} &&
                           place.span.to > leg.stretch.span.from + Metres{1e-6};
                  });
              const bool is_closed =
                  site.judge.judge(leg.leg, mid_morning()).verdict == passage::Verdict::closed;
              CHECK(told == is_closed);
              ++(is_closed ? closed : open);
            }
          }
        }
      }
    }
  }
  CHECK(closed > 10);
  CHECK(open > 10);
}

TEST_CASE("pieces cover a trail without gap or overlap, and the bands add up to its length") {
  const Audited site{scene_of({.ground = rolling()}, two_ways()), towing_rig()};
  for (std::size_t trail = 0; trail < site.scene.network.trails.size(); ++trail) {
    const auto audited = site.trail(trail, Way::against);
    Metres end = site.scene.network.trails[trail].line.length();
    CHECK(near(audited.lengths.total(), end, Metres{1e-6}));
    for (const audit::GradedPiece& piece : audited.pieces) {
      CHECK(near(piece.span.to, end, Metres{1e-6}));
      end = piece.span.from;
    }
    CHECK(near(end, Metres{0}, Metres{1e-6}));
  }
}

TEST_CASE("the tightest places are open, stand apart, and come with the largest share first") {
  const Audited site{scene_of({.ground = rolling()}, two_ways()), solo_rig()};
  const auto audited = site.trail(1);
  REQUIRE(audited.tightest.size() > 1);
  for (std::size_t i = 0; i < audited.tightest.size(); ++i) {
    CHECK_FALSE(audit::exceeds(audited.tightest[i].stand));
    for (std::size_t j = 0; j < i; ++j) {
      CHECK_FALSE(audit::near_each_other(audited.tightest[i], audited.tightest[j]));
      CHECK_FALSE(audit::tighter(audited.tightest[i], audited.tightest[j]));
    }
  }
}

TEST_CASE("bands: each end belongs to the milder one, and NaN to none but closed") {
  const auto band = [](double share) {
    passage::Finding finding = passage::kept(Check::climb_rating);
    finding.share = share;
    return audit::band_of(finding, 0.7);
  };
  CHECK(band(0.5) == Band::to_half);
  CHECK(band(std::nextafter(0.5, 1)) == Band::to_allowed);
  CHECK(band(0.7) == Band::to_allowed);
  CHECK(band(std::nextafter(0.7, 1)) == Band::to_whole);
  CHECK(band(1.0) == Band::to_whole);
  CHECK(band(std::nextafter(1.0, 2)) == Band::over_whole);
  CHECK(band(std::nan("")) == Band::closed);
  CHECK(audit::band_of(passage::refusal(Check::zone, "forbidden"), 0.7) == Band::closed);
  CHECK(audit::band_of(passage::unknown(Check::wind, "wind"), 0.7) == Band::closed);
  const passage::Finding nothing_left =
      passage::compare(Check::climb_traction, units::count_of(1), units::count_of(-1));
  CHECK(audit::band_of(nothing_left, 0.7) == Band::over_whole);
}

TEST_CASE("only the ways that a trail allows are audited; both where nobody said") {
  trails::Trail trail = plain_trail("T", {place(0, 0), place(0, 100)});
  CHECK(audit::allowed_ways(trail).size() == 2);
  trail.direction = trails::AllowedDirection::forward;
  CHECK(audit::allowed_ways(trail) == std::vector{Way::as_drawn});
  trail.direction = trails::AllowedDirection::backward;
  CHECK(audit::allowed_ways(trail) == std::vector{Way::against});
  trail.direction.reset();
  CHECK(audit::allowed_ways(trail).size() == 2);
}
