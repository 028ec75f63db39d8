// The back of the printed card: when to turn back, checks, parking, cautions and inputs.
#include <algorithm>

#include "base/joined.h"
#include "card/card_lines.h"
#include "card/figures.h"
#include "ports/cairo/card_parts.h"
#include "ports/cairo/flow.h"

namespace rimehaul::ports::cairo {

namespace {

using card::RouteCard;

constexpr double kSymbol_pt = 92.0;
/// Of each input's digest; the record has them whole.
constexpr std::size_t kDigits = 12;

/// What the card rests on, run on to save room.
std::vector<std::string> made_from(const RouteCard& card) {
  std::vector<std::string> inputs;
  for (const card::InputFile& input : card.made_from.inputs) {
    inputs.push_back(input.what + " " + card::name_and_date(input, card.local_clock) + ", " +
                     input.digest.hex().substr(0, kDigits));
  }
  return {"made " + card::local_text(card.made_from.made, card.local_clock) + "; judged again at " +
              std::to_string(card.places_rewalked) + " places before printing; map " +
              card.map_frame + "; heights above " + card.vertical_datum + "; " +
              base::joined(card.heights_notes, "; "),
          base::joined(inputs, "; ") +
              (card.made_from.versions.empty()
                   ? ""
                   : "; " + card.made_from.versions.front() + ", libraries in the record")};
}

/// Dark modules on white, with the quiet zone of four modules around them.
void draw_symbol(Canvas& canvas, const Box& box, const card::QrSymbol& symbol) {
  const double module_pt = std::min(box.width_pt, box.height_pt) / (symbol.side + 8);
  for (int row = 0; row < symbol.side; ++row) {
    int from = 0;
    for (int column = 0; column <= symbol.side; ++column) {
      const bool dark =
          column < symbol.side &&
          symbol.dark[static_cast<std::size_t>(row) * static_cast<std::size_t>(symbol.side) +
                      static_cast<std::size_t>(column)];
      if (!dark) {
        if (column > from) {
          canvas.box({box.left_pt + (from + 4) * module_pt, box.top_pt + (row + 4) * module_pt,
                      (column - from) * module_pt, module_pt},
                     kInk);
        }
        from = column + 1;
      }
    }
  }
}

void write_notes(Flow& flow, const RouteCard& card, const CardPlan& plan) {
  bool any = false;
  for (std::size_t i = 0; i < card.legs.size(); ++i) {
    const card::CardLeg& leg = card.legs[i];
    const std::string note = note_behind(leg, plan.notes[i]);
    if (note.empty()) {
      continue;
    }
    if (!any) {
      flow.heading("Notes to the legs in front");
      any = true;
    }
    flow.item({.text = "Note " + std::to_string(leg.number) + ", " + leg.trail + ": " + note,
               .place = note_place(leg),
               .link = row_place(leg)});
  }
}

void write_imprint(Canvas& canvas, Flow& flow, const card::CardSheet& sheet) {
  const Box room = flow.keep(kSymbol_pt);
  {
    const Canvas::Tag tag{canvas, "P"};
    canvas.write({room.left_pt, room.top_pt + 8},
                 {"This card: number " + sheet.number + ", record SHA-256 " + sheet.digest +
                      ". The symbol says the same to a camera.",
                  {.size_pt = 8},
                  room.width_pt - kSymbol_pt - 4});
  }
  const auto figure =
      Canvas::Tag::figure(canvas, "QR symbol with the number and the digest of this card.");
  draw_symbol(canvas, {room.right_pt() - kSymbol_pt, room.top_pt, kSymbol_pt, kSymbol_pt},
              sheet.qr);
}

}  // namespace

void draw_back(Canvas& canvas, const card::CardSheet& sheet, const CardPlan& plan, Pages& pages) {
  const RouteCard& card = sheet.card;
  Flow flow{canvas, {.area = pages.area(), .count = 2}, [&] { return pages.next(); }};
  write_notes(flow, card, plan);
  flow.write({"Turn back or stop if", ItemMark::warning, card.turn_back_triggers});
  flow.write({"Radio", ItemMark::dash, card.radio});
  flow.write({"If it goes wrong", ItemMark::dash, card.help});
  flow.write({"People", ItemMark::dash, card.people});
  flow.write({"Before starting", ItemMark::tick_box, card.pre_start_checks});
  flow.write({"Parking", ItemMark::tick_box, card.parking_steps});
  flow.write({"Cautions", ItemMark::warning, card.cautions});
  flow.write({"Orders in force", ItemMark::dash, card.orders});
  if (!card.estimates.empty()) {
    flow.write({"Estimates in use (not measured, not published)",
                ItemMark::none,
                {base::joined(card.estimates, "; ")}});
  }
  flow.write({"Made from (digests SHA-256, whole in the record)", ItemMark::none, made_from(card)});
  write_imprint(canvas, flow, sheet);
}

}  // namespace rimehaul::ports::cairo
