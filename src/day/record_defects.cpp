// Whether everything kept is what the log says of it.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "day/record_book.h"

namespace rimehaul::day {

namespace {

struct Noun {
  const char* one;
};

class Audit {
 public:
  Audit(const Records& records, DigestFunction digest_of)
      : digest_of_{digest_of}, entries_{records.log()} {
    for (const LogEntry& entry : entries_) {
      by_number_.emplace(entry.number, &entry);
    }
  }

  void hold_chain(const std::vector<Witness>& witnesses) {
    std::ranges::move(chain_defects(entries_, witnesses, digest_of_), std::back_inserter(defects_));
  }

  /// Things of one kind: numbered without gaps, each told by an entry that bears its digest.
  template <class Thing>
  void hold(const Noun& noun, const std::vector<Kept<Thing>>& things) {
    std::int64_t expected = 1;
    for (const Kept<Thing>& kept : things) {
      const std::string name = named(noun, kept.thing.number);
      if (kept.thing.number != expected) {
        tell(named(noun, expected) + " is missing");
      }
      expected = kept.thing.number + 1;
      told_of_.insert(kept.entry);
      const auto entry = by_number_.find(kept.entry);
      if (entry == by_number_.end()) {
        tell(name + " has no entry in the log");
      } else if (digest_of_(canonical_text(kept.thing)) != entry->second->about) {
        tell(name + " was changed: it is not what entry " + std::to_string(kept.entry) +
             " tells of");
      }
    }
  }

  /// The JSON of a board or a card against its digest.
  template <class Thing>
  void hold_json(const Noun& noun, const std::vector<Kept<Thing>>& things) {
    for (const Kept<Thing>& kept : things) {
      if (digest_of_(kept.thing.json) != kept.thing.digest) {
        tell(named(noun, kept.thing.number) + " was changed: its text does not give its digest");
      }
    }
  }

  void hold_frozen(const Records& records) {
    for (const FrozenInput& input : records.frozen_inputs()) {
      frozen_.insert(input.digest);
      if (input.how == Frozen::whole && digest_of_(records.content_of(input)) != input.digest) {
        tell("frozen input " + std::to_string(input.number) + " (" + input.name +
             ") was changed: its bytes do not give its digest");
      }
    }
  }

  void hold_reference(const std::string& who, const BoardInput& input) {
    if (!frozen_.contains(input.digest)) {
      tell(who + " was made from " + input.name + ", whose frozen input is missing");
    }
  }

  /// Every entry that tells of a thing has it: zeros tell of none.
  void hold_things_told() {
    for (const LogEntry& entry : entries_) {
      if (entry.about != base::Digest{} && !told_of_.contains(entry.number)) {
        tell("what entry " + std::to_string(entry.number) + " tells of (" + entry.subject +
             ") is missing");
      }
    }
  }

  void tell(std::string defect) { defects_.push_back(std::move(defect)); }

  [[nodiscard]] std::vector<std::string> defects() && { return std::move(defects_); }

 private:
  static std::string named(const Noun& noun, std::int64_t number) {
    return std::string{noun.one} + " " + std::to_string(number);
  }

  DigestFunction digest_of_;
  std::vector<LogEntry> entries_;
  std::map<std::int64_t, const LogEntry*> by_number_;
  std::set<std::int64_t> told_of_;
  std::set<base::Digest> frozen_;
  std::vector<std::string> defects_;
};

constexpr Noun kBoard{"day board"};
constexpr Noun kCard{"route card"};

std::vector<Witness> with_own_heads(std::vector<Witness> witnesses,
                                    const std::vector<Kept<SignedBoard>>& boards,
                                    const std::vector<Kept<IssuedCard>>& cards) {
  for (const auto& board : boards) {
    witnesses.push_back(
        witness("day board " + std::to_string(board.thing.number) + " was signed under the head",
                board.thing.head));
  }
  for (const auto& card : cards) {
    witnesses.push_back(
        witness("route card " + std::to_string(card.thing.number) + " was issued under the head",
                card.thing.head));
  }
  return witnesses;
}

void hold_references(Audit& audit, const std::vector<Kept<SignedBoard>>& boards,
                     const std::vector<Kept<KeptReport>>& reports) {
  for (const auto& board : boards) {
    for (const BoardInput& input : board.thing.inputs) {
      audit.hold_reference("day board " + std::to_string(board.thing.number), input);
    }
  }
  for (const auto& report : reports) {
    audit.hold_reference("snow report " + std::to_string(report.thing.number),
                         {.name = "a text", .role = "snow", .digest = report.thing.digest});
  }
}

}  // namespace

std::vector<std::string> defects_of(const Records& records, const std::vector<Witness>& on_paper,
                                    DigestFunction digest_of) {
  const auto boards = records.boards();
  const auto cards = records.cards();
  const auto reports = records.reports();
  Audit audit{records, digest_of};
  audit.hold_chain(with_own_heads(on_paper, boards, cards));
  audit.hold({"snow report"}, reports);
  audit.hold({"mark status"}, records.marks());
  audit.hold(kBoard, boards);
  audit.hold({"override"}, records.overrides());
  audit.hold({"override end"}, records.override_ends());
  audit.hold(kCard, cards);
  audit.hold({"card recall"}, records.recalls());
  audit.hold({"field check"}, records.field_checks());
  audit.hold_json(kBoard, boards);
  audit.hold_json(kCard, cards);
  audit.hold_frozen(records);
  hold_references(audit, boards, reports);
  audit.hold_things_told();
  for (std::string& broken : records.broken_guards()) {
    audit.tell(std::move(broken));
  }
  return std::move(audit).defects();
}

}  // namespace rimehaul::day
