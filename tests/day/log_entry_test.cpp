// A log that shows every change made to it, as far as the heads reach that somebody kept.
#include "day/log_entry.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "ports/openssl/digest.h"

using rimehaul::day::canonical_text;
using rimehaul::day::chain_defects;
using rimehaul::day::chained;
using rimehaul::day::head_of;
using rimehaul::day::LogEntry;
using rimehaul::day::LogHead;
using rimehaul::day::parse_head;
using rimehaul::day::Witness;
using rimehaul::day::witness;
using rimehaul::ports::openssl::digest_of;
using rimehaul::units::Instant;

namespace {

using Log = std::vector<LogEntry>;
using Lines = std::vector<std::string>;

/// Entries of a day, chained as they are.
Log log_of(int entries) {
  Log log;
  for (int i = 0; i < entries; ++i) {
    LogEntry entry;
    entry.at = Instant{1'770'000'000 + i};
    entry.account = "desk";
    entry.person = "N. Rime";
    entry.role = "planner";
    entry.act = "sign";
    entry.subject = "board " + std::to_string(i + 1);
    entry.about = digest_of(entry.subject);
    log.push_back(chained(entry, head_of(log), digest_of));
  }
  return log;
}

/// The whole log written anew from an entry on, hashes and all.
void chain_again(Log& log, std::size_t from) {
  for (std::size_t i = from; i < log.size(); ++i) {
    log[i] = chained(log[i], head_of(std::span{log}.first(i)), digest_of);
  }
}

Lines defects(const Log& log, const std::vector<Witness>& on_paper = {}) {
  return chain_defects(log, on_paper, digest_of);
}

}  // namespace

TEST_CASE("a log as it was written holds, with every head it ever had") {
  const Log log = log_of(6);
  std::vector<Witness> heads{witness("day 0", LogHead{})};
  for (const LogEntry& entry : log) {
    heads.push_back(witness("paper", {entry.number, entry.own}));
  }
  CHECK(defects(log, heads).empty());
  CHECK(defects({}).empty());
}

TEST_CASE("the hash of an entry is the SHA-256 of its canonical text, which is plain to read") {
  LogEntry entry;
  entry.at = Instant{1'770'000'000};
  entry.account = "desk";
  entry.person = "N. Rime";
  entry.act = "sign";
  entry.subject = "board 1";
  entry = chained(entry, {}, digest_of);
  const std::string zeros(64, '0');
  CHECK(canonical_text(entry) ==
        "11:log entry 1\n1:1\n20:2026-02-02T02:40:00Z\n4:desk\n7:N. Rime\n0:\n4:sign\n7:board 1\n"
        "0:\n64:" +
            zeros + "\n64:" + zeros + "\n");
  // By Python's hashlib over the same bytes.
  CHECK(entry.own.hex() == "4140f89c2a6842e1adfd3a26af5d76cfb7822726f0cf5344b0dfa7d6968ee732");
}

TEST_CASE("no words moved from one field to the next give the same text") {
  const std::vector<std::string> words{"", "a", "b", "ab", "1:a", "a\n1:b", ":", "0:"};
  std::set<std::string> texts;
  for (const std::string& act : words) {
    for (const std::string& subject : words) {
      for (const std::string& detail : words) {
        LogEntry entry;
        entry.act = act;
        entry.subject = subject;
        entry.detail = detail;
        texts.insert(canonical_text(entry));
      }
    }
  }
  CHECK(texts.size() == words.size() * words.size() * words.size());
}

TEST_CASE("every field of an entry that is changed shows") {
  using Change = void (*)(LogEntry&);
  const std::vector<Change> changes{
      [](LogEntry& entry) { entry.at.seconds += 1; },
      [](LogEntry& entry) { entry.account = "other"; },
      [](LogEntry& entry) { entry.person = "N. Rimf"; },
      [](LogEntry& entry) { entry.role.clear(); },
      [](LogEntry& entry) { entry.act = "sign "; },
      [](LogEntry& entry) { entry.subject += '0'; },
      [](LogEntry& entry) { entry.detail = "x"; },
      [](LogEntry& entry) { entry.about.bytes[31] ^= 1U; },
      [](LogEntry& entry) { entry.own.bytes[0] ^= 0x80U; },
  };
  for (const Change change : changes) {
    Log log = log_of(4);
    change(log[1]);
    const Lines found = defects(log);
    REQUIRE_FALSE(found.empty());
    CHECK(std::ranges::any_of(found, [](const std::string& line) {
      return line == "entry 2 was changed: what it says does not give the hash that it bears";
    }));
  }
}

TEST_CASE("an entry changed together with its own hash shows in the next") {
  Log log = log_of(4);
  log[1].person = "Somebody Else";
  log[1].own = digest_of(canonical_text(log[1]));
  CHECK(defects(log) == Lines{"entry 3 does not follow what stands before it: that was changed, or "
                              "an entry between them was taken out"});
}

TEST_CASE("entries taken out show, with or without numbers moved up") {
  Log gap = log_of(5);
  gap.erase(gap.begin() + 1);
  CHECK(defects(gap) == Lines{"entry 2 is missing"});
  Log wider = log_of(5);
  wider.erase(wider.begin() + 1, wider.begin() + 4);
  CHECK(defects(wider) == Lines{"entries 2 to 4 are missing"});
  Log moved_up = log_of(5);
  moved_up.erase(moved_up.begin() + 1);
  for (std::size_t i = 1; i < moved_up.size(); ++i) {
    moved_up[i].number = static_cast<std::int64_t>(i) + 1;
  }
  CHECK(defects(moved_up).size() == 4);  // a link that does not fit, and three that were changed
  Log headless = log_of(3);
  headless.erase(headless.begin());
  CHECK(defects(headless) == Lines{"entry 1 is missing"});
}

TEST_CASE("entries that changed places show, with or without their numbers") {
  Log rows = log_of(5);
  std::swap(rows[1], rows[2]);
  const Lines of_rows = defects(rows);
  REQUIRE(of_rows.size() >= 2);
  CHECK(of_rows[0] == "entry 2 is missing");
  CHECK(of_rows[1] == "entry 2 stands out of order, behind entry 3");
  Log numbered = log_of(5);
  std::swap(numbered[1], numbered[2]);
  std::swap(numbered[1].number, numbered[2].number);
  const Lines of_numbered = defects(numbered);
  REQUIRE(of_numbered.size() >= 2);
  CHECK(of_numbered[0] == "entry 2 was moved: by its hash it follows entry 3");
  CHECK(of_numbered[1] == "entry 2 was changed: what it says does not give the hash that it bears");
}

TEST_CASE("an entry put in between shows") {
  Log log = log_of(4);
  LogEntry forged = chained(log[2], {2, log[1].own}, digest_of);
  forged.subject = "board 99";
  forged.own = digest_of(canonical_text(forged));
  log.insert(log.begin() + 2, forged);
  CHECK_FALSE(defects(log).empty());
}

TEST_CASE("a tail cut off is a sound log, and only a head kept elsewhere shows it") {
  const Log whole = log_of(5);
  Log cut{whole.begin(), whole.begin() + 3};
  CHECK(defects(cut).empty());
  const Witness paper = witness("the card of route 7 bears", head_of(whole));
  CHECK(defects(cut, {paper}) ==
        Lines{"the card of route 7 bears " + std::to_string(5) + ":" + whole[4].own.hex() +
              ", but the log ends with entry 3: its tail was cut off"});
  CHECK(defects({}, {paper}).size() == 1);
}

TEST_CASE("a log written anew from some entry on shows against a head of that part alone") {
  const Log whole = log_of(5);
  Log anew = whole;
  anew[2].person = "Somebody Else";
  chain_again(anew, 2);
  CHECK(defects(anew).empty());
  CHECK(defects(anew, {witness("paper", {2, whole[1].own})}).empty());
  const Lines found = defects(anew, {witness("paper", {4, whole[3].own})});
  REQUIRE(found.size() == 1);
  CHECK(found[0].ends_with("but entry 4 bears another hash: the log was written anew"));
}

TEST_CASE("a head on paper is a number and digits, and nothing shorter is taken for one") {
  const Log log = log_of(2);
  const std::string printed = rimehaul::day::text_of(head_of(log));
  CHECK(printed == "2:" + log[1].own.hex().substr(0, 20));
  const auto read = parse_head(printed);
  REQUIRE(read.has_value());
  CHECK(defects(log, {{.where = "paper", .head = *read}}).empty());
  CHECK(parse_head("2:0123456789ABCDEF").value().digits == "0123456789abcdef");
  for (const char* wrong :
       {"", ":", "2:", "2:0123456789abcde", ":0123456789abcdef", "-2:0123456789abcdef",
        "2:0123456789abcdeg", "2 0123456789abcdef", "99999999999999999999:0123456789abcdef",
        "2:0123456789abcdef ", "+2:0123456789abcdef"}) {
    CAPTURE(wrong);
    CHECK_FALSE(parse_head(wrong).has_value());
  }
  CHECK_FALSE(parse_head("2:" + std::string(65, 'a')).has_value());
  // Digits that were cut by hand prove nothing.
  CHECK(defects(log, {{.where = "paper", .head = {2, log[1].own.hex().substr(0, 15)}}}).size() ==
        1);
}

TEST_CASE("a log of no entries has zeros for its head, and no other") {
  CHECK(defects(log_of(2), {{.where = "paper", .head = {0, std::string(16, '0')}}}).empty());
  CHECK(defects(log_of(2), {{.where = "paper", .head = {0, std::string(16, '1')}}}).size() == 1);
}
