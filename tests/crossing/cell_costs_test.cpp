#include "crossing/cell_costs.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "base/require.h"
#include "near.h"

using namespace rimehaul::crossing;
using rimehaul::base::OurFault;
using rimehaul::testing::near;

namespace {

/// The least cost to every cell, by going over all pairs of neighbours until nothing changes.
std::map<Cell, double> try_everything(const CellCosts& costs, Cell start) {
  const Extent extent = costs.extent();
  const auto cost_of = [&](Cell cell) {
    return double{costs.row(cell.row)[static_cast<std::size_t>(cell.column)]};
  };
  std::map<Cell, double> found;
  if (cost_of(start) > 0.0) {
    found[start] = 0.0;
  }
  for (bool changed = true; changed;) {
    changed = false;
    for (const auto& [cell, paid] : std::map{found}) {
      for (int down = -1; down <= 1; ++down) {
        for (int right = -1; right <= 1; ++right) {
          const Cell next{cell.column + right, cell.row + down};
          if (next == cell || next.column < 0 || next.column >= extent.columns || next.row < 0 ||
              next.row >= extent.rows || !(cost_of(next) > 0.0)) {
            continue;
          }
          const double mean = (cost_of(cell) + cost_of(next)) / 2.0;
          const double there = paid + mean * std::hypot(down, right);
          if (!found.contains(next) || there < found.at(next) - 1e-9) {
            found[next] = there;
            changed = true;
          }
        }
      }
    }
  }
  return found;
}

}  // namespace

TEST_CASE("over cells of one cost the least cost is that of going diagonally, then straight") {
  CellCosts costs{{.columns = 30, .rows = 20}};
  for (std::int32_t row = 0; row < 20; ++row) {
    std::ranges::fill(costs.row(row), 2.5F);
  }
  const CellDistances distances{costs, std::vector<Cell>{{4, 7}}};
  for (std::int32_t row = 0; row < 20; ++row) {
    for (std::int32_t column = 0; column < 30; ++column) {
      const int along = std::abs(column - 4);
      const int across = std::abs(row - 7);
      const int diagonal = std::min(along, across);
      const double wanted = 2.5 * (std::max(along, across) - diagonal + std::sqrt(2.0) * diagonal);
      REQUIRE(distances.to({column, row}).has_value());
      CHECK(near(*distances.to({column, row}), wanted, 1e-9));
    }
  }
}

TEST_CASE("over random costs with barred cells it is what going over all neighbours finds") {
  std::size_t reached = 0;
  std::size_t not_reached = 0;
  for (std::uint32_t seed = 1; seed <= 100; ++seed) {
    CAPTURE(seed);
    std::mt19937 dice{seed};
    const Extent extent{.columns = static_cast<std::int32_t>(1 + dice() % 9),
                        .rows = static_cast<std::int32_t>(1 + dice() % 9)};
    CellCosts costs{extent};
    const double spread = seed % 3 == 0 ? 8.0 : 1.0;  // of the costs' logarithms
    for (std::int32_t row = 0; row < extent.rows; ++row) {
      for (float& cost : costs.row(row)) {
        const double share = static_cast<double>(dice()) / 4294967296.0;
        cost = dice() % 3 == 0 ? 0.0F : static_cast<float>(std::exp(spread * share));
      }
    }
    const Cell start{static_cast<std::int32_t>(dice() % static_cast<unsigned>(extent.columns)),
                     static_cast<std::int32_t>(dice() % static_cast<unsigned>(extent.rows))};
    const auto wanted = try_everything(costs, start);
    const CellDistances distances{costs, std::vector{start}};
    for (std::int32_t row = 0; row < extent.rows; ++row) {
      for (std::int32_t column = 0; column < extent.columns; ++column) {
        const auto found = distances.to({column, row});
        const auto known = wanted.find({column, row});
        REQUIRE(found.has_value() == (known != wanted.end()));
        ++(found.has_value() ? reached : not_reached);
        if (found.has_value()) {
          REQUIRE(near(*found, known->second, 1e-6));
        }
      }
    }
  }
  CHECK(reached > 300);
  CHECK(not_reached > 300);
}

TEST_CASE("a cost that is no number, not finite or not above 0 bars its cell") {
  for (const float barred : {std::nanf(""), INFINITY, 0.0F, -1.0F, -1e30F, -INFINITY}) {
    CAPTURE(barred);
    CellCosts costs{{.columns = 3, .rows = 1}};
    costs.row(0)[0] = 1.0F;
    costs.row(0)[1] = barred;
    costs.row(0)[2] = 1.0F;
    const CellDistances distances{costs, std::vector<Cell>{{0, 0}}};
    CHECK(distances.to({0, 0}) == 0.0);
    CHECK_FALSE(distances.to({1, 0}).has_value());
    CHECK_FALSE(distances.to({2, 0}).has_value());
    CHECK_FALSE(CellDistances(costs, std::vector<Cell>{{1, 0}}).to({0, 0}).has_value());
  }
}

TEST_CASE("costs that are too unlike for the sums to be trusted, and places outside, are refused") {
  CellCosts costs{{.columns = 2, .rows = 1}};
  costs.row(0)[0] = 1e-6F;
  costs.row(0)[1] = 1e6F;
  CHECK_THROWS_AS(CellDistances(costs, std::vector<Cell>{{0, 0}}), OurFault);
  CHECK_THROWS_AS((void)costs.row(1), OurFault);
  CHECK_THROWS_AS(CellCosts({.columns = 0, .rows = 3}), OurFault);
  CHECK_THROWS_AS(CellCosts({.columns = 1 << 20, .rows = 1 << 20}), OurFault);
  costs.row(0)[1] = 1.0F;
  CHECK_THROWS_AS(CellDistances(costs, std::vector<Cell>{{2, 0}}), OurFault);
}
