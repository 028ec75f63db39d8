// How the day board of many rigs is told, alike on the screen and on paper.
#pragma once

#include <string>
#include <vector>

#include "card/day_table.h"
#include "card/labelled_line.h"

namespace rimehaul::card {

/// What the table was made for, and who signed it.
[[nodiscard]] std::vector<LabelledLine> basis_of(const DayTable& table);
/// Whether its rows are trails; else the best ways between stations.
[[nodiscard]] bool is_of_trails(const DayTable& table);
/// In words, the rig and load that all trails are told for; empty where each row tells its own.
[[nodiscard]] std::string rig_of_all(const DayTable& table);
/// What its verdicts mean.
[[nodiscard]] std::vector<LabelledLine> meanings_of(const DayTable& table);
/// "Broadfoot with sled towing Flat Sled, driver level seasoned; bed 40 kg, ...".
[[nodiscard]] std::string rig_words(const DayRow& row);
/// What a named person set beside what was computed; none where nobody did.
[[nodiscard]] std::vector<LabelledLine> by_hand(const DayRow& row);
/// When it may be set out on, and set out for the way back; none where that was not asked.
[[nodiscard]] std::vector<LabelledLine> hours_lines(const DayRow& row, const DayTable& table);
/// "open 62 %", "restricted", "closed".
[[nodiscard]] std::string day_verdict_words(const DayRow& row, std::size_t column);
/// What stands below it, a blank behind: the time it takes where it is open, else the share that
/// binds; empty where that is no matter of numbers.
[[nodiscard]] std::string beside_verdict(const DayRow& row, std::size_t column);
/// Closed by hand, in words, or the cell's own reason.
[[nodiscard]] std::string day_reason(const DayRow& row, std::size_t column);

}  // namespace rimehaul::card
