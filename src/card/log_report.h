// The log for people: who did what, and whether it is still what was written.
#pragma once

#include <string>
#include <vector>

#include "day/log_entry.h"
#include "units/local_clock.h"

namespace rimehaul::card {

enum class LogAsked { list, verify };

struct LogReport {
  int schema = 1;
  std::string site;
  units::LocalClock local_clock{};
  LogAsked asked = LogAsked::list;
  bool has_records = false;  ///< whether the site has any
  std::vector<day::LogEntry> entries{};
  std::vector<std::string> defects{};  ///< of all that is kept; found when verifying

  /// Whether it was verified and holds.
  [[nodiscard]] bool holds() const {
    return asked == LogAsked::verify && has_records && defects.empty();
  }
};

/// The report as text, no line longer than `columns` (60 or more) except defects, which stand on
/// one line each so that they can be searched.
[[nodiscard]] std::string text_of(const LogReport& report, int columns);

}  // namespace rimehaul::card
