// The head of the printed card: what it permits, to whom, when, in which snow.
#include <algorithm>

#include "card/card_lines.h"
#include "card/words.h"
#include "ports/cairo/card_parts.h"
#include "ports/cairo/way_line.h"

namespace rimehaul::ports::cairo {

namespace {

using card::RouteCard;

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
  const Canvas::Tag link = Canvas::Tag::link(canvas, row_place(card::tightest_leg(card)));
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
    y += canvas.write({column.left_pt + kLabel_pt, y},
                      {fact.words, {.size_pt = 8.5}, column.width_pt - kLabel_pt});
    y += 1;
  }
  return y;
}

std::vector<Fact> facts_of_rig(const RouteCard& card) {
  std::vector<Fact> facts{{"Rig", card::rig_line(card)},
                          {"Load", card::load_line(card)},
                          {"Leave", card::leave_line(card)}};
  for (const card::LabelledLine& line : card::departure_lines_of(card)) {
    facts.push_back({line.label, line.text});
  }
  return facts;
}

std::vector<Fact> facts_of_way(const RouteCard& card) {
  std::vector<Fact> facts;
  if (card.issue) {
    facts.push_back({"Issue", card::issue_line(*card.issue)});
  }
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

}  // namespace

double write_head(Canvas& canvas, const Box& body, const card::CardSheet& sheet) {
  const double title = write_title(canvas, body, sheet);
  const double verdict = write_verdict(canvas, body, title, sheet.card);
  return write_all_facts(canvas, body, verdict, sheet.card);
}

}  // namespace rimehaul::ports::cairo
