#include "card/audit_csv.h"

#include <cmath>
#include <optional>

#include "card/audit_words.h"
#include "card/csv.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

using units::Round;

namespace {

constexpr int kShareDecimals = 4;
constexpr int kSlopeDecimals = 3;

std::string number(double value, int decimals, Round round) {
  return std::isfinite(value) ? units::text_of(value, decimals, round) : "";
}

std::string share_cell(const std::optional<double>& share, Round round) {
  return share ? number(*share, kShareDecimals, round) : "";
}

/// A tangent in degrees; empty for any other unit.
std::string degrees_cell(const units::Amount& amount, Round round) {
  if (amount.unit != units::Unit::tangent) {
    return "";
  }
  return number(units::Slope::from_ratio(amount.value).degrees(), kSlopeDecimals, round);
}

std::string_view unit_cell(const passage::Finding& finding) {
  if (!std::isfinite(finding.demand.value)) {
    return "";
  }
  return finding.demand.unit == units::Unit::tangent ? "tangent"
                                                     : units::sign_of(finding.demand.unit);
}

std::vector<std::string> row_of(const AuditReport& report, const AuditRow& row) {
  const AuditedCase& one = report.cases.at(row.audited_case);
  const AuditedRig& rig = report.rigs.at(one.rig);
  const audit::AuditedPlace& place = row.place;
  const passage::Finding& finding = place.finding;
  const passage::CheckFacts& facts = passage::facts_of(finding.check);
  constexpr int kMetres = 1;
  constexpr int kWhole = 0;
  return {csv_text(rig.name),
          csv_text(one.load_name),
          number(one.load.bed.value(), kWhole, Round::nearest),
          rig.trailer.empty() ? "" : number(one.load.towed.value(), kWhole, Round::nearest),
          snow::key_of(one.snow.wetness),
          snow::key_of(one.snow.surface),
          csv_text(report.trails.at(place.trail).name),
          std::string{way_words(place.way)},
          place.on == audit::On::joint ? "joint" : "trail",
          number(place.span.from.value(), kMetres, Round::nearest),
          number(place.span.to.value(), kMetres, Round::nearest),
          number(place.at.value(), kMetres, Round::nearest),
          number(place.place.east.value(), kMetres, Round::nearest),
          number(place.place.north.value(), kMetres, Round::nearest),
          std::string{facts.key},
          std::string{words::stand(place.stand)},
          csv_text(finding.missing + finding.refused),
          share_cell(place.found_share, Round::up),
          share_cell(finding.share, Round::up),
          number(rig.allowed_share, kShareDecimals, Round::down),
          number(finding.demand.value, kShareDecimals, Round::up),
          number(finding.capacity.value, kShareDecimals, Round::down),
          std::string{unit_cell(finding)},
          degrees_cell(finding.demand, Round::up),
          degrees_cell(finding.capacity, Round::down),
          csv_text(finding.formula.empty() ? facts.formula : finding.formula),
          csv_text(facts.source),
          std::string{facts.page}};
}

}  // namespace

std::string audit_csv(const AuditReport& report) {
  std::string table =
      csv_record({"rig",          "load",          "bed_kg", "towed_kg", "snow",   "surface",
                  "trail",        "direction",     "on",     "from_m",   "to_m",   "at_m",
                  "east_m",       "north_m",       "check",  "verdict",  "reason", "share_found",
                  "share_up_to",  "share_allowed", "demand", "capacity", "unit",   "demand_deg",
                  "capacity_deg", "formula",       "source", "page"});
  for (const AuditRow& row : report.exceedances) {
    table += csv_record(row_of(report, row));
  }
  return table;
}

}  // namespace rimehaul::card
