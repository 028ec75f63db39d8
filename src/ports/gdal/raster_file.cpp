#include "ports/gdal/raster_file.h"

#include <gdal.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <utility>

#include "base/require.h"
#include "ports/gdal/raster_checks.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr double kHole = std::numeric_limits<double>::quiet_NaN();

std::size_t cells_in(const CellWindow& window) {
  return static_cast<std::size_t>(window.size.column) * static_cast<std::size_t>(window.size.row);
}

/// Whole rectangle of one band as doubles; throws BadInput on any failure.
std::vector<double> band_values(GDALRasterBandH band, const CellWindow& window,
                                const std::string& shown) {
  std::vector<double> values(cells_in(window), kHole);
  const ErrorScope errors;
  const auto columns = static_cast<int>(window.size.column);
  const auto rows = static_cast<int>(window.size.row);
  const CPLErr failed = GDALRasterIO(band, GF_Read, static_cast<int>(window.first.column),
                                     static_cast<int>(window.first.row), columns, rows,
                                     values.data(), columns, rows, GDT_Float64, 0, 0);
  if (failed != CE_None) {
    throw base::BadInput{
        base::Fault{.file = shown,
                    .place = "rows " + std::to_string(window.first.row) + " to " +
                             std::to_string(window.first.row + window.size.row - 1),
                    .problem = "its heights cannot be read there; the file is cut off or damaged",
                    .remedy = "copy or make the file again"}};
  }
  return values;
}

bool is_fault(const base::Fault& fault) {
  return fault.weight == base::Weight::fault;
}

bool has_missing_blocks(GDALRasterBandH band, const CellWindow& window) {
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

std::vector<double> RasterFile::raw(const CellWindow& window) const {
  GDALRasterBandH band = GDALGetRasterBand(dataset_.get(), 1);
  std::vector<double> values = band_values(band, window, shown_);
  if (nodata_.has_value()) {
    // A nodata of 0.1 stands in a 32-bit file as the float nearest to it.
    const bool is_float = GDALGetRasterDataType(band) == GDT_Float32;
    const double as_stored =
        is_float ? static_cast<double>(static_cast<float>(*nodata_)) : *nodata_;
    std::ranges::replace_if(
        values, [&](double value) { return value == *nodata_ || value == as_stored; }, kHole);
  }
  return values;
}

void RasterFile::void_by_masks(const CellWindow& window, std::vector<double>& values) const {
  GDALRasterBandH band = GDALGetRasterBand(dataset_.get(), 1);
  const int flags = GDALGetMaskFlags(band);
  // Only what a mask calls wholly valid is ground; GDAL's masks say 255 for that.
  constexpr double kWholly = 255.0;
  const auto keep = [&](GDALRasterBandH mask_band) {
    const std::vector<double> mask = band_values(mask_band, window, shown_);
    for (std::size_t index = 0; index < values.size(); ++index) {
      if (!(mask[index] == kWholly)) {
        values[index] = kHole;
      }
    }
  };
  if ((flags & GMF_ALL_VALID) == 0) {
    keep(GDALGetMaskBand(band));
  }
  // A nodata value makes GDAL forget an alpha band that is there as well.
  if (alpha_band_ != 0 && (flags & GMF_ALPHA) == 0) {
    keep(GDALGetRasterBand(dataset_.get(), alpha_band_));
  }
}

void RasterFile::void_missing_blocks(const CellWindow& window, std::vector<double>& values) const {
  GDALRasterBandH band = GDALGetRasterBand(dataset_.get(), 1);
  if (!has_missing_blocks(band, window)) {
    return;
  }
  int wide = 1;
  int high = 1;
  GDALGetBlockSize(band, &wide, &high);
  const std::int64_t last_column = window.first.column + window.size.column;
  const std::int64_t last_row = window.first.row + window.size.row;
  for (std::int64_t row = window.first.row / high * high; row < last_row; row += high) {
    for (std::int64_t column = window.first.column / wide * wide; column < last_column;
         column += wide) {
      const CellWindow part = window.shared_with({{column, row}, {wide, high}});
      if (!has_missing_blocks(band, part)) {
        continue;
      }
      for (std::int64_t line = 0; line < part.size.row; ++line) {
        const std::int64_t start = (part.first.row - window.first.row + line) * window.size.column +
                                   part.first.column - window.first.column;
        std::fill_n(values.begin() + start, part.size.column, kHole);
      }
    }
  }
}

std::vector<double> RasterFile::read(const CellWindow& window) const {
  const bool is_inside = window.first.column >= 0 && window.first.row >= 0 &&
                         window.size.column > 0 && window.size.row > 0 &&
                         window.first.column + window.size.column <= size_.column &&
                         window.first.row + window.size.row <= size_.row;
  base::require(is_inside, "a window of heights lies within its file");
  std::vector<double> values = raw(window);
  void_by_masks(window, values);
  // GDAL reads blocks that were never written as 0, which would pass for ground at sea level.
  void_missing_blocks(window, values);
  for (double& value : values) {
    const double height_m = (value * scale_ + offset_) * metres_per_unit_;
    const bool is_plausible =
        height_m >= range_.lowest.value() && height_m <= range_.highest.value();
    value = is_plausible ? height_m : kHole;
  }
  return values;
}

}  // namespace rimehaul::ports::gdal
