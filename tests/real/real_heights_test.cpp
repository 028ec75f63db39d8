// Measured heights, stored in six ways: our slopes against those of gdaldem, wherever both have
// one.
#include <doctest/doctest.h>
#include <gdal.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <optional>
#include <string>
#include <vector>

#include "near.h"
#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/height_raster.h"
#include "real/real_sites.h"
#include "terrain/gradient.h"

using rimehaul::geo::MapPoint;
using rimehaul::geo::Polyline;
using rimehaul::ports::gdal::HeightRasterRequest;
using rimehaul::ports::gdal::OpenedHeights;
using rimehaul::terrain::CellIndex;
using rimehaul::terrain::Corridor;
using rimehaul::terrain::HeightMap;
using rimehaul::testing::near;
using rimehaul::testing::RealSites;
using rimehaul::testing::run_program;
using rimehaul::units::Metres;

namespace {

/// What gdaldem and gdalwarp write where they know nothing.
constexpr double kNone = -9999.0;

OpenedHeights open_site(const std::string& name) {
  const bool is_grid = name == "grid";
  const HeightRasterRequest request{.folder = RealSites::made().site(name),
                                    .files = {is_grid ? "heights.asc" : "heights.tif"},
                                    .map_frame = "EPSG:32616",
                                    .vertical_datum = "not stated",
                                    .metres_per_unit = is_grid ? std::optional{1.0} : std::nullopt,
                                    .lowest = Metres{-500},
                                    .highest = Metres{9000}};
  auto reading = open_heights(request);
  for (const rimehaul::base::Fault& fault : reading.faults) {
    FAIL_CHECK(rimehaul::base::line_of(fault));
  }
  REQUIRE(reading.data.source != nullptr);
  return std::move(reading.data);
}

/// Everything, by a corridor over the whole raster.
HeightMap whole_map(rimehaul::terrain::BlockSource& source) {
  const CellIndex size = source.size();
  const MapPoint one = source.frame().centre_of({0, 0});
  const MapPoint other = source.frame().centre_of({size.column - 1, size.row - 1});
  const std::vector<Corridor> corridors{{Polyline{{one, other}}, Metres{1e6}}};
  return HeightMap::load(source, corridors);
}

/// A raster as somebody else's program reads and writes it.
struct OtherRaster {
  CellIndex size;
  std::vector<double> values;

  explicit OtherRaster(const std::string& path) {
    rimehaul::ports::gdal::start_gdal();
    const rimehaul::ports::gdal::Dataset dataset{GDALOpen(path.c_str(), GA_ReadOnly)};
    REQUIRE(dataset != nullptr);
    const int columns = GDALGetRasterXSize(dataset.get());
    const int rows = GDALGetRasterYSize(dataset.get());
    size = {columns, rows};
    values.resize(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
    REQUIRE(GDALRasterIO(GDALGetRasterBand(dataset.get(), 1), GF_Read, 0, 0, columns, rows,
                         values.data(), columns, rows, GDT_Float64, 0, 0) == CE_None);
  }
  [[nodiscard]] double at(CellIndex cell) const {
    return values.at(static_cast<std::size_t>(cell.row * size.column + cell.column));
  }
};

const OtherRaster& metric_slopes() {
  static const OtherRaster slopes = [] {
    const std::string out = RealSites::made().file("slope.tif");
    run_program("gdaldem slope -q '" + RealSites::made().site("metric/heights.tif") + "' '" + out +
                "'");
    return OtherRaster{out};
  }();
  return slopes;
}

const OtherRaster& metric_aspects() {
  static const OtherRaster aspects = [] {
    const std::string out = RealSites::made().file("aspect.tif");
    run_program("gdaldem aspect -q '" + RealSites::made().site("metric/heights.tif") + "' '" + out +
                "'");
    return OtherRaster{out};
  }();
  return aspects;
}

/// Cells in which both have a slope, in which one of them alone has, and the largest difference.
struct Comparison {
  int both = 0;
  int ours_alone = 0;
  int theirs_alone = 0;
  double largest_deg = 0.0;
};

/// `row_of` says in which row of theirs a row of ours lies.
template <class RowOf>
Comparison compare(const HeightMap& ours, const OtherRaster& theirs, RowOf row_of) {
  REQUIRE(ours.size() == theirs.size);
  Comparison found;
  for (std::int64_t row = 0; row < theirs.size.row; ++row) {
    for (std::int64_t column = 0; column < theirs.size.column; ++column) {
      const auto gradient = horn_gradient(ours, {column, row});
      const double other_deg = theirs.at({column, row_of(row)});
      if (!gradient.has_value()) {
        found.theirs_alone += other_deg != kNone ? 1 : 0;
        continue;
      }
      if (other_deg == kNone) {
        ++found.ours_alone;
        continue;
      }
      ++found.both;
      const double off = std::abs(slope_of(*gradient).degrees() - other_deg);
      found.largest_deg = off <= found.largest_deg ? found.largest_deg : off;  // NaN is kept
    }
  }
  return found;
}

std::string number(double value) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%.17g", value);
  return text.data();
}

}  // namespace

// Heights up to 1076 m are stored to 6e-5 m in 32 bits; gdaldem adds eight of them in 32 bits and
// divides by 8 x 80 m, which leaves some 1e-6 of slope, 6e-5 degrees.
constexpr double kFloatRoundingDeg = 2e-4;

TEST_CASE("slopes of real heights agree with gdaldem, cell for cell, however they are stored") {
  const OtherRaster& theirs = metric_slopes();
  for (const std::string& name :
       {std::string{"metric"}, std::string{"point"}, std::string{"grid"}, std::string{"feet"}}) {
    CAPTURE(name);
    OpenedHeights heights = open_site(name);
    CHECK_FALSE(heights.facts.warped);
    const Comparison found =
        compare(whole_map(*heights.source), theirs, [](std::int64_t row) { return row; });
    CHECK(found.both > 140000);
    CHECK(found.ours_alone == 0);
    CHECK(found.theirs_alone == 0);
    // Feet were rounded to 32 bits once more: 1e-4 feet of 3500.
    CHECK(found.largest_deg <= (name == "feet" ? 3 * kFloatRoundingDeg : kFloatRoundingDeg));
  }
}

// A rounding of the slope turns its direction by so much over the slope.
TEST_CASE("real heights face where gdaldem says, the gentler the ground the less sharply") {
  OpenedHeights heights = open_site("metric");
  const HeightMap ours = whole_map(*heights.source);
  const OtherRaster& theirs = metric_aspects();
  REQUIRE(ours.size() == theirs.size);
  int both = 0;
  int one_alone = 0;
  double largest = 0.0;
  for (std::int64_t row = 0; row < theirs.size.row; ++row) {
    for (std::int64_t column = 0; column < theirs.size.column; ++column) {
      const auto gradient = horn_gradient(ours, {column, row});
      const auto aspect = gradient.has_value() ? aspect_of(*gradient) : std::nullopt;
      const double other_deg = theirs.at({column, row});
      if (!aspect.has_value() || other_deg == kNone) {
        one_alone += aspect.has_value() != (other_deg != kNone) ? 1 : 0;
        continue;
      }
      ++both;
      const double off_deg = std::abs(std::remainder(aspect->degrees() - other_deg, 360.0));
      const double off = off_deg * slope_of(*gradient).ratio();
      largest = off <= largest ? largest : off;  // NaN is kept
    }
  }
  CHECK(both > 140000);
  CHECK(one_alone == 0);
  CHECK(largest <= kFloatRoundingDeg);
}

TEST_CASE("real heights stored from south to north give the same slopes in the same places") {
  OpenedHeights heights = open_site("south_up");
  const std::int64_t rows = heights.source->size().row;
  const Comparison found = compare(whole_map(*heights.source), metric_slopes(),
                                   [rows](std::int64_t row) { return rows - 1 - row; });
  CHECK(found.both > 140000);
  CHECK(found.ours_alone == 0);
  CHECK(found.theirs_alone == 0);
  CHECK(found.largest_deg <= kFloatRoundingDeg);
  const MapPoint first = heights.source->frame().centre_of({0, 0});
  const MapPoint metric_last = open_site("metric").source->frame().centre_of({0, rows - 1});
  CHECK(near(first.east, metric_last.east, Metres{1e-6}));
  CHECK(near(first.north, metric_last.north, Metres{1e-6}));
}

TEST_CASE("real heights in degrees are brought to the map as gdalwarp brings them, and sloped so") {
  OpenedHeights heights = open_site("degrees");
  CHECK(heights.facts.warped);
  const auto grid = heights.source->frame();
  const CellIndex size = heights.source->size();
  const double step = grid.smaller_step().value();
  const MapPoint first = grid.centre_of({0, 0});
  const MapPoint last = grid.centre_of({size.column - 1, size.row - 1});
  const std::string warped = RealSites::made().file("warped.tif");
  const std::string slopes = RealSites::made().file("warped_slope.tif");
  run_program("gdalwarp -q -t_srs EPSG:32616 -r bilinear -et 0 -dstnodata -9999 -ts " +
              std::to_string(size.column) + " " + std::to_string(size.row) + " -te " +
              number(first.east.value() - step / 2) + " " + number(last.north.value() - step / 2) +
              " " + number(last.east.value() + step / 2) + " " +
              number(first.north.value() + step / 2) + " '" +
              RealSites::made().site("degrees/heights.tif") + "' '" + warped + "'");
  run_program("gdaldem slope -q '" + warped + "' '" + slopes + "'");
  const HeightMap ours = whole_map(*heights.source);
  const OtherRaster theirs{warped};
  REQUIRE(theirs.size == size);
  int known = 0;
  int ours_alone = 0;
  double largest_m = 0.0;
  for (std::int64_t row = 0; row < size.row; ++row) {
    for (std::int64_t column = 0; column < size.column; ++column) {
      const auto height = ours.at(CellIndex{column, row});
      const double other_m = theirs.at({column, row});
      if (!height.has_value()) {
        continue;
      }
      ++known;
      ours_alone += other_m == kNone ? 1 : 0;
      const double off = std::abs(height->above_datum_m() - other_m);
      largest_m = off <= largest_m ? largest_m : off;
    }
  }
  CHECK(known > 600000);
  CHECK(ours_alone == 0);
  CHECK(largest_m <= 2e-4);  // 32 bits again
  const Comparison found = compare(ours, OtherRaster{slopes}, [](std::int64_t row) { return row; });
  CHECK(found.both > 600000);
  CHECK(found.ours_alone == 0);
  CHECK(found.largest_deg <= 2 * kFloatRoundingDeg);  // cells half as wide
}

TEST_CASE("warping loses no steepness against heights that were resampled to 80 m beforehand") {
  OpenedHeights degrees = open_site("degrees");
  OpenedHeights metric = open_site("metric");
  const HeightMap fine = whole_map(*degrees.source);
  const HeightMap coarse = whole_map(*metric.source);
  double steepest_fine_deg = 0.0;
  double steepest_coarse_deg = 0.0;
  double sum_m = 0.0;
  int count = 0;
  const CellIndex size = coarse.size();
  for (std::int64_t row = 0; row < size.row; ++row) {
    for (std::int64_t column = 0; column < size.column; ++column) {
      const auto gradient = horn_gradient(coarse, {column, row});
      const auto height = coarse.at(CellIndex{column, row});
      const auto fine_height = fine.at(coarse.frame().centre_of({column, row}));
      if (gradient.has_value() && height.has_value() && fine_height.has_value()) {
        steepest_coarse_deg = std::max(steepest_coarse_deg, slope_of(*gradient).degrees());
        sum_m += std::abs((*fine_height - *height).value());
        ++count;
      }
    }
  }
  for (std::int64_t row = 0; row < fine.size().row; ++row) {
    for (std::int64_t column = 0; column < fine.size().column; ++column) {
      const auto gradient = horn_gradient(fine, {column, row});
      if (gradient.has_value()) {
        steepest_fine_deg = std::max(steepest_fine_deg, slope_of(*gradient).degrees());
      }
    }
  }
  REQUIRE(count > 140000);
  CHECK(sum_m / count <= 1.0);  // the same ground, but for what lies between centres
  CHECK(steepest_fine_deg >= steepest_coarse_deg);
}
