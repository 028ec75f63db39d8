// site.toml: what a site is called, where its files lie, and what its heights may be trusted for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/fault.h"
#include "terrain/error.h"

namespace rimehaul::ports::toml {

enum class HeightUnit { metres, feet, us_survey_feet };

/// What site.toml says of the heights.
struct HeightsDeclared {
  /// Where the heights lie, relative to the site's folder; the one path that may lead outside it
  /// ("../../dem-samples"), because rasters are often kept for many sites. "" is the site's folder.
  std::string folder;
  std::vector<std::string> files;             ///< relative to that folder; several are a mosaic
  std::optional<std::string> vertical_datum;  ///< for people; needed when the files do not say
  std::optional<HeightUnit> unit;             ///< must agree with the files where they say one
  bool unit_is_unclear = false;               ///< a unit is given that is none
  terrain::HeightTrust trust;                 ///< with a fault in it: no error declared, so closed
  std::vector<std::string> error_sources;     ///< of each error of trust, for cards
  std::string sub_cell_source;                ///< of the sub-cell term of trust, for cards
  std::string source;                         ///< who measured, for cards
  std::string date;                           ///< when, for cards
  units::Metres lowest{-500};                 ///< plausible range: outside it is a void
  units::Metres highest{9000};
};

/// What the site's own record has shown of how its snow softens.
struct SofteningMeasured {
  double melt = 1.0;   ///< factor on the melt
  units::Seconds off;  ///< how far off a change may be
  std::string source;
};

struct SiteFile {
  std::string folder;  ///< as given
  std::string name;
  std::optional<std::string> map_frame;  ///< "EPSG:32605"; none: that of the heights
  HeightsDeclared heights;
  std::vector<std::string> trails;
  std::vector<std::string> stations;
  std::vector<std::string> zones;
  std::vector<std::string> marks;
  std::string rigs = "rigs.toml";
  std::string rules = "rules.toml";
  std::string snow;         ///< today's report; empty: none
  std::string people;       ///< who decides; empty: nobody
  std::string routes;       ///< kept under names; empty: none
  units::Metres snap{2.0};  ///< ends nearer than this to another trail join it
  /// Local time: one of the two is given.
  std::optional<int> utc_offset_minutes;
  std::optional<std::string> time_zone;        ///< a name of the IANA time zone database
  std::optional<SofteningMeasured> softening;  ///< none: as nobody has measured
};

/// Reads FOLDER/site.toml. Throws BadInput only when there is no such folder, or when the file
/// cannot be read, is no TOML or of a newer schema.
[[nodiscard]] base::Reading<SiteFile> read_site_file(const std::string& folder);

}  // namespace rimehaul::ports::toml
