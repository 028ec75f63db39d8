// Sparse heights: what a corridor needs is there, what nobody loaded is unknown.
#include "terrain/height_map.h"

#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "base/require.h"
#include "ground/surfaces.h"
#include "near.h"
#include "terrain/gradient.h"

namespace rimehaul {

namespace {

using terrain::BlockIndex;
using terrain::CellIndex;
using terrain::Corridor;
using terrain::HeightMap;
using testing::map_of;
using testing::near;
using testing::point;
using testing::source_of;
using testing::SurfaceSource;
using testing::whole_map;
using testing::with_void;
using units::Metres;

constexpr std::int64_t kMany = 1'000'000;

/// A raster of 10^12 cells of 1 m: 8 TB of heights if it were ever read whole.
SurfaceSource huge_source() {
  const terrain::GridFrame frame{point(0, 0), {{Metres{1}, Metres{0}}, {Metres{0}, Metres{-1}}}};
  return {frame, {kMany, kMany}, testing::plane(0.1, 0.2)};
}

class RecordingSource : public SurfaceSource {
 public:
  using SurfaceSource::SurfaceSource;
  [[nodiscard]] terrain::HeightBlock read(BlockIndex block) override {
    order.push_back(block);
    return SurfaceSource::read(block);
  }
  std::vector<BlockIndex> order;
};

HeightMap along(terrain::BlockSource& source, std::vector<geo::MapPoint> points, double aside) {
  const std::vector<Corridor> corridors{{geo::Polyline{std::move(points)}, Metres{aside}}};
  return HeightMap::load(source, corridors);
}

}  // namespace

TEST_CASE("memory follows the trails and not the raster") {
  SurfaceSource source = huge_source();
  // Ten kilometres along a row of cells, in the middle of a block row: 10'000 / 128 blocks.
  const HeightMap map = along(source, {point(500'000, -500'032), point(510'000, -500'032)}, 20.0);
  CHECK(map.block_count() == 79);
  CHECK(source.blocks_read() == 79);
  // A diagonal of 10 km x 10 km touches two or three blocks per block row, not all 79 x 79.
  const HeightMap diagonal =
      along(source, {point(500'000, -500'000), point(510'000, -510'000)}, 20.0);
  CHECK(diagonal.block_count() >= 79);
  CHECK(diagonal.block_count() <= 3 * 80);
}

TEST_CASE("each block is read once and in row-major order, though corridors cross") {
  const terrain::GridFrame frame{point(0, 0), {{Metres{1}, Metres{0}}, {Metres{0}, Metres{-1}}}};
  RecordingSource source{frame, {1000, 1000}, testing::plane(0.1, 0.2)};
  const std::vector<Corridor> corridors{
      {geo::Polyline{{point(900, -900), point(10, -10)}}, Metres{30}},
      {geo::Polyline{{point(10, -900), point(900, -10), point(900, -500)}}, Metres{30}}};
  const HeightMap map = HeightMap::load(source, corridors);
  CHECK(source.order.size() == map.block_count());
  for (std::size_t i = 1; i < source.order.size(); ++i) {
    const BlockIndex a = source.order[i - 1];
    const BlockIndex b = source.order[i];
    CHECK((a.row < b.row || (a.row == b.row && a.column < b.column)));
  }
}

TEST_CASE("slopes are known everywhere in a corridor, up to its edge") {
  SurfaceSource source = huge_source();
  // Corridors that run along and end at the borders between blocks (cell 128 k).
  const auto base = static_cast<double>(128 * 4000);
  for (const double shift : {-3.0, -1.0, -0.5, 0.0, 0.5, 1.0, 3.0}) {
    const geo::MapPoint a = point(base + shift, -base - shift);
    const geo::MapPoint b = point(base + shift + 140, -base - shift - 70);
    const double aside = 6.0;
    const HeightMap map = along(source, {a, b}, aside);
    const geo::Polyline line{{a, b}};
    for (double s = 0; s <= line.length().value(); s += 1.7) {
      for (const double off : {-aside, 0.0, aside}) {
        const auto right = units::Bearing::from_degrees(line.bearing_at(Metres{s}).degrees() + 90);
        const auto place = geo::moved(line.at(Metres{s}), right, Metres{off});
        CHECK(map.at(place).has_value());
        const auto grid = map.frame().locate(place);
        const CellIndex cell{std::llround(grid.column), std::llround(grid.row)};
        CHECK(terrain::horn_gradient(map, cell).has_value());
      }
    }
  }
}

TEST_CASE("what nobody loaded, what lies outside and what is a hole have no height") {
  SurfaceSource source = huge_source();
  const HeightMap map = along(source, {point(500'000, -500'000), point(500'100, -500'000)}, 5.0);
  CHECK(map.at(CellIndex{500'050, 500'000}).has_value());
  CHECK_FALSE(map.at(CellIndex{500'050, 501'000}).has_value());
  CHECK_FALSE(map.at(CellIndex{400'000, 500'000}).has_value());
  CHECK_FALSE(map.at(CellIndex{-1, 500'000}).has_value());
  CHECK_FALSE(map.at(CellIndex{500'050, kMany}).has_value());
  CHECK_FALSE(map.at(point(NAN, 0)).has_value());
  CHECK_FALSE(map.at(point(INFINITY, 0)).has_value());
  CHECK_FALSE(map.at(point(1e300, 0)).has_value());

  const auto holed = map_of(
      with_void(testing::plane(0, 0), [](double e, double n) { return e == 10 && n == 10; }), 5.0);
  CHECK_FALSE(holed.at(CellIndex{102, 98}).has_value());
  CHECK(holed.at(CellIndex{103, 98}).has_value());
  // Every patch that has the hole at a corner is unknown; the next one is not.
  CHECK_FALSE(holed.at(point(6, 6)).has_value());
  CHECK_FALSE(holed.at(point(14.9, 14.9)).has_value());
  CHECK(holed.at(point(4.9, 4.9)).has_value());
  CHECK(holed.at(point(15.1, 15.1)).has_value());
}

TEST_CASE("between two corridors nothing is known, though blocks of the same row are loaded") {
  SurfaceSource source = huge_source();
  const std::vector<Corridor> corridors{
      {geo::Polyline{{point(1000, -1000), point(1010, -1000)}}, Metres{5}},
      {geo::Polyline{{point(2000, -1000), point(2010, -1000)}}, Metres{5}}};
  const HeightMap map = HeightMap::load(source, corridors);
  for (const std::int64_t column : {1005, 2005}) {
    CHECK(map.at(CellIndex{column, 1000}).has_value());
    CHECK(map.four_from({column, 1000}).has_value());
  }
  // Blocks 7 and 15 of row 7 are there; columns 1500, 500 and 2500 lie in 11, 3 and 19.
  for (const std::int64_t column : {1500, 500, 2500}) {
    CHECK_FALSE(map.at(CellIndex{column, 1000}).has_value());
    CHECK_FALSE(map.four_from({column, 1000}).has_value());
  }
  CHECK_FALSE(map.four_from({1005, 1500}).has_value());
}

// Cells of 1 m from (0, 299) south-east, so that cell (c, r) stands at E = c, N = 299 - r.
TEST_CASE("four heights are known only when all four are, within a block and across its borders") {
  const auto ground = testing::plane(0.1, 0.2);
  const testing::Extent extent{0, 0, 299, 299};
  const HeightMap whole = map_of(ground, 1.0, extent);
  for (const CellIndex first :
       {CellIndex{50, 60}, CellIndex{127, 60}, CellIndex{60, 127}, CellIndex{127, 127}}) {
    CAPTURE(first.column);
    CAPTURE(first.row);
    const auto four = whole.four_from(first);
    REQUIRE(four.has_value());
    CHECK(near((four->next_column - four->first).value(), 0.1, 1e-9));
    CHECK(near((four->next_row - four->first).value(), -0.2, 1e-9));
    CHECK(near((four->next_both - four->first).value(), -0.1, 1e-9));
    for (const CellIndex by :
         {CellIndex{0, 0}, CellIndex{1, 0}, CellIndex{0, 1}, CellIndex{1, 1}}) {
      const CellIndex hole{first.column + by.column, first.row + by.row};
      const HeightMap holed = map_of(with_void(ground,
                                               [&](double e, double n) {
                                                 return std::llround(e) == hole.column &&
                                                        299 - std::llround(n) == hole.row;
                                               }),
                                     1.0, extent);
      CHECK_FALSE(holed.four_from(first).has_value());
      CHECK(holed.four_from({first.column + 2, first.row}).has_value());
    }
  }
}

TEST_CASE("beyond any edge of the raster there are no four heights") {
  const HeightMap map = map_of(testing::plane(0.1, 0.2), 1.0, {0, 0, 50, 50});
  CHECK(map.four_from({0, 0}).has_value());
  CHECK(map.four_from({49, 49}).has_value());
  for (const CellIndex first : {CellIndex{-1, 5}, CellIndex{5, -1}, CellIndex{50, 5},
                                CellIndex{5, 50}, CellIndex{-2, -2}}) {
    CHECK_FALSE(map.four_from(first).has_value());
  }
}

TEST_CASE("an infinite height is a hole") {
  const auto map =
      map_of([](double e, double) { return e == 0 ? INFINITY : 1000.0; }, 5.0, {-50, -50, 50, 50});
  CHECK_FALSE(map.at(CellIndex{10, 10}).has_value());
  CHECK(map.at(CellIndex{9, 10}).has_value());
}

TEST_CASE("the raster ends at its last cell centres, not before and not behind") {
  const auto map = map_of(testing::plane(0.1, 0.2), 5.0, {0, 0, 50, 50});
  CHECK(map.size() == CellIndex{11, 11});
  CHECK(map.at(CellIndex{10, 10}).has_value());
  CHECK_FALSE(map.at(CellIndex{11, 10}).has_value());
  CHECK(map.at(point(49.99, 0.01)).has_value());
  CHECK_FALSE(map.at(point(50.01, 25)).has_value());
  CHECK_FALSE(map.at(point(25, -0.01)).has_value());
}

TEST_CASE("what a source hands out beyond its own size is no ground") {
  class Overflowing : public SurfaceSource {
   public:
    using SurfaceSource::SurfaceSource;
    [[nodiscard]] terrain::HeightBlock read(BlockIndex) override {
      return terrain::HeightBlock(
          static_cast<std::size_t>(terrain::kBlockSide * terrain::kBlockSide), 1000.0);
    }
  };
  Overflowing source{source_of(testing::plane(0, 0), 1.0).frame(), {51, 41}, testing::plane(0, 0)};
  const HeightMap map = whole_map(source);
  CHECK(map.at(CellIndex{50, 40}).has_value());
  CHECK_FALSE(map.at(CellIndex{51, 40}).has_value());
  CHECK_FALSE(map.at(CellIndex{50, 41}).has_value());
  CHECK(map.four_from({49, 39}).has_value());
  CHECK_FALSE(map.four_from({50, 39}).has_value());
  CHECK_FALSE(map.four_from({49, 40}).has_value());
}

TEST_CASE("between cell centres the surface is bilinear") {
  // z = E N is bilinear itself, so every place is exact.
  const auto map = map_of([](double e, double n) { return e * n; }, 5.0, {0, 0, 50, 50});
  for (const auto place : {point(0.5, 0.5), point(12.3, 45.6), point(25, 17), point(49, 49.5)}) {
    const auto height = map.at(place);
    REQUIRE(height.has_value());
    CHECK(near(height->above_datum_m(), place.east.value() * place.north.value(), 1e-9));
  }
}

TEST_CASE("a corridor that misses the raster loads nothing, on whichever side it passes") {
  SurfaceSource source = source_of(testing::plane(0, 0), 5.0);
  CHECK(along(source, {point(5000, 0), point(6000, 0)}, 100).block_count() == 0);
  CHECK(along(source, {point(-6000, 0), point(-5000, 0)}, 100).block_count() == 0);
  CHECK(along(source, {point(0, 5000), point(100, 5000)}, 100).block_count() == 0);
  CHECK(along(source, {point(0, -5000), point(100, -5000)}, 100).block_count() == 0);
  CHECK(source.blocks_read() == 0);
  CHECK(HeightMap::load(source, {}).block_count() == 0);
  CHECK_FALSE(HeightMap::load(source, {}).at(CellIndex{5, 5}).has_value());
}

TEST_CASE("two cells around a corridor come along, also where it runs beside the raster") {
  // Cells of 5 m; the outermost stand at E and N of -500 and 500.
  SurfaceSource source = source_of(testing::plane(0, 0), 5.0);
  for (const double beyond : {511.0, 514.0}) {
    CHECK(along(source, {point(-beyond, 0), point(-beyond, 5)}, 0).block_count() > 0);
    CHECK(along(source, {point(beyond, 0), point(beyond, 5)}, 0).block_count() > 0);
    CHECK(along(source, {point(0, -beyond), point(5, -beyond)}, 0).block_count() > 0);
    CHECK(along(source, {point(0, beyond), point(5, beyond)}, 0).block_count() > 0);
  }
  CHECK(along(source, {point(-516, 0), point(-516, 5)}, 0).block_count() == 0);
  CHECK(along(source, {point(0, 516), point(5, 516)}, 0).block_count() == 0);
}

TEST_CASE("a source that hands out blocks of a wrong size is our fault") {
  class Short : public SurfaceSource {
   public:
    using SurfaceSource::SurfaceSource;
    [[nodiscard]] terrain::HeightBlock read(BlockIndex) override { return {1.0, 2.0}; }
  };
  Short source{source_of(testing::plane(0, 0), 5.0).frame(), {10, 10}, testing::plane(0, 0)};
  CHECK_THROWS_AS(whole_map(source), base::OurFault);
}

TEST_CASE("a copied map keeps its heights when the first is gone") {
  auto first = std::make_unique<HeightMap>(map_of(testing::plane(0.1, 0), 5.0, {0, 0, 50, 50}));
  const HeightMap second = *first;
  first.reset();
  const auto height = second.at(CellIndex{10, 0});
  REQUIRE(height.has_value());
  CHECK(near(height->above_datum_m(), 1005.0, 1e-9));
}

}  // namespace rimehaul
