#include "app/keep_report.h"

#include <algorithm>
#include <string>
#include <vector>

#include "base/require.h"

namespace rimehaul::app {

std::optional<std::int64_t> kept_report(const day::Records& records, const base::Digest& digest) {
  const std::vector<day::Kept<day::KeptReport>> kept = records.reports();
  const auto same =
      std::ranges::find_if(kept, [&](const auto& report) { return report.thing.digest == digest; });
  return same == kept.end() ? std::nullopt : std::optional{same->thing.number};
}

std::int64_t keep_report(const ReportToKeep& reported, const day::Done& by, day::Writing& writing) {
  const base::Digest& digest = reported.file.input.digest;
  if (const auto number = kept_report(writing, digest)) {
    return *number;
  }
  const snow::SnowReport& said = reported.report;
  base::require(said.observed.has_value(), "a report that is kept says when it was observed");
  freeze(reported.file, writing);
  const day::KeptReport report{.number = writing.next(day::Kind::snow_report),
                               .digest = digest,
                               .observer = said.observer,
                               .observed = *said.observed,
                               .until = said.valid_until,
                               .kept = by};
  writing.add(report,
              {"keep report", "report " + std::to_string(report.number), "by " + report.observer});
  for (const snow::MarkStatus& status : said.weather.site.marks) {
    const day::KeptMark mark{
        .number = writing.next(day::Kind::mark_status), .status = status, .said = by};
    writing.add(mark, {"keep mark", status.mark, status.clear ? "clear" : "not clear"});
  }
  return report.number;
}

}  // namespace rimehaul::app
