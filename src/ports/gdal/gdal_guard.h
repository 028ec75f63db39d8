// The door through which every file reaches GDAL: known drivers only, regular files of the site
// only.
#pragma once

#include <cstdint>
#include <memory>
#include <string>

#include "base/fault.h"

namespace rimehaul::ports::gdal {

struct CloseDataset {
  void operator()(void* dataset) const;
};
struct FreeFeature {
  void operator()(void* feature) const;
};
struct FreeReference {
  void operator()(void* reference) const;
};
struct FreeTransformation {
  void operator()(void* transformation) const;
};
struct FreeText {
  void operator()(char* text) const;
};

// GDAL's C handles are `void*` to us, so that its header stays in the .cpp files.
using Dataset = std::unique_ptr<void, CloseDataset>;               ///< a GDALDatasetH
using Feature = std::unique_ptr<void, FreeFeature>;                ///< an OGRFeatureH
using Reference = std::unique_ptr<void, FreeReference>;            ///< an OGRSpatialReferenceH
using Transformation = std::unique_ptr<void, FreeTransformation>;  ///< an OCT transformation
using Text = std::unique_ptr<char, FreeText>;                      ///< freed with CPLFree

/// Collects what GDAL and OGR say on this thread while it lives; nothing reaches the terminal.
/// GDAL does not throw: check every return value, and ask here for the words.
class ErrorScope {
 public:
  ErrorScope();
  ~ErrorScope();
  ErrorScope(const ErrorScope&) = delete;
  ErrorScope& operator=(const ErrorScope&) = delete;

  /// The first failure on one line; "" when nothing failed.
  [[nodiscard]] const std::string& failure() const;
  /// The first warning on one line; "" when there was none.
  [[nodiscard]] const std::string& warning() const;
  /// Forgets what was said so far.
  void clear();

  /// What the callback writes to.
  struct Said {
    std::string failure;
    std::string warning;
  };

 private:
  Said said_;
};

/// Brings GDAL up once per process: it writes nothing to the terminal, drivers that are not on our
/// list are taken away, no plugins, no network, no side-car statistics, no look around in folders,
/// 64 MB of block cache. Cheap to call again; every other function here calls it.
void start_gdal();

/// A file as the site names it.
struct NamedFile {
  std::string folder;          ///< where it must lie
  std::string shown;           ///< relative to the folder, as people wrote it
  std::string shown_folder{};  ///< the folder as people wrote it; names the file in faults with it
};

/// A file that may be opened: regular, no link, inside the site's folder, not too large.
struct CheckedFile {
  std::string path;   ///< canonical
  std::string shown;  ///< for people
  std::uintmax_t bytes = 0;
};

inline constexpr std::uintmax_t kLargestLayerBytes = std::uintmax_t{256} << 20U;
inline constexpr std::uintmax_t kLargestRasterBytes = std::uintmax_t{64} << 30U;

/// Throws BadInput unless the name is that of a readable regular file of at most `largest` bytes
/// (inclusive) within the folder. Names of GDAL's own (`/vsi...`, `<VRTDataset>`, `WMS:`), links,
/// folders, pipes and devices are refused; so are side-car files (.prj, .dbf, .shx, ...) that are
/// links.
[[nodiscard]] CheckedFile checked_file(const NamedFile& file, std::uintmax_t largest);

/// Open a checked file read-only with the drivers meant for it alone. Throw BadInput.
[[nodiscard]] Dataset open_raster(const CheckedFile& file);
[[nodiscard]] Dataset open_layers(const CheckedFile& file);

/// What is wrong, without a closing full stop, and what to do, an imperative.
struct Complaint {
  std::string problem;
  std::string remedy;
};

/// A BadInput about a whole file.
[[nodiscard]] base::BadInput bad_file(const std::string& shown, Complaint complaint);

}  // namespace rimehaul::ports::gdal
