#include "day/log_entry.h"

#include <algorithm>
#include <charconv>

#include "day/canonical_fields.h"

namespace rimehaul::day {

namespace {

bool is_decimal(char letter) {
  return letter >= '0' && letter <= '9';
}

/// A hexadecimal digit in lower case; nothing for any other letter.
std::optional<char> hex_digit(char letter) {
  if (is_decimal(letter) || (letter >= 'a' && letter <= 'f')) {
    return letter;
  }
  if (letter >= 'A' && letter <= 'F') {
    return static_cast<char>(letter - 'A' + 'a');
  }
  return std::nullopt;
}

}  // namespace

std::string canonical_text(const LogEntry& entry) {
  CanonicalFields fields{"log entry 1"};
  fields.add(entry.number)
      .add(entry.at)
      .add(entry.account)
      .add(entry.person)
      .add(entry.role)
      .add(entry.act)
      .add(entry.subject)
      .add(entry.detail)
      .add(entry.about)
      .add(entry.previous);
  return fields.text();
}

LogEntry chained(LogEntry entry, const LogHead& before, DigestFunction digest_of) {
  entry.number = before.number + 1;
  entry.previous = before.digest;
  entry.own = digest_of(canonical_text(entry));
  return entry;
}

LogHead head_of(std::span<const LogEntry> entries) {
  return entries.empty() ? LogHead{} : LogHead{entries.back().number, entries.back().own};
}

std::string text_of(const PrintedHead& head) {
  return std::to_string(head.number) + ":" + head.digits;
}

std::string text_of(const LogHead& head) {
  return text_of(PrintedHead{head.number, head.digest.hex().substr(0, kPrintedDigits)});
}

std::optional<PrintedHead> parse_head(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || !std::ranges::all_of(text.substr(0, colon), is_decimal)) {
    return std::nullopt;
  }
  PrintedHead head;
  const char* end = text.data() + colon;
  const auto read = std::from_chars(text.data(), end, head.number);
  if (read.ec != std::errc{} || read.ptr != end) {
    return std::nullopt;
  }
  for (const char letter : text.substr(colon + 1)) {
    const auto digit = hex_digit(letter);
    if (!digit) {
      return std::nullopt;
    }
    head.digits += *digit;
  }
  const bool is_whole =
      head.digits.size() >= kFewestDigits && head.digits.size() <= 2 * base::Digest{}.bytes.size();
  return is_whole ? std::optional{head} : std::nullopt;
}

Witness witness(std::string where, const LogHead& head) {
  return {.where = std::move(where), .head = {head.number, head.digest.hex()}};
}

}  // namespace rimehaul::day
