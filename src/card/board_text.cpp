// The day board as text for a terminal or a plain printer, readable without colour.
#include <algorithm>

#include "card/board_report.h"
#include "card/figures.h"
#include "card/layout.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

constexpr int kNameWidth = 20;
constexpr int kCellWidth = 12;
constexpr int kLabelWidth = 11;

std::string minutes(units::Seconds time) {
  constexpr double kSecondsInMinute = 60.0;
  return units::text_of(time.value() / kSecondsInMinute, 0, units::Round::up) + " min";
}

/// What stands behind the number of a note: one reason, told once for all cells that have it.
struct Note {
  std::string reason;
  std::string lacks;   ///< how it came out where that is no share
  double share = 0.0;  ///< the largest of them
  std::string opens_by{};
};

/// The notes of a board, numbered as they are first needed.
class Notes {
 public:
  /// The number of this cell's note, from 1.
  std::size_t number_of(const BoardRow& row) {
    Note note{.reason = reason_of(row), .lacks = {}};
    const bool by_share = row.binding && row.binding->share && row.binding->missing.empty() &&
                          row.binding->refused.empty() && row.binding->asks.empty();
    if (row.binding && !by_share) {
      note.lacks = words::outcome(*row.binding);
    }
    for (const std::string& loads : words::opens_with_loads(row.loads)) {
      note.opens_by += (note.opens_by.empty() ? "opens with " : "; or with ") + loads;
    }
    if (row.and_decision) {
      note.opens_by += "; " + std::string{words::with_decision_besides()};
    }
    const auto same = std::ranges::find_if(notes_, [&](const Note& other) {
      return other.reason == note.reason && other.lacks == note.lacks &&
             other.opens_by == note.opens_by;
    });
    Note& kept = same == notes_.end() ? notes_.emplace_back(note) : *same;
    if (by_share) {
      kept.share = std::max(kept.share, *row.binding->share);
    }
    return static_cast<std::size_t>(&kept - notes_.data()) + 1;
  }

  void write(Sheet& sheet) const {
    for (std::size_t i = 0; i < notes_.size(); ++i) {
      const Note& note = notes_[i];
      std::string text = note.reason;
      if (!note.lacks.empty()) {
        text += ": " + note.lacks;
      } else if (note.share > 0.0) {
        text += ": at most " + share_text(note.share) + " of the limit";
      }
      text += note.opens_by.empty() ? "" : "; " + note.opens_by;
      sheet.labelled({0, 6, "(" + std::to_string(i + 1) + ")"}, text);
    }
  }

 private:
  std::vector<Note> notes_;
};

/// The two lines of one destination.
class PairLines {
 public:
  void add(const BoardRow& row, Notes& notes) {
    const bool open = row.verdict == passage::Verdict::open;
    const std::string verdict = passage::words_for(row.verdict);
    const std::string note = "(" + std::to_string(notes.number_of(row)) + ")";
    upper_ += filled(open ? verdict + " " + share_text(row.worst_share) : verdict, kCellWidth);
    lower_ += filled(open ? minutes(row.time) + " " + note : note, kCellWidth);
  }

  void write(Sheet& sheet, const std::string& name) const {
    const bool fits = width_of(name) < kNameWidth;
    if (!fits) {
      sheet.paragraph(name);
    }
    sheet.as_it_stands(trimmed(filled(fits ? name : "", kNameWidth) + upper_));
    sheet.as_it_stands(trimmed(std::string(kNameWidth, ' ') + lower_));
  }

 private:
  static std::string trimmed(std::string line) {
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
  }

  std::string upper_;
  std::string lower_;
};

/// The snow classes of one surface, in the order of the board.
std::vector<snow::SnowState> columns_on(snow::Surface surface, const BoardReport& report) {
  std::vector<snow::SnowState> columns = report.snows;
  std::erase_if(columns,
                [surface](const snow::SnowState& state) { return state.surface != surface; });
  return columns;
}

void write_surface(Sheet& sheet, const BoardReport& report, snow::Surface surface, Notes& notes) {
  std::string head = filled("to", kNameWidth);
  for (const snow::SnowState& state : columns_on(surface, report)) {
    head += filled(snow::words_for(state.wetness), kCellWidth);
  }
  head.erase(head.find_last_not_of(' ') + 1);
  const std::string* from = nullptr;
  std::size_t i = 0;
  while (i < report.rows.size()) {
    const BoardRow& first = report.rows[i];
    PairLines lines;
    for (; i < report.rows.size() && report.rows[i].from == first.from &&
           report.rows[i].to == first.to;
         ++i) {
      if (report.rows[i].snow.surface == surface) {
        lines.add(report.rows[i], notes);
      }
    }
    if (from == nullptr || *from != first.from) {
      from = &first.from;
      sheet.heading("FROM " + first.from + ", " + snow::words_for(surface) + " snow");
      sheet.as_it_stands(head);
      sheet.rule('-');
    }
    lines.write(sheet, first.to);
  }
}

void write_basis(Sheet& sheet, const BoardReport& report) {
  const auto item = [&sheet](std::string_view label, const std::string& text) {
    sheet.labelled({0, kLabelWidth, label}, text);
  };
  item("Load", words::load(report.load, report.trailer));
  item("Leave", local_text(report.depart, report.utc_offset_minutes));
  item("Weather", words::weather(report.weather));
  item("Snow", "each class everywhere; " + report.told_by);
  item("Allowed", allowed_text(report.allowed_share) + " of every limit");
  item("Open", "as the rig stands, by the safest way: its largest share of a limit, and its time");
  item("Restricted", report.loads_tried ? "with the load told in the note, or by a decision"
                                        : "by the decision told in the note; other loads are "
                                          "tried with --from or --to");
  item("Closed", "all else; what is not known is closed");
}

}  // namespace

std::string text_of(const BoardReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"DAY BOARD", report.site});
  sheet.paragraph(report.rig + ", driver level " + report.driver_level);
  sheet.rule('=');
  write_basis(sheet, report);
  sheet.paragraph(words::planning_aid());
  Notes notes;
  for (int i = 0; i < snow::kSurfaceCount; ++i) {
    const auto surface = static_cast<snow::Surface>(i);
    if (!columns_on(surface, report).empty()) {
      write_surface(sheet, report, surface, notes);
    }
  }
  sheet.heading("WHAT BINDS, OR STANDS IN THE WAY NEAREST TO OPEN");
  notes.write(sheet);
  sheet.heading("CAUTIONS");
  sheet.list("-", words::cautions());
  sheet.heading("ESTIMATES IN USE");
  sheet.list("-", report.estimates);
  return sheet.text();
}

}  // namespace rimehaul::card
