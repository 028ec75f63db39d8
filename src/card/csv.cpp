#include "card/csv.h"

namespace rimehaul::card {

std::string csv_text(std::string_view text) {
  constexpr std::string_view kBeginsFormula = "=+-@";
  const bool risky =
      !text.empty() && (kBeginsFormula.find(text.front()) != std::string_view::npos ||
                        static_cast<unsigned char>(text.front()) < 0x20U);
  std::string cell{risky ? "'" : ""};
  cell += text;
  return cell;
}

std::string csv_record(const std::vector<std::string>& cells) {
  std::string record;
  bool first = true;
  for (const std::string& cell : cells) {
    record += first ? "" : ",";
    first = false;
    if (cell.find_first_of(",\"\r\n") == std::string::npos) {
      record += cell;
      continue;
    }
    record += '"';
    for (const char letter : cell) {
      record += letter;
      if (letter == '"') {
        record += '"';
      }
    }
    record += '"';
  }
  record += "\r\n";
  return record;
}

}  // namespace rimehaul::card
