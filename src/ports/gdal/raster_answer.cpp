#include "ports/gdal/raster_answer.h"

#include <fcntl.h>
#include <gdal.h>
#include <ogr_srs_api.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <system_error>
#include <utility>

#include "base/require.h"
#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/map_transform.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr std::int64_t kTile = 512;

GDALDataType type_of(CellKind kind) {
  switch (kind) {
    case CellKind::real_32:
      return GDT_Float32;
    case CellKind::whole_16:
      return GDT_UInt16;
    case CellKind::whole_8:
      return GDT_Byte;
  }
  return GDT_Unknown;
}

base::BadInput not_written(const AnswerFile& file, const std::string& why) {
  return bad_file(file.shown, {"cannot be written: " + why,
                               "make room, or name a folder where there is some and where you may "
                               "write"});
}

std::array<double, 6> corners_of(const terrain::GridFrame& grid) {
  const geo::MapPoint centre = grid.centre_of({0, 0});
  const double east_per_column = grid.per_column().east.value();
  const double north_per_column = grid.per_column().north.value();
  const double east_per_row = grid.per_row().east.value();
  const double north_per_row = grid.per_row().north.value();
  return {centre.east.value() - (east_per_column + east_per_row) / 2.0,
          east_per_column,
          east_per_row,
          centre.north.value() - (north_per_column + north_per_row) / 2.0,
          north_per_column,
          north_per_row};
}

void describe(GDALDatasetH dataset, const RasterTerms& terms) {
  std::array<double, 6> corners = corners_of(terms.grid);
  GDALSetGeoTransform(dataset, corners.data());
  const Reference reference = reference_from(terms.reference);
  GDALSetSpatialRef(dataset, reference.get());
  for (const auto& [key, words] : terms.notes) {
    GDALSetMetadataItem(dataset, key.c_str(), words.c_str(), nullptr);
  }
  GDALRasterBandH band = GDALGetRasterBand(dataset, 1);
  GDALSetDescription(band, terms.title.c_str());
  if (!terms.unit.empty()) {
    GDALSetRasterUnitType(band, terms.unit.c_str());
  }
  if (!terms.colours.empty()) {
    GDALColorTableH table = GDALCreateColorTable(GPI_RGB);
    for (std::size_t value = 0; value < terms.colours.size(); ++value) {
      const Colour& colour = terms.colours[value];
      const GDALColorEntry entry{colour.red, colour.green, colour.blue, colour.opacity};
      GDALSetColorEntry(table, static_cast<int>(value), &entry);
    }
    GDALSetRasterColorTable(band, table);
    GDALDestroyColorTable(table);
  }
}

}  // namespace

RasterAnswer::RasterAnswer(AnswerFile file, const RasterTerms& terms)
    : file_{std::move(file)},
      terms_{terms},
      bytes_each_{static_cast<std::size_t>(GDALGetDataTypeSizeBytes(type_of(terms.kind)))} {
  start_gdal();
  make();
  find_tiles();
  handle_ = ::open(file_.path.c_str(), O_WRONLY | O_CLOEXEC);
  if (handle_ < 0) {
    throw not_written(file_, std::generic_category().message(errno));
  }
}

RasterAnswer::~RasterAnswer() {
  ::close(handle_);
}

void RasterAnswer::make() const {
  const ErrorScope errors;
  std::array<const char*, 5> options{"TILED=YES", "BLOCKXSIZE=512", "BLOCKYSIZE=512",
                                     "BIGTIFF=IF_SAFER", nullptr};
  Dataset dataset{GDALCreate(GDALGetDriverByName("GTiff"), file_.path.c_str(),
                             static_cast<int>(terms_.size.column),
                             static_cast<int>(terms_.size.row), 1, type_of(terms_.kind),
                             const_cast<char**>(options.data()))};
  if (dataset == nullptr) {
    throw not_written(file_, errors.failure());
  }
  describe(dataset.get(), terms_);
  dataset.reset();
  if (!errors.failure().empty()) {
    throw not_written(file_, errors.failure());
  }
}

// Without a nodata value GDAL gives an uncompressed file its full length and every tile its place,
// and writes none of them; so that value is told afterwards.
void RasterAnswer::find_tiles() {
  const ErrorScope errors;
  const Dataset dataset{
      GDALOpenEx(file_.path.c_str(), GDAL_OF_RASTER | GDAL_OF_UPDATE, nullptr, nullptr, nullptr)};
  if (dataset == nullptr) {
    throw not_written(file_, errors.failure());
  }
  GDALRasterBandH band = GDALGetRasterBand(dataset.get(), 1);
  tiles_along_ = (terms_.size.column + kTile - 1) / kTile;
  const std::int64_t tiles_down = (terms_.size.row + kTile - 1) / kTile;
  for (std::int64_t row = 0; row < tiles_down; ++row) {
    for (std::int64_t column = 0; column < tiles_along_; ++column) {
      const std::string key = "BLOCK_OFFSET_" + std::to_string(column) + "_" + std::to_string(row);
      const char* said = GDALGetMetadataItem(band, key.c_str(), "TIFF");
      base::require(said != nullptr, "every tile of a new raster has its place in the file");
      tile_at_.push_back(std::strtoull(said, nullptr, 10));
    }
  }
  if (terms_.nodata) {
    GDALSetRasterNoDataValue(band, *terms_.nodata);
  }
}

void RasterAnswer::write_at(std::uint64_t offset, std::span<const std::byte> bytes) const {
  while (!bytes.empty()) {
    const ssize_t written =
        ::pwrite(handle_, bytes.data(), bytes.size(), static_cast<off_t>(offset));
    if (written < 0 && errno != EINTR) {
      throw not_written(file_, std::generic_category().message(errno));
    }
    const std::size_t done = written < 0 ? 0 : static_cast<std::size_t>(written);
    bytes = bytes.subspan(done);
    offset += done;
  }
}

void RasterAnswer::write(const terrain::CellWindow& window,
                         std::span<const std::byte> cells) const {
  const auto bytes_of = [this](std::int64_t count) {
    return static_cast<std::size_t>(count) * bytes_each_;
  };
  base::require(cells.size() == bytes_of(window.size.column * window.size.row),
                "a window of cells is written whole");
  std::vector<std::byte> whole;
  const terrain::CellIndex end{window.first.column + window.size.column,
                               window.first.row + window.size.row};
  for (std::int64_t row = window.first.row / kTile; row * kTile < end.row; ++row) {
    for (std::int64_t column = window.first.column / kTile; column * kTile < end.column; ++column) {
      const terrain::CellIndex corner{column * kTile, row * kTile};
      const terrain::CellWindow part = window.shared_with({corner, {kTile, kTile}});
      const terrain::CellIndex from = part.seen_from(window.first).first;
      const terrain::CellIndex to = part.seen_from(corner).first;
      const std::uint64_t start = tile_at_[static_cast<std::size_t>(row * tiles_along_ + column)] +
                                  bytes_of(to.row * kTile + to.column);
      const bool side_by_side = part.size.column == kTile;
      whole.clear();
      for (std::int64_t line = 0; line < part.size.row; ++line) {
        const auto bytes =
            cells.subspan(bytes_of((from.row + line) * window.size.column + from.column),
                          bytes_of(part.size.column));
        if (side_by_side) {
          whole.insert(whole.end(), bytes.begin(), bytes.end());
        } else {
          write_at(start + bytes_of(line * kTile), bytes);
        }
      }
      write_at(start, whole);
    }
  }
}

}  // namespace rimehaul::ports::gdal
