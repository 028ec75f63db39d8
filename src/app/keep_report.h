// A snow report put among the records, with what it says of marks.
#pragma once

#include <cstdint>
#include <optional>

#include "app/frozen_files.h"
#include "snow/snow.h"

namespace rimehaul::app {

/// The number of the report that was read from a file of this digest; nothing: none is kept.
[[nodiscard]] std::optional<std::int64_t> kept_report(const day::Records& records,
                                                      const base::Digest& digest);

/// A report and the file that it was read from.
struct ReportToKeep {
  const snow::SnowReport& report;
  FileToFreeze file;
};

/// Freezes the file and keeps the report and each of its statuses of marks, unless it is kept
/// already. Gives its number. Throws BadInput as freeze does.
std::int64_t keep_report(const ReportToKeep& reported, const day::Done& by, day::Writing& writing);

}  // namespace rimehaul::app
