// What is wrong with the chain of the log, in words.
#include <algorithm>
#include <map>

#include "day/log_entry.h"

namespace rimehaul::day {

namespace {

std::string entry_number(std::int64_t number) {
  return "entry " + std::to_string(number);
}

std::string missing(std::int64_t first, std::int64_t last) {
  return first == last
             ? entry_number(first) + " is missing"
             : "entries " + std::to_string(first) + " to " + std::to_string(last) + " are missing";
}

/// Looks at one entry after the other.
class Chain {
 public:
  Chain(std::span<const LogEntry> entries, DigestFunction digest_of) : digest_of_{digest_of} {
    for (const LogEntry& entry : entries) {
      by_own_.emplace(entry.own, entry.number);
    }
    for (const LogEntry& entry : entries) {
      look_at(entry);
    }
  }

  [[nodiscard]] std::vector<std::string> defects() && { return std::move(defects_); }

 private:
  void look_at(const LogEntry& entry) {
    if (entry.number <= last_.number) {
      defects_.push_back(entry_number(entry.number) + " stands out of order, behind " +
                         entry_number(last_.number));
    } else if (entry.number > last_.number + 1) {
      defects_.push_back(missing(last_.number + 1, entry.number - 1));
    } else if (entry.previous != last_.digest) {
      defects_.push_back(broken_link(entry));
    }
    if (digest_of_(canonical_text(entry)) != entry.own) {
      defects_.push_back(entry_number(entry.number) +
                         " was changed: what it says does not give the hash that it bears");
    }
    last_ = {std::max(last_.number, entry.number), entry.own};
  }

  [[nodiscard]] std::string broken_link(const LogEntry& entry) const {
    const auto follows = by_own_.find(entry.previous);
    if (follows != by_own_.end()) {
      return entry_number(entry.number) + " was moved: by its hash it follows " +
             entry_number(follows->second);
    }
    return entry_number(entry.number) + " does not follow what stands before it: " +
           (last_.number == 0 ? std::string{"the log once began with another entry"}
                              : "that was changed, or an entry between them was taken out");
  }

  DigestFunction digest_of_;
  std::map<base::Digest, std::int64_t> by_own_;
  LogHead last_;
  std::vector<std::string> defects_;
};

/// Nothing when the head is in the log.
std::optional<std::string> against(std::span<const LogEntry> entries, const Witness& held) {
  const std::string said = held.where + " " + text_of(held.head);
  if (held.head.number == 0) {
    const std::string zeros = base::Digest{}.hex();
    return zeros.starts_with(held.head.digits)
               ? std::nullopt
               : std::optional{said + ", but a log of no entries has no such head"};
  }
  const auto entry = std::ranges::find(entries, held.head.number, &LogEntry::number);
  if (entry == entries.end()) {
    const std::int64_t last = head_of(entries).number;
    return held.head.number > last
               ? said + ", but the log ends with " + entry_number(last) + ": its tail was cut off"
               : said + ", but that entry is missing";
  }
  // No more digits than a digest has, and a few at least, or anything would do.
  const bool holds =
      held.head.digits.size() >= kFewestDigits && entry->own.hex().starts_with(held.head.digits);
  return holds ? std::nullopt
               : std::optional{said + ", but " + entry_number(entry->number) +
                               " bears another hash: the log was written anew"};
}

}  // namespace

std::vector<std::string> chain_defects(std::span<const LogEntry> entries,
                                       std::span<const Witness> witnesses,
                                       DigestFunction digest_of) {
  std::vector<std::string> defects = Chain{entries, digest_of}.defects();
  for (const Witness& held : witnesses) {
    if (auto defect = against(entries, held)) {
      defects.push_back(std::move(*defect));
    }
  }
  return defects;
}

}  // namespace rimehaul::day
