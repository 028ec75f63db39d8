// The log, and what became of a backup, as canonical JSON.
#pragma once

#include <string>

#include "card/log_report.h"

namespace rimehaul::ports::json {

[[nodiscard]] std::string log_json(const card::LogReport& report);

/// A copy of the records that was made and verified; no file: there was nothing to copy.
struct BackupMade {
  std::string site;
  std::string file;
  day::LogHead head{};
};
[[nodiscard]] std::string backup_json(const BackupMade& backup);

}  // namespace rimehaul::ports::json
