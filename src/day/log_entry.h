// The log of who did what: each entry hashes the one before, so that no entry can be changed, taken
// out or moved without another hash at the head.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/digest.h"
#include "units/clock.h"

namespace rimehaul::day {

/// SHA-256 of bytes; computed by a port.
using DigestFunction = base::Digest (*)(std::string_view bytes);

/// One thing that was done. All texts are UTF-8 on one line.
struct LogEntry {
  std::int64_t number = 0;  ///< from 1, without gaps
  units::Instant at;
  std::string account;    ///< of the machine it was done on
  std::string person;     ///< as they gave their name
  std::string role;       ///< as they gave it; may be empty
  std::string act;        ///< "sign", "override", ...
  std::string subject;    ///< what it concerns: "board 4"
  std::string detail;     ///< may be empty
  base::Digest about;     ///< of the whole of what it concerns; zeros where there is no such thing
  base::Digest previous;  ///< own digest of the entry before; zeros in the first
  base::Digest own;       ///< of canonical_text

  friend bool operator==(const LogEntry&, const LogEntry&) = default;
};

/// All of an entry but `own`, as the bytes that are hashed: every field in the order above, each as
/// its length in bytes, a colon, its bytes and a line feed; numbers in decimal, moments as RFC
/// 3339, digests in hexadecimal. The first field names the kind and its version.
[[nodiscard]] std::string canonical_text(const LogEntry& entry);

/// The last entry of a log: what is printed on boards and cards. An empty log ends with 0 and
/// zeros.
struct LogHead {
  std::int64_t number = 0;
  base::Digest digest;

  friend bool operator==(const LogHead&, const LogHead&) = default;
};

/// The entry with its number, the hash of the one before and its own.
[[nodiscard]] LogEntry chained(LogEntry entry, const LogHead& before, DigestFunction digest_of);
[[nodiscard]] LogHead head_of(std::span<const LogEntry> entries);

/// A head as it stands on paper: the entry's number and the first digits of its digest.
struct PrintedHead {
  std::int64_t number = 0;
  std::string digits;  ///< 16 to 64, lower-case hexadecimal
};

/// Digits printed: 80 bits.
inline constexpr std::size_t kPrintedDigits = 20;
/// The fewest that are taken for a head.
inline constexpr std::size_t kFewestDigits = 16;

/// "17:0123456789abcdef0123"
[[nodiscard]] std::string text_of(const LogHead& head);
[[nodiscard]] std::string text_of(const PrintedHead& head);
/// Reads such a text; digits may be upper case. Nothing when it is none.
[[nodiscard]] std::optional<PrintedHead> parse_head(std::string_view text);

/// A head that somebody holds against the log.
struct Witness {
  std::string where;  ///< "board 3 was signed with", "the paper says"
  PrintedHead head;
};
[[nodiscard]] Witness witness(std::string where, const LogHead& head);

/// Everything wrong with a log, a line each: entries changed, missing, moved, and heads that are
/// not in it. None: it holds, as far as the witnesses reach. `entries` in the order of the file.
[[nodiscard]] std::vector<std::string> chain_defects(std::span<const LogEntry> entries,
                                                     std::span<const Witness> witnesses,
                                                     DigestFunction digest_of);

}  // namespace rimehaul::day
