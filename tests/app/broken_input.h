// One broken input and the one line that a person gets for it; the tables of them are beside this.
#pragma once

#include <doctest/doctest.h>
#include <unistd.h>

#include <functional>
#include <string>
#include <vector>

#include "app/desk.h"
#include "base/fault.h"

namespace rimehaul::testing {

/// Prepares the copy of the tiny site that the command will meet.
using Break = std::function<void(const TinySite&)>;

/// The line wanted, in its parts: "file: place: problem; remedy". In any of them the word "FOLDER"
/// stands for the site's folder, and "line N" for any line: the readers' own tests count lines.
struct Said {
  std::string file;
  std::string place;
  std::string problem;
  std::string remedy;
};

/// A fault of a site's file. `route` must end with 3 and say this line alone; `check` must list it
/// as the one fault of the site, and end with 1 (with 3 where site.toml itself cannot be read).
struct BrokenFile {
  std::string what;  ///< in words
  Break make;
  Said said;
};

/// A command that cannot be followed: it says this line alone, and ends so.
struct BrokenCommand {
  std::string what;
  std::vector<std::string> words;  ///< "FOLDER" begins every path of the site and of its neighbours
  app::Status status = app::Status::wrong_usage;
  Said said;
  Break make = [](const TinySite&) {};
};

/// Replaces the first of `change.from` in a file of the site, which must be there.
inline Break changed(const std::string& file, const TinySite::Change& change) {
  return [file, change](const TinySite& site) { site.change(file, change); };
}

inline Break written(const std::string& file, const std::string& text) {
  return [file, text](const TinySite& site) { site.write(file, text); };
}

inline Break removed(const std::string& file) {
  return [file](const TinySite& site) { site.remove(file); };
}

/// Whoever may read everything is nobody while this lives.
class AsNobody {
 public:
  AsNobody() : may_all_{::geteuid() == 0} { become(kNobody); }
  ~AsNobody() { become(0); }
  AsNobody(const AsNobody&) = delete;
  AsNobody& operator=(const AsNobody&) = delete;

 private:
  static constexpr uid_t kNobody = 65534;

  void become(uid_t user) const {
    if (may_all_) {
      REQUIRE(::seteuid(user) == 0);
    }
  }

  bool may_all_;
};

// What the readers say of many a file.
inline constexpr const char* kCorrectToml =
    "correct the TOML there: one key = value to a line, text in quotes";
inline constexpr const char* kNoLine =
    "is empty, longer than 200 bytes, or holds control characters";
inline constexpr const char* kNoRaster = "this is no raster of a known kind or it is damaged";
inline constexpr const char* kGiveRaster =
    "give GeoTIFF, GeoPackage, ASCII grid, USGS DEM or SRTM HGT";
inline constexpr const char* kNoLayer = "this is no vector file of a known kind or it is damaged";
inline constexpr const char* kGiveLayer =
    "give GeoPackage, GeoJSON, GPX, KML, Shapefile or FlatGeobuf";
inline constexpr const char* kLeadsOut = "put the file into the folder and name it from there";

std::vector<BrokenFile> broken_site_files();
std::vector<BrokenFile> broken_rigs();
std::vector<BrokenFile> broken_rules_and_snow();
std::vector<BrokenFile> broken_rasters();
std::vector<BrokenFile> broken_trails();
std::vector<BrokenFile> broken_places();
std::vector<BrokenFile> broken_names();
/// To be read by somebody who may not.
std::vector<BrokenFile> unreadable_files();
std::vector<BrokenCommand> broken_options();
std::vector<BrokenCommand> broken_questions();
std::vector<BrokenCommand> broken_words();

}  // namespace rimehaul::testing
