// The back of the printed card: when to turn back, checks, parking, cautions and inputs.
#include <algorithm>

#include "card/figures.h"
#include "ports/cairo/card_parts.h"
#include "ports/cairo/flow.h"

namespace rimehaul::ports::cairo {

namespace {

using card::RouteCard;

constexpr double kSymbol_pt = 92.0;
/// Of each input's digest; the record has them whole.
constexpr std::size_t kDigits = 16;

std::vector<std::string> made_from(const RouteCard& card) {
  std::vector<std::string> lines{
      "made " + card::local_text(card.made, card.utc_offset_minutes) + "; judged again at " +
          std::to_string(card.places_rewalked) + " places before printing",
      "map " + card.map_frame + "; heights above " + card.vertical_datum};
  lines.insert(lines.end(), card.heights_notes.begin(), card.heights_notes.end());
  for (const card::InputFile& input : card.inputs) {
    lines.push_back(input.what + ": " + card::name_and_date(input, card.utc_offset_minutes) + ", " +
                    input.digest.hex().substr(0, kDigits));
  }
  std::string program;
  for (const std::string& version : card.versions) {
    program += (program.empty() ? "" : ", ") + version;
  }
  lines.push_back(program);
  return lines;
}

std::vector<std::string> with_signs(std::vector<std::string> lines) {
  std::ranges::transform(lines, lines.begin(), with_degree_signs);
  return lines;
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

}  // namespace

void draw_back(Canvas& canvas, const card::CardSheet& sheet, Pages& pages, Minding minding) {
  const RouteCard& card = sheet.card;
  Flow flow{canvas, {.area = pages.area(), .count = 2}, [&] { return pages.next(); }};
  if (minding == Minding::behind) {
    std::vector<std::string> lines;
    for (const card::CardLeg& leg : card.legs) {
      lines.push_back(std::to_string(leg.number) + " " + leg.trail + ": " + to_mind(leg));
    }
    flow.write({"On the way, leg by leg", ItemMark::none, lines});
  }
  flow.write({"Turn back or stop if", ItemMark::warning, with_signs(card.turn_back_triggers)});
  flow.write({"Radio", ItemMark::dash, with_signs(card.radio)});
  flow.write({"If it goes wrong", ItemMark::dash, card.help});
  flow.write({"People", ItemMark::dash, card.people});
  flow.write({"Before starting", ItemMark::tick_box, card.pre_start_checks});
  flow.write({"Parking", ItemMark::tick_box, card.parking_steps});
  flow.write({"Cautions", ItemMark::warning, with_signs(card.cautions)});
  flow.write({"Estimates in use (not measured, not published)", ItemMark::dash,
              with_signs(card.estimates)});
  flow.write({"Made from (digests SHA-256, whole in the record)", ItemMark::dash,
              with_signs(made_from(card))});
  const Box room = flow.keep(kSymbol_pt);
  const double text_pt = room.width_pt - kSymbol_pt - 4;
  {
    const Canvas::Tag tag{canvas, "P"};
    canvas.write({room.left_pt, room.top_pt + 8},
                 {"This card: number " + sheet.number + ", record SHA-256 " + sheet.digest +
                      ". The symbol says the same to a camera.",
                  {.size_pt = 8},
                  text_pt});
  }
  const auto figure =
      Canvas::Tag::figure(canvas, "QR symbol with the number and the digest of this card.");
  draw_symbol(canvas, {room.right_pt() - kSymbol_pt, room.top_pt, kSymbol_pt, kSymbol_pt},
              sheet.qr);
}

}  // namespace rimehaul::ports::cairo
