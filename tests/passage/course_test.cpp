// Single places of one line: what is asked there, and what is unknown as soon as one part of it is.
#include "passage/course.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

#include "near.h"
#include "passage/demo_scene.h"
#include "passage/stretch_judge.h"

namespace rimehaul::passage {

namespace {

using terrain::AttitudeBox;
using testing::mid_morning;
using testing::near;
using units::Metres;
using units::MetresPerSecond;
using units::Slope;

constexpr snow::SnowState kDry{snow::Wetness::dry, snow::Surface::groomed};
constexpr double kNoNumber = std::numeric_limits<double>::quiet_NaN();

/// One place 100 m along a trail to the north that climbs by 10 %, and who judges it.
struct Place {
  explicit Place(rig::Rig stands) : rig{std::move(stands)} {}
  Place(const Place&) = delete;
  Place& operator=(const Place&) = delete;

  [[nodiscard]] PlaceJudgement judged() const { return judge_place(course, step, there); }
  [[nodiscard]] Finding found(Check check) const {
    const PlaceJudgement all = judged();
    const auto finding = std::ranges::find(all.findings, check, &Finding::check);
    REQUIRE(finding != all.findings.end());
    return *finding;
  }
  [[nodiscard]] std::optional<Footing> footing(Tank tank) const {
    return footing_at(course, step, there, tank);
  }

  rig::Rig rig;
  Scene scene = testing::scene_of({testing::plane(0, 0.1)}, testing::straight_trail(0));
  snow::ConstantSnow snow = testing::snow_of(snow::Wetness::dry);
  Judge judge{scene, rig, snow};
  Course course = course_of(judge, scene.network.trails[0], {});
  Footfall step = footfalls(scene, scene.network.trails[0].line, rig, Metres{1})[20];
  SnowThere there{kDry, mid_morning()};
};

trails::Mark surveyed_bench() {
  trails::Mark mark;
  mark.name = "Long Bench";
  mark.kind = trails::MarkKind::bench;
  mark.survey =
      trails::Survey{Slope::from_degrees(2), Slope::from_degrees(1), Slope::from_percent(0.5),
                     *units::parse_instant("2026-01-20T00:00:00Z"), mid_morning()};
  return mark;
}

TEST_CASE("the footing of a place is its ground, error added, its grip, and the tank asked for") {
  const Place place{testing::towing_rig()};
  const std::optional<Footing> full = place.footing(Tank::as_loaded);
  const std::optional<Footing> dry = place.footing(Tank::empty);
  REQUIRE(full.has_value());
  REQUIRE(dry.has_value());
  const double error = place.course.tolerance->ratio();
  for (const AttitudeBox& box : {full->carrier, full->trailer, dry->carrier}) {
    CHECK(near(box.grade_high.ratio(), 0.1 + error, 1e-8));
    CHECK(near(box.cross_low.ratio(), -error, 1e-8));
  }
  // 30 l of 741 kg/m3.
  CHECK(near((full->weighed.carrier.mass - dry->weighed.carrier.mass).value(), 22.23, 1e-9));
  CHECK(full->grip.traction == place.judge.grip().row(kDry)->traction);
}

TEST_CASE("a place has no footing for a tank that the rig is not judged with") {
  rig::Rig rig = testing::solo_rig();
  rig.load.fuel = units::Litres{0};
  const Place place{rig};
  CHECK(place.footing(Tank::as_loaded).has_value());
  CHECK_FALSE(place.footing(Tank::empty).has_value());
}

TEST_CASE("a place of unknown snow, or of unknown ground under either body, has no footing") {
  Place place{testing::towing_rig()};
  place.there.state.reset();
  CHECK_FALSE(place.footing(Tank::as_loaded).has_value());
  place.there.state = kDry;
  const auto trailer = std::exchange(place.step.trailer, std::nullopt);
  CHECK_FALSE(place.footing(Tank::as_loaded).has_value());
  place.step.trailer = trailer;
  CHECK(place.footing(Tank::as_loaded).has_value());
  place.step.carrier.reset();
  CHECK_FALSE(place.footing(Tank::as_loaded).has_value());
}

TEST_CASE("tracks of no known area have no grip: no footing, no speed, and the snow is to blame") {
  rig::Rig rig = testing::solo_rig();
  rig.carrier.contact_area = units::SquareMetres{0};
  const Place place{rig};
  CHECK_FALSE(place.footing(Tank::as_loaded).has_value());
  CHECK(place.found(Check::snow_known).missing == "grip of this snow for this rig");
  CHECK_FALSE(place.judged().speed.has_value());
}

TEST_CASE("a place whose ground under the trailer alone is unknown is closed for want of heights") {
  Place place{testing::towing_rig()};
  CHECK(stand_of(place.found(Check::heights_known), 0.7) == Stand::passes);
  CHECK(place.judged().speed.has_value());
  place.step.trailer.reset();
  CHECK(stand_of(place.found(Check::heights_known), 0.7) == Stand::missing);
  CHECK_FALSE(place.judged().speed.has_value());
}

TEST_CASE("ground of which one side is no number is unknown, under carrier and trailer alike") {
  constexpr std::array kSides{&AttitudeBox::grade_low, &AttitudeBox::grade_high,
                              &AttitudeBox::cross_low, &AttitudeBox::cross_high};
  for (const auto side : kSides) {
    for (const double number : {kNoNumber, HUGE_VAL, -HUGE_VAL}) {
      for (const auto body : {&Footfall::carrier, &Footfall::trailer}) {
        Place place{testing::towing_rig()};
        REQUIRE(is_known(*(place.step.*body)));
        *(place.step.*body).*side = Slope::from_ratio(number);
        CHECK_FALSE(is_known(*(place.step.*body)));
        CHECK(stand_of(place.found(Check::heights_known), 0.7) == Stand::missing);
        CHECK_FALSE(place.judged().speed.has_value());
      }
    }
  }
}

TEST_CASE("a survey stands for unknown heights only where it covers all the ground under a body") {
  const trails::Mark bench = surveyed_bench();
  Place place{testing::solo_rig()};
  place.step.carrier.reset();
  place.step.trailer.reset();
  const Metres half = place.rig.carrier.contact_length / 2;
  const geo::Span body{place.step.span.from - half, place.step.span.to + half};
  place.course.marks = {{&bench, body}};
  CHECK(stand_of(place.found(Check::heights_known), 0.7) == Stand::passes);
  CHECK(near(place.judged().carrier->found.steepest_cross().degrees(), 1.0, 1e-9));
  place.course.marks = {{&bench, {body.from + Metres{0.01}, body.to}}};
  CHECK(stand_of(place.found(Check::heights_known), 0.7) == Stand::missing);
  place.course.marks = {{&bench, {body.from, body.to - Metres{0.01}}}};
  CHECK(stand_of(place.found(Check::heights_known), 0.7) == Stand::missing);
  CHECK_FALSE(place.judged().carrier.has_value());
}

TEST_CASE("a survey bears on a body from where its end touches the body's") {
  const trails::Mark bench = surveyed_bench();
  Place place{testing::solo_rig()};
  const Metres half = place.rig.carrier.contact_length / 2;
  const geo::Span body{place.step.span.from - half, place.step.span.to + half};
  const auto cross_with = [&](geo::Span span) {
    place.course.marks = {{&bench, span}};
    return place.judged().carrier->found.steepest_cross().degrees();
  };
  // The ground itself has none; the bench has 1 degree.
  const Metres hair{0.01};
  CHECK(near(cross_with({body.from - Metres{9}, body.from}), 1.0, 1e-9));
  CHECK(near(cross_with({body.from - Metres{9}, body.from - hair}), 0.0, 1e-6));
  CHECK(near(cross_with({body.to, body.to + Metres{9}}), 1.0, 1e-9));
  CHECK(near(cross_with({body.to + hair, body.to + Metres{9}}), 0.0, 1e-6));
}

// The trailer's middle runs 0.9 + 0.3 + 2.2 m behind the carrier's, its runners 0.8 m to both
// sides.
TEST_CASE("a survey stands for unknown heights under all that the trailer may cover, by hand") {
  const trails::Mark bench = surveyed_bench();
  Place place{testing::towing_rig()};
  place.step.trailer.reset();
  const geo::Span covered{place.step.span.from - Metres{3.4 + 0.8},
                          place.step.span.to + Metres{0.8}};
  const auto stands_on = [&](geo::Span span) {
    place.course.marks = {{&bench, span}};
    return stand_of(place.found(Check::heights_known), 0.7);
  };
  const Metres hair{0.001};
  CHECK(stands_on({covered.from - hair, covered.to + hair}) == Stand::passes);
  CHECK(stands_on({covered.from + hair, covered.to + hair}) == Stand::missing);
  CHECK(stands_on({covered.from - hair, covered.to - hair}) == Stand::missing);
}

TEST_CASE("the lower of two speeds is no number as soon as one of them is none") {
  CHECK(lower_of(MetresPerSecond{2}, MetresPerSecond{3}) == MetresPerSecond{2});
  CHECK(lower_of(MetresPerSecond{3}, MetresPerSecond{2}) == MetresPerSecond{2});
  CHECK(std::isnan(lower_of(MetresPerSecond{kNoNumber}, MetresPerSecond{2}).value()));
  CHECK(std::isnan(lower_of(MetresPerSecond{2}, MetresPerSecond{kNoNumber}).value()));
}

}  // namespace

}  // namespace rimehaul::passage
