// The slope audit as canonical JSON, and its exceedances as GeoJSON.
#pragma once

#include <string>
#include <vector>

#include "card/audit_report.h"
#include "geo/point.h"

namespace rimehaul::ports::json {

/// Canonical, as canonical_json of a card is.
[[nodiscard]] std::string audit_json(const card::AuditReport& report);

/// A feature collection (RFC 7946) in WGS 84, one feature for each exceedance in order. `lines` has
/// the line of each in driving order; one of a single point becomes a Point. Canonical too.
[[nodiscard]] std::string audit_geojson(const card::AuditReport& report,
                                        const std::vector<std::vector<geo::GlobePoint>>& lines);

}  // namespace rimehaul::ports::json
