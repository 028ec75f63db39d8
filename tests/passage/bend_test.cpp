// Radii of drawn bends, against circles.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <vector>

#include "near.h"
#include "passage/bend.h"

namespace rimehaul::passage {

namespace {

using testing::near;
using units::Metres;

constexpr double kPi = std::numbers::pi;
constexpr double kVoid = std::numeric_limits<double>::quiet_NaN();

/// Turtle drawing of a line: straights and arcs, one point every `step_m`.
class Pen {
 public:
  explicit Pen(double step_m) : step_m_{step_m} { put(); }

  Pen& straight(double length_m) { return run(length_m, 0.0); }
  Pen& arc(double radius_m, double angle_deg) {
    const double angle = angle_deg * kPi / 180;
    return run(radius_m * std::abs(angle), angle);
  }
  Pen& corner(double angle_deg) {
    heading_ += angle_deg * kPi / 180;
    return *this;
  }
  /// Every point but the ends moved by a normal error.
  Pen& shaken(double deviation_m, std::mt19937& dice) {
    std::normal_distribution<double> error(0.0, deviation_m);
    for (std::size_t i = 1; i + 1 < points_.size(); ++i) {
      points_[i].east += Metres{error(dice)};
      points_[i].north += Metres{error(dice)};
    }
    return *this;
  }
  [[nodiscard]] geo::Polyline line() const { return geo::Polyline{points_}; }

 private:
  void put() { points_.push_back({Metres{500000 + east_}, Metres{5100000 + north_}}); }
  Pen& run(double length_m, double turn) {
    const int steps = std::max(1, static_cast<int>(std::lround(length_m / step_m_)));
    for (int i = 0; i < steps; ++i) {
      heading_ += turn / steps / 2;
      // chords of the arc, so that the points lie on the circle
      const double half = turn / steps / 2;
      const double chord = length_m / steps * (half == 0.0 ? 1.0 : std::sin(half) / half);
      east_ += chord * std::sin(heading_);
      north_ += chord * std::cos(heading_);
      heading_ += turn / steps / 2;
      put();
    }
    return *this;
  }

  double step_m_;
  double east_ = 0.0;
  double north_ = 0.0;
  double heading_ = 0.3;
  std::vector<geo::MapPoint> points_;
};

double radius_of(const Pen& pen, double window_m) {
  return tightest_bend(pen.line(), Metres{window_m}).radius.value();
}

/// Straight sides with their own directions, for looking at every place of a line.
class Turtle {
 public:
  void go(double length_m, double turn) {
    heading_ += turn;
    const geo::MapPoint& last = points_.back();
    points_.push_back({last.east + Metres{length_m * std::sin(heading_)},
                       last.north + Metres{length_m * std::cos(heading_)}});
    sides_.push_back({length_m, heading_});
    length_m_ += length_m;
  }
  [[nodiscard]] geo::Polyline line() const { return geo::Polyline{points_}; }

  /// The least radius at a thousand places, from the mean directions before and behind each.
  [[nodiscard]] double tightest_m(double window_m) const {
    const double half = std::min(window_m, length_m_) / 2;
    double least = std::numeric_limits<double>::infinity();
    for (int place = 0; place <= 1000; ++place) {
      const double at = half / 2 + (length_m_ - half) * place / 1000.0;
      const double before = std::min(half, at);
      const double after = std::min(half, length_m_ - at);
      const double turned = std::abs((turned_to(at + after) - turned_to(at)) / after -
                                     (turned_to(at) - turned_to(at - before)) / before);
      const double radius = turned < kPi ? std::min((before + after) / 2 / turned,
                                                    std::min(before, after) / std::tan(turned / 2))
                                         : 0.0;
      least = std::min(least, radius);
    }
    return least;
  }

 private:
  struct Side {
    double length_m;
    double heading;
  };
  [[nodiscard]] double turned_to(double to_m) const {
    double sum = 0.0;
    double begins_m = 0.0;
    for (const Side& side : sides_) {
      sum += std::clamp(to_m - begins_m, 0.0, side.length_m) * side.heading;
      begins_m += side.length_m;
    }
    return sum;
  }

  std::vector<geo::MapPoint> points_{{Metres{500000}, Metres{5100000}}};
  std::vector<Side> sides_;
  double heading_ = 0.0;
  double length_m_ = 0.0;
};

}  // namespace

TEST_CASE("a circle finely drawn has its own radius, never a wider one") {
  for (const double radius : {4.0, 8.0, 15.0, 40.0, 200.0}) {
    const double found = radius_of(Pen{0.1}.straight(30).arc(radius, 150).straight(30), 6.0);
    CHECK(found <= radius);
    CHECK(near(found, radius, 0.002 * radius));
  }
}

TEST_CASE("a circle coarsely drawn is never taken for a wider one") {
  for (const double step : {0.5, 1.0, 2.0, 3.0, 5.0, 10.0}) {
    for (const double radius : {6.0, 10.0, 25.0}) {
      INFO(step);
      CHECK(radius_of(Pen{step}.straight(30).arc(radius, 170).straight(30), 7.0) <= radius);
    }
  }
}

TEST_CASE("left and right bends are as tight, driven either way") {
  const Pen right = Pen{0.5}.straight(20).arc(7, 120).straight(20);
  const Pen left = Pen{0.5}.straight(20).arc(7, -120).straight(20);
  CHECK(near(radius_of(right, 6), radius_of(left, 6), 1e-6));
  const Bend back = tightest_bend(right.line().reversed(), Metres{6});
  CHECK(near(back.radius.value(), radius_of(right, 6), 1e-6));
}

TEST_CASE("a corner is an arc of half a window, tighter still when it is sharp") {
  const double half = 3.0;
  CHECK(near(radius_of(Pen{50}.straight(50).corner(60).straight(50), 2 * half), half / (kPi / 3),
             1e-9));
  CHECK(near(radius_of(Pen{50}.straight(50).corner(150).straight(50), 2 * half),
             half / std::tan(75 * kPi / 180), 1e-9));
  CHECK(near(radius_of(Pen{50}.straight(50).corner(180).straight(40), 2 * half), 0.0, 1e-6));
  const Bend bend = tightest_bend(Pen{50}.straight(50).corner(90).straight(50).line(), Metres{6});
  CHECK(near(bend.at, Metres{50}, Metres{1e-6}));
}

TEST_CASE("no sharp turn of a switchback of two corners is missed") {
  // 150 degrees in two corners 2 m apart: within a circle of 2 m across at most.
  const double found =
      radius_of(Pen{100}.straight(40).corner(75).straight(2).corner(75).straight(40), 7);
  CHECK(found <= 3.5 / (150 * kPi / 180) * 1.5);
  CHECK(found > 0.5);
}

TEST_CASE("a straight line is as wide as is reported at all, and no bend is at the void") {
  CHECK(radius_of(Pen{10}.straight(100), 6) == kStraight.value());
  CHECK(radius_of(Pen{10}.straight(100), 0.5) == kStraight.value());
  CHECK(near(tightest_bend(Pen{10}.straight(100).line(), Metres{6}).at, Metres{50}, Metres{1e-6}));
  CHECK(tightest_bend(Pen{10}.straight(100).line(), Metres{kVoid}).radius == Metres{0});
  CHECK(tightest_bend(Pen{10}.straight(100).line(), Metres{0}).radius == Metres{0});
}

TEST_CASE("a straight line was seen through the window asked for, or through its own length") {
  CHECK(
      near(tightest_bend(Pen{10}.straight(100).line(), Metres{6}).window, Metres{6}, Metres{1e-9}));
  CHECK(near(tightest_bend(Pen{4}.straight(4).line(), Metres{6}).window, Metres{4}, Metres{1e-6}));
}

TEST_CASE("shaking of 10 cm in a line drawn every half metre does not close a straight trail") {
  std::mt19937 dice{17};
  for (int trial = 0; trial < 20; ++trial) {
    CHECK(radius_of(Pen{0.5}.straight(200).shaken(0.1, dice), 7) > 10.0);
  }
}

TEST_CASE("a loop does not wrap round to a wide bend") {
  CHECK(radius_of(Pen{0.05}.straight(20).arc(0.5, 360).straight(20), 7) == 0.0);
  CHECK(radius_of(Pen{0.05}.straight(20).arc(1.0, 360).straight(20), 7) == 0.0);
  CHECK(near(radius_of(Pen{0.05}.straight(20).arc(3.0, 720).straight(20), 7), 3.0, 0.01));
}

TEST_CASE("a bend near an end counts, but for the last quarter of the window") {
  CHECK(radius_of(Pen{1}.straight(2).corner(90).straight(40), 7) < 3.0);
  // At 1.75 m, a quarter of the window, 1 m of that arm lies before the corner.
  CHECK(near(radius_of(Pen{1}.straight(1).corner(90).straight(40), 7),
             (1.75 + 3.5) / 2 / (kPi / 2 / 1.75), 1e-9));
  CHECK(radius_of(Pen{1}.straight(1).corner(90).straight(1), 7) < 1.0);
}

// By the definition: 2.5 m from a corner of 90 degrees arms of 4 m see the share 1 - 2.5 / 4 of it.
TEST_CASE("a piece has the bend whose window only just touches it, before a corner and behind") {
  const auto at = [](double east, double north) {
    return geo::MapPoint{Metres{500000 + east}, Metres{5100000 + north}};
  };
  // The corner at 20 m; the window around 22.5 m ends at 26.5 m, that around 17.5 m at 13.5 m.
  const geo::Polyline line{{at(0, 0), at(0, 18.5), at(0, 20), at(1.5, 20), at(21, 20)}};
  const auto radii =
      radii_along(line, Metres{8}, {{Metres{12}, Metres{13.5}}, {Metres{26.5}, Metres{30}}});
  const double seen = kPi / 2 * (1 - 2.5 / 4);
  CHECK(near(radii[0], Metres{4 / seen}, Metres{1e-9}));
  CHECK(near(radii[1], Metres{4 / seen}, Metres{1e-9}));
}

// By the definition, for a corner at 20 m and arms of 4 m: from a place `gap_m` beside it they see
// the share 1 - gap_m / 4 of it, and their windows end 4 m further away.
TEST_CASE("a piece is told no wider a bend than that of the last place whose window touches it") {
  const geo::Polyline line = Pen{100}.straight(20).corner(90).straight(20).line();
  for (const double gap_m : {0.1, 1.3, 2.9, 3.7}) {
    const auto radii = radii_along(
        line, Metres{8}, {{Metres{10}, Metres{16 - gap_m}}, {Metres{24 + gap_m}, Metres{30}}});
    const double seen = kPi / 2 * (1 - gap_m / 4);
    CHECK(near(radii[0], Metres{4 / seen}, Metres{1e-6}));
    CHECK(near(radii[1], Metres{4 / seen}, Metres{1e-6}));
  }
}

// The arms of 2 m and 4 m see a corner of 90 degrees 1 m from an end as 45: (2 + 4) / 2 / (pi / 4).
TEST_CASE("where an end cuts the window short, the place a quarter of it away is looked at too") {
  const auto at = [](double east, double north) {
    return geo::MapPoint{Metres{500000 + east}, Metres{5100000 + north}};
  };
  const geo::Polyline line{{at(0, 0), at(0, 1), at(40, 1)}};
  for (const geo::Polyline& driven : {line, line.reversed()}) {
    const Bend bend = tightest_bend(driven, Metres{8});
    CHECK(near(bend.radius, Metres{12 / kPi}, Metres{1e-9}));
    CHECK(near(std::min(bend.at, driven.length() - bend.at), Metres{2}, Metres{1e-9}));
  }
}

TEST_CASE("of a thousand places of a short line none has a bend tighter by 0.02 %, at random") {
  constexpr unsigned kSeed = 1;
  CAPTURE(kSeed);
  std::mt19937 draw{kSeed};
  std::uniform_real_distribution<double> unit{0.0, 1.0};
  double widest = 0.0;
  for (int i = 0; i < 400; ++i) {
    Turtle turtle;
    const int sides = 2 + static_cast<int>(draw() % 4);
    for (int side = 0; side < sides; ++side) {
      turtle.go(1 + 9 * unit(draw), 2.5 * (unit(draw) - 0.5));
    }
    const double window_m = 4 + 16 * unit(draw);
    const double tightest_m = turtle.tightest_m(window_m);
    const Bend told = tightest_bend(turtle.line(), Metres{window_m});
    if (tightest_m > 0.0 && tightest_m < 1000.0) {
      widest = std::max(widest, told.radius.value() / tightest_m);
    }
  }
  CHECK(widest < 1.0002);
  CHECK(widest > 0.9998);
}

TEST_CASE("pieces have the radius of the bend that they lie in, and none at all without a window") {
  // 50 m straight, an arc of 10 m over 90 degrees (15.7 m), 50 m straight.
  const geo::Polyline line = Pen{0.1}.straight(50).arc(10, 90).straight(50).line();
  const std::vector<geo::Span> pieces{
      {Metres{10}, Metres{20}}, {Metres{55}, Metres{60}}, {Metres{80}, Metres{90}}};
  const auto radii = radii_along(line, Metres{6}, pieces);
  REQUIRE(radii.size() == 3);
  CHECK(radii[0] == kStraight);
  CHECK(near(radii[1], Metres{10}, Metres{0.02}));
  CHECK(radii[2] == kStraight);
  // What no window touches is reported no wider either.
  CHECK(radii_along(line, Metres{6}, {{Metres{300}, Metres{310}}}).front() == Metres{10000});
  for (const double window : {kVoid, 0.0, -6.0, std::numeric_limits<double>::infinity()}) {
    CHECK(radii_along(line, Metres{window}, pieces) == std::vector<Metres>(3, Metres{0}));
  }
}

}  // namespace rimehaul::passage
