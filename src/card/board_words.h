// How the day board's cells, notes and basis are told, alike on the screen and on paper.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "card/board_report.h"
#include "card/labelled_line.h"

namespace rimehaul::card {

/// What the board was made for, and what its words mean.
[[nodiscard]] std::vector<LabelledLine> basis_of(const BoardReport& report);

/// The cautions of a card as far as they hold for a board.
[[nodiscard]] std::vector<std::string> board_cautions();

/// The snow classes of one surface, in the order of the board.
[[nodiscard]] std::vector<snow::SnowState> columns_on(snow::Surface surface,
                                                      const BoardReport& report);

/// "open 62 %", "restricted", "closed".
[[nodiscard]] std::string verdict_words(const BoardRow& row);
/// How its line is drawn: nothing where it is closed because something is not known.
[[nodiscard]] std::optional<passage::Verdict> sign_of(const BoardRow& row);
/// "carrier side slip, 9 min", "climb traction 131 %", "avalanche exposure: by decision, 9 min",
/// with the loads that open it; empty where no check binds.
[[nodiscard]] std::string binding_words(const BoardRow& row);

/// The notes of a board, numbered as they are first needed: one reason, told once for all cells
/// that have it, with the largest share of them.
class BoardNotes {
 public:
  /// "(3)": the mark of this cell's note.
  [[nodiscard]] std::string mark_of(const BoardRow& row);
  [[nodiscard]] std::vector<LabelledLine> lines() const;

 private:
  struct Note {
    std::string reason;
    std::string lacks;   ///< how it came out where that is no share
    double share = 0.0;  ///< the largest of them
    std::string opens_by{};
  };
  std::vector<Note> notes_;
};

}  // namespace rimehaul::card
