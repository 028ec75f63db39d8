// From a written raster to a cloud-optimized GeoTIFF: overviews that find no less than their cells.
#include <cpl_conv.h>
#include <gdal.h>

#include <algorithm>
#include <array>
#include <string>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/raster_answer.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr int kTile = 512;

base::BadInput not_written(const std::string& shown, const ErrorScope& errors) {
  return bad_file(shown, {"cannot be written: " + errors.failure(),
                          "make room, or name a folder where there is some"});
}

/// While it lives, overviews made on this thread have tiles of kTile.
class OverviewTiles {
 public:
  OverviewTiles() { CPLSetThreadLocalConfigOption(kKey, std::to_string(kTile).c_str()); }
  ~OverviewTiles() { CPLSetThreadLocalConfigOption(kKey, nullptr); }
  OverviewTiles(const OverviewTiles&) = delete;
  OverviewTiles& operator=(const OverviewTiles&) = delete;

 private:
  static constexpr const char* kKey = "GDAL_TIFF_OVR_BLOCKSIZE";
};

/// Tells a watcher of so many parts as a share of the work rises to 1.
class Told {
 public:
  Told(base::Watcher& watcher, std::size_t parts) : watcher_{&watcher}, parts_{parts} {}

  void reached(double share) {
    const auto due =
        static_cast<std::size_t>(std::clamp(share, 0.0, 1.0) * static_cast<double>(parts_));
    for (; done_ < due; ++done_) {
      watcher_->part_done();
    }
  }

  static int CPL_STDCALL hear(double share, const char* /*words*/, void* told) {
    static_cast<Told*>(told)->reached(share);
    return 1;
  }

 private:
  base::Watcher* watcher_;
  std::size_t parts_;
  std::size_t done_ = 0;
};

struct Size {
  int columns = 0;
  int rows = 0;
};

Size size_of(GDALRasterBandH band) {
  return {GDALGetRasterBandXSize(band), GDALGetRasterBandYSize(band)};
}

/// One cell for up to four, of which those outside the raster are left out.
float together(std::span<const float> cells, const RasterTerms& terms) {
  if (terms.nodata) {
    const auto nodata = static_cast<float>(*terms.nodata);
    if (std::ranges::find(cells, nodata) != cells.end()) {
      return nodata;
    }
  }
  float kept = cells.front();
  for (const float cell : cells.subspan(1)) {
    switch (terms.overview) {
      case Overview::largest:
        kept = std::max(kept, cell);
        break;
      case Overview::common_bits:
        kept = static_cast<float>(static_cast<unsigned>(kept) & static_cast<unsigned>(cell));
        break;
      case Overview::first:
        break;
    }
  }
  return kept;
}

std::vector<float> halved(const std::vector<float>& fine, Size size, const RasterTerms& terms) {
  std::vector<float> coarse;
  for (int row = 0; row < size.rows; row += 2) {
    for (int column = 0; column < size.columns; column += 2) {
      std::array<float, 4> cells{};
      std::size_t count = 0;
      for (int y = row; y < std::min(row + 2, size.rows); ++y) {
        for (int x = column; x < std::min(column + 2, size.columns); ++x) {
          cells.at(count++) =
              fine[static_cast<std::size_t>(y) * static_cast<std::size_t>(size.columns) +
                   static_cast<std::size_t>(x)];
        }
      }
      coarse.push_back(together(std::span{cells}.first(count), terms));
    }
  }
  return coarse;
}

bool transfer(GDALRWFlag way, GDALRasterBandH band, std::array<int, 4> window,
              std::vector<float>& cells) {
  const auto [column, row, columns, rows] = window;
  cells.resize(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
  return GDALRasterIO(band, way, column, row, columns, rows, cells.data(), columns, rows,
                      GDT_Float32, 0, 0) == CE_None;
}

struct TwoBands {
  GDALRasterBandH fine;
  GDALRasterBandH coarse;
};

/// Fills one overview from the next finer band.
bool fill(const TwoBands& bands, const RasterTerms& terms) {
  const Size from = size_of(bands.fine);
  const Size to = size_of(bands.coarse);
  std::vector<float> cells;
  for (int row = 0; row < to.rows; row += kTile) {
    for (int column = 0; column < to.columns; column += kTile) {
      const Size part{std::min(kTile, to.columns - column), std::min(kTile, to.rows - row)};
      const Size read{std::min(2 * part.columns, from.columns - 2 * column),
                      std::min(2 * part.rows, from.rows - 2 * row)};
      if (!transfer(GF_Read, bands.fine, {2 * column, 2 * row, read.columns, read.rows}, cells)) {
        return false;
      }
      std::vector<float> kept = halved(cells, read, terms);
      if (!transfer(GF_Write, bands.coarse, {column, row, part.columns, part.rows}, kept)) {
        return false;
      }
    }
  }
  return true;
}

/// 2, 4, 8 ... until one tile holds the whole raster.
std::vector<int> factors_for(terrain::CellIndex size) {
  std::vector<int> factors;
  const std::int64_t longer = std::max(size.column, size.row);
  for (int factor = 2; (longer + factor / 2 - 1) / (factor / 2) > kTile; factor *= 2) {
    factors.push_back(factor);
  }
  return factors;
}

void add_overviews(const RasterAnswer& answer) {
  std::vector<int> factors = factors_for(answer.terms().size);
  if (factors.empty()) {
    return;
  }
  const ErrorScope errors;
  const OverviewTiles tiles;
  Dataset dataset{GDALOpenEx(answer.path().c_str(), GDAL_OF_RASTER | GDAL_OF_UPDATE, nullptr,
                             nullptr, nullptr)};
  bool is_done = dataset != nullptr &&
                 GDALBuildOverviews(dataset.get(), "NONE", static_cast<int>(factors.size()),
                                    factors.data(), 0, nullptr, nullptr, nullptr) == CE_None;
  if (is_done) {
    GDALRasterBandH fine = GDALGetRasterBand(dataset.get(), 1);
    const int count = GDALGetOverviewCount(fine);
    for (int level = 0; is_done && level < count; ++level) {
      GDALRasterBandH coarse = GDALGetOverview(GDALGetRasterBand(dataset.get(), 1), level);
      is_done = fill({fine, coarse}, answer.terms());
      fine = coarse;
    }
  }
  dataset.reset();
  if (!is_done || !errors.failure().empty()) {
    throw not_written(answer.shown(), errors);
  }
}

}  // namespace

void write_cog(const RasterAnswer& answer, const std::string& path, base::Watcher& watcher,
               std::size_t parts) {
  start_gdal();
  add_overviews(answer);
  const ErrorScope errors;
  Told told{watcher, parts};
  const Dataset plain{GDALOpenEx(answer.path().c_str(), GDAL_OF_RASTER, nullptr, nullptr, nullptr)};
  std::array<const char*, 7> options{
      "COMPRESS=DEFLATE", "PREDICTOR=YES",    "BLOCKSIZE=512", "NUM_THREADS=ALL_CPUS",
      "OVERVIEWS=AUTO",   "BIGTIFF=IF_SAFER", nullptr};
  Dataset cog;
  if (plain != nullptr) {
    cog = Dataset{GDALCreateCopy(GDALGetDriverByName("COG"), path.c_str(), plain.get(), 0,
                                 const_cast<char**>(options.data()), &Told::hear, &told)};
  }
  const bool is_made = cog != nullptr;
  cog.reset();
  if (!is_made || !errors.failure().empty()) {
    throw not_written(answer.shown(), errors);
  }
  told.reached(1.0);
}

}  // namespace rimehaul::ports::gdal
