#include "ports/gdal/records_maker.h"

#include <fcntl.h>
#include <gdal.h>
#include <ogr_api.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <charconv>
#include <csignal>
#include <cstdio>
#include <filesystem>
#include <system_error>
#include <utility>

#include "base/require.h"
#include "ports/gdal/map_transform.h"
#include "ports/gdal/records_schema.h"

namespace rimehaul::ports::gdal {

namespace {

namespace fs = std::filesystem;

constexpr std::string_view kEnding = ".gpkg";

std::string unfinished_stem(const RecordsPlace& place) {
  return place.name + ".unfinished-";
}

base::BadInput not_made(const RecordsPlace& place, const std::string& why) {
  return bad_file(place.shown(), {"it cannot be made: " + why,
                                  "make room, and give this account leave to write the folder"});
}

/// A file that is not finished, and what SQLite may have put beside it.
void remove_unfinished(const fs::path& file) {
  std::error_code ignored;
  fs::remove(file, ignored);
  fs::remove(file.string() + "-journal", ignored);
}

/// Whether the maker of such a file is no more.
// What begins with what, as starts_with has it.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
bool is_left_behind(const std::string& name, const std::string& stem) {
  if (!name.starts_with(stem) || !name.ends_with(kEnding)) {
    return false;
  }
  pid_t maker = 0;
  const char* end = name.data() + name.size() - kEnding.size();
  const auto read = std::from_chars(name.data() + stem.size(), end, maker);
  const bool is_ours = maker == ::getpid();  // of an older program that had our number
  return read.ptr == end && maker > 0 && (is_ours || (::kill(maker, 0) != 0 && errno == ESRCH));
}

void clear_away(const RecordsPlace& place) {
  std::error_code trouble;
  for (const auto& entry : fs::directory_iterator{place.folder, trouble}) {
    if (is_left_behind(entry.path().filename().string(), unfinished_stem(place))) {
      remove_unfinished(entry.path());
    }
  }
}

struct Column {
  const char* name;
  OGRFieldType type;
};
constexpr std::array kColumns{Column{"grade_deg", OFTReal},   Column{"cross_slope_deg", OFTReal},
                              Column{"heading_deg", OFTReal}, Column{"instrument", OFTString},
                              Column{"at", OFTString},        Column{"person", OFTString},
                              Column{"role", OFTString},      Column{"entry", OFTInteger64}};

bool add_columns(OGRLayerH layer) {
  for (const Column& column : kColumns) {
    OGRFieldDefnH field = OGR_Fld_Create(column.name, column.type);
    OGR_Fld_SetNullable(field, 0);
    const OGRErr code = OGR_L_CreateField(layer, field, 0);
    OGR_Fld_Destroy(field);
    if (code != OGRERR_NONE) {
      return false;
    }
  }
  return true;
}

/// The bare GeoPackage: its reference systems and the layer of field checks. Without the counts
/// that GDAL keeps of features, which it would write outside of our transactions.
void make_bare(const RecordsPlace& place, const fs::path& file, const Reference& frame) {
  start_gdal();
  const ErrorScope errors;
  // GDAL takes lists of its options without const and leaves them as they are.
  std::string no_counts{"ADD_GPKG_OGR_CONTENTS=NO"};
  std::array<char*, 2> of_file{no_counts.data(), nullptr};
  std::string key{"FID=number"};
  std::array<char*, 2> of_layer{key.data(), nullptr};
  const Dataset made{
      GDALCreate(GDALGetDriverByName("GPKG"), file.c_str(), 0, 0, 0, GDT_Unknown, of_file.data())};
  OGRLayerH layer = made ? GDALDatasetCreateLayer(made.get(), kFieldChecks, frame.get(), wkbPoint,
                                                  of_layer.data())
                         : nullptr;
  if (layer == nullptr || !add_columns(layer)) {
    throw not_made(place, errors.failure().empty() ? "no reason was given" : errors.failure());
  }
}

void sync_folder(const fs::path& folder) {
  const int number = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (number >= 0) {
    // Asked for; no file is lost where it cannot be had.
    (void)::fsync(number);
    (void)::close(number);
  }
}

struct Renaming {
  const fs::path& from;
  const fs::path& to;
};

/// Gives a file its name unless another bears it; 0, or why not.
int name_if_free(const Renaming& both) {
  if (::renameat2(AT_FDCWD, both.from.c_str(), AT_FDCWD, both.to.c_str(), RENAME_NOREPLACE) == 0) {
    return 0;
  }
  if (errno != EINVAL && errno != ENOSYS) {
    return errno;
  }
  // Where the file system cannot do that it may know second names.
  return ::link(both.from.c_str(), both.to.c_str()) == 0 ? 0 : errno;
}

/// Removes what was begun, whatever happens.
class Unfinished {
 public:
  explicit Unfinished(fs::path file) : file_{std::move(file)} {}
  ~Unfinished() { remove_unfinished(file_); }
  Unfinished(const Unfinished&) = delete;
  Unfinished& operator=(const Unfinished&) = delete;

 private:
  fs::path file_;
};

}  // namespace

void make_records(const RecordsPlace& place, const NewRecords& fresh) {
  const Reference frame = reference_from(fresh.frame);
  base::require(frame != nullptr, "the map frame of the records can be understood");
  clear_away(place);
  const std::string name =
      unfinished_stem(place) + std::to_string(::getpid()) + std::string{kEnding};
  const fs::path file = fs::path{place.folder} / name;
  const Unfinished begun{file};
  make_bare(place, file, frame);
  {
    const RecordsDatabase database{
        {.folder = place.folder, .name = name, .patience = place.patience}, Opened::to_write};
    migrate(database.connection(), {.from = 0, .to = fresh.version});
  }
  const fs::path final_place = fs::path{place.folder} / place.name;
  const int why = name_if_free({file, final_place});
  if (why != 0 && why != EEXIST) {
    throw not_made(place, std::generic_category().message(why));
  }
  sync_folder(place.folder);
}

}  // namespace rimehaul::ports::gdal
