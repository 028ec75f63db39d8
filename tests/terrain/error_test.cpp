// The error of a slope against closed forms, derived numbers and Monte Carlo.
#include "terrain/error.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <map>
#include <numbers>
#include <random>
#include <utility>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"
#include "terrain/gradient.h"

namespace rimehaul {

namespace {

using terrain::GridFrame;
using terrain::HeightError;
using terrain::HeightTrust;
using terrain::WindowEstimate;
using testing::map_of;
using testing::near;
using testing::point;
using units::Metres;

GridFrame square(double cell) {
  return {point(0, 0), {{Metres{cell}, Metres{0}}, {Metres{0}, Metres{-cell}}}};
}

HeightError error(double deviation, double length) {
  return {Metres{deviation}, Metres{length}};
}

HeightTrust trust(std::vector<HeightError> errors) {
  return {.errors = std::move(errors), .sub_cell = std::nullopt, .sub_cell_is_estimate = true};
}

double sigma(const GridFrame& frame, std::vector<HeightError> errors) {
  const auto found = gradient_sigma(frame, trust(std::move(errors)));
  REQUIRE(found.has_value());
  return found->ratio();
}

double window(const GridFrame& frame, HeightError error, WindowEstimate estimate) {
  const auto found = window_sigma(frame, trust({error}), estimate);
  REQUIRE(found.has_value());
  return found->ratio();
}

/// The closed form for square cells: var p + |cov(p, q)| at a corner.
double square_closed_form(double deviation, double length, double w) {
  const auto r = [&](double d) { return length > 0 ? std::exp(-d / length) : 0.0; };
  const double var = 2 * (1 - r(w));
  const double cov = 1 - 2 * r(w) + r(w * std::sqrt(2.0));
  return deviation / w * std::sqrt(var + std::abs(cov));
}

using Four = std::array<double, 4>;
using FourByFour = std::array<Four, 4>;

/// Cholesky factor of exp(-d / length) over four places.
FourByFour root_of_correlation(const std::array<geo::MapPoint, 4>& places, double length) {
  FourByFour root{};
  for (std::size_t i = 0; i < 4; ++i) {
    for (std::size_t j = 0; j <= i; ++j) {
      double rest = std::exp(-geo::distance(places.at(i), places.at(j)).value() / length);
      for (std::size_t k = 0; k < j; ++k) {
        rest -= root.at(i).at(k) * root.at(j).at(k);
      }
      root.at(i).at(j) = i == j ? std::sqrt(rest) : rest / root.at(j).at(j);
    }
  }
  return root;
}

/// Standard deviation of the slope in its worst direction at (u, t) of a patch, by simulation.
double simulated(const GridFrame& frame, HeightError error, terrain::GridPlace at) {
  std::mt19937_64 random{20260202};
  std::normal_distribution<double> normal;
  const std::array<geo::MapPoint, 4> places{frame.centre_of({0, 0}), frame.centre_of({1, 0}),
                                            frame.centre_of({0, 1}), frame.centre_of({1, 1})};
  const FourByFour root = root_of_correlation(places, error.correlation_length.value());
  double east2 = 0;
  double north2 = 0;
  double both = 0;
  const int runs = 200'000;
  for (int run = 0; run < runs; ++run) {
    Four independent{};
    std::ranges::generate(independent, [&] { return normal(random); });
    Four z{};
    for (std::size_t i = 0; i < 4; ++i) {
      for (std::size_t j = 0; j <= i; ++j) {
        z.at(i) += error.standard_deviation.value() * root.at(i).at(j) * independent.at(j);
      }
    }
    const double per_column = (1 - at.row) * (z[1] - z[0]) + at.row * (z[3] - z[2]);
    const double per_row = (1 - at.column) * (z[2] - z[0]) + at.column * (z[3] - z[1]);
    const auto gradient = frame.to_map({Metres{per_column}, Metres{per_row}});
    east2 += gradient.east.ratio() * gradient.east.ratio();
    north2 += gradient.north.ratio() * gradient.north.ratio();
    both += gradient.east.ratio() * gradient.north.ratio();
  }
  const double mean = (east2 + north2) / 2;
  return std::sqrt((mean + std::hypot((east2 - north2) / 2, both)) / runs);
}

/// Ground with an independent error at every cell, and Horn's gradients all over its inside.
std::vector<terrain::Gradient> noisy_gradients(const testing::Surface& ground, double deviation,
                                               double cell) {
  std::mt19937_64 random{20261127};
  std::normal_distribution<double> normal{0.0, deviation};
  std::map<std::pair<double, double>, double> noise;
  const auto map = map_of(
      [&](double e, double n) {
        return ground(e, n) + noise.try_emplace({e, n}, normal(random)).first->second;
      },
      cell, {0, 0, 250 * cell, 250 * cell});
  std::vector<terrain::Gradient> gradients;
  for (std::int64_t row = 1; row < 250; ++row) {
    for (std::int64_t column = 1; column < 250; ++column) {
      gradients.push_back(*terrain::horn_gradient(map, {column, row}));
    }
  }
  return gradients;
}

struct Sample {
  double mean;
  double deviation;
};

Sample sample_of(const std::vector<double>& numbers) {
  double sum = 0;
  double squares = 0;
  for (const double number : numbers) {
    sum += number;
    squares += number * number;
  }
  const double count = static_cast<double>(numbers.size());
  return {.mean = sum / count,
          .deviation = std::sqrt(squares / count - sum / count * (sum / count))};
}

constexpr double kDegrees = 180.0 / std::numbers::pi;

/// The simulation's own error is 1 / sqrt(2 x 200'000) = 0.16 %; six of those.
constexpr double kWithin = 0.01;

}  // namespace

TEST_CASE("independent errors of 0.1 m on cells of 5 m: sqrt 3 of sigma over cell") {
  // var p = 2 s2/w2, cov = s2/w2, worst direction 3 s2/w2.
  CHECK(near(sigma(square(5), {error(0.1, 0)}), std::sqrt(3.0) * 0.1 / 5, 1e-12));
}

TEST_CASE("the error of a slope agrees with its closed form on square cells") {
  for (const double w : {1.0, 5.0, 30.0}) {
    for (const double length : {0.0, 1.0, 5.0, 15.0, 100.0}) {
      CHECK(
          near(sigma(square(w), {error(0.2, length)}), square_closed_form(0.2, length, w), 1e-12));
    }
  }
}

TEST_CASE("the error of a slope agrees with Monte Carlo at the worst corner, within 1 %") {
  for (const double length : {1.0, 5.0, 15.0, 50.0}) {
    const GridFrame frame = square(5);
    const double closed = sigma(frame, {error(0.3, length)});
    CHECK(near(simulated(frame, error(0.3, length), {0, 0}), closed, kWithin * closed));
    CHECK(near(simulated(frame, error(0.3, length), {1, 0}), closed, kWithin * closed));
  }
}

TEST_CASE("on oblong, rotated and skewed cells the worst of the corners is found, within 1 %") {
  const std::array<GridFrame, 3> frames{
      GridFrame{point(0, 0), {{Metres{3}, Metres{0}}, {Metres{0}, Metres{-7}}}},
      GridFrame{point(0, 0), {{Metres{4}, Metres{3}}, {Metres{3}, Metres{-4}}}},
      GridFrame{point(0, 0), {{Metres{4}, Metres{0}}, {Metres{2}, Metres{6}}}}};
  for (const GridFrame& frame : frames) {
    double worst = 0;
    for (const terrain::GridPlace at :
         {terrain::GridPlace{0, 0}, {1, 0}, {0, 1}, {1, 1}, {0.5, 0.5}, {0.3, 0.9}}) {
      worst = std::max(worst, simulated(frame, error(0.3, 8), at));
    }
    const double closed = sigma(frame, {error(0.3, 8)});
    CHECK(near(worst, closed, kWithin * closed));
  }
}

TEST_CASE("inside a patch the error is smaller than at its corners") {
  const GridFrame frame = square(5);
  const double closed = sigma(frame, {error(0.3, 15)});
  CHECK(simulated(frame, error(0.3, 15), {0.5, 0.5}) < closed);
  CHECK(simulated(frame, error(0.3, 15), {0.5, 0.0}) < closed);
}

TEST_CASE("independent sources of error add as variances, and turning the raster changes nothing") {
  const double a = sigma(square(5), {error(0.3, 15)});
  const double b = sigma(square(5), {error(0.1, 0)});
  CHECK(near(sigma(square(5), {error(0.3, 15), error(0.1, 0)}), std::hypot(a, b), 1e-12));
  const GridFrame turned{point(0, 0), {{Metres{4}, Metres{3}}, {Metres{3}, Metres{-4}}}};
  CHECK(near(sigma(turned, {error(0.3, 15)}), a, 1e-12));
}

TEST_CASE("an error that nobody declared, or an impossible one, is unknown and not zero") {
  CHECK_FALSE(gradient_sigma(square(5), trust({})).has_value());
  CHECK_FALSE(gradient_sigma(square(5), trust({error(-0.1, 0)})).has_value());
  CHECK_FALSE(gradient_sigma(square(5), trust({error(NAN, 0)})).has_value());
  CHECK_FALSE(gradient_sigma(square(5), trust({error(INFINITY, 0)})).has_value());
  CHECK_FALSE(gradient_sigma(square(5), trust({error(0.1, -1)})).has_value());
  CHECK_FALSE(gradient_sigma(square(5), trust({error(0.1, 5), error(0.1, NAN)})).has_value());
  CHECK(sigma(square(5), {error(0, 0)}) == 0.0);
}

// Derived from the estimates' weights: sqrt(12)/8, sqrt(1/2) and 1/sqrt(6) of s/w. The last is
// Florinsky's (1998) form of Evans's six weights.
TEST_CASE("the window estimates spread independent errors as their weights say") {
  CHECK(near(window(square(5), error(0.1, 0), WindowEstimate::horn), 0.008660, 5e-7));
  CHECK(near(window(square(1), error(1, 0), WindowEstimate::horn), 0.4330, 5e-5));
  CHECK(near(window(square(1), error(1, 0), WindowEstimate::zevenbergen_thorne), 0.7071, 5e-5));
  CHECK(near(window(square(1), error(1, 0), WindowEstimate::least_squares_plane), 0.4082, 5e-5));
}

// Double sums worked separately: 0.1 m, 5 m cells, exp(-d/L).
TEST_CASE("errors alike over one cell make Horn's slope worse than independent ones do") {
  CHECK(near(window(square(5), error(0.1, 5), WindowEstimate::horn), 0.009636, 5e-7));
  CHECK(near(window(square(5), error(0.1, 20), WindowEstimate::horn), 0.007284, 5e-7));
  CHECK(near(window(square(5), error(0.1, 50), WindowEstimate::horn), 0.005074, 5e-7));
}

// Closed form for two cells two steps apart: s/w sqrt((1 - r(2w)) / 2).
TEST_CASE("Zevenbergen and Thorne's slope follows the likeness of the errors two cells apart") {
  for (const double length : {2.0, 10.0, 40.0}) {
    const double closed = 0.1 / 5 * std::sqrt((1 - std::exp(-10 / length)) / 2);
    CHECK(near(window(square(5), error(0.1, length), WindowEstimate::zevenbergen_thorne), closed,
               1e-12));
  }
}

TEST_CASE("a window's error that nobody declared is unknown") {
  CHECK_FALSE(window_sigma(square(5), trust({}), WindowEstimate::horn).has_value());
  CHECK_FALSE(window_sigma(square(5), trust({error(NAN, 5)}), WindowEstimate::horn).has_value());
}

TEST_CASE("a window's estimate that is none of the known ones is our fault and no small error") {
  CHECK_THROWS_AS(
      (void)window_sigma(square(5), trust({error(0.1, 0)}), static_cast<WindowEstimate>(3)),
      base::OurFault);
}

TEST_CASE("Horn's slopes of pure noise spread as derived, within 2 %") {
  std::mt19937_64 random{20260203};
  std::normal_distribution<double> normal{1000.0, 0.1};
  std::map<std::pair<double, double>, double> noise;
  const auto map = map_of(
      [&](double e, double n) {
        return noise.try_emplace({e, n}, normal(random)).first->second;
      },
      5, {0, 0, 1500, 1500});
  double east2 = 0;
  int count = 0;
  for (std::int64_t row = 1; row < 300; ++row) {
    for (std::int64_t column = 1; column < 300; ++column) {
      const double east = terrain::horn_gradient(map, {column, row})->east.ratio();
      east2 += east * east;
      ++count;
    }
  }
  const double derived = window(square(5), error(0.1, 0), WindowEstimate::horn);
  CHECK(near(std::sqrt(east2 / count), derived, 0.02 * derived));
}

// The mean of a length whose two parts are normal, sigma sqrt(pi / 2) (Rayleigh, closed form).
TEST_CASE("flat ground with errors of 0.1 m on cells of 1 m looks 3.1 degrees steep on average") {
  const double sigma_p = window(square(1), error(0.1, 0), WindowEstimate::horn);
  const double steep = sigma_p * std::sqrt(std::numbers::pi / 2);
  CHECK(near(std::atan(steep) * kDegrees, 3.1, 0.05));
  std::vector<double> slopes;
  for (const terrain::Gradient& gradient : noisy_gradients(testing::plane(0, 0), 0.1, 1)) {
    slopes.push_back(slope_of(gradient).ratio());
  }
  CHECK(near(sample_of(slopes).mean, steep, 0.02 * steep));
}

// First-order error of an angle, cos^2(beta) sigma_p (closed form), for independent errors and
// Horn's slope.
TEST_CASE("what an error of heights comes to in degrees on a slope of 25 degrees") {
  struct Row {
    double deviation;
    double cell;
    double degrees;
  };
  const double cosine = std::cos(25 / kDegrees);
  for (const Row& row :
       {Row{0.10, 1, 2.04}, Row{0.10, 2, 1.02}, Row{0.10, 5, 0.41}, Row{0.5, 5, 2.04},
        Row{1, 10, 2.04}, Row{2.43, 30, 1.65}, Row{7, 30, 4.76}}) {
    CAPTURE(row.deviation);
    CAPTURE(row.cell);
    const double sigma_p = window(square(row.cell), error(row.deviation, 0), WindowEstimate::horn);
    CHECK(near(cosine * cosine * sigma_p * kDegrees, row.degrees, 0.0051));
    std::vector<double> slopes;
    for (const terrain::Gradient& gradient :
         noisy_gradients(testing::hillside(25, 180), row.deviation, row.cell)) {
      slopes.push_back(slope_of(gradient).degrees());
    }
    // The largest of them is beyond the first order: it comes to 4.65 degrees.
    const double within = row.degrees > 4 ? 0.03 : 0.02;
    CHECK(near(sample_of(slopes).deviation, row.degrees, within * row.degrees));
  }
}

TEST_CASE("an aspect is off by the error of the slope over its tangent") {
  // First order, closed form: 0.1 m on 5 m and 25 degrees come to 1.064 degrees.
  const double sigma_p = window(square(5), error(0.1, 0), WindowEstimate::horn);
  const double derived = sigma_p / std::tan(25 / kDegrees) * kDegrees;
  CHECK(near(derived, 1.064, 0.0005));
  std::vector<double> aspects;
  for (const terrain::Gradient& gradient : noisy_gradients(testing::hillside(25, 180), 0.1, 5)) {
    aspects.push_back(aspect_of(gradient)->degrees());
  }
  CHECK(near(sample_of(aspects).mean, 180.0, 0.05));
  CHECK(near(sample_of(aspects).deviation, derived, 0.02 * derived));
}

// Covariances of means worked as plain sums over all pairs of their cells.
TEST_CASE("the error of slopes between means counts how alike the errors of their cells are") {
  const auto pairwise = [](double length, int n, double apart_east, double apart_north) {
    double sum = 0;
    for (int pair = 0; pair < n * n * n * n; ++pair) {
      const int a = pair % (n * n);
      const int b = pair / (n * n);
      const double east = apart_east + (a % n - b % n) * 0.5;
      const double north = apart_north + (a / n - b / n) * 0.5;
      const double apart = std::hypot(east, north);
      sum += length > 0 ? std::exp(-apart / length) : (apart == 0 ? 1.0 : 0.0);
    }
    return 0.01 * sum / (n * n * n * n);
  };
  for (const int n : {1, 2, 3}) {
    for (const double length : {0.0, 0.7, 15.0}) {
      const double w = 0.5 * n;
      const double here = pairwise(length, n, 0, 0);
      const double next = pairwise(length, n, w, 0);
      const double corner = pairwise(length, n, w, w);
      const double closed = std::sqrt(2 * (here - next) + std::abs(here - 2 * next + corner)) / w;
      HeightTrust means = trust({error(0.1, length)});
      means.mean_over = n;
      CHECK(near(gradient_sigma(square(w), means)->ratio(), closed, 1e-12));
    }
  }
}

// Rounding spreads evenly over a step: variance q^2 / 12 (closed form). Alike on gentle slopes, so
// means over cells do not lessen it.
TEST_CASE("rounded heights are less exact by their step, averaged or not") {
  HeightTrust rounded = trust({error(0, 0)});
  rounded.rounded_to = Metres{1};
  CHECK(near(gradient_sigma(square(5), rounded)->ratio(), std::sqrt(3.0 / 12.0) / 5, 1e-12));
  rounded.mean_over = 4;
  CHECK(near(gradient_sigma(square(5), rounded)->ratio(), std::sqrt(3.0 / 12.0) / 5, 1e-12));
  rounded.errors = {error(0.3, 15)};
  rounded.mean_over = 1;
  CHECK(near(gradient_sigma(square(5), rounded)->ratio(),
             std::hypot(0.1, sigma(square(5), {error(0.3, 15)})), 1e-12));
  rounded.rounded_to = Metres{-1};
  CHECK_FALSE(gradient_sigma(square(5), rounded).has_value());
  rounded.rounded_to = Metres{NAN};
  CHECK_FALSE(gradient_sigma(square(5), rounded).has_value());
  rounded.rounded_to = Metres{0};
  rounded.mean_over = 0;
  CHECK_FALSE(gradient_sigma(square(5), rounded).has_value());
}

TEST_CASE("whole-metre heights of a hillside give slopes as far off as rounding says, within 3 %") {
  std::mt19937_64 random{20261126};
  std::uniform_real_distribution<double> anything{0, 1};
  double off2 = 0;
  int count = 0;
  for (int hill = 0; hill < 40; ++hill) {
    const double p = 0.2 + 0.3 * anything(random);
    const double q = 0.2 + 0.3 * anything(random);
    const double base = 1000 + anything(random);
    const auto ground = [&](double e, double n) { return std::round(base + p * e + q * n); };
    const auto map = map_of(ground, 5, {0, 0, 200, 200});
    for (std::int64_t i = 0; i + 1 < 40; ++i) {
      for (std::int64_t j = 0; j + 1 < 40; ++j) {
        const auto at = map.four_from({i, j});
        const auto gradient =
            map.frame().to_map({at->next_column - at->first, at->next_row - at->first});
        // The worst direction of a corner is its diagonal.
        const double off =
            ((gradient.east.ratio() - p) - (gradient.north.ratio() - q)) / std::sqrt(2.0);
        off2 += off * off;
        ++count;
      }
    }
  }
  HeightTrust rounded = trust({error(0, 0)});
  rounded.rounded_to = Metres{1};
  const double derived = gradient_sigma(square(5), rounded)->ratio();
  CHECK(near(std::sqrt(off2 / count), derived, 0.03 * derived));
}

}  // namespace rimehaul
