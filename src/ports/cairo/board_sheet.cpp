#include "ports/cairo/board_sheet.h"

#include <algorithm>
#include <deque>
#include <utility>

#include "base/joined.h"
#include "card/figures.h"
#include "card/words.h"
#include "ports/cairo/board_band.h"
#include "ports/cairo/flow.h"
#include "ports/cairo/pages.h"
#include "ports/cairo/verdict_legend.h"

namespace rimehaul::ports::cairo {

namespace {

using card::BoardMatrix;
using card::BoardNotes;
using card::BoardReport;

constexpr double kGap_pt = 6.0;
constexpr double kAside_pt = 14.0;
/// A rest of a page that is narrower or lower is left empty.
constexpr double kNarrowest_pt = 100.0;
constexpr double kLowest_pt = 60.0;

/// A box in columns of at least a readable width, side by side.
std::deque<Box> in_columns(const Box& box, int columns) {
  std::deque<Box> parts;
  const double each = (box.width_pt - kAside_pt * (columns - 1)) / columns;
  for (int i = 0; i < columns; ++i) {
    parts.push_back({box.left_pt + i * (each + kAside_pt), box.top_pt, each, box.height_pt});
  }
  return parts;
}

/// The board's page in hand, and what of it is still free for text.
class Sheets {
 public:
  Sheets(Canvas& canvas, Pages& pages) : canvas_{canvas}, pages_{pages} {}

  /// The next place for text: of this page, then a column of the next.
  Box next_place() {
    if (free_.empty()) {
      free_ = in_columns(pages_.next(), kColumns);
    }
    const Box place = free_.front();
    free_.pop_front();
    return place;
  }

  /// Draws all tables from a height on, onto as many pages as they take.
  void draw_tables(const card::BoardTables& tables, double top_pt) {
    top_ = y_ = top_pt;
    for (std::size_t first = 0; first < tables.matrices.size();) {
      const std::size_t count = side_by_side(tables.matrices, first);
      draw_band({canvas_, tables.stations, std::span{tables.matrices}.subspan(first, count)},
                count);
      first += count;
    }
    if (last_left_ >= widest_) {
      add_free({area().left_pt, y_, area().width_pt, area().bottom_pt() - y_});
    }
  }

  static constexpr int kColumns = 3;

 private:
  [[nodiscard]] Box area() const { return pages_.area(); }

  /// How many tables from this one on are of the same stations and surface and have room.
  [[nodiscard]] std::size_t side_by_side(const std::vector<BoardMatrix>& tables,
                                         std::size_t first) const {
    const BoardMatrix& like = tables[first];
    const std::size_t most = tables_across(area().width_pt, like.to.size());
    std::size_t count = 1;
    while (count < most && first + count < tables.size()) {
      const BoardMatrix& next = tables[first + count];
      if (next.from != like.from || next.to != like.to || next.snow.surface != like.snow.surface) {
        break;
      }
      ++count;
    }
    return count;
  }

  void draw_band(const BoardBand& band, std::size_t count) {
    if (y_ + band.height() > area().bottom_pt() && y_ > top_) {
      pages_.next();
      free_.clear();
      top_ = y_ = area().top_pt;
      widest_ = 0.0;
    }
    band.draw({area().left_pt, y_});
    const double right = area().left_pt + band.width() + kAside_pt;
    if (band.width() >= widest_) {
      widest_ = band.width();
      free_.clear();
      add_free({right, top_, area().right_pt() - right, y_ + band.height() - top_});
    } else {
      // The last of its stations: beside it the rest of the page is free.
      const double left = area().left_pt + band.left_of(count);
      add_free({left, y_, area().right_pt() - left, area().bottom_pt() - y_});
    }
    last_left_ = band.width();
    y_ += band.height() + kGap_pt;
  }

  void add_free(const Box& box) {
    constexpr double kTwo_pt = 3.4 * kNarrowest_pt;
    if (box.width_pt < kNarrowest_pt || box.height_pt < kLowest_pt) {
      return;
    }
    const int columns = box.width_pt > 2 * kTwo_pt ? 3 : box.width_pt > kTwo_pt ? 2 : 1;
    for (const Box& part : in_columns(box, columns)) {
      free_.push_back(part);
    }
  }

  Canvas& canvas_;
  Pages& pages_;
  std::deque<Box> free_;
  double top_ = 0.0;     ///< where tables begin on this page
  double y_ = 0.0;       ///< where they have come to
  double widest_ = 0.0;  ///< of the bands on this page
  double last_left_ = 0.0;
};

Flow write_head(Canvas& canvas, const Box& area, const BoardReport& report) {
  Flow flow{canvas, {.area = area}, [area] { return area; }};
  flow.title("Day board: " + report.site + "; " + report.rig +
             (report.trailer.empty() ? "" : " towing " + report.trailer) + "; driver level " +
             report.driver_level);
  write_verdict_legend(canvas, flow);
  flow.gap(kGap_pt);
  return flow;
}

void write_lines(Flow& flow, const std::vector<card::LabelledLine>& lines, double label_pt) {
  for (const card::LabelledLine& line : lines) {
    flow.labelled({line.label, line.text}, label_pt);
  }
}

void write_text(Flow& flow, const BoardReport& report, const BoardNotes& notes) {
  constexpr double kMark_pt = 26.0;
  constexpr double kLittle_pt = 90.0;  // a part that has no more room begins elsewhere
  constexpr double kMeaning_pt = 58.0;
  flow.heading("Made for");
  for (const card::LabelledLine& line : card::basis_of(report)) {
    flow.paragraph(line.label + ": " + line.text);
  }
  flow.make_room(kLittle_pt);
  flow.write({"Today", ItemMark::dash, report.today});
  flow.make_room(kLittle_pt);
  flow.heading("What binds, or stands in the way nearest to open");
  write_lines(flow, notes.lines(), kMark_pt);
  flow.heading("Verdicts");
  write_lines(flow, card::meanings(), kMeaning_pt);
  flow.write({"Cautions", ItemMark::warning, card::board_cautions()});
  flow.write({"Estimates in use (not measured, not published)", ItemMark::dash, report.estimates});
  flow.write(
      {"Made from", ItemMark::dash,
       card::made_from_lines({report.made_from, report.places_rewalked, report.local_clock})});
}

std::vector<std::string> stations_of(const BoardReport& report) {
  BoardNotes unused;
  return card::tables_of(report, {.rows = report.rows.size(), .columns = report.rows.size()},
                         unused)
      .stations;
}

DrawnPages draw(const BoardReport& report, int of) {
  const PageSize upright;
  const std::string made = card::local_text(report.made_from.made, report.local_clock);
  Canvas canvas{
      Form::pdf,
      {upright.height_pt, upright.width_pt},
      {"Day board: " + report.site + ", " + report.rig, units::text_of(report.made_from.made)}};
  Pages pages{canvas, "Day board, " + report.site + ", " + report.rig + ", made " + made, of};
  const double top = write_head(canvas, pages.area(), report).corner().y_pt;
  Box tables_area = pages.area();
  tables_area.height_pt -= top - tables_area.top_pt;
  BoardNotes notes;
  const card::BoardTables tables =
      card::tables_of(report, room_in(canvas, tables_area, stations_of(report)), notes);
  Sheets sheets{canvas, pages};
  sheets.draw_tables(tables, top);
  const auto next_place = [&sheets] { return sheets.next_place(); };
  Flow flow{canvas, {.area = next_place(), .whole_pt = pages.area().height_pt}, next_place};
  write_text(flow, report, notes);
  const int count = pages.close();
  return {canvas.finish(), count};
}

}  // namespace

card::Printed draw_board(const BoardReport& report) {
  return draw_counted([&report](int of) { return draw(report, of); });
}

}  // namespace rimehaul::ports::cairo
