// A raster of any bytes: what opens as heights has cells of a size, and gives heights of the
// plausible range or voids.
#include <algorithm>
#include <array>

#include "fuzz/expect.h"
#include "fuzz/input_folder.h"
#include "ports/gdal/height_raster.h"

namespace {

using namespace rimehaul;
using fuzz::expect;
using fuzz::expect_within;
using ports::gdal::HeightRasterRequest;

constexpr double kLowest = -500;
constexpr double kHighest = 9000;

constexpr std::array<const char*, 5> kNames{"a.tif", "a.asc", "a.gpkg", "N46W153.hgt", "a.dem"};

/// The older dialect of a .prj, WGS 84 / UTM zone 5N.
constexpr const char* kFrame =
    R"(PROJCS["WGS_1984_UTM_Zone_5N",GEOGCS["GCS_WGS_1984",DATUM["D_WGS_1984",)"
    R"(SPHEROID["WGS_1984",6378137.0,298.257223563]],PRIMEM["Greenwich",0.0],)"
    R"(UNIT["Degree",0.0174532925199433]],PROJECTION["Transverse_Mercator"],)"
    R"(PARAMETER["False_Easting",500000.0],PARAMETER["False_Northing",0.0],)"
    R"(PARAMETER["Central_Meridian",-153.0],PARAMETER["Scale_Factor",0.9996],)"
    R"(PARAMETER["Latitude_Of_Origin",0.0],UNIT["Meter",1.0]])";

HeightRasterRequest request_for(const fuzz::InputFolder& folder, const std::string& name) {
  return {.folder = folder.path(),
          .files = {name},
          .map_frame = std::nullopt,
          .vertical_datum = "sea level",
          .metres_per_unit = std::nullopt,
          .lowest = units::Metres{kLowest},
          .highest = units::Metres{kHighest}};
}

void look_at_block(terrain::BlockSource& source, terrain::BlockIndex index) {
  try {
    const terrain::HeightBlock block = source.read(index);
    expect(block.size() == static_cast<std::size_t>(terrain::kBlockSide * terrain::kBlockSide),
           "a block is whole");
    for (const double height : block) {
      if (!std::isnan(height)) {
        expect_within(height, kLowest, kHighest, "a height is plausible or void");
      }
    }
  } catch (const base::BadInput& bad) {
    fuzz::expect_clear(bad.fault());
  }
}

/// The first blocks and the last one; a raster may promise millions.
void look_at_source(terrain::BlockSource& source) {
  constexpr std::int64_t kMost = 2;
  const terrain::CellIndex size = source.size();
  expect(size.column >= 2 && size.row >= 2, "heights have cells");
  expect(source.frame().smaller_step() > units::Metres{0}, "cells have a size");
  fuzz::expect_on_map(source.frame().centre_of({size.column - 1, size.row - 1}));
  const terrain::BlockIndex last{(size.column - 1) / terrain::kBlockSide,
                                 (size.row - 1) / terrain::kBlockSide};
  for (std::int64_t row = 0; row <= std::min(last.row, kMost); ++row) {
    for (std::int64_t column = 0; column <= std::min(last.column, kMost); ++column) {
      look_at_block(source, {column, row});
    }
  }
  look_at_block(source, last);
}

void look_at(const ports::gdal::OpenedHeights& heights, bool has_fault) {
  expect(has_fault == (heights.source == nullptr), "heights are there if and only if no fault is");
  if (heights.source == nullptr) {
    return;
  }
  const ports::gdal::HeightRasterFacts& facts = heights.facts;
  expect(!facts.frame.horizontal.empty(), "heights have a map");
  fuzz::expect_name(facts.frame.horizontal_name);
  fuzz::expect_name(facts.frame.vertical_name);
  expect(facts.narrowest_step > units::Metres{0}, "the narrowest step is above 0");
  expect(facts.narrowest_step <= facts.widest_step, "the widest step is no narrower");
  fuzz::expect_finite(facts.widest_step.value(), "the widest step is a length");
  look_at_source(*heights.source);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
  static const fuzz::InputFolder folder;
  if (size == 0) {
    return 0;
  }
  const std::string name = kNames.at(bytes[0] % kNames.size());
  folder.clear();
  folder.write(name, fuzz::text_of(bytes + 1, size - 1));
  folder.write("a.prj", kFrame);
  HeightRasterRequest request = request_for(folder, name);
  fuzz::try_to_read([&] { return ports::gdal::open_heights(request); }, look_at);
  request.metres_per_unit = 1.0;
  fuzz::try_to_read([&] { return ports::gdal::open_heights(request); }, look_at);
  return 0;
}
