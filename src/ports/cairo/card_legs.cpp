// A leg of the printed card: its row in the table, and what is to be minded on it.
#include "card/card_lines.h"
#include "card/figures.h"
#include "ports/cairo/card_parts.h"

namespace rimehaul::ports::cairo {

namespace {

using card::CardLeg;
using card::NoticeKind;

TableCell steepness_cell(const std::optional<passage::Steepness>& steepness) {
  if (!steepness) {
    return {"unknown", ""};
  }
  const std::string up_to = card::up_to_text(*steepness);
  if (up_to.empty()) {
    return {"", "none"};
  }
  return {card::found_text(*steepness), "to " + up_to};
}

void add(std::string& all, const std::string& more) {
  all += (all.empty() || more.empty() ? "" : "; ") + more;
}

std::string notices_of(const CardLeg& leg, NoticeKind kind) {
  std::string all;
  for (const card::Notice& notice : leg.notices) {
    if (notice.kind == kind) {
      add(all, card::notice_line(notice, leg));
    }
  }
  return all;
}

/// All notices in driving order, and what lies ahead.
std::string all_of(const CardLeg& leg) {
  std::string all;
  for (const card::Notice& notice : leg.notices) {
    add(all, card::notice_line(notice, leg));
  }
  add(all, card::ahead_line(leg));
  return all;
}

std::string note_in_front(const CardLeg& leg, LegNotes notes) {
  switch (notes) {
    case LegNotes::in_front:
      return all_of(leg);
    case LegNotes::warnings_in_front:
      return notices_of(leg, NoticeKind::warning);
    case LegNotes::behind:
      break;
  }
  return "";
}

/// The name of the trail, the bearing to set out on and where it leads; a leg that needs a decision
/// says so before it.
TableCell trail_cell(const CardLeg& leg) {
  // Every leg but the first starts where the last one ended.
  TableCell cell{leg.trail, card::bearing_text(leg.start_bearing) +
                                (leg.number == 1 ? " " + leg.from : "") + " to " + leg.to};
  if (leg.verdict != passage::Verdict::open) {
    cell.strong = card::verdict_word(leg.verdict) + "\n" + cell.strong;
  }
  return cell;
}

}  // namespace

std::string row_place(const CardLeg& leg) {
  return "leg " + std::to_string(leg.number);
}

std::string note_place(const CardLeg& leg) {
  return "note " + std::to_string(leg.number);
}

std::string note_behind(const CardLeg& leg, LegNotes notes) {
  switch (notes) {
    case LegNotes::in_front:
      break;
    case LegNotes::warnings_in_front: {
      std::string rest = notices_of(leg, NoticeKind::help);
      add(rest, card::ahead_line(leg));
      return rest;
    }
    case LegNotes::behind:
      return all_of(leg);
  }
  return "";
}

TableRow leg_row(const CardLeg& leg, LegNotes notes) {
  const std::string binding =
      leg.binding_check +
      (leg.binding_at ? " " + card::where_text({*leg.binding_at, *leg.binding_at}, leg.length)
                      : "");
  const std::string note = notes == LegNotes::in_front ? "" : note_place(leg);
  return {
      .cells = {{.strong = std::to_string(leg.number),
                 .plain = note.empty() ? "" : "note",
                 .link = note},
                trail_cell(leg),
                {card::distance_text(leg.length),
                 "+" + card::distance_text(leg.climb) + " \u2212" + card::distance_text(leg.drop)},
                steepness_cell(leg.up),
                steepness_cell(leg.down),
                steepness_cell(leg.across),
                {"", card::share_text(leg.binding_share) + " " + binding},
                {card::speed_limit_text(leg.speed), card::duration_text(leg.time)}},
      .note = note_in_front(leg, notes),
      .place = row_place(leg),
      .note_link = note};
}

std::vector<TableColumn> leg_columns(double width_pt) {
  std::vector<TableColumn> columns{{"", 24, Align::right},
                                   {"Leg; map bearing, to", 0, Align::left},
                                   {"Length", 58, Align::left},
                                   {"Up", 73, Align::left},
                                   {"Down", 73, Align::left},
                                   {"Across", 73, Align::left},
                                   {"Share, binding", 82, Align::left},
                                   {"At most", 53, Align::left}};
  double others = 0.0;
  for (const TableColumn& column : columns) {
    others += column.width_pt;
  }
  columns[1].width_pt = width_pt - others;
  return columns;
}

}  // namespace rimehaul::ports::cairo
