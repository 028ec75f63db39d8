// Legs and turns judged on made-up ground: what opens and closes them, and what never may.
#include "passage/judge.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "near.h"
#include "passage/demo_scene.h"

namespace rimehaul::passage {

namespace {

using snow::Wetness;
using testing::mid_morning;
using testing::near;
using testing::place;
using trails::LegId;
using units::Metres;
using units::MetresPerSecond;
using units::Slope;

constexpr unsigned kSeed = 20260201;

/// One straight trail on given ground; leg 0 as drawn, leg 1 against.
Scene straight_on(testing::Surface surface, double bearing_deg = 0) {
  testing::TestGround ground;
  ground.ground = std::move(surface);
  return testing::scene_of(ground, testing::straight_trail(bearing_deg));
}

Scene two_ways_scene() {
  testing::TestGround ground;
  ground.ground = testing::rolling();
  return testing::scene_of(ground, testing::two_ways());
}

LegJudgement judged(const Scene& scene, const rig::Rig& rig, LegId leg = LegId{0}) {
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  return Judge{scene, rig, snow}.judge(leg, mid_morning());
}

const Finding& finding_of(const LegJudgement& judgement, Check check) {
  for (const Finding& finding : judgement.findings) {
    if (finding.check == check) {
      return finding;
    }
  }
  FAIL("no finding of " << facts_of(check).key);
  return judgement.bind();
}

bool closed_for_want_of(const LegJudgement& judgement, Check check, const char* what) {
  return judgement.verdict == Verdict::closed &&
         finding_of(judgement, check).missing.find(what) != std::string::npos;
}

TEST_CASE("a gentle trail in dry groomed snow is open, alone and with a sled, both ways") {
  const Scene scene = straight_on(testing::plane(0, 0.02));
  for (const rig::Rig& rig : {testing::solo_rig(), testing::towing_rig()}) {
    for (const LegId leg : {LegId{0}, LegId{1}}) {
      const LegJudgement judgement = judged(scene, rig, leg);
      CHECK(judgement.verdict == Verdict::open);
      CHECK(judgement.share().value_or(1) <= judgement.allowed_share);
    }
  }
}

TEST_CASE("on an even climb the rating's share is the climb, error added, over the rating") {
  const Scene scene = straight_on(testing::plane(0, 0.1));
  const rig::Rig rig = testing::solo_rig();
  const double error = slope_tolerance(scene, rig.carrier.gauge)->ratio();
  const LegJudgement up = judged(scene, rig, LegId{0});
  const double rated = std::tan(25 * std::numbers::pi / 180);
  CHECK(near(*finding_of(up, Check::climb_rating).share, (0.1 + error) / rated, 1e-7));
  CHECK(near(up.steepest_up->found.ratio(), 0.1, 1e-8));
  CHECK(near(up.steepest_up->up_to.ratio(), 0.1 + error, 1e-8));
  // Nothing falls, but with its error counted the ground of a gentler climb might.
  REQUIRE(up.steepest_down.has_value());
  CHECK(near(up.steepest_down->found.ratio(), -0.1, 1e-8));
  CHECK(near(up.steepest_down->up_to.ratio(), error - 0.1, 1e-8));
  const LegJudgement down = judged(scene, rig, LegId{1});
  CHECK(near(*finding_of(down, Check::descent_rating).share, (0.1 + error) / rated, 1e-7));
  CHECK(near(down.steepest_down->found.ratio(), 0.1, 1e-8));
}

TEST_CASE("where no ground is known no steepness is told, and level ground has one") {
  const LegJudgement level = judged(straight_on(testing::plane(0, 0)), testing::solo_rig());
  REQUIRE(level.steepest_across.has_value());
  CHECK(near(level.steepest_across->found.ratio(), 0.0, 1e-6));
  CHECK(level.steepest_across->up_to > units::Slope{});
  CHECK(level.steepest_down->up_to > units::Slope{});
  const LegJudgement hole =
      judged(straight_on([](double, double) { return std::nan(""); }), testing::solo_rig());
  CHECK_FALSE(hole.steepest_down.has_value());
  CHECK_FALSE(hole.steepest_across.has_value());
}

TEST_CASE("climb, length, time and way over the snow of an even climb are as by hand") {
  const LegJudgement up = judged(straight_on(testing::plane(0, 0.1)), testing::solo_rig());
  CHECK(near(up.length, Metres{300}, Metres{1e-6}));
  CHECK(near(up.climb, Metres{30}, Metres{1e-6}));
  CHECK(near(up.drop, Metres{0}, Metres{1e-6}));
  CHECK(up.slowest > MetresPerSecond{0});
  CHECK(near(up.time.value(), 300 * std::sqrt(1.01) / up.slowest.value(), 1e-6));
  CHECK(up.fuel > units::Litres{0});
}

TEST_CASE("a climb too steep for the snow is closed by a check that names its place") {
  // Level to 150 m, then 30 %.
  const Scene scene = straight_on(
      [](double, double north) { return 1000 + (north > 150 ? 0.3 * (north - 150) : 0.0); });
  const LegJudgement judgement = judged(scene, testing::solo_rig());
  CHECK(judgement.verdict == Verdict::closed);
  CHECK(stand_of(judgement.bind(), judgement.allowed_share) != Stand::passes);
  CHECK(judgement.bind().at > Metres{140});
}

TEST_CASE("every finding at every place is within what the leg's judgement says of its check") {
  const Scene scene = two_ways_scene();
  const rig::Rig rig = testing::towing_rig();
  const snow::ConstantSnow snow = testing::snow_of(Wetness::moist);
  const Judge judge{scene, rig, snow};
  for (const LegId leg : {LegId{4}, LegId{9}}) {
    const LegJudgement whole = judge.judge(leg, mid_morning());
    const Stretch stretch = judge.stretch_of(leg);
    for (const Footfall& step : footfalls(scene, stretch.line, rig, Metres{1})) {
      for (const PlaceFinding& here : judge.findings_at(stretch, step, whole.hours)) {
        const Finding& worst = finding_of(whole, here.finding.check);
        CAPTURE(facts_of(here.finding.check).key);
        CHECK(here.finding.share.value_or(INFINITY) <= worst.share.value_or(INFINITY));
      }
    }
  }
}

TEST_CASE("what binds is found again at its place by looking at that place alone") {
  const Scene scene = two_ways_scene();
  const rig::Rig rig = testing::solo_rig();
  const snow::ConstantSnow snow = testing::snow_of(Wetness::dry);
  const Judge judge{scene, rig, snow};
  const LegJudgement whole = judge.judge(LegId{4}, mid_morning());
  const Finding& wanted = finding_of(whole, Check::carrier_side_slip);
  const Stretch stretch = judge.stretch_of(LegId{4});
  bool found = false;
  for (const Footfall& step : footfalls(scene, stretch.line, rig, Metres{1})) {
    for (const PlaceFinding& here : judge.findings_at(stretch, step, whole.hours)) {
      found = found || (here.finding.check == wanted.check && here.finding.at == wanted.at &&
                        here.finding.share == wanted.share);
    }
  }
  CHECK(found);
}

TEST_CASE("raising all the ground changes nothing") {
  const LegJudgement low =
      judged(straight_on(testing::plane(0.05, 0.1, 1000)), testing::towing_rig());
  const LegJudgement high =
      judged(straight_on(testing::plane(0.05, 0.1, 1512)), testing::towing_rig());
  REQUIRE(low.findings.size() == high.findings.size());
  CHECK(low.verdict == high.verdict);
  for (std::size_t i = 0; i < low.findings.size(); ++i) {
    CHECK(low.findings[i].check == high.findings[i].check);
    CHECK(near(low.findings[i].share.value_or(-1), high.findings[i].share.value_or(-1), 1e-7));
  }
  CHECK(near(low.fuel, high.fuel, units::Litres{1e-7}));
}

TEST_CASE("turning ground and trail by a quarter turns the answer with them, aspects too") {
  const auto bumpy = [](double along, double right) {
    return 1000 + 0.04 * along + 0.03 * right + 0.4 * std::sin(along / 20);
  };
  // Trail to the north, right is east; trail to the east, right is south.
  const Scene north =
      straight_on([=](double east, double north_m) { return bumpy(north_m, east); }, 0);
  const Scene east =
      straight_on([=](double east_m, double north_m) { return bumpy(east_m, -north_m); }, 90);
  const auto report = [](double from_deg, double to_deg) {
    snow::SnowReport said;
    said.weather = testing::plain_weather();
    said.observer = "N. N.";
    said.observed = mid_morning();
    said.valid_until = units::after(mid_morning(), units::Seconds{36'000});
    said.bands = {{.above = {},
                   .below = {},
                   .aspect_from = {},
                   .aspect_to = {},
                   .state = {Wetness::dry, snow::Surface::groomed}},
                  {.above = {},
                   .below = {},
                   .aspect_from = units::Bearing::from_degrees(from_deg),
                   .aspect_to = units::Bearing::from_degrees(to_deg),
                   .state = {Wetness::wet, snow::Surface::groomed}}};
    return snow::ReportedSnow{said};
  };
  const rig::Rig rig = testing::towing_rig();
  const snow::ReportedSnow for_north = report(200, 230);
  const snow::ReportedSnow for_east = report(290, 320);
  const LegJudgement one = Judge{north, rig, for_north}.judge(LegId{0}, mid_morning());
  const LegJudgement other = Judge{east, rig, for_east}.judge(LegId{0}, mid_morning());
  REQUIRE(one.findings.size() == other.findings.size());
  for (std::size_t i = 0; i < one.findings.size(); ++i) {
    CAPTURE(facts_of(one.findings[i].check).key);
    CHECK(near(one.findings[i].share.value_or(-1), other.findings[i].share.value_or(-1), 1e-6));
    CHECK(near(one.findings[i].at, other.findings[i].at, Metres{1e-6}));
  }
  CHECK(one.snow == other.snow);
  CHECK(one.snow.size() == 2);
}

/// Tightens one rule, rating or trail attribute at random.
void tighten(Scene& scene, rig::Rig& rig, std::mt19937& random) {
  const double factor = std::uniform_real_distribution<double>{0.3, 1.0}(random);
  const auto steeper = [factor](std::optional<rig::Rating>& rating) {
    rating->steepest = Slope::from_ratio(rating->steepest.ratio() * factor);
  };
  Rules& rules = scene.rules;
  switch (std::uniform_int_distribution<int>{0, 13}(random)) {
    case 0:
      rules.allowed_share *= factor;
      break;
    case 1:
      rules.confidence_k /= factor;
      break;
    case 2:
      rules.roll_over_reserve *= factor;
      break;
    case 3:
      rules.reaction = rules.reaction / factor;
      break;
    case 4:
      scene.network.trails[0].sight = *scene.network.trails[0].sight * factor;
      break;
    case 5:
      rules.markers_in_sight /= factor;
      break;
    case 6:
      rules.most_wind = *rules.most_wind * factor;
      break;
    case 7:
      rules.wettest_towing = Wetness::dry;
      break;
    case 8:
      steeper(rig.carrier.towing.climb);
      break;
    case 9:
      steeper(rig.carrier.towing.cross);
      break;
    case 10:
      rig.carrier.towed_mass_rating = rig.carrier.towed_mass_rating * factor;
      break;
    case 11:
      rig.carrier.brake_force = rig.carrier.brake_force * factor;
      break;
    case 12:
      scene.network.trails[0].line_error = Metres{1 / factor};
      break;
    default:
      scene.trust.errors[0].standard_deviation = scene.trust.errors[0].standard_deviation / factor;
  }
}

TEST_CASE("tightening any limit never opens what was not open") {
  std::mt19937 random{kSeed};
  std::uniform_real_distribution<double> gradient(-0.12, 0.12);
  std::uniform_int_distribution<int> wetness(0, snow::kWetnessCount - 1);
  int open_before = 0;
  int open_after = 0;
  for (int trial = 0; trial < 150; ++trial) {
    CAPTURE(kSeed);
    CAPTURE(trial);
    Scene scene = straight_on(testing::plane(gradient(random), gradient(random)));
    rig::Rig rig = testing::towing_rig();
    const snow::ConstantSnow snow = testing::snow_of(static_cast<Wetness>(wetness(random) / 2));
    const Verdict before = Judge{scene, rig, snow}.judge(LegId{0}, mid_morning()).verdict;
    for (int i = 0; i < 3; ++i) {
      tighten(scene, rig, random);
    }
    const Verdict after = Judge{scene, rig, snow}.judge(LegId{0}, mid_morning()).verdict;
    open_before += before == Verdict::open ? 1 : 0;
    open_after += after == Verdict::open ? 1 : 0;
    CHECK_FALSE((before == Verdict::closed && after != Verdict::closed));
    CHECK_FALSE((before == Verdict::restricted && after == Verdict::open));
  }
  // The trial speaks of something only if some were open, and some of those were closed.
  CHECK(open_before > 10);
  CHECK(open_after < open_before);
}

TEST_CASE("a rating that is no number closes, and so does one that nobody gave") {
  const Scene scene = straight_on(testing::plane(0, 0.02));
  rig::Rig rig = testing::solo_rig();
  rig.carrier.solo_loaded.climb->steepest = Slope::from_ratio(std::nan(""));
  CHECK(judged(scene, rig).verdict == Verdict::closed);
  CHECK_FALSE(finding_of(judged(scene, rig), Check::climb_rating).share.has_value());
  rig.carrier.solo_loaded.climb.reset();
  CHECK(closed_for_want_of(judged(scene, rig), Check::climb_rating, "rating"));
}

TEST_CASE("a hole in the heights under the rig closes the leg and says so") {
  const Scene scene = straight_on(testing::with_void(
      testing::plane(0, 0.02), [](double, double north) { return 148 < north && north < 152; }));
  const LegJudgement judgement = judged(scene, testing::solo_rig());
  CHECK(closed_for_want_of(judgement, Check::heights_known, "heights"));
  CHECK(near(judgement.bind().at, Metres{145}, Metres{5.01}));
  CHECK(std::isnan(judgement.fuel.value()));
}

TEST_CASE("heights whose error nobody stated close every leg") {
  Scene scene = straight_on(testing::plane(0, 0.02));
  scene.trust.errors.clear();
  CHECK(closed_for_want_of(judged(scene, testing::solo_rig()), Check::heights_known, "error"));
}

TEST_CASE("whatever was not said of a trail closes it by its name") {
  Scene scene = straight_on(testing::plane(0, 0.02));
  scene.network.trails[0].groomed.reset();
  CHECK(closed_for_want_of(judged(scene, testing::solo_rig()), Check::trail_attributes, "groomed"));
  scene = straight_on(testing::plane(0, 0.02));
  scene.network.trails[0].width.reset();
  CHECK(closed_for_want_of(judged(scene, testing::solo_rig()), Check::off_tracking, "width"));
}

TEST_CASE("snow that nobody speaks for, or that expires on the way, closes the leg") {
  const Scene scene = straight_on(testing::plane(0, 0.02));
  const rig::Rig rig = testing::solo_rig();
  snow::SnowReport said;
  said.weather = testing::plain_weather();
  said.observer = "N. N.";
  said.observed = mid_morning();
  said.valid_until = units::after(mid_morning(), units::Seconds{600});
  said.bands = {{.above = {},
                 .below = {},
                 .aspect_from = {},
                 .aspect_to = {},
                 .state = {Wetness::dry, snow::Surface::groomed}}};
  const snow::ReportedSnow snow{said};
  const Judge judge{scene, rig, snow};
  const LegJudgement in_time = judge.judge(LegId{0}, mid_morning());
  CHECK(in_time.verdict == Verdict::open);
  // Entered ten seconds before the report expires, on a leg that takes longer.
  REQUIRE(in_time.time > units::Seconds{10});
  const LegJudgement late = judge.judge(LegId{0}, units::after(mid_morning(), units::Seconds{590}));
  CHECK(closed_for_want_of(late, Check::snow_known, "snow"));
  said.valid_until.reset();
  const snow::ReportedSnow endless{said};
  CHECK(Judge{scene, rig, endless}.judge(LegId{0}, mid_morning()).verdict == Verdict::closed);
}

TEST_CASE("a trail that closes before the rig's tail is off it is not entered") {
  Scene scene = straight_on(testing::plane(0, 0.02));
  const rig::Rig rig = testing::solo_rig();
  const LegJudgement at_ease = judged(scene, rig);
  // Entered at 09:00: nose off after `time`, tail a rig's length later; hours are whole minutes.
  const double tail_off_s =
      at_ease.time.value() + rig.carrier.overall_length.value() / at_ease.slowest.value();
  const int minutes = static_cast<int>(std::ceil(tail_off_s / 60));
  scene.network.trails[0].hours = trails::OpenHours{{0}, {9 * 60 + minutes}};
  CHECK(judged(scene, rig).verdict == Verdict::open);
  scene.network.trails[0].hours = trails::OpenHours{{0}, {9 * 60 + minutes - 1}};
  CHECK(finding_of(judged(scene, rig), Check::hours).refused.empty() == false);
}

TEST_CASE("a leg that something else closes is held to its hours all the same") {
  Scene scene = straight_on(testing::plane(0, 0.02));
  scene.network.zones = {{.name = "Kettle",
                          .kind = trails::ZoneKind::forbidden,
                          .region = {{{place(-10, 100), place(10, 100), place(10, 120),
                                       place(-10, 120), place(-10, 100)}}},
                          .speed = std::nullopt}};
  scene.network.trails[0].hours = trails::OpenHours{{0}, {9 * 60}};  // entered as it shuts
  const rig::Rig rig = testing::solo_rig();
  const LegJudgement judgement = judged(scene, rig);
  CHECK_FALSE(finding_of(judgement, Check::zone).refused.empty());
  CHECK_FALSE(finding_of(judgement, Check::hours).refused.empty());
  REQUIRE(judgement.hours.staying.has_value());
  CHECK(
      near(judgement.hours.staying->value(),
           judgement.time.value() + rig.carrier.overall_length.value() / judgement.slowest.value(),
           1e-6));
}

TEST_CASE("slush closes every leg for a trailer, by name") {
  const Scene scene = straight_on(testing::plane(0, 0.0));
  const rig::Rig rig = testing::towing_rig();
  const snow::ConstantSnow slush = testing::snow_of(Wetness::slush);
  const LegJudgement judgement = Judge{scene, rig, slush}.judge(LegId{0}, mid_morning());
  CHECK(judgement.verdict == Verdict::closed);
  CHECK_FALSE(finding_of(judgement, Check::towing_in_wet_snow).refused.empty());
}

TEST_CASE("a speed limit anywhere on a leg is the leg's speed; one under walking pace closes it") {
  Scene scene = straight_on(testing::plane(0, 0.02));
  const auto square = [](double south) {
    return geo::Region{{{place(-10, south), place(10, south), place(10, south + 20),
                         place(-10, south + 20), place(-10, south)}}};
  };
  scene.network.zones = {{.name = "Hamlet",
                          .kind = trails::ZoneKind::speed_limit,
                          .region = square(100),
                          .speed = MetresPerSecond{2}}};
  const LegJudgement slow = judged(scene, testing::solo_rig());
  CHECK(slow.verdict == Verdict::open);
  CHECK(slow.slowest == MetresPerSecond{2});
  CHECK(slow.pieces.front().speed > MetresPerSecond{2});
  scene.network.zones[0].speed = MetresPerSecond{0.99};
  const LegJudgement crawling = judged(scene, testing::solo_rig());
  CHECK(crawling.verdict == Verdict::closed);
  CHECK_FALSE(finding_of(crawling, Check::stopping).refused.empty());
  scene.network.zones[0].kind = trails::ZoneKind::forbidden;
  const LegJudgement forbidden = judged(scene, testing::solo_rig());
  CHECK_FALSE(finding_of(forbidden, Check::zone).refused.empty());
  CHECK(near(finding_of(forbidden, Check::zone).at, Metres{97.5}, Metres{2.51}));
}

/// A trail to the north whose ground is level but for a sidehill of 30 degrees from 120 to 180 m.
Scene sidehill() {
  return straight_on([](double east, double north) {
    return 1000 + (115 < north && north < 185 ? std::tan(std::numbers::pi / 6) * east : 0.0);
  });
}

trails::Mark bench() {
  trails::Mark mark;
  mark.name = "Long Bench";
  mark.kind = trails::MarkKind::bench;
  mark.trail = "Straight";
  mark.span = {Metres{100}, Metres{200}};
  mark.survey =
      trails::Survey{Slope::from_degrees(2), Slope::from_degrees(1), Slope::from_percent(0.5),
                     *units::parse_instant("2026-01-20T00:00:00Z"), testing::mid_morning()};
  return mark;
}

TEST_CASE("a sidehill is closed by its cross-slope until a surveyed bench carries the trail") {
  Scene scene = sidehill();
  const rig::Rig rig = testing::towing_rig();
  CHECK(finding_of(judged(scene, rig), Check::cross_rating).share.value_or(0) > 1);
  scene.network.marks = {bench()};
  for (const LegId leg : {LegId{0}, LegId{1}}) {
    const LegJudgement carried = judged(scene, rig, leg);
    // The survey's own slope, its error added, is what counts on the bench.
    CHECK(carried.steepest_across->found.degrees() < 1.01);
    CHECK(stand_of(finding_of(carried, Check::cross_rating), 0.7) == Stand::passes);
  }
  scene.network.marks[0].span = {Metres{130}, Metres{170}};
  CHECK(finding_of(judged(scene, rig), Check::cross_rating).share.value_or(0) > 1);
}

TEST_CASE("a bench that was not inspected closes, and its survey does not count") {
  Scene scene = sidehill();
  scene.network.marks = {bench()};
  scene.network.marks[0].survey->inspected.reset();
  const LegJudgement judgement = judged(scene, testing::solo_rig());
  CHECK(judgement.verdict == Verdict::closed);
  CHECK_FALSE(finding_of(judgement, Check::mark).missing.empty());
  CHECK(finding_of(judgement, Check::cross_rating).share.value_or(0) > 1);
}

TEST_CASE("an engine too weak for walking pace closes the leg") {
  const Scene scene = straight_on(testing::plane(0, 0.02));
  rig::Rig rig = testing::solo_rig();
  rig.carrier.engine_power = units::Watts{1'500};
  const LegJudgement judgement = judged(scene, rig);
  CHECK(judgement.slowest < MetresPerSecond{1});
  CHECK(judgement.verdict == Verdict::closed);
}

TEST_CASE("a driver whose level is unknown opens nothing") {
  const Scene scene = straight_on(testing::plane(0, 0.0));
  rig::Rig rig = testing::solo_rig();
  rig.driver_level = "visitor";
  CHECK(closed_for_want_of(judged(scene, rig), Check::driver_level, "visitor"));
}

TEST_CASE("a new driver's lower share counts") {
  const Scene scene = straight_on(testing::plane(0, 0.02));
  rig::Rig rig = testing::solo_rig();
  rig.driver_level = "new";
  CHECK(judged(scene, rig).allowed_share == 0.5);
}

TEST_CASE("a towed load without a trailer is refused") {
  const Scene scene = straight_on(testing::plane(0, 0.0));
  rig::Rig rig = testing::solo_rig();
  rig.load.towed = units::Kilograms{1};
  CHECK(judged(scene, rig).verdict == Verdict::closed);
}

TEST_CASE("judging for another rig or snow from the same judge says what a fresh judge says") {
  const Scene scene = two_ways_scene();
  const rig::Rig solo = testing::solo_rig();
  const rig::Rig towing = testing::towing_rig();
  const snow::ConstantSnow dry = testing::snow_of(Wetness::dry);
  snow::DayWeather worse = testing::plain_weather();
  worse.bulletin_level = 3;
  const snow::ConstantSnow wet{{Wetness::wet, snow::Surface::groomed}, worse, "assumed"};
  const Judge first{scene, solo, dry};
  const auto same = [](const LegJudgement& a, const LegJudgement& b) {
    bool alike = a.verdict == b.verdict && a.findings.size() == b.findings.size() &&
                 a.time == b.time && a.slowest == b.slowest;
    for (std::size_t i = 0; alike && i < a.findings.size(); ++i) {
      alike = a.findings[i].share == b.findings[i].share && a.findings[i].at == b.findings[i].at;
    }
    return alike;
  };
  for (std::uint32_t i = 0; i < scene.network.legs.size(); ++i) {
    CHECK(same(first.with_rig(towing).judge(LegId{i}, mid_morning()),
               Judge{scene, towing, dry}.judge(LegId{i}, mid_morning())));
    CHECK(same(first.with_snow(wet).judge(LegId{i}, mid_morning()),
               Judge{scene, solo, wet}.judge(LegId{i}, mid_morning())));
  }
}

TEST_CASE("another rig from the same judge has its own slopes' error, another snow the same") {
  // Cells of 1.3 m see the tracks' gauge of 1.4 m, and hide something from the sled's of 1.2 m.
  testing::TestGround ground;
  ground.ground = testing::plane(0, 0.02);
  ground.cell_m = 1.3;
  ground.extent = {-60, -60, 60, 360};
  const Scene scene = testing::scene_of(ground, testing::straight_trail(0));
  const rig::Rig solo = testing::solo_rig();
  const rig::Rig towing = testing::towing_rig();
  const snow::ConstantSnow dry = testing::snow_of(Wetness::dry);
  const snow::ConstantSnow wet = testing::snow_of(Wetness::wet);
  const Judge first{scene, solo, dry};
  const Judge with_sled = first.with_rig(towing);
  CHECK(near(with_sled.tolerance()->ratio() - first.tolerance()->ratio(), 0.005, 1e-12));
  CHECK(with_sled.tolerance() == slope_tolerance(scene, Metres{1.2}));
  CHECK(&with_sled.rig() == &towing);
  const Judge in_wet = first.with_snow(wet);
  CHECK(&in_wet.snow() == &wet);
  CHECK(&in_wet.rig() == &solo);
  CHECK(in_wet.tolerance() == first.tolerance());
  const LegJudgement judgement = in_wet.judge(LegId{0}, mid_morning());
  REQUIRE(judgement.snow.size() == 1);
  CHECK(judgement.snow[0].wetness == Wetness::wet);
  CHECK(judgement.bind().share ==
        Judge{scene, solo, wet}.judge(LegId{0}, mid_morning()).bind().share);
}

TEST_CASE("a bulletin level that nobody gave, or that there is none of, closes every leg") {
  const Scene scene = straight_on(testing::plane(0, 0.02));
  const rig::Rig rig = testing::solo_rig();
  for (const std::optional<int> level :
       {std::optional<int>{}, std::optional{0}, std::optional{6}}) {
    snow::DayWeather weather = testing::plain_weather();
    weather.bulletin_level = level;
    const snow::ConstantSnow snow{{Wetness::dry, snow::Surface::groomed}, weather, "assumed"};
    const LegJudgement judgement = Judge{scene, rig, snow}.judge(LegId{0}, mid_morning());
    CHECK(judgement.verdict == Verdict::closed);
    CHECK(stand_of(finding_of(judgement, Check::avalanche), 1.0) == Stand::missing);
  }
}

}  // namespace

}  // namespace rimehaul::passage
