// The ground checks turned round: limits and outlines against closed forms, and judged again.
#include "passage/limits.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>

#include "near.h"
#include "rig_on_slope.h"
#include "units/rounding.h"

namespace rimehaul::passage {

namespace {

using snow::Surface;
using snow::Wetness;
using testing::loaded_rig;
using testing::ratings_of;
using units::Kilograms;
using units::Metres;
using units::Newtons;
using units::Slope;

constexpr double kDegrees = 180.0 / std::numbers::pi;
constexpr double kTenth = 0.1;

/// Grip so good, on request, that ratings and roll-over alone can bind.
snow::GripLaw sticky(Wetness wetness) {
  using units::ForceRatio;
  snow::MeasuredGrip grip;
  grip.state = {wetness, Surface::groomed};
  grip.traction = grip.brake = grip.lateral = grip.trailer_lateral = ForceRatio{9.0};
  grip.carrier_resistance = grip.trailer_resistance =
      snow::ForceRange{ForceRatio{0.001}, ForceRatio{0.001}};
  grip.trailer_start = ForceRatio{0.001};
  grip.source = "test";
  return snow::GripLaw{{grip}};
}

/// A rig that weighs 700 kg with its centre of gravity where asked, and the strength to hold any
/// slope; rules without any reserve.
struct Bench {
  rig::Rig rig;
  Rules rules;

  [[nodiscard]] GradeLimits limits(snow::SnowState state = {}) const {
    return grade_limits({rig, rules, state});
  }
};

Bench bench_of(rig::BodyPoint centre) {
  Bench bench{loaded_rig().without_trailer().rig, default_rules()};
  rig::Carrier& carrier = bench.rig.carrier;
  carrier.empty = {Kilograms{700}, centre};
  carrier.driver_mass = Kilograms{0};
  carrier.contact_area = units::SquareMetres{1.0};
  carrier.brake_force = Newtons{1e6};
  carrier.parking_brake_force = Newtons{1e6};
  carrier.engine_power = units::Watts{1e6};
  carrier.solo_empty = ratings_of(80, 80, 80);
  carrier.fuel_density = units::KilogramsPerCubicMetre{800};
  bench.rig.driver_level = "all";
  bench.rules.allowed_share = 1.0;
  bench.rules.roll_over_reserve = 1.0;
  bench.rules.low_side_sinkage = Metres{0};
  bench.rules.driver_levels = {
      {.name = "all", .allowed_share = 1.0, .may_tow = true, .wettest_towing = Wetness::slush}};
  bench.rules.grip = sticky(Wetness::dry);
  return bench;
}

/// Skis 1.0 m apart in front, tracks 0.5 m apart behind: the narrower support abreast of the load.
Bench trapezoid() {
  Bench bench = bench_of({Metres{0.7}, Metres{0}, Metres{0.65}});
  bench.rig.carrier.support = {{Metres{0}, Metres{-0.25}},
                               {Metres{2.2}, Metres{-0.5}},
                               {Metres{2.2}, Metres{0.5}},
                               {Metres{0}, Metres{0.25}}};
  return bench;
}

/// A working rig with the grip that is built in, a trailer, and the usual reserves.
Bench working(double bed_kg, double towed_kg) {
  Bench bench{loaded_rig().rig, default_rules()};
  rig::Carrier& carrier = bench.rig.carrier;
  carrier.empty = {Kilograms{620}, {Metres{0.75}, Metres{0}, Metres{0.5}}};
  carrier.driver_mass = Kilograms{90};
  carrier.driver_at = {Metres{0.9}, Metres{0.3}, Metres{0.9}};  // not on the centre line
  carrier.bed_at = {Metres{0.3}, Metres{0}, Metres{0.8}};
  carrier.contact_area = units::SquareMetres{1.4};
  carrier.fuel_density = units::KilogramsPerCubicMetre{800};
  bench.rig.trailer->empty = {Kilograms{80}, {Metres{0.8}, Metres{0}, Metres{0.3}}};
  bench.rig.trailer->bed_at = {Metres{0.8}, Metres{0}, Metres{0.5}};
  bench.rig.trailer->contact_area = units::SquareMetres{0.5};
  bench.rig.driver_level = "seasoned";
  bench.rig.load.bed = Kilograms{bed_kg};
  bench.rig.load.towed = Kilograms{towed_kg};
  return bench;
}

Bench without_trailer(Bench bench) {
  bench.rig.trailer.reset();
  bench.rig.load.towed = Kilograms{0};
  return bench;
}

double down_to_tenth(double degrees) {
  return std::floor(degrees * 10.0) / 10.0;
}

/// Cross-slope of an outline at a grade between its points, degrees; below 0 outside it.
double width_at(const Envelope& envelope, double grade_deg) {
  for (std::size_t i = 1; i < envelope.outline.size(); ++i) {
    const terrain::Attitude& from = envelope.outline[i - 1].plane;
    const terrain::Attitude& to = envelope.outline[i].plane;
    const double run = to.grade.degrees() - from.grade.degrees();
    const double part = (grade_deg - from.grade.degrees()) / run;
    if (part >= 0.0 && part <= 1.0) {
      return from.cross.degrees() + part * (to.cross.degrees() - from.cross.degrees());
    }
  }
  return -1.0;
}

}  // namespace

TEST_CASE("a support 0.6591 m wide abreast of a load 0.65 m up tips at 26.885 degrees") {
  // Trapezoid of skis and tracks: half-width at the centre of gravity .25 + .25 x .7 / 2.2 =
  // .329545 m; without reserve the limit is the tip angle itself, rounded down to a tenth.
  const double half_width = 0.25 + 0.25 * 0.7 / 2.2;
  const double tip_deg = std::atan(half_width / 0.65) * kDegrees;
  REQUIRE(testing::near(half_width, 0.329545, 1e-6));
  REQUIRE(testing::near(tip_deg, 26.885, 1e-3));
  const GradeLimits limits = trapezoid().limits();
  REQUIRE(!limits.closed);
  CHECK(testing::near(limits.cross->steepest.degrees(), down_to_tenth(tip_deg), 1e-9));
  CHECK(limits.cross->binding.check == Check::carrier_roll_over);
}

TEST_CASE("a load off the middle limits the cross-slope on its own side") {
  // Rectangle 1.2 m wide, centre of gravity .05 m to the left and .7 m up: atan(.55 / .7),
  // whichever side the ground falls away to.
  const GradeLimits limits = bench_of({Metres{0.7}, Metres{0.05}, Metres{0.7}}).limits();
  REQUIRE(!limits.closed);
  CHECK(testing::near(limits.cross->steepest.degrees(),
                      down_to_tenth(std::atan(0.55 / 0.7) * kDegrees), 1e-9));
}

TEST_CASE("where ratings bind, the limits are the allowed share of their tangents") {
  Bench bench = bench_of({Metres{0.7}, Metres{0}, Metres{0.1}});
  bench.rules.allowed_share = 0.7;
  bench.rig.carrier.solo_empty = ratings_of(20, 15, 10);
  const GradeLimits limits = bench.limits();
  REQUIRE(!limits.closed);
  const auto allowed_deg = [](double rated_deg) {
    return down_to_tenth(std::atan(0.7 * std::tan(rated_deg / kDegrees)) * kDegrees);
  };
  CHECK(testing::near(limits.climb->steepest.degrees(), allowed_deg(20), 1e-9));
  CHECK(testing::near(limits.descent->steepest.degrees(), allowed_deg(15), 1e-9));
  CHECK(testing::near(limits.cross->steepest.degrees(), allowed_deg(10), 1e-9));
  CHECK(limits.climb->binding.check == Check::climb_rating);
  CHECK(limits.descent->binding.check == Check::descent_rating);
  CHECK(limits.cross->binding.check == Check::cross_rating);
}

TEST_CASE("where nothing binds, the limit is the end of what was looked at, and says so") {
  const GradeLimits limits = bench_of({Metres{0.7}, Metres{0}, Metres{0.01}}).limits();
  REQUIRE(!limits.closed);
  CHECK(limits.cross->scan_end);
  CHECK(testing::near(limits.cross->steepest.degrees(), 45.0, 1e-9));
}

TEST_CASE("ground at the very end of what is looked at is looked at") {
  Bench bench = bench_of({Metres{0.7}, Metres{0}, Metres{0.05}});
  const double end_deg = kScanEnd_tenths / 10.0;
  bench.rig.carrier.solo_empty = ratings_of(end_deg - 0.05, end_deg - 0.05, end_deg - 0.05);
  const GradeLimits limits = bench.limits();
  REQUIRE(!limits.closed);
  for (const Limit* limit : {&*limits.climb, &*limits.descent, &*limits.cross}) {
    CHECK_FALSE(limit->scan_end);
    CHECK(testing::near(limit->steepest.degrees(), end_deg - 0.1, 1e-9));
    CHECK(testing::near(limit->binding.share.value_or(0.0),
                        std::tan(end_deg / kDegrees) / std::tan((end_deg - 0.05) / kDegrees),
                        1e-9));
  }
}

TEST_CASE("a driver of a lower level has gentler limits") {
  Bench bench = working(100, 0);
  bench = without_trailer(bench);
  const GradeLimits seasoned = bench.limits();
  bench.rig.driver_level = "new";
  const GradeLimits fresh = bench.limits();
  REQUIRE(!seasoned.closed);
  REQUIRE(!fresh.closed);
  CHECK(testing::near(fresh.allowed_share, 0.5, 1e-12));
  CHECK(fresh.climb->steepest < seasoned.climb->steepest);
  CHECK(fresh.cross->steepest < seasoned.cross->steepest);
}

TEST_CASE("a rig that the rules close in that snow has no limits, and the rule is named") {
  const Bench bench = working(0, 100);
  const GradeLimits wet = bench.limits({Wetness::very_wet, Surface::groomed});
  REQUIRE(wet.closed);
  CHECK(wet.closed->check == Check::towing_in_wet_snow);
  CHECK(wet.closed->refused == "no trailer in snow wetter than wet");
  CHECK(!wet.climb);
  CHECK(!wet.descent);
  CHECK(!wet.cross);
  CHECK(!bench.limits().closed);

  Bench fresh = bench;
  fresh.rig.driver_level = "new";
  REQUIRE(fresh.limits().closed);
  CHECK(fresh.limits().closed->check == Check::driver_level);

  Bench unknown = bench;
  unknown.rig.driver_level = "nobody";
  REQUIRE(unknown.limits().closed);
  CHECK(!unknown.limits().closed->missing.empty());
}

TEST_CASE("a rig without a rating, or overloaded, or of unknown mass, has no limits") {
  Bench unrated = bench_of({Metres{0.7}, Metres{0}, Metres{0.6}});
  unrated.rig.carrier.solo_empty.descent.reset();
  REQUIRE(unrated.limits().closed);
  CHECK(unrated.limits().closed->check == Check::descent_rating);

  Bench heavy = without_trailer(working(0, 0));
  heavy.rig.load.bed = Kilograms{140};  // 0.7 of 200 kg
  CHECK(!heavy.limits().closed);
  heavy.rig.load.bed = Kilograms{141};
  REQUIRE(heavy.limits().closed);
  CHECK(heavy.limits().closed->check == Check::payload);

  Bench unknown = bench_of({Metres{0.7}, Metres{0}, Metres{0.6}});
  unknown.rig.carrier.empty.mass = Kilograms{std::nan("")};
  CHECK(unknown.limits().closed);
}

TEST_CASE("too short a sight closes descents that the brakes would hold") {
  Bench bench = without_trailer(working(0, 0));
  const GradeLimits far = bench.limits();
  bench.rules.sight = Metres{3.2};  // 2.24 m allowed, 2 m of them to react
  const GradeLimits near_by = bench.limits();
  REQUIRE(!far.closed);
  REQUIRE(!near_by.closed);
  CHECK(near_by.descent->steepest < far.descent->steepest);
  CHECK(near_by.descent->binding.check == Check::stopping);
}

TEST_CASE("a rig that needs ballast on its nose to climb is limited where it first fails") {
  // Centre of gravity .03 m in front of the rear end of its support: it tips back at once, and
  // would stand again only on descents. What is open lies on one side of level ground.
  const GradeLimits limits = bench_of({Metres{0.03}, Metres{0}, Metres{0.7}}).limits();
  REQUIRE(!limits.closed);
  CHECK(testing::near(limits.climb->steepest.degrees(),
                      down_to_tenth(std::atan(0.03 / 0.7) * kDegrees), 1e-9));
  CHECK(limits.descent->steepest.degrees() > 40.0);
}

TEST_CASE("what opens again beyond closed ground is no part of the limits") {
  // With so much behind, the rig cannot start on level ground; a gentle descent would let it.
  const Bench bench = working(0, 245);
  const SlopeQuestion question{bench.rig, bench.rules, {}};
  const GradeLimits limits = grade_limits(question);
  REQUIRE(limits.closed);
  CHECK(limits.closed->check == Check::climb_traction);
  const PlaneJudge judge{question};
  CHECK(!judge.closed());
  CHECK(!judge.passes({}));
  CHECK(judge.passes({Slope::from_degrees(-4), {}}));
  CHECK(!limits.descent);
}

TEST_CASE("a limit prints as the tenth of a degree that was judged") {
  for (int tenths = 1; tenths <= kScanEnd_tenths; ++tenths) {
    const std::string printed = units::text_of(slope_of_tenths(tenths), units::Round::down);
    const std::string whole = std::to_string(tenths / 10) + "." + std::to_string(tenths % 10);
    CHECK(printed.substr(0, printed.find(' ')) == whole);
  }
}

TEST_CASE("every point of an outline passes, and a tenth of a degree beyond does not") {
  const std::array benches{working(0, 0), working(140, 200), without_trailer(working(0, 0)),
                           without_trailer(working(140, 0)), trapezoid()};
  const std::array states{snow::SnowState{Wetness::dry, Surface::groomed},
                          snow::SnowState{Wetness::moist, Surface::fresh},
                          snow::SnowState{Wetness::dry, Surface::fresh}};
  int outlines = 0;
  for (const Bench& bench : benches) {
    for (const snow::SnowState state : states) {
      const SlopeQuestion question{bench.rig, bench.rules, state};
      const Envelope envelope = envelope_of(question);
      const GradeLimits limits = grade_limits(question);
      CHECK(envelope.closed.has_value() == limits.closed.has_value());
      if (envelope.closed) {
        continue;
      }
      ++outlines;
      const PlaneJudge judge{question};
      REQUIRE(envelope.outline.size() >= 2);
      for (const EnvelopePoint& point : envelope.outline) {
        const double grade = point.plane.grade.degrees();
        const double cross = point.plane.cross.degrees();
        CAPTURE(grade);
        CAPTURE(cross);
        CHECK(judge.passes(point.plane));
        CHECK(judge.passes({point.plane.grade, point.plane.cross.reversed()}));
        const terrain::Attitude beyond{point.plane.grade, Slope::from_degrees(cross + kTenth)};
        CHECK((point.scan_end || !judge.passes(beyond)));
      }
      const terrain::Attitude& last = envelope.outline.back().plane;
      const terrain::Attitude& first = envelope.outline.front().plane;
      CHECK(last.grade == limits.climb->steepest);
      CHECK(first.grade == limits.descent->steepest.reversed());
      CHECK((limits.climb->scan_end ||
             !judge.passes({Slope::from_degrees(last.grade.degrees() + kTenth), {}})));
      CHECK((limits.descent->scan_end ||
             !judge.passes({Slope::from_degrees(first.grade.degrees() - kTenth), {}})));
      CHECK(testing::near(width_at(envelope, 0.0), limits.cross->steepest.degrees(), 1e-6));
    }
  }
  CHECK(outlines >= 6);
}

TEST_CASE("what is drawn between two points of an outline passes too") {
  const Bench bench = without_trailer(working(140, 0));
  const SlopeQuestion question{bench.rig, bench.rules, {Wetness::moist, Surface::groomed}};
  const Envelope envelope = envelope_of(question);
  const PlaneJudge judge{question};
  REQUIRE(!envelope.closed);
  int asked = 0;
  const double lowest = envelope.outline.front().plane.grade.degrees();
  const double highest = envelope.outline.back().plane.grade.degrees();
  for (double grade = lowest; grade <= highest; grade += 0.1) {
    const double cross = down_to_tenth(width_at(envelope, grade));
    REQUIRE(cross >= 0.0);
    CHECK(judge.passes({Slope::from_degrees(grade), Slope::from_degrees(cross)}));
    ++asked;
  }
  CHECK(asked > 50);
}

TEST_CASE("wetter snow never has the wider outline on the same surface") {
  const std::array benches{without_trailer(working(100, 0)), working(0, 100)};
  int compared = 0;
  for (const Bench& bench : benches) {
    for (int surface = 0; surface < snow::kSurfaceCount; ++surface) {
      std::optional<Envelope> drier;
      for (int wetness = 0; wetness < snow::kWetnessCount; ++wetness) {
        const snow::SnowState state{static_cast<Wetness>(wetness), static_cast<Surface>(surface)};
        Envelope wetter = envelope_of({bench.rig, bench.rules, state});
        if (drier) {
          CHECK((!drier->closed || wetter.closed.has_value()));
          for (const EnvelopePoint& point : wetter.outline) {
            CHECK(point.plane.cross.degrees() <=
                  width_at(*drier, point.plane.grade.degrees()) + kTenth);
            ++compared;
          }
        }
        drier = std::move(wetter);
      }
    }
  }
  CHECK(compared > 50);
}

TEST_CASE("an outline ends where nothing further was looked at, and says so") {
  const Bench bench = bench_of({Metres{0.7}, Metres{0}, Metres{0.01}});
  const SlopeQuestion question{bench.rig, bench.rules, {}};
  const Envelope envelope = envelope_of(question);
  REQUIRE(!envelope.closed);
  const PlaneJudge judge{question};
  int ends = 0;
  for (const EnvelopePoint& point : envelope.outline) {
    CHECK(judge.passes(point.plane));
    if (point.scan_end) {
      ++ends;
      CHECK(testing::near(point.plane.cross.degrees(), 45.0, 1e-9));
      CHECK(stand_of(point.binding, judge.allowed_share()) == Stand::passes);
    }
  }
  CHECK(ends > 0);
}

TEST_CASE("where open ground curves inward between two points, a point is put in before the line") {
  // Tracks that widen forward by m for every metre tip sideways, on a descent of tangent G, from
  // the cross-slope K = k sqrt(1 + G^2) + m G sqrt(1 + G^2 + K^2) on, with k half the width abreast
  // of the centre of gravity over its height. That curve is hollow: k and m are solved for 20.0
  // degrees at a descent of 30.0 and 20.2 at 30.4, and it is then 20.0996 at 30.2, not 20.1.
  struct Through {
    double level;  ///< factor of k
    double grade;  ///< factor of m
    double cross;
  };
  const auto through = [](double descent_deg, double cross_deg) {
    const double descent = std::tan(descent_deg / kDegrees);
    const double cross = std::tan(cross_deg / kDegrees);
    return Through{std::hypot(1.0, descent), descent * std::hypot(1.0, descent, cross), cross};
  };
  const Through a = through(30.0, 20.0);
  const Through b = through(30.4, 20.2);
  const double area = a.level * b.grade - a.grade * b.level;
  const double hair = 1e-6;  // so that both ends pass for certain
  const double k = (a.cross * b.grade - a.grade * b.cross) / area + hair;
  const double m = (a.level * b.cross - a.cross * b.level) / area;
  const Through middle = through(30.2, 20.1);
  REQUIRE(k * middle.level + m * middle.grade < middle.cross);

  const double behind_m = k - m * 0.7;
  const double ahead_m = behind_m + m * 2.2;
  REQUIRE(behind_m > 0.0);
  Bench bench = bench_of({Metres{0.7}, Metres{0}, Metres{1.0}});
  bench.rig.carrier.support = {{Metres{0}, Metres{-behind_m}},
                               {Metres{2.2}, Metres{-ahead_m}},
                               {Metres{2.2}, Metres{ahead_m}},
                               {Metres{0}, Metres{behind_m}}};
  bench.rig.carrier.solo_empty = ratings_of(80, 30.45, 80);
  // So slow that what still counts as a straight line does not lean it over by a hair.
  bench.rules.walking_pace = units::MetresPerSecond{0.001};
  const Envelope envelope = envelope_of({bench.rig, bench.rules, {}});
  REQUIRE(!envelope.closed);
  REQUIRE(envelope.outline.size() > 3);
  constexpr double kPoints[][2] = {{-30.4, 20.2}, {-30.2, 20.0}, {-30.0, 20.0}};
  for (std::size_t i = 0; i < std::size(kPoints); ++i) {
    const EnvelopePoint& point = envelope.outline[i];
    CHECK(testing::near(point.plane.grade.degrees(), kPoints[i][0], 1e-9));
    CHECK(testing::near(point.plane.cross.degrees(), kPoints[i][1], 1e-9));
    CHECK(point.binding.check == Check::carrier_roll_over);
  }
}

}  // namespace rimehaul::passage
