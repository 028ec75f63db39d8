// The book of what is kept, as the commands see it: reading, and writing in one piece.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "day/records.h"

namespace rimehaul::day {

/// A kept thing beside the log entry that tells of it.
template <class Thing>
struct Kept {
  Thing thing;
  std::int64_t entry = 0;  ///< number of the log entry
};

/// The kinds of things that are numbered, each from 1.
enum class Kind {
  log_entry,
  frozen_input,
  snow_report,
  mark_status,
  day_board,
  override_given,
  override_end,
  route_card,
  card_recall,
  field_check
};

/// Everything kept, as it stood at one moment. All lists are in the order of their numbers. Throws
/// BadInput where the file holds what it cannot hold.
class Records {
 public:
  Records() = default;
  virtual ~Records() = default;
  Records(const Records&) = delete;
  Records& operator=(const Records&) = delete;

  [[nodiscard]] virtual std::vector<LogEntry> log() const = 0;
  [[nodiscard]] virtual LogHead head() const = 0;
  [[nodiscard]] virtual std::vector<FrozenInput> frozen_inputs() const = 0;
  /// The bytes of one that is kept whole.
  [[nodiscard]] virtual std::string content_of(const FrozenInput& input) const = 0;
  [[nodiscard]] virtual std::vector<Kept<KeptReport>> reports() const = 0;
  [[nodiscard]] virtual std::vector<Kept<KeptMark>> marks() const = 0;
  [[nodiscard]] virtual std::vector<Kept<SignedBoard>> boards() const = 0;
  [[nodiscard]] virtual std::vector<Kept<Override>> overrides() const = 0;
  [[nodiscard]] virtual std::vector<Kept<OverrideEnd>> override_ends() const = 0;
  [[nodiscard]] virtual std::vector<Kept<IssuedCard>> cards() const = 0;
  [[nodiscard]] virtual std::vector<Kept<Recall>> recalls() const = 0;
  [[nodiscard]] virtual std::vector<Kept<FieldCheck>> field_checks() const = 0;
  /// What guards the file against change and is not as it was made, a line each.
  [[nodiscard]] virtual std::vector<std::string> broken_guards() const = 0;
};

/// What an entry of the log says beside who and when.
struct Telling {
  std::string act;
  std::string subject;
  std::string detail{};
};

/// One piece of writing: all of it is kept with commit(), or nothing. Nobody else writes while it
/// lives, so it is made late and ended soon. Every thing added gets its entry in the log, whose
/// `about` is the digest of the thing's canonical text. What is read sees what was added.
///
///     const auto writing = ...;                     // waits for another writer
///     SignedBoard board{.number = writing->next(Kind::day_board), ...};
///     board.head = writing->head();
///     writing->add(board, {"sign", "board 4"});
///     writing->commit();
class Writing : public Records {
 public:
  /// `account` is that of the machine; it goes into every entry.
  Writing(std::string account, DigestFunction digest_of)
      : account_{std::move(account)}, digest_of_{digest_of} {}

  /// The number that the next thing of a kind gets.
  [[nodiscard]] virtual std::int64_t next(Kind kind) const = 0;

  /// Keeps a file's bytes, or its digest alone where `bytes` is over kMostFrozenBytes (`content` is
  /// not looked at then). What is kept already is not kept again. It is what refers to its digest
  /// that is told in the log.
  void freeze(FrozenInput input, std::string_view content);

  // Each thing's number must be the next of its kind, and what it refers to must be there. Gives
  // the log entry that was made.

  LogEntry add(const KeptReport& report, const Telling& telling);
  LogEntry add(const KeptMark& mark, const Telling& telling);
  LogEntry add(const SignedBoard& board, const Telling& telling);
  LogEntry add(const Override& given, const Telling& telling);
  LogEntry add(const OverrideEnd& end, const Telling& telling);
  LogEntry add(const IssuedCard& card, const Telling& telling);
  LogEntry add(const Recall& recall, const Telling& telling);
  LogEntry add(const FieldCheck& check, const Telling& telling);
  /// Something that was done and left nothing else to keep.
  LogEntry tell(const Done& done, const Telling& telling);

  /// Makes all of it last, also against a failing supply of power. Throws BadInput when it cannot;
  /// nothing is kept then. At least one entry must have been made. Nothing may be added after it.
  void commit();

 protected:
  virtual void put(const LogEntry& entry) = 0;
  virtual void put(const FrozenInput& input, std::string_view content) = 0;
  virtual void put(const Kept<KeptReport>& report) = 0;
  virtual void put(const Kept<KeptMark>& mark) = 0;
  virtual void put(const Kept<SignedBoard>& board) = 0;
  virtual void put(const Kept<Override>& given) = 0;
  virtual void put(const Kept<OverrideEnd>& end) = 0;
  virtual void put(const Kept<IssuedCard>& card) = 0;
  virtual void put(const Kept<Recall>& recall) = 0;
  virtual void put(const Kept<FieldCheck>& check) = 0;
  virtual void make_last() = 0;

 private:
  LogEntry append(const Done& done, const Telling& telling, const base::Digest& about);
  template <class Thing>
  LogEntry add_as(Kind kind, const Done& done, const Thing& thing, const Telling& telling);

  std::string account_;
  DigestFunction digest_of_;
  bool told_ = false;
  bool ended_ = false;
};

/// Everything wrong with what is kept, a line each: the chain of the log, held against the heads in
/// boards and cards and those given; every thing against its log entry; every frozen file against
/// its digest; the file's own guards. None: it all holds, as far as the heads reach.
[[nodiscard]] std::vector<std::string> defects_of(const Records& records,
                                                  const std::vector<Witness>& on_paper,
                                                  DigestFunction digest_of);

}  // namespace rimehaul::day
