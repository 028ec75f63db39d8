// Several rasters read as one, and rasters brought into the map frame.
#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "near.h"
#include "ports/gdal/map_transform.h"
#include "raster_maker.h"
#include "terrain/gradient.h"
#include "terrain/height_map.h"

using rimehaul::geo::MapPoint;
using rimehaul::ports::gdal::HeightRasterRequest;
using rimehaul::ports::gdal::OpenedHeights;
using rimehaul::ports::gdal::PlainPoint;
using rimehaul::ports::gdal::reference_from;
using rimehaul::ports::gdal::transformation_between;
using rimehaul::terrain::CellIndex;
using rimehaul::testing::all_heights;
using rimehaul::testing::doubt_lines;
using rimehaul::testing::fault_lines;
using rimehaul::testing::height_in;
using rimehaul::testing::near;
using rimehaul::testing::opened;
using rimehaul::testing::RasterRecipe;
using rimehaul::testing::request_for;
using rimehaul::testing::TempFolder;
using rimehaul::testing::write_raster;

namespace {

constexpr double kEast = 500000;
constexpr double kNorth = 5100000;

/// A plane on the UTM map: 12 % towards east, -5 % towards north.
double plane_at(PlainPoint map) {
  return 1500.0 + 0.12 * (map.x - kEast) - 0.05 * (map.y - kNorth);
}

/// The plane as a raster in some system, cells of `step` in its units around longitude 153 W,
/// latitude 46 N.
RasterRecipe plane_in(const std::string& system, std::array<double, 6> corners) {
  RasterRecipe recipe;
  recipe.system = system;
  recipe.corners = corners;
  recipe.type = GDT_Float64;
  recipe.columns = 60;
  recipe.rows = 50;
  auto centres = std::vector<PlainPoint>{};
  for (int row = 0; row < recipe.rows; ++row) {
    for (int column = 0; column < recipe.columns; ++column) {
      const double along = column + 0.5;
      const double down = row + 0.5;
      centres.push_back({corners[0] + along * corners[1] + down * corners[2],
                         corners[3] + along * corners[4] + down * corners[5]});
    }
  }
  const auto to_map =
      transformation_between({reference_from(system), reference_from("EPSG:32605")});
  REQUIRE(to_map != nullptr);
  rimehaul::ports::gdal::transform(to_map, centres);
  const int columns = recipe.columns;
  recipe.value = [centres, columns](int column, int row) {
    return plane_at(centres[static_cast<std::size_t>(row * columns + column)]);
  };
  return recipe;
}

/// Whole raster against the plane: the number of known cells, or -1 when one is wrong.
int known_cells_on_plane(rimehaul::terrain::BlockSource& source, double within_m) {
  int known = 0;
  const CellIndex size = source.size();
  const std::vector<double> heights = all_heights(source);
  for (std::int64_t row = 0; row < size.row; ++row) {
    for (std::int64_t column = 0; column < size.column; ++column) {
      const double height = heights[static_cast<std::size_t>(row * size.column + column)];
      if (std::isnan(height)) {
        continue;
      }
      const MapPoint place = source.frame().centre_of({column, row});
      if (!near(height, plane_at({place.east.value(), place.north.value()}), within_m)) {
        return -1;
      }
      ++known;
    }
  }
  return known;
}

RasterRecipe tile(double east, double north, double height) {
  RasterRecipe recipe;
  recipe.corners = {east, 2, 0, north, 0, -2};
  recipe.columns = 8;
  recipe.rows = 8;
  recipe.value = [height](int column, int row) { return height + column * 0.013 + row * 0.0017; };
  return recipe;
}

}  // namespace

TEST_CASE("tiles side by side read as one raster, whatever their order, with a gap as a hole") {
  const TempFolder folder;
  write_raster(folder.file("west.tif"), tile(500000, 5100000, 100));
  write_raster(folder.file("east.tif"), tile(500016, 5100000, 200));
  write_raster(folder.file("south.tif"), tile(500016, 5099984, 300));
  for (const std::vector<std::string>& files :
       {std::vector<std::string>{"west.tif", "east.tif", "south.tif"},
        std::vector<std::string>{"south.tif", "east.tif", "west.tif"}}) {
    OpenedHeights heights = opened(request_for(folder, files));
    CHECK(heights.source->size() == CellIndex{16, 16});
    CHECK(near(heights.source->frame().centre_of({0, 0}).east.value(), 500001, 1e-9));
    CHECK(near(heights.source->frame().centre_of({0, 0}).north.value(), 5099999, 1e-9));
    CHECK(near(height_in(*heights.source, {7, 7}), 100 + 0.091 + 0.0119, 1e-4));
    CHECK(near(height_in(*heights.source, {8, 0}), 200, 1e-4));
    CHECK(near(height_in(*heights.source, {15, 8}), 300 + 0.091, 1e-4));
    CHECK(std::isnan(height_in(*heights.source, {0, 8})));
  }
}

TEST_CASE("tiled heights equal the untiled ones bit for bit") {
  const TempFolder folder;
  RasterRecipe whole;
  whole.columns = 300;
  whole.rows = 140;
  whole.value = [](int column, int row) { return 900 + std::sin(column * 0.1) * row; };
  write_raster(folder.file("whole.tif"), whole);
  std::vector<std::string> files;
  for (int part = 0; part < 3; ++part) {
    RasterRecipe recipe = whole;
    recipe.columns = 100;
    recipe.corners[0] += 200.0 * part;
    recipe.value = [&whole, part](int column, int row) {
      return whole.value(column + 100 * part, row);
    };
    files.push_back("part" + std::to_string(part) + ".tif");
    write_raster(folder.file(files.back()), recipe);
  }
  OpenedHeights one = opened(request_for(folder, {"whole.tif"}));
  OpenedHeights tiled = opened(request_for(folder, files));
  REQUIRE(one.source->size() == tiled.source->size());
  for (const rimehaul::terrain::BlockIndex block :
       {rimehaul::terrain::BlockIndex{0, 0}, rimehaul::terrain::BlockIndex{1, 0},
        rimehaul::terrain::BlockIndex{2, 1}}) {
    const auto wanted = one.source->read(block);
    const auto found = tiled.source->read(block);
    REQUIRE(wanted.size() == found.size());
    bool is_same = true;
    for (std::size_t index = 0; index < wanted.size(); ++index) {
      is_same = is_same && (wanted[index] == found[index] ||
                            (std::isnan(wanted[index]) && std::isnan(found[index])));
    }
    CHECK(is_same);
  }
}

TEST_CASE("where tiles overlap the first that knows a height wins, and a disagreement is told") {
  const TempFolder folder;
  RasterRecipe first = tile(500000, 5100000, 100);
  first.value = [](int column, int) { return column == 7 ? -9999.0 : 100 + 0.013 * column; };
  write_raster(folder.file("first.tif"), first);
  write_raster(folder.file("second.tif"), tile(500008, 5100000, 100.8));
  const auto reading = open_heights(request_for(folder, {"first.tif", "second.tif"}));
  REQUIRE(reading.data.source != nullptr);
  CHECK(near(height_in(*reading.data.source, {5, 0}), 100.065, 1e-4));
  CHECK(near(height_in(*reading.data.source, {7, 0}), 100.8 + 3 * 0.013, 1e-4));
  REQUIRE(doubt_lines(reading.faults).size() == 1);
  CHECK(doubt_lines(reading.faults)[0].find("second.tif: its heights differ") == 0);

  write_raster(folder.file("close.tif"), tile(500008, 5100000, 100.4));
  CHECK(open_heights(request_for(folder, {"first.tif", "close.tif"})).faults.empty());
}

TEST_CASE("tiles that do not share one lattice are refused: shifted, or of another cell size") {
  const TempFolder folder;
  write_raster(folder.file("first.tif"), tile(500000, 5100000, 100));
  write_raster(folder.file("shifted.tif"), tile(500017, 5100000, 100));
  RasterRecipe finer = tile(500016, 5100000, 100);
  finer.corners = {500016, 1, 0, 5100000, 0, -1};
  write_raster(folder.file("finer.tif"), finer);
  const auto reading = open_heights(request_for(folder, {"first.tif", "shifted.tif", "finer.tif"}));
  CHECK(reading.data.source == nullptr);
  REQUIRE(fault_lines(reading.faults).size() == 2);
  CHECK(fault_lines(reading.faults)[0] ==
        "shifted.tif: its cells do not fall on those of first.tif; bring all heights to one "
        "lattice first (gdalwarp -tr -tap)");
  // A hundredth of a cell is still the same lattice, a little more is not.
  write_raster(folder.file("hair.tif"), tile(500016.019, 5100000, 100));
  CHECK(open_heights(request_for(folder, {"first.tif", "hair.tif"})).data.source != nullptr);
  write_raster(folder.file("off.tif"), tile(500016.021, 5100000, 100));
  CHECK(open_heights(request_for(folder, {"first.tif", "off.tif"})).data.source == nullptr);
}

TEST_CASE("heights in degrees are brought into their UTM zone, and a plane stays that plane") {
  const TempFolder folder;
  write_raster(folder.file("degrees.tif"),
               plane_in("EPSG:4326", {-153.003, 0.0001, 0, 46.003, 0, -0.0001}));
  OpenedHeights heights = opened(request_for(folder, {"degrees.tif"}));
  CHECK(heights.facts.warped);
  CHECK(heights.facts.frame.horizontal_name == "WGS 84 / UTM zone 5N");
  // 0.0001 degrees of longitude at 46 N are 7.746 m on WGS 84, times 0.9996, the zone's scale.
  CHECK(near(heights.facts.narrowest_step.value(), 7.743, 0.001));
  // And 0.0001 degrees of latitude are 11.115 m there.
  CHECK(near(heights.facts.widest_step.value(), 11.115 * 0.9996, 0.001));
  CHECK(near(heights.source->frame().larger_step().value(), 3.87, 1e-9));
  CHECK(known_cells_on_plane(*heights.source, 1e-4) > 8000);
}

TEST_CASE("a declared frame or a second file in another system is met by warping, once") {
  const TempFolder folder;
  write_raster(folder.file("utm.tif"), plane_in("EPSG:32605", {500000, 5, 0, 5100000, 0, -5}));
  write_raster(folder.file("degrees.tif"),
               plane_in("EPSG:4326", {-152.998, 0.0001, 0, 46.055, 0, -0.0001}));
  OpenedHeights both = opened(request_for(folder, {"utm.tif", "degrees.tif"}));
  CHECK(both.facts.warped);
  CHECK(known_cells_on_plane(*both.source, 1e-4) > 20000);

  // The neighbouring zone as source: six degrees off its own meridian its metres are 0.3 % long.
  write_raster(folder.file("zone4.tif"), plane_in("EPSG:32604", {964000, 5, 0, 5112000, 0, -5}));
  HeightRasterRequest request = request_for(folder, {"zone4.tif"});
  request.map_frame = "EPSG:32605";
  OpenedHeights zone4 = opened(request);
  CHECK(zone4.facts.warped);
  CHECK(known_cells_on_plane(*zone4.source, 1e-4) > 8000);
}

TEST_CASE("a hole in warped heights takes every cell that touches it, and nothing fills it") {
  const TempFolder folder;
  RasterRecipe recipe = plane_in("EPSG:4326", {-153.003, 0.0001, 0, 46.003, 0, -0.0001});
  const auto ground = recipe.value;
  recipe.value = [ground](int column, int row) {
    return column == 30 && row == 25 ? -9999.0 : ground(column, row);
  };
  write_raster(folder.file("hole.tif"), recipe);
  OpenedHeights heights = opened(request_for(folder, {"hole.tif"}));
  auto places = std::vector<PlainPoint>{};
  const auto grid = heights.source->frame();
  const CellIndex size = heights.source->size();
  const std::vector<double> found = all_heights(*heights.source);
  for (std::int64_t row = 0; row < size.row; ++row) {
    for (std::int64_t column = 0; column < size.column; ++column) {
      const MapPoint place = grid.centre_of({column, row});
      places.push_back({place.east.value(), place.north.value()});
    }
  }
  const auto back =
      transformation_between({reference_from("EPSG:32605"), reference_from("EPSG:4326")});
  REQUIRE(back != nullptr);
  rimehaul::ports::gdal::transform(back, places);
  int holes = 0;
  int wrong = 0;
  for (std::size_t index = 0; index < places.size(); ++index) {
    const double column = (places[index].x + 153.003) / 0.0001 - 0.5;
    const double row = (46.003 - places[index].y) / 0.0001 - 0.5;
    const bool touches = std::abs(column - 30) < 1 && std::abs(row - 25) < 1;
    const bool is_outside = !(column >= 0 && column <= 59 && row >= 0 && row <= 49);
    wrong += std::isnan(found[index]) == (touches || is_outside) ? 0 : 1;
    holes += touches ? 1 : 0;
  }
  CHECK(holes >= 16);  // two measured cells across, four new ones each way at least
  CHECK(wrong == 0);
}

TEST_CASE("heights that run past the 180th meridian are read through") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.system = "EPSG:4326";
  recipe.corners = {179.997, 0.0001, 0, 46.003, 0, -0.0001};
  recipe.columns = 60;
  recipe.rows = 20;
  recipe.value = [](int column, int) { return 1000 + 0.37 * column; };
  write_raster(folder.file("a.tif"), recipe);
  OpenedHeights heights = opened(request_for(folder, {"a.tif"}));
  int known = 0;
  const CellIndex size = heights.source->size();
  const std::int64_t middle = size.row / 2;
  const std::vector<double> found = all_heights(*heights.source);
  for (std::int64_t column = 0; column < size.column; ++column) {
    known += std::isnan(found[static_cast<std::size_t>(middle * size.column + column)]) ? 0 : 1;
  }
  // All 59 steps between centres, two cells to each, less what the ends lose.
  CHECK(known >= 2 * 59 - 4);
}

TEST_CASE("a system that can only be guessed at is refused") {
  const TempFolder folder;
  RasterRecipe recipe;
  recipe.system =
      "GEOGCS[\"invented\",DATUM[\"invented\",SPHEROID[\"invented\",6378200,299]],"
      "PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]]";
  recipe.corners = {-153.003, 0.0001, 0, 46.003, 0, -0.0001};
  write_raster(folder.file("a.tif"), recipe);
  HeightRasterRequest request = request_for(folder, {"a.tif"});
  request.map_frame = "EPSG:32605";
  const auto reading = open_heights(request);
  CHECK(reading.data.source == nullptr);
  REQUIRE(fault_lines(reading.faults).size() == 1);
  CHECK(fault_lines(reading.faults)[0].find("no accurate transformation") != std::string::npos);
}
