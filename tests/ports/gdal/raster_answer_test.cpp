// Rasters that are written: every cell where it belongs, whoever wrote it, and what overviews show.
#include "ports/gdal/raster_answer.h"

#include <doctest/doctest.h>
#include <gdal.h>

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <thread>

#include "ports/gdal/map_transform.h"
#include "raster_maker.h"

using rimehaul::ports::gdal::CellKind;
using rimehaul::ports::gdal::Colour;
using rimehaul::ports::gdal::Dataset;
using rimehaul::ports::gdal::Overview;
using rimehaul::ports::gdal::RasterAnswer;
using rimehaul::ports::gdal::RasterTerms;
using rimehaul::ports::gdal::reference_from;
using rimehaul::ports::gdal::text_of;
using rimehaul::ports::gdal::write_cog;
using rimehaul::terrain::CellIndex;
using rimehaul::terrain::CellWindow;
using rimehaul::testing::TempFolder;

namespace {

namespace base = rimehaul::base;
namespace geo = rimehaul::geo;
namespace units = rimehaul::units;

class Counting final : public base::Watcher {
 public:
  void parts_to_come(std::size_t /*parts*/) override {}
  void part_done() override { ++done; }
  std::size_t done = 0;
};

RasterTerms terms_of(CellIndex size, CellKind kind) {
  rimehaul::ports::gdal::start_gdal();
  return {.size = size,
          .grid = {{units::Metres{500001}, units::Metres{5099999}},
                   {{units::Metres{2}, units::Metres{0}}, {units::Metres{0}, units::Metres{-2}}}},
          .reference = text_of(reference_from("EPSG:32605")),
          .kind = kind,
          .nodata = {},
          .overview = Overview::largest,
          .title = "a layer",
          .unit = "deg",
          .notes = {{"CAUTION", "take care"}},
          .colours = {}};
}

/// A number for a cell; every sixteenth row by column is unlike those beside it.
float value_at(std::int64_t column, std::int64_t row) {
  return static_cast<float>((column * 31 + row * 17) % 251);
}

template <class Number>
std::vector<Number> cells_of(const CellWindow& window) {
  std::vector<Number> cells;
  for (std::int64_t row = window.first.row; row < window.first.row + window.size.row; ++row) {
    for (std::int64_t column = window.first.column;
         column < window.first.column + window.size.column; ++column) {
      cells.push_back(static_cast<Number>(value_at(column, row)));
    }
  }
  return cells;
}

template <class Number>
void write_in_parts(const RasterAnswer& answer, CellIndex part) {
  const CellIndex size = answer.terms().size;
  for (std::int64_t row = 0; row < size.row; row += part.row) {
    for (std::int64_t column = 0; column < size.column; column += part.column) {
      const CellWindow window = CellWindow{{column, row}, part}.shared_with({{0, 0}, size});
      const std::vector<Number> cells = cells_of<Number>(window);
      answer.write(window, std::as_bytes(std::span{cells}));
    }
  }
}

Dataset opened_raster(const std::string& path) {
  return Dataset{GDALOpenEx(path.c_str(), GDAL_OF_RASTER, nullptr, nullptr, nullptr)};
}

std::vector<float> all_of(GDALRasterBandH band) {
  const int columns = GDALGetRasterBandXSize(band);
  const int rows = GDALGetRasterBandYSize(band);
  std::vector<float> cells(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
  REQUIRE(GDALRasterIO(band, GF_Read, 0, 0, columns, rows, cells.data(), columns, rows, GDT_Float32,
                       0, 0) == CE_None);
  return cells;
}

}  // namespace

TEST_CASE("whatever windows a raster is written in, every cell is where it belongs") {
  const TempFolder folder;
  const CellIndex size{1300, 1050};
  const std::vector<float> wanted = cells_of<float>({{0, 0}, size});
  for (const CellIndex part :
       {CellIndex{1300, 1050}, {1023, 64}, {512, 512}, {511, 200}, {37, 411}, {1300, 1}}) {
    CAPTURE(part.column);
    CAPTURE(part.row);
    const std::string path = folder.file("real.tif");
    {
      const RasterAnswer answer{{path, "real.tif"}, terms_of(size, CellKind::real_32)};
      write_in_parts<float>(answer, part);
    }
    const Dataset read = opened_raster(path);
    REQUIRE(read != nullptr);
    CHECK(all_of(GDALGetRasterBand(read.get(), 1)) == wanted);
  }
}

TEST_CASE("whole numbers of one and two bytes are written as such, with a colour for each") {
  const TempFolder folder;
  const CellIndex size{700, 600};
  const std::vector<float> wanted = cells_of<float>({{0, 0}, size});
  for (const CellKind kind : {CellKind::whole_8, CellKind::whole_16}) {
    RasterTerms terms = terms_of(size, kind);
    terms.nodata = 250;
    terms.colours = std::vector<Colour>(kind == CellKind::whole_8 ? 256 : 65536);
    terms.colours[7] = {1, 2, 3};
    const std::string path = folder.file("whole.tif");
    const RasterAnswer answer{{path, "whole.tif"}, terms};
    if (kind == CellKind::whole_8) {
      write_in_parts<std::uint8_t>(answer, {300, 90});
    } else {
      write_in_parts<std::uint16_t>(answer, {300, 90});
    }
    Counting watcher;
    const std::string cog_path = folder.file("cog.tif");
    write_cog(answer, cog_path, watcher, 10);
    CHECK(watcher.done == 10);
    const Dataset cog = opened_raster(cog_path);
    REQUIRE(cog != nullptr);
    GDALRasterBandH band = GDALGetRasterBand(cog.get(), 1);
    CHECK(all_of(band) == wanted);
    CHECK(GDALGetRasterNoDataValue(band, nullptr) == 250);
    GDALColorTableH table = GDALGetRasterColorTable(band);
    REQUIRE(table != nullptr);
    const GDALColorEntry* entry = GDALGetColorEntry(table, 7);
    CHECK((entry->c1 == 1 && entry->c2 == 2 && entry->c3 == 3));
  }
}

TEST_CASE("a raster says where it lies, what it holds and how it may be used") {
  const TempFolder folder;
  RasterTerms terms = terms_of({600, 30}, CellKind::real_32);
  terms.nodata = -9999;
  const RasterAnswer answer{{folder.file("a.tif"), "a.tif"}, terms};
  write_in_parts<float>(answer, {600, 30});
  Counting watcher;
  write_cog(answer, folder.file("b.tif"), watcher, 3);
  for (const char* name : {"a.tif", "b.tif"}) {
    CAPTURE(name);
    const Dataset read = opened_raster(folder.file(name));
    REQUIRE(read != nullptr);
    std::array<double, 6> corners{};
    CHECK(GDALGetGeoTransform(read.get(), corners.data()) == CE_None);
    CHECK(corners == std::array<double, 6>{500000, 2, 0, 5100000, 0, -2});
    CHECK(std::string{OSRGetAuthorityCode(GDALGetSpatialRef(read.get()), nullptr)} == "32605");
    CHECK(std::string{GDALGetMetadataItem(read.get(), "CAUTION", nullptr)} == "take care");
    GDALRasterBandH band = GDALGetRasterBand(read.get(), 1);
    CHECK(std::string{GDALGetDescription(band)} == "a layer");
    CHECK(std::string{GDALGetRasterUnitType(band)} == "deg");
    CHECK(GDALGetRasterNoDataValue(band, nullptr) == -9999);
  }
  const Dataset cog = opened_raster(folder.file("b.tif"));
  CHECK(std::string{GDALGetMetadataItem(cog.get(), "LAYOUT", "IMAGE_STRUCTURE")} == "COG");
}

TEST_CASE("an overview shows the largest, the common bits or the first, and a hole stays a hole") {
  const TempFolder folder;
  const CellIndex size{1501, 1030};
  for (const Overview overview : {Overview::largest, Overview::common_bits, Overview::first}) {
    RasterTerms terms = terms_of(size, CellKind::whole_16);
    terms.overview = overview;
    if (overview != Overview::common_bits) {
      terms.nodata = 250;
    }
    const RasterAnswer answer{{folder.file("plain.tif"), "plain.tif"}, terms};
    write_in_parts<std::uint16_t>(answer, {1501, 100});
    Counting watcher;
    write_cog(answer, folder.file("cog.tif"), watcher, 1);
    const Dataset cog = opened_raster(folder.file("cog.tif"));
    REQUIRE(cog != nullptr);
    GDALRasterBandH band = GDALGetRasterBand(cog.get(), 1);
    REQUIRE(GDALGetOverviewCount(band) == 2);
    std::int64_t wrong = 0;
    for (const int level : {0, 1}) {
      const std::vector<float> found = all_of(GDALGetOverview(band, level));
      const std::int64_t wide = 2 << level;
      std::size_t next = 0;
      for (std::int64_t row = 0; row < size.row; row += wide) {
        for (std::int64_t column = 0; column < size.column; column += wide) {
          auto kept = static_cast<unsigned>(value_at(column, row));
          bool hole = false;
          for (std::int64_t y = row; y < std::min(row + wide, size.row); ++y) {
            for (std::int64_t x = column; x < std::min(column + wide, size.column); ++x) {
              const auto value = static_cast<unsigned>(value_at(x, y));
              hole = hole || (terms.nodata && value == 250);
              kept = overview == Overview::largest       ? std::max(kept, value)
                     : overview == Overview::common_bits ? (kept & value)
                                                         : kept;
            }
          }
          wrong += found[next++] == static_cast<float>(hole ? 250 : kept) ? 0 : 1;
        }
      }
      CHECK(next == found.size());
    }
    CHECK(wrong == 0);
  }
}

TEST_CASE("many threads write one raster") {
  const TempFolder folder;
  const CellIndex size{1024, 1024};
  const std::string path = folder.file("many.tif");
  {
    const RasterAnswer answer{{path, "many.tif"}, terms_of(size, CellKind::real_32)};
    std::vector<std::jthread> threads;
    for (std::int64_t thread = 0; thread < 4; ++thread) {
      threads.emplace_back([&answer, thread] {
        for (std::int64_t row = thread; row < 1024; row += 4) {
          const CellWindow window{{0, row}, {1024, 1}};
          const std::vector<float> cells = cells_of<float>(window);
          answer.write(window, std::as_bytes(std::span{cells}));
        }
      });
    }
  }
  const Dataset read = opened_raster(path);
  CHECK(all_of(GDALGetRasterBand(read.get(), 1)) == cells_of<float>({{0, 0}, size}));
}

TEST_CASE("a raster of more than four gigabytes is a BigTIFF, and its last cell is at its end") {
  const TempFolder folder;
  const CellIndex size{40'000, 30'000};
  const std::string path = folder.file("big.tif");
  {
    const RasterAnswer answer{{path, "big.tif"}, terms_of(size, CellKind::real_32)};
    const CellWindow window{{39'990, 29'995}, {10, 5}};
    const std::vector<float> cells = cells_of<float>(window);
    answer.write(window, std::as_bytes(std::span{cells}));
  }
  const Dataset read = opened_raster(path);
  REQUIRE(read != nullptr);
  std::vector<float> found(50);
  REQUIRE(GDALRasterIO(GDALGetRasterBand(read.get(), 1), GF_Read, 39'990, 29'995, 10, 5,
                       found.data(), 10, 5, GDT_Float32, 0, 0) == CE_None);
  CHECK(found == cells_of<float>({{39'990, 29'995}, {10, 5}}));
}

TEST_CASE("a raster that cannot be written is bad input, told by the name that people know") {
  const TempFolder folder;
  const RasterTerms terms = terms_of({100, 100}, CellKind::real_32);
  const auto line_of_fault = [&](const auto& act) {
    try {
      act();
    } catch (const base::BadInput& bad) {
      return std::string{bad.what()};
    }
    return std::string{};
  };
  const std::string made = line_of_fault([&] {
    const RasterAnswer answer{{folder.file("no/such.tif"), "slopes/a.tif"}, terms};
  });
  CHECK(made.find("slopes/a.tif: cannot be written: ") == 0);
  CHECK(made.find("; make room, or name a folder") != std::string::npos);
  const RasterAnswer answer{{folder.file("a.tif"), "slopes/a.tif"}, terms};
  Counting watcher;
  const std::string copied =
      line_of_fault([&] { write_cog(answer, folder.file("no/such.tif"), watcher, 1); });
  CHECK(copied.find("slopes/a.tif: cannot be written: ") == 0);
}
