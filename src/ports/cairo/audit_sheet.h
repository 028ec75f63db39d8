// The slope audit's printed summary: totals, the tightest places, sources, and maps of shares.
#pragma once

#include <vector>

#include "card/audit_report.h"
#include "card/map_view.h"
#include "card/printed.h"

namespace rimehaul::ports::cairo {

/// A4 upright, as many pages as it takes; `maps` has the map of each of the report's maps in order,
/// made for kAuditMapPaper.
[[nodiscard]] card::Printed draw_audit(const card::AuditReport& report,
                                       const std::vector<card::MapView>& maps);

inline constexpr card::MapPaper kAuditMapPaper{units::Metres{0.182}, units::Metres{0.186},
                                               card::PaperUse::height_needed};

}  // namespace rimehaul::ports::cairo
