// Lines of a route card that stand alike on the screen and on paper.
#pragma once

#include <string>
#include <string_view>

#include "card/labelled_line.h"
#include "card/route_card.h"

namespace rimehaul::card {

/// "OPEN"
[[nodiscard]] std::string verdict_word(passage::Verdict verdict);
/// The leg whose share is the largest, the first of equals. Requires a leg.
[[nodiscard]] const CardLeg& tightest_leg(const RouteCard& card);
/// "at most 61 % of a limit (carrier side slip, leg 3); allowed here: 70 %": the leg whose share is
/// the largest, the first of equals. Requires a leg.
[[nodiscard]] std::string verdict_line(const RouteCard& card);
[[nodiscard]] std::string rig_line(const RouteCard& card);
[[nodiscard]] std::string load_line(const RouteCard& card);
/// "2, of Supper run, to N. Example; from board 3, signed by P. Example (planner); log 17:01..."
[[nodiscard]] std::string issue_line(const CardIssue& issue);
/// Local times of leaving and, about, of arriving.
[[nodiscard]] std::string leave_line(const RouteCard& card);
/// When to set out (departure_lines.h); none where it was not asked for.
[[nodiscard]] std::vector<LabelledLine> departure_lines_of(const RouteCard& card);
[[nodiscard]] std::string way_line(const RouteCard& card);
[[nodiscard]] std::string snow_line(const RouteCard& card);

/// "carrier side slip, 42 % of the limit at 417 m"
[[nodiscard]] std::string binding_line(const CardLeg& leg);
/// "turn-round in 467 m (Sledge Shed); refuge: none ahead on this route"
[[nodiscard]] std::string ahead_line(const CardLeg& leg);
/// "from 0 m to 185 m: speed limit Cable Yard: at most 10 km/h"
[[nodiscard]] std::string notice_line(const Notice& notice, const CardLeg& leg);

}  // namespace rimehaul::card
