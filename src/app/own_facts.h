// What one's own files say of themselves, as far as a new site folder needs it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "ports/gdal/height_raster.h"
#include "trails/trail.h"

namespace rimehaul::app {

/// Names of files in the folder, as they were taken there.
struct OwnNames {
  std::vector<std::string> heights;
  std::string trails;
  std::string stations;  ///< empty: none
};

/// A column that some trails leave out.
struct MissingColumn {
  std::string name;
  std::size_t trails = 0;
};

struct OwnFacts {
  ports::gdal::HeightRasterFacts heights;
  std::vector<std::string> trails;     ///< names
  std::vector<MissingColumn> missing;  ///< in the order of the format's table
  std::vector<std::string> stations;   ///< names
};

/// Opens heights with metres as a stand-in where neither the request nor the files say a unit, so
/// that everything else comes to light.
[[nodiscard]] base::Reading<ports::gdal::OpenedHeights> open_whatever_the_unit(
    ports::gdal::HeightRasterRequest request);

/// Reads the files in a folder. Throws UnfitInput with all faults when the heights cannot be used
/// whatever is still said of them, BadInput when trails or stations cannot be read.
[[nodiscard]] OwnFacts own_facts(const std::string& folder, const OwnNames& names);

/// The facts in words.
[[nodiscard]] std::vector<std::string> facts_in_words(const OwnFacts& facts);

}  // namespace rimehaul::app
