#include "ports/gdal/raster_checks.h"

#include <gdal.h>
#include <ogr_srs_api.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <utility>

#include "ports/gdal/map_transform.h"

namespace rimehaul::ports::gdal {

namespace {

constexpr int kMostCellsAlong = 1'000'000;
/// GDAL reads whole blocks; a strip that holds an entire raster must still fit in memory.
constexpr std::int64_t kMostBlockBytes = std::int64_t{256} << 20;

class Complaints {
 public:
  explicit Complaints(std::string shown) : shown_{std::move(shown)} {}

  void add(Complaint complaint) { add(std::move(complaint), base::Weight::fault); }
  void doubt(Complaint complaint) { add(std::move(complaint), base::Weight::doubt); }
  [[nodiscard]] std::vector<base::Fault> take() { return std::move(faults_); }

 private:
  void add(Complaint complaint, base::Weight weight) {
    faults_.push_back({.file = shown_,
                       .place = "",
                       .problem = std::move(complaint.problem),
                       .remedy = std::move(complaint.remedy),
                       .weight = weight});
  }

  std::string shown_;
  std::vector<base::Fault> faults_;
};

bool is_picture(GDALRasterBandH band) {
  const GDALColorInterp role = GDALGetRasterColorInterpretation(band);
  return role != GCI_Undefined && role != GCI_GrayIndex;
}

bool has_whole_or_real_numbers(GDALRasterBandH band) {
  switch (GDALGetRasterDataType(band)) {
    case GDT_Byte:
    case GDT_UInt16:
    case GDT_Int16:
    case GDT_UInt32:
    case GDT_Int32:
    case GDT_Float32:
    case GDT_Float64:
      return true;
    default:
      return false;
  }
}

void check_band(GDALRasterBandH band, Complaints& complaints) {
  if (!has_whole_or_real_numbers(band)) {
    complaints.add({std::string{"its numbers are of the kind "} +
                        GDALGetDataTypeName(GDALGetRasterDataType(band)) +
                        ", which heights cannot be",
                    "write them as Float32"});
  }
  if (GDALGetRasterColorTable(band) != nullptr || is_picture(band)) {
    complaints.add({"it holds colours, not heights", "give the raster of heights itself"});
  }
  const double scale = GDALGetRasterScale(band, nullptr);
  const double offset = GDALGetRasterOffset(band, nullptr);
  if (!(std::isfinite(scale) && scale != 0 && std::isfinite(offset))) {
    complaints.add({"the scale or offset of its band is no usable number",
                    "write the heights out without scale and offset"});
  }
}

void check_bands(GDALDatasetH dataset, Complaints& complaints) {
  const int count = GDALGetRasterCount(dataset);
  if (count == 0) {
    const bool has_parts = GDALGetMetadata(dataset, "SUBDATASETS") != nullptr;
    complaints.add(
        {has_parts ? "it holds several rasters, or none that is heights" : "it holds no raster",
         "write the raster of heights to a file of its own"});
    return;
  }
  check_band(GDALGetRasterBand(dataset, 1), complaints);
  const int alpha = alpha_band_of(dataset);
  if (count > (alpha == 0 ? 1 : 2)) {
    complaints.doubt({"it has " + std::to_string(count) + " bands; the first is taken for heights",
                      "check that the first band holds the heights"});
  }
}

void check_size(GDALDatasetH dataset, const CheckedFile& file, Complaints& complaints) {
  const int columns = GDALGetRasterXSize(dataset);
  const int rows = GDALGetRasterYSize(dataset);
  const std::string size = std::to_string(columns) + " x " + std::to_string(rows) + " cells";
  if (columns < 2 || rows < 2) {
    complaints.add({"it has only " + size, "give at least 2 x 2 cells"});
  }
  if (columns > kMostCellsAlong || rows > kMostCellsAlong) {
    complaints.add({"it has " + size + ", more than " + std::to_string(kMostCellsAlong) + " along",
                    "cut it to the area of the site"});
    return;
  }
  const bool is_text =
      std::string_view{GDALGetDriverShortName(GDALGetDatasetDriver(dataset))} == "AAIGrid";
  // A number and what parts it from the next take two letters at least.
  if (is_text &&
      std::uintmax_t{2} * static_cast<std::uintmax_t>(columns) * static_cast<std::uintmax_t>(rows) >
          file.bytes + 1) {
    complaints.add({"it promises " + size + ", more than it can hold; it is cut off",
                    "copy or make the file again"});
  }
  if (GDALGetRasterCount(dataset) == 0) {
    return;
  }
  GDALRasterBandH band = GDALGetRasterBand(dataset, 1);
  int wide = 0;
  int high = 0;
  GDALGetBlockSize(band, &wide, &high);
  const std::int64_t bytes =
      std::int64_t{wide} * high * GDALGetDataTypeSizeBytes(GDALGetRasterDataType(band));
  if (!(bytes > 0 && bytes <= kMostBlockBytes)) {
    complaints.add({"its blocks are too large to read", "write it in tiles of 256 x 256 cells"});
  }
}

void check_place(GDALDatasetH dataset, Complaints& complaints) {
  const char* const again = "write it again with its corners and cell size (gdalwarp or gdal_edit)";
  std::array<double, 6> geotransform{};
  const bool has_corners = GDALGetGeoTransform(dataset, geotransform.data()) == CE_None;
  if (!has_corners && GDALGetGCPCount(dataset) > 0) {
    complaints.add({"it lies on the map by control points only", again});
    return;
  }
  if (!has_corners) {
    complaints.add({"it does not say where it lies on the map", again});
  } else if (!lattice_of(geotransform).is_sound()) {
    complaints.add({"its cells have no size, no area or no place", again});
  }
  OGRSpatialReferenceH reference = GDALGetSpatialRef(dataset);
  if (reference == nullptr) {
    complaints.add({"it does not name its reference system",
                    "add it (gdal_edit -a_srs, or a .prj file beside an ASCII grid)"});
  } else if (!horizontal_part(reference)) {
    complaints.add({"its reference system is none, or bears the code of another kind of system",
                    "write the right one into it (gdal_edit -a_srs)"});
  }
}

void check_beside(GDALDatasetH dataset, const CheckedFile& file, Complaints& complaints) {
  std::error_code trouble;
  if (std::filesystem::exists(file.path + ".msk", trouble)) {
    complaints.add({"its mask is a file of its own, which is not read",
                    "put the mask into the file, or use a nodata value"});
  }
  if (std::filesystem::exists(file.path + ".aux.xml", trouble)) {
    complaints.doubt({"the .aux.xml file beside it is not read",
                      "check that nothing that matters stands there alone (nodata, unit, scale)"});
  }
  const bool is_geopackage =
      std::string_view{GDALGetDriverShortName(GDALGetDatasetDriver(dataset))} == "GPKG";
  if (is_geopackage && GDALGetRasterCount(dataset) > 0) {
    int is_given = 0;
    GDALGetRasterNoDataValue(GDALGetRasterBand(dataset, 1), &is_given);
    if (is_given == 0) {
      complaints.add({"it has no nodata value, so missing tiles would read as heights of 0",
                      "write it again with a nodata value (gdal_translate -a_nodata)"});
    }
  }
}

}  // namespace

std::optional<Lattice> lattice_of_dataset(void* dataset) {
  std::array<double, 6> geotransform{};
  if (GDALGetGeoTransform(dataset, geotransform.data()) != CE_None) {
    return std::nullopt;
  }
  const Lattice lattice = lattice_of(geotransform);
  return lattice.is_sound() ? std::optional{lattice} : std::nullopt;
}

int alpha_band_of(void* dataset) {
  for (int index = 2; index <= GDALGetRasterCount(dataset); ++index) {
    if (GDALGetRasterColorInterpretation(GDALGetRasterBand(dataset, index)) == GCI_AlphaBand) {
      return index;
    }
  }
  return 0;
}

std::vector<base::Fault> faults_of_raster(void* dataset, const CheckedFile& file) {
  const ErrorScope errors;
  Complaints complaints{file.shown};
  check_bands(dataset, complaints);
  check_size(dataset, file, complaints);
  if (GDALGetRasterCount(dataset) > 0) {
    check_place(dataset, complaints);
    check_beside(dataset, file, complaints);
  }
  return complaints.take();
}

}  // namespace rimehaul::ports::gdal
