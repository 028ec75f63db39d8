// The slope audit's report as plain data: what breaks a limit, where, by how much, and for whom.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "audit/slope_audit.h"
#include "card/map_view.h"
#include "card/route_card.h"
#include "units/local_clock.h"

namespace rimehaul::card {

/// A rig that was audited.
struct AuditedRig {
  std::string name;
  std::string carrier;
  std::string trailer;  ///< empty: none
  std::string driver_level;
  double allowed_share = 0.0;
  std::optional<units::Slope> tolerance;  ///< k sigma and sub-cell; nothing: not declared
  std::vector<std::string> sources;       ///< of its ratings
};

/// One rig as loaded in one snow: a row of the totals.
struct AuditedCase {
  std::size_t rig = 0;    ///< index into AuditReport::rigs
  std::string load_name;  ///< "full", "empty", "as given"
  rig::Load load;
  snow::SnowState snow;
  audit::BandLengths lengths;
  std::size_t exceedances = 0;
};

/// A place and the case that it was found in.
struct AuditRow {
  std::size_t audited_case = 0;  ///< index into AuditReport::cases
  audit::AuditedPlace place;
};

struct AuditedTrail {
  std::string name;
  geo::Polyline line;
};

/// A stretch of a map, as it comes out driven the worse way.
struct MapStretch {
  std::size_t trail = 0;
  geo::Span span{};
  audit::Band band = audit::Band::closed;
  std::optional<double> share;
};

/// The shares along all trails in one case.
struct AuditMap {
  std::size_t audited_case = 0;
  std::vector<MapStretch> stretches;  ///< of each trail in order, without a gap
};

struct AuditReport {
  int schema = 1;
  std::string site;
  std::string map_frame;
  std::string vertical_datum;
  MadeFrom made_from;
  units::Instant when;  ///< that it was judged for
  units::LocalClock local_clock{};
  std::string for_whom;  ///< empty: nobody was named
  snow::Told snow_told_by;
  snow::DayWeather weather;
  double confidence_k = 0.0;
  std::vector<AuditedRig> rigs;
  std::vector<std::string> loads;  ///< what each load name means
  std::vector<AuditedCase> cases;
  std::vector<AuditedTrail> trails;
  std::vector<AuditRow> exceedances;  ///< by case, then trail, then way, then chainage
  std::vector<AuditRow> tightest;     ///< of all that is open, the largest share first
  std::vector<AuditMap> maps;         ///< one for each rig: its case with most metres closed
  std::vector<std::string> estimates;
  std::vector<std::string> heights_notes;

  [[nodiscard]] bool failed() const { return !exceedances.empty(); }
};

/// All trails of one case, audited one by one.
struct AuditedTrails {
  std::size_t audited_case = 0;
  std::vector<audit::TrailAudit> audits;
};

/// Adds what was found in the cases of one rig, and the map of its worst case.
void add_cases(const std::vector<AuditedTrails>& found, AuditReport& report);

/// The ways of a map, for map_of.
[[nodiscard]] std::vector<MapWay> ways_of(const AuditMap& map, const AuditReport& report);

/// The report as text, no line longer than `columns` (78 or more).
[[nodiscard]] std::string text_of(const AuditReport& report, int columns);

}  // namespace rimehaul::card
