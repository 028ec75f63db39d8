// How the slope audit's places, cases and bands are told, alike on the screen and on paper.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "card/audit_report.h"
#include "card/labelled_line.h"

namespace rimehaul::card {

/// "Broadfoot with sled, full, moist"
[[nodiscard]] std::string case_words(const AuditReport& report, std::size_t audited_case);
/// "140 m to 310 m", "at 140 m" where there is a joint.
[[nodiscard]] std::string span_words(const audit::AuditedPlace& place);
/// "forward" or "backward", along the trail as drawn.
[[nodiscard]] std::string_view way_words(trails::Way way);
/// "62 % found, up to 81 % of the limit", "not known: heights of the ground here".
[[nodiscard]] std::string interval_words(const audit::AuditedPlace& place);
/// "12.6 deg (22.4 %) against 11.0 deg (19.4 %)"; empty where there are no such numbers.
[[nodiscard]] std::string numbers_words(const audit::AuditedPlace& place);
/// "0-50 %", "to allowed", "to 100 %", "over 100 %", "closed".
[[nodiscard]] std::string_view band_words(audit::Band band);
/// Key of a band in files: "to_half".
[[nodiscard]] std::string_view key_of(audit::Band band);
/// "FAILED: 132 exceedances on 14 of 20 trails", "PASSED: no exceedance on any of 20 trails".
[[nodiscard]] std::string outcome_words(const AuditReport& report);
/// Whole metres with a thin grouping: "12 345".
[[nodiscard]] std::string metres_words(units::Metres metres);
/// What outranks the program, as running text.
[[nodiscard]] std::string cautions_words();
/// The head of the report, label and text: when, for whom, rigs, loads, snow, weather, allowed.
[[nodiscard]] std::vector<LabelledLine> head_lines(const AuditReport& report);

/// Exceedances that are one for a reader: the same check on the same trail for the same reason,
/// whatever the case and the way.
struct ExceedanceGroup {
  std::size_t trail = 0;
  std::vector<const AuditRow*> rows;
  const AuditRow* worst = nullptr;
  std::size_t cases = 0;
};
/// By trail, and on each trail the worst first.
[[nodiscard]] std::vector<ExceedanceGroup> groups_of(const AuditReport& report);

/// Groups of one check that closes many trails for one reason; the trails' groups in order.
struct AlikeGroups {
  std::vector<const ExceedanceGroup*> groups;
};
/// A reason counts as alike when it closes at least a third of the trails, and more than three.
[[nodiscard]] std::vector<AlikeGroups> alike_groups(const std::vector<ExceedanceGroup>& groups,
                                                    std::size_t trail_count);

}  // namespace rimehaul::card
