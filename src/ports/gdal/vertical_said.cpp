#include "ports/gdal/vertical_said.h"

#include <gdal.h>
#include <ogr_srs_api.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <initializer_list>
#include <string_view>

#include "ports/gdal/gdal_guard.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

// Exact by definition (international yard and pound agreement 1959; Mendenhall order 1893).
constexpr double kFoot = 0.3048;
constexpr double kSurveyFoot = 1200.0 / 3937.0;

bool is_one_of(std::string_view word, std::initializer_list<std::string_view> known) {
  return std::ranges::find(known, word) != known.end();
}

std::optional<double> metres_in(std::string word) {
  std::ranges::transform(word, word.begin(), [](unsigned char letter) {
    return static_cast<char>(std::tolower(letter));
  });
  std::ranges::replace(word, '_', ' ');
  if (is_one_of(word, {"m", "metre", "metres", "meter", "meters"})) {
    return 1.0;
  }
  if (is_one_of(word, {"ft", "foot", "feet", "international foot", "international feet"})) {
    return kFoot;
  }
  if (is_one_of(word, {"us-ft", "ft-us", "ftus", "us survey foot", "us survey feet", "foot us",
                       "us feet", "us foot"})) {
    return kSurveyFoot;
  }
  return std::nullopt;
}

base::Fault fault_in(const std::string& shown, Complaint complaint) {
  return {.file = shown,
          .place = "",
          .problem = std::move(complaint.problem),
          .remedy = std::move(complaint.remedy)};
}

/// The vertical part of a compound system, or the ellipsoid of one with three axes.
base::Reading<VerticalSaid> vertical_of_reference(OGRSpatialReferenceH reference,
                                                  const std::string& shown) {
  base::Reading<VerticalSaid> said;
  if (reference == nullptr) {
    return said;
  }
  const ErrorScope errors;
  if (OSRIsCompound(reference) == 0) {
    if (OSRGetAxesCount(reference) == 3) {
      const char* name = OSRGetName(reference);
      said.data.datum = "ellipsoid of " + short_line(name == nullptr ? "an unnamed system" : name);
    }
    return said;
  }
  const char* name = OSRGetAttrValue(reference, "COMPD_CS|VERT_CS", 0);
  said.data.datum = short_line(name == nullptr ? "" : name);
  OGRAxisOrientation up = OAO_Up;
  if (OSRGetAxis(reference, "COMPD_CS|VERT_CS", 0, &up) != nullptr && up != OAO_Up) {
    said.faults.push_back(fault_in(shown, {"its vertical system counts depths, not heights",
                                           "give heights that count upwards"}));
  }
  const double unit = OSRGetTargetLinearUnits(reference, "COMPD_CS|VERT_CS", nullptr);
  if (std::isfinite(unit) && unit > 0) {
    said.data.metres_per_unit = unit;
  }
  return said;
}

}  // namespace

bool agree(TwoUnits units) {
  constexpr double kBetweenTheFeet = 1e-5;
  return std::abs(units.one / units.other - 1.0) <= kBetweenTheFeet;
}

std::string name_of_unit(double metres_per_unit) {
  constexpr double kExact = 1e-9;
  if (std::abs(metres_per_unit - 1.0) <= kExact) {
    return "metres";
  }
  if (std::abs(metres_per_unit - kFoot) <= kExact) {
    return "feet";
  }
  if (std::abs(metres_per_unit - kSurveyFoot) <= kExact) {
    return "US survey feet";
  }
  return "units of " + std::to_string(metres_per_unit) + " m";
}

base::Reading<VerticalSaid> vertical_of(SaidBy said_by, const std::string& shown) {
  base::Reading<VerticalSaid> said = vertical_of_reference(said_by.reference, shown);
  const std::string word = GDALGetRasterUnitType(said_by.band);
  if (word.empty()) {
    return said;
  }
  const std::optional<double> of_band = metres_in(word);
  if (!of_band.has_value()) {
    said.faults.push_back(
        fault_in(shown, {"its heights are in \"" + short_line(word) + "\", which is unknown",
                         "give heights in metres, feet or US survey feet"}));
    return said;
  }
  std::optional<double>& unit = said.data.metres_per_unit;
  if (unit.has_value() && !agree({*unit, *of_band})) {
    said.faults.push_back(
        fault_in(shown, {"its reference system says heights in " + name_of_unit(*unit) +
                             ", its band says " + name_of_unit(*of_band),
                         "find out which is true and correct the file"}));
    return said;
  }
  if (!unit.has_value()) {
    unit = of_band;
  }
  return said;
}

}  // namespace rimehaul::ports::gdal
