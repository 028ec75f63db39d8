// Angles measured by hand beside what the heights say, as plain data and for people.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "audit/field_check.h"
#include "card/made_from.h"
#include "day/records.h"

namespace rimehaul::card {

/// One check kept, and what the heights make of it now.
struct FieldCheckRow {
  day::FieldCheck check;
  audit::FieldComparison comparison;
};

enum class FieldChecksAsked { keep, list };

struct FieldCheckReport {
  int schema = 1;
  FieldChecksAsked asked = FieldChecksAsked::list;
  std::string site;
  std::string map_frame;
  std::string trail{};                   ///< of the check that was just kept; empty: no matter
  std::optional<units::Metres> along{};  ///< it, as drawn
  std::string rig;                       ///< whose carrier's tread is looked at; empty: none there
  double confidence_k = 0.0;
  units::LocalClock local_clock{};
  std::vector<FieldCheckRow> rows;  ///< the one that was just kept, or all
  audit::FieldSummary summary{};    ///< of these
  MadeFrom made_from{};
};

/// The report as text, no line longer than `columns` (80 or more). Where no check is kept, one line
/// that says so.
[[nodiscard]] std::string text_of(const FieldCheckReport& report, int columns);

/// Every check as a row, numbers with three decimals; what is not known is empty.
[[nodiscard]] std::string field_checks_csv(const FieldCheckReport& report);

/// "within", "OUTSIDE" or "unknown"
[[nodiscard]] const char* word_for(audit::Within within);

/// That no check changes what is reckoned with, and what would.
[[nodiscard]] std::string changes_nothing();

}  // namespace rimehaul::card
