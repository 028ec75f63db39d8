// What the limits of a rig are said to be, alike on the screen and on paper.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "card/labelled_line.h"
#include "card/limits_report.h"

namespace rimehaul::card {

/// "13.2 deg (23.4 %)", rounded down.
[[nodiscard]] std::string limit_words(const passage::Limit& limit);
/// What binds there: "climb traction"; "none up to here" at the scan's end.
[[nodiscard]] std::string binding_words(const passage::Limit& limit);
/// "closed: towing in wet snow, refused by the site's rules: no trailer in snow wetter than wet"
[[nodiscard]] std::string closed_words(const passage::Finding& finding);
/// "towing Flat Sled" or "without a trailer".
[[nodiscard]] std::string towing_words(std::string_view towing);
[[nodiscard]] std::string load_case_words(LoadCase load_case);

/// What the limits are limits of, and how to use them; told with every table and drawing.
[[nodiscard]] std::vector<LabelledLine> basis_of(const LimitsReport& report);
/// One line that what is printed is outranked.
[[nodiscard]] std::string_view outranked();

}  // namespace rimehaul::card
