// The front of the printed card: verdict, map, grades and legs, for driving by.
#include <algorithm>

#include "card/card_lines.h"
#include "card/figures.h"
#include "card/words.h"
#include "ports/cairo/card_parts.h"
#include "ports/cairo/flow.h"
#include "ports/cairo/map_drawing.h"
#include "ports/cairo/profile_drawing.h"

namespace rimehaul::ports::cairo {

namespace {

using card::CardLeg;
using card::RouteCard;

constexpr double kPointsPerMetre = 72.0 / 0.0254;
constexpr double kProfile_pt = 104.0;
constexpr double kGap_pt = 5.0;

double write_title(Canvas& canvas, const Box& body, const card::CardSheet& sheet) {
  const double right_pt = 200;
  canvas.write({body.left_pt, body.top_pt}, {"ROUTE CARD   " + sheet.card.site,
                                             {.size_pt = 8.5, .weight = Weight::bold},
                                             body.width_pt - right_pt});
  const double first = canvas.write(
      {body.right_pt() - right_pt, body.top_pt},
      {sheet.number, {.size_pt = 8.5, .align = Align::right, .face = Face::mono}, right_pt});
  const double site = canvas.height_of({"ROUTE CARD   " + sheet.card.site,
                                        {.size_pt = 8.5, .weight = Weight::bold},
                                        body.width_pt - right_pt});
  double y = body.top_pt + std::max(first, site) + 1;
  const Canvas::Tag tag{canvas, "H1"};
  y += canvas.write({body.left_pt, y},
                    {sheet.card.title, {.size_pt = 17, .weight = Weight::bold}, body.width_pt});
  return y + 2;
}

double write_verdict(Canvas& canvas, const Box& body, double y, const RouteCard& card) {
  const Canvas::Tag tag{canvas, "P"};
  draw_way(canvas, {{body.left_pt, y + 8}, {body.left_pt + 44, y + 8}}, card.verdict);
  const Lettering word{.size_pt = 12, .weight = Weight::bold};
  const std::string verdict = card::verdict_word(card.verdict);
  const double word_pt = canvas.width_of(verdict, word);
  canvas.write({body.left_pt + 52, y}, {verdict, word, word_pt + 4});
  std::string words = card::verdict_line(card);
  if (!card.permitted.empty()) {
    words += ". Permitted by " + card.permitted_by;
    for (const std::string& decision : card.permitted) {
      words += (&decision == &card.permitted.front() ? ": " : "; ") + decision;
    }
  }
  const double left = body.left_pt + 62 + word_pt;
  const double height =
      canvas.write({left, y + 2.5}, {words, {.size_pt = 9.5}, body.right_pt() - left});
  return y + std::max(18.0, height + 4);
}

struct Fact {
  std::string label;
  std::string words;
};

double write_facts(Canvas& canvas, const Box& column, const std::vector<Fact>& facts) {
  constexpr double kLabel_pt = 42.0;
  double y = column.top_pt;
  for (const Fact& fact : facts) {
    const Canvas::Tag tag{canvas, "P"};
    canvas.write({column.left_pt, y},
                 {fact.label, {.size_pt = 8.5, .weight = Weight::bold}, kLabel_pt});
    y += canvas.write(
        {column.left_pt + kLabel_pt, y},
        {with_degree_signs(fact.words), {.size_pt = 8.5}, column.width_pt - kLabel_pt});
    y += 1;
  }
  return y;
}

std::vector<Fact> facts_of_rig(const RouteCard& card) {
  return {{"Rig", card::rig_line(card)},
          {"Load", card::load_line(card)},
          {"Leave", card::leave_line(card)}};
}

std::vector<Fact> facts_of_way(const RouteCard& card) {
  std::vector<Fact> facts;
  for (const std::string& warning : card.fuel_warnings) {
    facts.push_back({"FUEL", warning});
  }
  facts.push_back({"Way", card::way_line(card)});
  facts.push_back({"Snow", card::snow_line(card)});
  facts.push_back({"Weather", card::words::weather(card.weather)});
  return facts;
}

double write_all_facts(Canvas& canvas, const Box& body, double y, const RouteCard& card) {
  const double half = body.width_pt * 0.44;
  const double left = write_facts(canvas, {body.left_pt, y, half - 8, 0}, facts_of_rig(card));
  const double right =
      write_facts(canvas, {body.left_pt + half, y, body.width_pt - half, 0}, facts_of_way(card));
  return std::max(left, right) + kGap_pt;
}

TableCell steepness_cell(const std::optional<passage::Steepness>& steepness) {
  if (!steepness) {
    return {"unknown", ""};
  }
  const std::string up_to = card::up_to_text(*steepness);
  if (up_to.empty()) {
    return {"", "none"};
  }
  return {with_degree_signs(card::found_text(*steepness)), with_degree_signs("to " + up_to)};
}

TableRow row_of(const CardLeg& leg, Minding minding) {
  const std::string binding =
      leg.binding_check +
      (leg.binding_at ? " " + card::where_text({*leg.binding_at, *leg.binding_at}, leg.length)
                      : "");
  return {{{std::to_string(leg.number), ""},
           {leg.trail + "  " + with_degree_signs(card::bearing_text(leg.start_bearing)),
            leg.from + " to " + leg.to},
           {card::distance_text(leg.length),
            "+" + card::distance_text(leg.climb) + " \u2212" + card::distance_text(leg.drop)},
           steepness_cell(leg.up),
           steepness_cell(leg.down),
           steepness_cell(leg.across),
           {"", card::share_text(leg.binding_share) + " " + binding},
           {card::speed_limit_text(leg.speed), card::duration_text(leg.time)}},
          minding == Minding::in_front ? to_mind(leg) : ""};
}

std::vector<TableColumn> leg_columns(double width_pt) {
  std::vector<TableColumn> columns{{"", 16, Align::right},
                                   {"Leg, set out towards", 0, Align::left},
                                   {"Length", 58, Align::left},
                                   {"Up", 69, Align::left},
                                   {"Down", 69, Align::left},
                                   {"Across", 69, Align::left},
                                   {"Share, binding", 76, Align::left},
                                   {"At most", 50, Align::left}};
  double others = 0.0;
  for (const TableColumn& column : columns) {
    others += column.width_pt;
  }
  columns[1].width_pt = width_pt - others;
  return columns;
}

std::vector<TableRow> rows_of(const RouteCard& card, Minding minding) {
  std::vector<TableRow> rows;
  rows.reserve(card.legs.size());
  for (const CardLeg& leg : card.legs) {
    rows.push_back(row_of(leg, minding));
  }
  return rows;
}

/// In front where all legs have room for what is to be minded on them.
Minding minding_in(const Box& room, Canvas& canvas, const RouteCard& card) {
  const Table table{canvas, leg_columns(room.width_pt)};
  double height = table.head_height();
  for (const TableRow& row : rows_of(card, Minding::in_front)) {
    height += table.height_of(row);
  }
  return height <= room.height_pt ? Minding::in_front : Minding::behind;
}

Minding write_legs(Canvas& canvas, double y, const RouteCard& card, Pages& pages) {
  const Box body = pages.area();
  const Box room{body.left_pt, y, body.width_pt, body.bottom_pt() - y};
  const Minding minding = minding_in(room, canvas, card);
  Flow flow{canvas, {.area = room}, [&pages] { return pages.next(); }};
  flow.table(leg_columns(body.width_pt), rows_of(card, minding));
  return minding;
}

double write_map(Canvas& canvas, const Box& body, double y, const card::CardSheet& sheet) {
  const card::MapPaper paper = card::card_map_paper(sheet.card.legs.size());
  const double width = paper.width.value() * kPointsPerMetre;
  const double height = paper.height.value() * kPointsPerMetre;
  {
    const auto figure = Canvas::Tag::figure(
        canvas, "Map of the route with its numbered legs; the legs are listed in the table.");
    draw_map(canvas, {body.left_pt, y, width, height}, sheet.map);
  }
  // Source and date; the whole list stands behind.
  const auto& notes = sheet.card.heights_notes;
  std::string source = "Heights: " + (notes.empty() ? "not stated" : notes.front());
  source += sheet.map.north_off_deg ? ". N: true north." : ". N: map north.";
  source += " Chequered: no heights.";
  const Canvas::Tag tag{canvas, "P"};
  return y + height +
         canvas.write({body.left_pt, y + height + 1},
                      {source, {.size_pt = 8, .colour = kQuiet}, body.width_pt}) +
         3;
}

double write_profile(Canvas& canvas, const Box& body, double y, const card::CardSheet& sheet) {
  {
    const auto figure = Canvas::Tag::figure(
        canvas,
        "Height and grade along the route with the rig's limits; the steepest of each leg "
        "stands in the table.");
    draw_profile(canvas, {body.left_pt, y, body.width_pt, kProfile_pt}, sheet.profile);
  }
  const Canvas::Tag tag{canvas, "P"};
  y += kProfile_pt;
  return y +
         canvas.write({body.left_pt, y},
                      {"Height, and grade as steep as it may be (" +
                           card::confidence_text(sheet.card.confidence_k) +
                           " sure). Ticked lines: steepest climb and descent of this rig in "
                           "this snow, on ground without cross-slope.",
                       {.size_pt = 8, .colour = kQuiet},
                       body.width_pt}) +
         kGap_pt;
}

}  // namespace

std::string to_mind(const CardLeg& leg) {
  std::string all;
  for (const card::Notice& notice : leg.notices) {
    all += card::notice_line(notice, leg) + "; ";
  }
  return all + card::ahead_line(leg);
}

Minding draw_front(Canvas& canvas, const card::CardSheet& sheet, Pages& pages) {
  const Box body = pages.area();
  double y = write_title(canvas, body, sheet);
  y = write_verdict(canvas, body, y, sheet.card);
  y = write_all_facts(canvas, body, y, sheet.card);
  y = write_map(canvas, body, y, sheet);
  y = write_profile(canvas, body, y, sheet);
  return write_legs(canvas, y, sheet.card, pages);
}

}  // namespace rimehaul::ports::cairo
