#include "ports/gdal/gdal_guard.h"

#include <cpl_conv.h>
#include <cpl_error.h>
#include <gdal.h>
#include <ogr_api.h>
#include <ogr_srs_api.h>

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <mutex>
#include <string_view>
#include <system_error>
#include <utility>

#include "base/one_line.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

namespace fs = std::filesystem;

// CSV is left out on purpose: it would take almost any text for a table. VRT, the web services and
// the database drivers can name other files and hosts.
constexpr std::array<const char*, 6> kRasterDrivers{"GTiff",   "AAIGrid", "USGSDEM",
                                                    "SRTMHGT", "GPKG",    nullptr};
constexpr std::array<const char*, 9> kLayerDrivers{
    "GPKG",   "GeoJSON",        "GeoJSONSeq", "GPX",  "KML",
    "LIBKML", "ESRI Shapefile", "FlatGeobuf", nullptr};
/// For what we write alone; it reads nothing.
constexpr std::array<const char*, 1> kAnswerDrivers{"COG"};

constexpr std::array<const char*, 12> kSideCars{".prj", ".dbf", ".shx", ".cpg", ".qix", ".sbn",
                                                ".sbx", ".shp", ".tfw", ".msk", ".ovr", ".aux.xml"};
constexpr std::array<const char*, 5> kAppended{".aux.xml", ".msk", ".ovr", "-wal", "-journal"};

constexpr GIntBig kCacheBytes = GIntBig{64} << 20;

template <std::size_t Count>
bool is_among(const std::array<const char*, Count>& names, std::string_view name) {
  return std::ranges::any_of(names,
                             [&](const char* known) { return known != nullptr && name == known; });
}

void CPL_STDCALL note_error(CPLErr weight, CPLErrorNum /*number*/, const char* text) {
  auto* said = static_cast<ErrorScope::Said*>(CPLGetErrorHandlerUserData());
  if (said == nullptr || weight == CE_None || weight == CE_Debug) {
    return;
  }
  std::string& kept = weight == CE_Warning ? said->warning : said->failure;
  if (kept.empty()) {
    kept = short_line(text == nullptr ? "" : text);
  }
}

void keep_known_drivers_only() {
  for (int index = GDALGetDriverCount() - 1; index >= 0; --index) {
    GDALDriverH driver = GDALGetDriver(index);
    const std::string_view name = GDALGetDriverShortName(driver);
    if (!is_among(kRasterDrivers, name) && !is_among(kLayerDrivers, name) &&
        !is_among(kAnswerDrivers, name)) {
      GDALDeregisterDriver(driver);
      GDALDestroyDriver(driver);
    }
  }
}

void start_once() {
  // What no ErrorScope hears is not for people: they get our own lines.
  CPLSetErrorHandler(CPLQuietErrorHandler);
  CPLSetConfigOption("GDAL_DRIVER_PATH", "disable");
  GDALAllRegister();
  keep_known_drivers_only();
  // After registering, because that also reads the user's own GDAL configuration file.
  CPLSetConfigOption("GDAL_PAM_ENABLED", "NO");
  CPLSetConfigOption("GDAL_VRT_ENABLE_PYTHON", "NO");
  CPLSetConfigOption("GDAL_DISABLE_READDIR_ON_OPEN", "EMPTY_DIR");
  // Vertical systems are reported of old and new GeoTIFF alike; points are half a cell in.
  CPLSetConfigOption("GTIFF_REPORT_COMPD_CS", "YES");
  CPLSetConfigOption("GTIFF_POINT_GEO_IGNORE", "NO");
  CPLSetConfigOption("OGR_GEOJSON_MAX_OBJ_SIZE", "64");
  GDALSetCacheMax64(kCacheBytes);
  OSRSetPROJEnableNetwork(0);
}

bool looks_like_an_address(std::string_view name) {
  return base::has_controls(name) || name.empty() || name.starts_with("/vsi") ||
         name.starts_with('<') || name.find("://") != std::string_view::npos;
}

struct PathInFolder {
  const fs::path& path;
  const fs::path& folder;
};

bool lies_within(const PathInFolder& both) {
  const auto& [path, folder] = both;
  const auto at_folder =
      std::mismatch(folder.begin(), folder.end(), path.begin(), path.end()).first;
  return at_folder == folder.end();
}

bool is_link(const fs::path& path) {
  std::error_code trouble;
  return fs::is_symlink(fs::symlink_status(path, trouble));
}

void refuse_linked_side_cars(const fs::path& path, const std::string& shown) {
  const auto refuse = [&](const fs::path& side_car) {
    if (is_link(side_car)) {
      throw bad_file(shown, {"its side-car file " + side_car.filename().string() + " is a link",
                             "copy the side-car file itself into the site folder"});
    }
  };
  for (const char* ending : kSideCars) {
    refuse(fs::path{path}.replace_extension(ending));
  }
  for (const char* ending : kAppended) {
    refuse(fs::path{path.string() + ending});
  }
}

Dataset open_with(const CheckedFile& file, unsigned flags, const char* const* drivers) {
  start_gdal();
  const ErrorScope errors;
  Dataset dataset{
      GDALOpenEx(file.path.c_str(), flags | GDAL_OF_READONLY, drivers, nullptr, nullptr)};
  return dataset;
}

}  // namespace

void CloseDataset::operator()(void* dataset) const {
  const ErrorScope quiet;
  GDALClose(dataset);
}
void FreeFeature::operator()(void* feature) const {
  OGR_F_Destroy(feature);
}
void FreeReference::operator()(void* reference) const {
  OSRRelease(reference);
}
void FreeTransformation::operator()(void* transformation) const {
  OCTDestroyCoordinateTransformation(transformation);
}
void FreeText::operator()(char* text) const {
  CPLFree(text);
}

ErrorScope::ErrorScope() {
  CPLErrorReset();
  CPLPushErrorHandlerEx(note_error, &said_);
}
ErrorScope::~ErrorScope() {
  CPLPopErrorHandler();
  CPLErrorReset();
}
const std::string& ErrorScope::failure() const {
  return said_.failure;
}
const std::string& ErrorScope::warning() const {
  return said_.warning;
}
void ErrorScope::clear() {
  said_ = Said{};
  CPLErrorReset();
}

void start_gdal() {
  static std::once_flag started;
  std::call_once(started, start_once);
}

base::BadInput bad_file(const std::string& shown, Complaint complaint) {
  return base::BadInput{base::Fault{.file = shown,
                                    .place = "",
                                    .problem = std::move(complaint.problem),
                                    .remedy = std::move(complaint.remedy)}};
}

CheckedFile checked_file(const NamedFile& file, std::uintmax_t largest) {
  if (looks_like_an_address(file.shown) || fs::path{file.shown}.is_absolute()) {
    throw bad_file(file.shown.empty() ? "site.toml" : file.shown,
                   {"this is no file name within the site folder",
                    "name a file by its path from the site folder"});
  }
  std::error_code trouble;
  const fs::path folder = fs::canonical(file.folder, trouble);
  if (trouble) {
    throw bad_file(file.folder, {"there is no such folder that can be read",
                                 "check its name in site.toml, and its permissions"});
  }
  const std::string shown = (fs::path{file.shown_folder} / file.shown).string();
  const fs::path named = folder / file.shown;
  if (is_link(named)) {
    throw bad_file(shown, {"the file is a link", "copy the file itself into the site folder"});
  }
  const fs::path path = fs::canonical(named, trouble);
  if (trouble) {
    throw bad_file(shown, {"there is no such file", "check its name in site.toml"});
  }
  if (!lies_within({path, folder}) || path.string().starts_with("/vsi")) {
    throw bad_file(shown,
                   {"the file lies outside the site folder", "copy the file into the site folder"});
  }
  if (!fs::is_regular_file(path, trouble)) {
    throw bad_file(shown, {"this is no regular file", "name a file, not a folder or a device"});
  }
  const std::uintmax_t bytes = fs::file_size(path, trouble);
  if (trouble || !(bytes <= largest)) {
    throw bad_file(shown, {"the file is larger than " + std::to_string(largest >> 20U) + " MB",
                           "cut it to the area of the site"});
  }
  if (!std::ifstream{path}.is_open()) {
    throw bad_file(shown, {"it cannot be read", "make it readable for the account that runs this"});
  }
  refuse_linked_side_cars(path, shown);
  return CheckedFile{.path = path.string(), .shown = shown, .bytes = bytes};
}

Dataset open_raster(const CheckedFile& file) {
  Dataset dataset = open_with(file, GDAL_OF_RASTER, kRasterDrivers.data());
  if (!dataset) {
    throw bad_file(file.shown, {"this is no raster of a known kind or it is damaged",
                                "give GeoTIFF, GeoPackage, ASCII grid, USGS DEM or SRTM HGT"});
  }
  return dataset;
}

Dataset open_layers(const CheckedFile& file) {
  Dataset dataset = open_with(file, GDAL_OF_VECTOR, kLayerDrivers.data());
  if (!dataset) {
    throw bad_file(file.shown, {"this is no vector file of a known kind or it is damaged",
                                "give GeoPackage, GeoJSON, GPX, KML, Shapefile or FlatGeobuf"});
  }
  return dataset;
}

}  // namespace rimehaul::ports::gdal
