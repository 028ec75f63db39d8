#include "day/record_book.h"

#include <utility>

#include "base/one_line.h"
#include "base/require.h"

namespace rimehaul::day {

namespace {

void expect_lines(const Done& done, const Telling& telling) {
  base::require(base::is_one_line(done.by), "somebody's name stands under what is kept");
  base::require(base::is_one_line(telling.act) && base::is_one_line(telling.subject),
                "an entry says what was done, and to what");
  base::require(!base::has_controls(done.role) && !base::has_controls(telling.detail),
                "an entry stands on one line");
}

}  // namespace

LogEntry Writing::append(const Done& done, const Telling& telling, const base::Digest& about) {
  base::require(!ended_, "nothing is added to what was committed");
  expect_lines(done, telling);
  LogEntry entry = chained(LogEntry{.at = done.at,
                                    .account = account_,
                                    .person = done.by,
                                    .role = done.role,
                                    .act = telling.act,
                                    .subject = telling.subject,
                                    .detail = telling.detail,
                                    .about = about,
                                    .previous = {},
                                    .own = {}},
                           head(), digest_of_);
  put(entry);
  told_ = true;
  return entry;
}

template <class Thing>
LogEntry Writing::add_as(Kind kind, const Done& done, const Thing& thing, const Telling& telling) {
  base::require(thing.number == next(kind), "a thing kept has the next number of its kind");
  LogEntry entry = append(done, telling, digest_of_(canonical_text(thing)));
  put(Kept<Thing>{thing, entry.number});
  return entry;
}

void Writing::freeze(FrozenInput input, std::string_view content) {
  base::require(!ended_, "nothing is added to what was committed");
  input.how = input.bytes <= kMostFrozenBytes ? Frozen::whole : Frozen::by_digest;
  if (input.how == Frozen::whole) {
    base::require(
        std::cmp_equal(content.size(), input.bytes) && digest_of_(content) == input.digest,
        "what is frozen has the digest that is told of it");
  }
  for (const FrozenInput& there : frozen_inputs()) {
    if (there.digest == input.digest) {
      return;
    }
  }
  input.number = next(Kind::frozen_input);
  put(input, input.how == Frozen::whole ? content : std::string_view{});
}

LogEntry Writing::add(const KeptReport& report, const Telling& telling) {
  return add_as(Kind::snow_report, report.kept, report, telling);
}

LogEntry Writing::add(const KeptMark& mark, const Telling& telling) {
  return add_as(Kind::mark_status, mark.said, mark, telling);
}

LogEntry Writing::add(const SignedBoard& board, const Telling& telling) {
  base::require(digest_of_(board.json) == board.digest, "a board bears its own digest");
  base::require(board.head == head(), "a board bears the head of the log");
  return add_as(Kind::day_board, board.signed_off, board, telling);
}

LogEntry Writing::add(const Override& given, const Telling& telling) {
  return add_as(Kind::override_given, given.allowed, given, telling);
}

LogEntry Writing::add(const OverrideEnd& end, const Telling& telling) {
  return add_as(Kind::override_end, end.ended, end, telling);
}

LogEntry Writing::add(const IssuedCard& card, const Telling& telling) {
  base::require(digest_of_(card.json) == card.digest, "a card bears its own digest");
  base::require(card.head == head(), "a card bears the head of the log");
  return add_as(Kind::route_card, card.issued, card, telling);
}

LogEntry Writing::add(const Recall& recall, const Telling& telling) {
  return add_as(Kind::card_recall, recall.recalled, recall, telling);
}

LogEntry Writing::add(const FieldCheck& check, const Telling& telling) {
  return add_as(Kind::field_check, check.measured, check, telling);
}

LogEntry Writing::tell(const Done& done, const Telling& telling) {
  return append(done, telling, base::Digest{});
}

void Writing::commit() {
  base::require(told_ && !ended_, "what is kept is told in the log, and committed once");
  ended_ = true;
  make_last();
}

}  // namespace rimehaul::day
