#include "card/card_text.h"

#include <algorithm>

#include "card/card_lines.h"
#include "card/figures.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

constexpr int kLabelWidth = 12;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

void leg_item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({4, 10, label}, text);
}

void write_head(const RouteCard& card, Sheet& sheet) {
  sheet.both_ends({"ROUTE CARD", card.site});
  sheet.paragraph(card.title);
  sheet.rule('=');
  item(sheet, verdict_word(card.verdict), verdict_line(card));
  if (!card.permitted.empty()) {
    item(sheet, "Permitted", "by " + card.permitted_by + ":");
    for (const std::string& decision : card.permitted) {
      item(sheet, "", decision);
    }
  }
}

void write_rig(const RouteCard& card, Sheet& sheet) {
  if (card.issue) {
    item(sheet, "Issue", issue_line(*card.issue));
  }
  item(sheet, "Rig", rig_line(card));
  item(sheet, "Load", load_line(card));
  item(sheet, "Leave", leave_line(card));
  for (const LabelledLine& line : departure_lines_of(card)) {
    item(sheet, line.label, line.text);
  }
  item(sheet, "Way", way_line(card));
  for (const std::string& warning : card.fuel_warnings) {
    item(sheet, "FUEL", warning);
  }
  item(sheet, "Snow", snow_line(card));
  item(sheet, "Weather", words::weather(card.weather));
}

std::string steepness_line(std::string_view way, const std::optional<passage::Steepness>& found) {
  return std::string{way} + " " + (found ? steepness_text(*found) : std::string{"unknown"});
}

void write_leg(const CardLeg& leg, Sheet& sheet) {
  const std::string number = std::to_string(leg.number);
  const std::string right_set = std::string(number.size() < 2 ? 1U : 0U, ' ') + number;
  sheet.labelled({0, 4, right_set}, {leg.trail, verdict_word(leg.verdict)});
  sheet.labelled({4, 0, ""}, leg.from + " to " + leg.to + ", set out towards " +
                                 bearing_text(leg.start_bearing) + " from map north");
  sheet.labelled({4, 0, ""}, distance_text(leg.length) + ", climb " + distance_text(leg.climb) +
                                 ", drop " + distance_text(leg.drop) + "; at most " +
                                 speed_limit_text(leg.speed) + "; " + duration_text(leg.time) +
                                 "; fuel " + fuel_needed_text(leg.fuel));
  leg_item(sheet, "steepest", steepness_line("up", leg.up));
  leg_item(sheet, "", steepness_line("down", leg.down));
  leg_item(sheet, "", steepness_line("across", leg.across));
  leg_item(sheet, "binds", binding_line(leg));
  std::string_view label = "mind";
  for (const Notice& notice : leg.notices) {
    leg_item(sheet, label, notice_line(notice, leg));
    label = "";
  }
  leg_item(sheet, "ahead", ahead_line(leg));
}

void write_back(const RouteCard& card, Sheet& sheet) {
  sheet.heading("PEOPLE");
  sheet.list("-", card.people);
  sheet.heading("BEFORE STARTING");
  sheet.list("[ ]", card.pre_start_checks);
  sheet.heading("PARKING");
  sheet.list("[ ]", card.parking_steps);
  sheet.heading("CAUTIONS");
  sheet.list("!", card.cautions);
  if (!card.orders.empty()) {
    sheet.heading("ORDERS IN FORCE");
    sheet.list("-", card.orders);
  }
  sheet.heading("ESTIMATES IN USE (not measured, not published)");
  sheet.list("-", card.estimates);
}

void write_sources(const RouteCard& card, Sheet& sheet) {
  sheet.heading("MADE FROM");
  item(sheet, "Made",
       local_text(card.made_from.made, card.local_clock) + "; judged again at " +
           std::to_string(card.places_rewalked) + " places before printing");
  item(sheet, "Map", card.map_frame + "; heights above " + card.vertical_datum);
  for (const std::string& note : card.heights_notes) {
    item(sheet, "Heights", note);
  }
  for (const InputFile& input : card.made_from.inputs) {
    item(sheet, input.what, name_and_date(input, card.local_clock) + ", SHA-256");
    item(sheet, "", input.digest.hex());
  }
  for (const std::string& version : card.made_from.versions) {
    item(sheet, "Program", version);
  }
}

}  // namespace

std::string text_of(const RouteCard& card, int columns) {
  Sheet sheet{columns};
  write_head(card, sheet);
  write_rig(card, sheet);
  sheet.paragraph(words::planning_aid());
  sheet.heading("LEGS  (\"up to\" counts the heights' error, " +
                confidence_text(card.confidence_k) + " sure)");
  for (const CardLeg& leg : card.legs) {
    write_leg(leg, sheet);
  }
  sheet.heading("TURN BACK OR STOP IF");
  sheet.list("-", card.turn_back_triggers);
  sheet.heading("RADIO");
  sheet.list("-", card.radio);
  sheet.heading("IF IT GOES WRONG");
  sheet.list("-", card.help);
  write_back(card, sheet);
  write_sources(card, sheet);
  return sheet.text();
}

}  // namespace rimehaul::card
