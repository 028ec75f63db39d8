// A raster swept in blocks: each cell read once and told of once, and what is told depends on no
// block.
#include "terrain/sweep.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <bit>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"

namespace rimehaul::terrain {

namespace {

using testing::rough;

/// A raster whose cells are counted as they are read.
class CountedHeights final : public BlockSource {
 public:
  explicit CountedHeights(CellIndex size)
      : ground_{testing::SurfaceSource{
            {testing::point(0, 0),
             {{units::Metres{5}, units::Metres{0}}, {units::Metres{0}, units::Metres{-5}}}},
            size,
            testing::with_void(rough(3, 4.0, 0.1),
                               [](double east, double north) {
                                 return std::fmod(std::abs(east + 3 * north), 205.0) < 5.0;
                               })}},
        read_(static_cast<std::size_t>(size.column * size.row)) {}

  [[nodiscard]] GridFrame frame() const override { return ground_.frame(); }
  [[nodiscard]] CellIndex size() const override { return ground_.size(); }
  [[nodiscard]] HeightBlock read(BlockIndex block) override { return ground_.read(block); }
  void read_window(const CellWindow& window, HeightRows into) override {
    ground_.read_window(window, into);
    for (std::int64_t row = window.first.row; row < window.first.row + window.size.row; ++row) {
      for (std::int64_t column = 0; column < window.size.column; ++column) {
        ++read_[static_cast<std::size_t>(row * size().column + window.first.column + column)];
      }
    }
  }
  [[nodiscard]] bool each_once() const {
    return std::ranges::all_of(read_, [](int times) { return times == 1; });
  }

 private:
  testing::SurfaceSource ground_;
  std::vector<int> read_;
};

/// Slopes of a whole raster in such blocks; a cell never told of stays 7.
std::vector<float> swept(CellIndex size, CellIndex block) {
  CountedHeights source{size};
  const Sweep sweep{{size, block}};
  std::vector<std::shared_ptr<const BlockEdges>> edges(sweep.count());
  std::vector<int> wanted(sweep.count());
  std::vector<float> slopes_deg(static_cast<std::size_t>(size.column * size.row), 7.0F);
  SweptBlock heights;
  for (std::size_t at = 0; at < sweep.count(); ++at) {
    heights.read(source, sweep.read_at(at));
    edges[at] = std::make_shared<const BlockEdges>(heights.edges());
    const auto edge_of = [&](std::optional<std::size_t> before) {
      if (!before) {
        return std::shared_ptr<const BlockEdges>{};
      }
      ++wanted[*before];
      return edges[*before];
    };
    const Sweep::Before before = sweep.before(at);
    heights.join({edge_of(before.left), edge_of(before.above), edge_of(before.corner)});
    const CellWindow told = sweep.told_at(at);
    std::vector<float> part(static_cast<std::size_t>(told.size.column * told.size.row));
    SlopeSheets sheets;
    sheets.slope_deg = part;
    fill_slopes(heights.around(told), {source.frame(), {}}, sheets, VectorPath::baseline);
    for (std::int64_t row = 0; row < told.size.row; ++row) {
      for (std::int64_t column = 0; column < told.size.column; ++column) {
        float& slope_deg = slopes_deg[static_cast<std::size_t>(
            (told.first.row + row) * size.column + told.first.column + column)];
        CHECK(slope_deg == 7.0F);
        slope_deg = part[static_cast<std::size_t>(row * told.size.column + column)];
      }
    }
  }
  for (std::size_t at = 0; at < sweep.count(); ++at) {
    CHECK(wanted[at] == sweep.wanted_by(at));
  }
  CHECK(source.each_once());
  CHECK(std::ranges::count(slopes_deg, 7.0F) == 0);
  return slopes_deg;
}

bool same_bits(const std::vector<float>& one, const std::vector<float>& other) {
  return std::ranges::equal(one, other, [](float a, float b) {
    return std::bit_cast<std::uint32_t>(a) == std::bit_cast<std::uint32_t>(b);
  });
}

}  // namespace

TEST_CASE("in whatever blocks a raster is swept, each cell is read once and the slopes are one") {
  for (const CellIndex size :
       {CellIndex{1, 1}, {1, 9}, {9, 1}, {2, 2}, {3, 3}, {67, 41}, {64, 64}, {65, 33}}) {
    const std::vector<float> whole = swept(size, size);
    CHECK((size.column < 9 || size.row < 9 ||
           std::ranges::count_if(whole, [](float slope) { return slope > 0.0F; }) > 100));
    for (const CellIndex block : {CellIndex{1, 1},
                                  {2, 2},
                                  {3, 2},
                                  {7, 5},
                                  {16, 16},
                                  {32, 8},
                                  {67, 3},
                                  {1, 41},
                                  {100, 100}}) {
      CAPTURE(size.column);
      CAPTURE(size.row);
      CAPTURE(block.column);
      CAPTURE(block.row);
      CHECK(same_bits(swept(size, block), whole));
    }
  }
}

TEST_CASE("the slopes of a sweep are none in the outermost cells and known within") {
  const std::vector<float> slopes_deg = swept({40, 30}, {16, 8});
  for (std::size_t row = 0; row < 30; ++row) {
    CHECK(slopes_deg[row * 40] == kNoNumber);
    CHECK(slopes_deg[row * 40 + 39] == kNoNumber);
  }
  for (std::size_t column = 0; column < 40; ++column) {
    CHECK(slopes_deg[column] == kNoNumber);
    CHECK(slopes_deg[29 * 40 + column] == kNoNumber);
  }
}

TEST_CASE("a window of heights is cut from the blocks that it touches") {
  auto source = testing::source_of(rough(5, 9.0, 0.1), 5.0, {0, 0, 2000, 1500});
  const HeightMap whole = testing::whole_map(source);
  const CellWindow window{{100, 120}, {200, 150}};
  const std::size_t stride = 211;
  std::vector<double> heights_m(stride * 150, -1.0);
  source.read_window(window, {heights_m, stride});
  for (std::int64_t row = 0; row < window.size.row; ++row) {
    for (std::int64_t column = 0; column < window.size.column; ++column) {
      REQUIRE(
          heights_m[static_cast<std::size_t>(row) * stride + static_cast<std::size_t>(column)] ==
          whole.at(CellIndex{100 + column, 120 + row})->above_datum_m());
    }
    CHECK(heights_m[static_cast<std::size_t>(row) * stride + 200] == -1.0);
  }
}

TEST_CASE("a window that ends with the first cells of a block has these too") {
  auto source = testing::source_of(rough(5, 9.0, 0.1), 5.0, {0, 0, 2000, 1500});
  const HeightMap whole = testing::whole_map(source);
  const CellIndex last{kBlockSide, kBlockSide};
  std::vector<double> heights_m(4, -1.0);
  source.read_window({{last.column - 1, last.row - 1}, {2, 2}}, {heights_m, 2});
  CHECK(heights_m[3] == whole.at(last)->above_datum_m());
  CHECK(heights_m[1] == whole.at(CellIndex{last.column, last.row - 1})->above_datum_m());
}

TEST_CASE("windows share what lies in both, which may be nothing; sources keep blocks together") {
  const CellWindow window{{10, 20}, {5, 4}};
  const CellWindow shared = window.shared_with({{12, 18}, {10, 4}});
  CHECK(shared.first.column == 12);
  CHECK(shared.first.row == 20);
  CHECK(shared.size.column == 3);
  CHECK(shared.size.row == 2);
  CHECK_FALSE(shared.is_empty());
  CHECK_FALSE(CellWindow{{3, 4}, {1, 1}}.is_empty());
  CHECK(window.shared_with({{15, 20}, {5, 4}}).is_empty());
  CHECK(window.shared_with({{10, 24}, {5, 4}}).is_empty());
  const CountedHeights source{{30, 20}};
  CHECK(source.kept_together().column == kBlockSide);
  CHECK(source.kept_together().row == kBlockSide);
}

TEST_CASE("blocks to sweep are whole ones of the file, about half a million cells") {
  const auto check = [](CellIndex kept, CellIndex wanted) {
    const CellIndex found = cut_to_sweep({{20'000, 20'000}, kept}).block;
    CHECK(found.column == wanted.column);
    CHECK(found.row == wanted.row);
  };
  check({128, 128}, {2048, 256});
  check({256, 256}, {2048, 256});
  check({512, 512}, {2048, 512});
  check({300, 200}, {1800, 200});
  check({20'000, 1}, {20'000, 26});
  check({20'000, 64}, {20'000, 64});
  check({20'000, 20'000}, {8192, 64});
  check({4096, 4096}, {4096, 64});
  check({2048, 2048}, {2048, 2048});
}

TEST_CASE("a sweep of nothing, and a block that it does not have, are our fault") {
  CHECK_THROWS_AS((Sweep{{{0, 5}, {2, 2}}}), base::OurFault);
  CHECK_THROWS_AS((Sweep{{{5, 0}, {2, 2}}}), base::OurFault);
  CHECK_THROWS_AS((void)(Sweep{{{5, 5}, {5, 5}}}.read_at(1)), base::OurFault);
}

}  // namespace rimehaul::terrain
