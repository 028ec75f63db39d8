#include "ports/gdal/map_transform.h"

#include <ogr_srs_api.h>

#include <algorithm>
#include <array>
#include <limits>
#include <utility>

#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

// "EPSG:32605" and its like. Anything else goes to the well-known text parser alone, because the
// general one would follow file names and web addresses.
bool is_code(const std::string& definition) {
  const std::size_t colon = definition.find(':');
  if (colon == std::string::npos || colon == 0 || colon + 1 == definition.size()) {
    return false;
  }
  return std::ranges::all_of(definition, [](char letter) {
    return letter == ':' || letter == '_' || letter == '+' || (letter >= '0' && letter <= '9') ||
           (letter >= 'A' && letter <= 'Z') || (letter >= 'a' && letter <= 'z');
  });
}

enum class Kind { projected, geographic, geocentric, other };

Kind kind_of(OGRSpatialReferenceH reference) {
  if (OSRIsProjected(reference) != 0) {
    return Kind::projected;
  }
  if (OSRIsGeographic(reference) != 0) {
    return Kind::geographic;
  }
  return OSRIsGeocentric(reference) != 0 ? Kind::geocentric : Kind::other;
}

// PROJ before 9.4 believes the code and crashes where it looks for the kind that is described (its
// pull request 3945 mends one such place).
bool is_named_rightly(OGRSpatialReferenceH reference) {
  const char* authority = OSRGetAuthorityName(reference, nullptr);
  const char* code = OSRGetAuthorityCode(reference, nullptr);
  if (authority == nullptr || code == nullptr) {
    return true;
  }
  const Reference named{OSRNewSpatialReference(nullptr)};
  const std::string name = std::string{authority} + ":" + code;
  const bool is_known =
      is_code(name) && OSRSetFromUserInput(named.get(), name.c_str()) == OGRERR_NONE;
  return !is_known || kind_of(named.get()) == kind_of(reference);
}

// Only horizontal parts are compared and transformed: a vertical part would drag in height
// operations, which lose the horizontal datum shift when their grid is missing.
Reference made_horizontal(Reference reference) {
  if (reference) {
    OSRDemoteTo2D(reference.get(), nullptr);
    OSRStripVertical(reference.get());
    OSRSetAxisMappingStrategy(reference.get(), OAMS_TRADITIONAL_GIS_ORDER);
  }
  return reference && is_named_rightly(reference.get()) ? std::move(reference) : nullptr;
}

}  // namespace

Reference reference_from(const std::string& definition) {
  start_gdal();
  const ErrorScope errors;
  Reference reference{OSRNewSpatialReference(nullptr)};
  OGRErr failed = OGRERR_NONE;
  if (is_code(definition)) {
    failed = OSRSetFromUserInput(reference.get(), definition.c_str());
  } else {
    // OGR moves the pointer along the text it reads and writes nothing.
    std::string text = definition;
    char* rest = text.data();
    failed = OSRImportFromWkt(reference.get(), &rest);
  }
  return failed == OGRERR_NONE ? made_horizontal(std::move(reference)) : nullptr;
}

Reference horizontal_part(void* reference) {
  if (reference == nullptr) {
    return nullptr;
  }
  const ErrorScope errors;
  return made_horizontal(Reference{OSRClone(reference)});
}

Reference globe_reference() {
  return reference_from("EPSG:4326");
}

bool are_same(const TwoReferences& two) {
  const ErrorScope errors;
  return two.from && two.to && OSRIsSame(two.from.get(), two.to.get()) != 0;
}

std::string name_of(const Reference& reference) {
  const char* name = reference ? OSRGetName(reference.get()) : nullptr;
  return short_line(name == nullptr ? "" : name);
}

std::string text_of(const Reference& reference) {
  if (!reference) {
    return "";
  }
  const ErrorScope errors;
  constexpr std::array<const char*, 3> kForm{"FORMAT=WKT2_2019", "MULTILINE=NO", nullptr};
  char* raw = nullptr;
  const OGRErr failed = OSRExportToWktEx(reference.get(), &raw, kForm.data());
  const Text text{raw};
  return failed != OGRERR_NONE || !text ? "" : text.get();
}

Transformation transformation_between(const TwoReferences& two) {
  if (!two.from || !two.to) {
    return nullptr;
  }
  const ErrorScope errors;
  struct FreeOptions {
    void operator()(OGRCoordinateTransformationOptions* options) const {
      OCTDestroyCoordinateTransformationOptions(options);
    }
  };
  const std::unique_ptr<OGRCoordinateTransformationOptions, FreeOptions> options{
      OCTNewCoordinateTransformationOptions()};
  OCTCoordinateTransformationOptionsSetBallparkAllowed(options.get(), 0);
  return Transformation{
      OCTNewCoordinateTransformationEx(two.from.get(), two.to.get(), options.get())};
}

void transform(const Transformation& transformation, std::vector<PlainPoint>& points) {
  const ErrorScope errors;
  std::vector<double> x(points.size());
  std::vector<double> y(points.size());
  std::ranges::transform(points, x.begin(), [](PlainPoint point) { return point.x; });
  std::ranges::transform(points, y.begin(), [](PlainPoint point) { return point.y; });
  std::vector<int> worked(points.size(), 0);
  OCTTransform4D(transformation.get(), static_cast<int>(points.size()), x.data(), y.data(), nullptr,
                 nullptr, worked.data());
  constexpr double kLost = std::numeric_limits<double>::quiet_NaN();
  for (std::size_t index = 0; index < points.size(); ++index) {
    points[index] = worked[index] != 0 ? PlainPoint{x[index], y[index]} : PlainPoint{kLost, kLost};
  }
}

}  // namespace rimehaul::ports::gdal
