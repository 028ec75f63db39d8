// How the day board's cells, notes and basis are told, alike on the screen and on paper.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/board_report.h"
#include "card/labelled_line.h"

namespace rimehaul::card {

/// What the board was made for.
[[nodiscard]] std::vector<LabelledLine> basis_of(const BoardReport& report);
/// How long the day's word holds: until a moment, or no more since another.
struct Validity {
  std::optional<units::Instant> valid_until;
  std::optional<units::Instant> ran_out;
  const units::LocalClock& local_clock;
};
[[nodiscard]] std::string validity_words(const Validity& validity);

/// What its verdicts mean.
[[nodiscard]] std::vector<LabelledLine> meanings();

/// The cautions of a card as far as they hold for a board.
[[nodiscard]] std::vector<std::string> board_cautions();

/// The snow classes of one surface, in the order of the board.
[[nodiscard]] std::vector<snow::SnowState> columns_on(snow::Surface surface,
                                                      const BoardReport& report);

/// "open 62 %", "restricted", "closed".
[[nodiscard]] std::string verdict_words(const BoardRow& row);
/// How its line is drawn: nothing where it is closed because something is not known.
[[nodiscard]] std::optional<passage::Verdict> sign_of(const BoardRow& row);
/// The share that a cell tells: the largest of a way that is open, or is by a decision; what binds
/// on one that is closed as the rig stands. Nothing where that is no matter of a share.
[[nodiscard]] std::optional<double> share_in_cell(const BoardRow& row);

/// A share in the little room of a cell, rounded up: "62"; beside 100 only ">100" or "<100"; "?"
/// for what is no number.
[[nodiscard]] std::string cell_percent(double share);

/// "17 min", rounded up; without hours, so that a cell holds it.
[[nodiscard]] std::string cell_minutes(units::Seconds time);

/// What a printed board was made from, its inputs by their digests.
struct BoardMaking {
  const MadeFrom& made_from;
  std::size_t places_rewalked;
  const units::LocalClock& local_clock;
};
[[nodiscard]] std::vector<std::string> made_from_lines(const BoardMaking& making);

/// The notes of a board, numbered as they are first needed: one reason, told once for all cells
/// that have it. Its share stands in the cell.
class BoardNotes {
 public:
  [[nodiscard]] int number_of(const BoardRow& row);
  /// "(3)": the mark of this cell's note.
  [[nodiscard]] std::string mark_of(const BoardRow& row);
  [[nodiscard]] std::vector<LabelledLine> lines() const;

 private:
  struct Note {
    std::string reason;
    std::string lacks;  ///< how it came out where that is no share
    std::string opens_by{};

    friend bool operator==(const Note&, const Note&) = default;
  };
  std::vector<Note> notes_;
};

}  // namespace rimehaul::card
