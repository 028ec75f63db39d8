#include "ports/gdal/raster_file.h"

#include <gdal.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <span>
#include <utility>

#include "base/require.h"
#include "ports/gdal/raster_checks.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr double kHole = std::numeric_limits<double>::quiet_NaN();

std::size_t cells_in(const terrain::CellWindow& window) {
  return static_cast<std::size_t>(window.size.column) * static_cast<std::size_t>(window.size.row);
}

/// A row of a window, counted from its first.
std::span<double> row_of(terrain::HeightRows rows, const terrain::CellWindow& window,
                         std::int64_t row) {
  return rows.heights_m.subspan(static_cast<std::size_t>(row) * rows.stride,
                                static_cast<std::size_t>(window.size.column));
}

/// Whole rectangle of one band as doubles; throws BadInput on any failure.
void read_band(GDALRasterBandH band, const terrain::CellWindow& window, terrain::HeightRows into,
               const std::string& shown) {
  const ErrorScope errors;
  const auto columns = static_cast<int>(window.size.column);
  const auto rows = static_cast<int>(window.size.row);
  const CPLErr failed = GDALRasterIOEx(
      band, GF_Read, static_cast<int>(window.first.column), static_cast<int>(window.first.row),
      columns, rows, into.heights_m.data(), columns, rows, GDT_Float64, sizeof(double),
      static_cast<GSpacing>(into.stride) * GSpacing{sizeof(double)}, nullptr);
  if (failed != CE_None) {
    throw base::BadInput{
        base::Fault{.file = shown,
                    .place = "rows " + std::to_string(window.first.row) + " to " +
                             std::to_string(window.first.row + window.size.row - 1),
                    .problem = "its heights cannot be read there; the file is cut off or damaged",
                    .remedy = "copy or make the file again"}};
  }
}

bool is_fault(const base::Fault& fault) {
  return fault.weight == base::Weight::fault;
}

bool has_missing_blocks(GDALRasterBandH band, const terrain::CellWindow& window) {
  const ErrorScope errors;
  const int status = GDALGetDataCoverageStatus(
      band, static_cast<int>(window.first.column), static_cast<int>(window.first.row),
      static_cast<int>(window.size.column), static_cast<int>(window.size.row), 0, nullptr);
  return (status & GDAL_DATA_COVERAGE_STATUS_EMPTY) != 0;
}

}  // namespace

base::Reading<std::optional<RasterFile>> RasterFile::open(const CheckedFile& file) {
  base::Reading<std::optional<RasterFile>> reading;
  RasterFile raster;
  raster.shown_ = file.shown;
  try {
    raster.dataset_ = open_raster(file);
  } catch (const base::BadInput& bad) {
    reading.faults.push_back(bad.fault());
    return reading;
  }
  const ErrorScope errors;
  GDALDatasetH dataset = raster.dataset_.get();
  raster.size_ = {GDALGetRasterXSize(dataset), GDALGetRasterYSize(dataset)};
  reading.faults = faults_of_raster(dataset, file);
  if (GDALGetRasterCount(dataset) > 0) {
    raster.look_at(reading.faults);
  }
  const bool is_usable = std::ranges::none_of(reading.faults, &is_fault);
  if (is_usable) {
    reading.data = std::move(raster);
  }
  return reading;
}

void RasterFile::look_at(std::vector<base::Fault>& faults) {
  GDALDatasetH dataset = dataset_.get();
  GDALRasterBandH band = GDALGetRasterBand(dataset, 1);
  OGRSpatialReferenceH reference = GDALGetSpatialRef(dataset);
  lattice_ = lattice_of_dataset(dataset).value_or(Lattice{});
  reference_ = horizontal_part(reference);
  base::Reading<VerticalSaid> vertical = vertical_of({reference, band}, shown_);
  vertical_ = vertical.data;
  std::ranges::move(vertical.faults, std::back_inserter(faults));
  alpha_band_ = alpha_band_of(dataset);
  int is_given = 0;
  const double nodata = GDALGetRasterNoDataValue(band, &is_given);
  if (is_given != 0) {
    nodata_ = nodata;
  }
  scale_ = GDALGetRasterScale(band, nullptr);
  offset_ = GDALGetRasterOffset(band, nullptr);
}

void RasterFile::read_as(double metres_per_unit, PlausibleRange range) {
  metres_per_unit_ = metres_per_unit;
  range_ = range;
}

void RasterFile::void_by_masks(const terrain::CellWindow& window,
                               terrain::HeightRows values) const {
  GDALRasterBandH band = GDALGetRasterBand(dataset_.get(), 1);
  const int flags = GDALGetMaskFlags(band);
  // Only what a mask calls wholly valid is ground; GDAL's masks say 255 for that.
  constexpr double kWholly = 255.0;
  const auto keep = [&](GDALRasterBandH mask_band) {
    const auto wide = static_cast<std::size_t>(window.size.column);
    std::vector<double> mask(cells_in(window), kHole);
    read_band(mask_band, window, {mask, wide}, shown_);
    for (std::int64_t row = 0; row < window.size.row; ++row) {
      const std::span<const double> said = row_of({mask, wide}, window, row);
      const std::span<double> kept = row_of(values, window, row);
      std::ranges::transform(kept, said, kept.begin(), [](double value, double share) {
        return share == kWholly ? value : kHole;
      });
    }
  };
  // A mask that stands for the nodata value alone says nothing that is not known already.
  if ((flags & (GMF_ALL_VALID | GMF_NODATA)) == 0) {
    keep(GDALGetMaskBand(band));
  }
  // A nodata value makes GDAL forget an alpha band that is there as well.
  if (alpha_band_ != 0 && (flags & GMF_ALPHA) == 0) {
    keep(GDALGetRasterBand(dataset_.get(), alpha_band_));
  }
}

void RasterFile::void_missing_blocks(const terrain::CellWindow& window,
                                     terrain::HeightRows values) const {
  GDALRasterBandH band = GDALGetRasterBand(dataset_.get(), 1);
  if (!has_missing_blocks(band, window)) {
    return;
  }
  const auto [wide, high] = kept_together();
  const std::int64_t last_column = window.first.column + window.size.column;
  const std::int64_t last_row = window.first.row + window.size.row;
  for (std::int64_t row = window.first.row / high * high; row < last_row; row += high) {
    for (std::int64_t column = window.first.column / wide * wide; column < last_column;
         column += wide) {
      const terrain::CellWindow part = window.shared_with({{column, row}, {wide, high}});
      if (!has_missing_blocks(band, part)) {
        continue;
      }
      const terrain::CellIndex at = part.seen_from(window.first).first;
      for (std::int64_t line = at.row; line < at.row + part.size.row; ++line) {
        std::ranges::fill(row_of(values, window, line)
                              .subspan(static_cast<std::size_t>(at.column),
                                       static_cast<std::size_t>(part.size.column)),
                          kHole);
      }
    }
  }
}

void RasterFile::bring_to_metres(const terrain::CellWindow& window,
                                 terrain::HeightRows values) const {
  // A nodata of 0.1 stands in a 32-bit file as the float nearest to it.
  const double nodata = nodata_.value_or(kHole);
  const bool is_float = GDALGetRasterDataType(GDALGetRasterBand(dataset_.get(), 1)) == GDT_Float32;
  const double as_stored = is_float ? static_cast<double>(static_cast<float>(nodata)) : nodata;
  const double lowest_m = range_.lowest.value();
  const double highest_m = range_.highest.value();
  for (std::int64_t row = 0; row < window.size.row; ++row) {
    for (double& value : row_of(values, window, row)) {
      const double height_m = (value * scale_ + offset_) * metres_per_unit_;
      const bool is_plausible =
          value != nodata && value != as_stored && height_m >= lowest_m && height_m <= highest_m;
      value = is_plausible ? height_m : kHole;
    }
  }
}

terrain::CellIndex RasterFile::kept_together() const {
  int wide = 1;
  int high = 1;
  GDALGetBlockSize(GDALGetRasterBand(dataset_.get(), 1), &wide, &high);
  return {wide, high};
}

void RasterFile::read(const terrain::CellWindow& window, terrain::HeightRows into) const {
  const bool is_inside = window.first.column >= 0 && window.first.row >= 0 &&
                         window.size.column > 0 && window.size.row > 0 &&
                         window.first.column + window.size.column <= size_.column &&
                         window.first.row + window.size.row <= size_.row;
  base::require(is_inside, "a window of heights lies within its file");
  const auto wide = static_cast<std::size_t>(window.size.column);
  base::require(into.stride >= wide &&
                    into.heights_m.size() >=
                        (static_cast<std::size_t>(window.size.row) - 1) * into.stride + wide,
                "there is room for a window of heights");
  read_band(GDALGetRasterBand(dataset_.get(), 1), window, into, shown_);
  void_by_masks(window, into);
  // GDAL reads blocks that were never written as 0, which would pass for ground at sea level.
  void_missing_blocks(window, into);
  bring_to_metres(window, into);
}

std::vector<double> RasterFile::read(const terrain::CellWindow& window) const {
  std::vector<double> heights_m(cells_in(window), kHole);
  read(window, {heights_m, static_cast<std::size_t>(window.size.column)});
  return heights_m;
}

}  // namespace rimehaul::ports::gdal
