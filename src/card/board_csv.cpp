// The day board as a table for a spreadsheet.
#include <cmath>

#include "base/joined.h"
#include "card/board_report.h"
#include "card/csv.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

using units::Round;

std::string number(double value, int decimals, Round round) {
  return std::isfinite(value) ? units::text_of(value, decimals, round) : "";
}

std::vector<std::string> opens_by(const BoardRow& row) {
  std::vector<std::string> loads = words::opens_with_loads(row.loads);
  for (std::string& load : loads) {
    load += row.and_decision ? " and a decision" : "";
  }
  return loads;
}

std::vector<std::string> row_of(const BoardReport& report, const BoardRow& row) {
  constexpr int kShareDecimals = 4;
  const bool open = row.verdict == passage::Verdict::open;
  const auto if_open = [open](double value, int decimals) {
    return open ? number(value, decimals, Round::up) : "";
  };
  const auto& binding = row.binding;
  return {csv_text(report.rig),
          number(report.load.bed.value(), 0, Round::nearest),
          report.trailer.empty() ? "" : number(report.load.towed.value(), 0, Round::nearest),
          snow::key_of(row.snow.wetness),
          snow::key_of(row.snow.surface),
          csv_text(row.from),
          csv_text(row.to),
          passage::words_for(row.verdict),
          if_open(row.worst_share, kShareDecimals),
          number(report.allowed_share, kShareDecimals, Round::down),
          binding ? std::string{passage::facts_of(binding->check).key} : "",
          binding && binding->share ? number(*binding->share, kShareDecimals, Round::up) : "",
          csv_text(reason_of(row)),
          csv_text(binding ? words::outcome(*binding) : row.why),
          if_open(row.time.value(), 0),
          if_open(row.length.value(), 0),
          if_open(row.fuel.value(), 1),
          csv_text(base::joined(opens_by(row), "; ")),
          csv_text(row.decision),
          csv_text(base::joined(row.way, "; "))};
}

}  // namespace

std::string board_csv(const BoardReport& report) {
  std::string table = csv_record(
      {"rig",     "bed_kg",      "towed_kg",      "snow",     "surface",     "from",   "to",
       "verdict", "worst_share", "share_allowed", "check",    "check_share", "reason", "found",
       "time_s",  "length_m",    "fuel_l",        "opens_by", "decision",    "way"});
  for (const BoardRow& row : report.rows) {
    table += csv_record(row_of(report, row));
  }
  return table;
}

}  // namespace rimehaul::card
