// Reference systems and the transformations between them, the one way every reader uses.
#pragma once

#include <string>
#include <vector>

#include "geo/point.h"
#include "ports/gdal/gdal_guard.h"

namespace rimehaul::ports::gdal {

/// A place in some reference system, in the traditional order: east or longitude first.
struct PlainPoint {
  double x = 0.0;
  double y = 0.0;
};

/// From an authority's code ("EPSG:32605") or well-known text, horizontal part only, east or
/// longitude first. Null when it cannot be understood, or describes a system of one kind
/// (geographic, say) and bears the code of another kind.
[[nodiscard]] Reference reference_from(const std::string& definition);
/// The same of a handle that GDAL or OGR owns (may be null: then null).
[[nodiscard]] Reference horizontal_part(void* reference);
struct TwoReferences {
  const Reference& from;
  const Reference& to;
};

/// WGS 84 longitude, latitude.
[[nodiscard]] Reference globe_reference();
[[nodiscard]] bool are_same(const TwoReferences& two);
/// Its name for people; "" when it has none.
[[nodiscard]] std::string name_of(const Reference& reference);
/// WKT2:2019 on one line.
[[nodiscard]] std::string text_of(const Reference& reference);

/// The operation from one system to another with ballpark operations forbidden; null when there is
/// none or it needs a grid that is not installed.
[[nodiscard]] Transformation transformation_between(const TwoReferences& two);

/// Transforms all points in place, two dimensions only. Points that fail become NaN.
void transform(const Transformation& transformation, std::vector<PlainPoint>& points);

}  // namespace rimehaul::ports::gdal
