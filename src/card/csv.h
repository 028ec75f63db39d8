// Tables as comma-separated values (RFC 4180), for spreadsheets and scripts.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace rimehaul::card {

/// A name or sentence as a cell. One that a spreadsheet would take for a formula, because it begins
/// with = + - @ or a control character, gets an apostrophe in front. Numbers go in as they are.
[[nodiscard]] std::string csv_text(std::string_view text);

/// One record with its line end (CR LF). Cells that hold a comma, a quote or a line break are
/// quoted, and quotes in them doubled (RFC 4180, section 2).
[[nodiscard]] std::string csv_record(const std::vector<std::string>& cells);

}  // namespace rimehaul::card
