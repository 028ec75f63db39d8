// The loads that a way takes, as text for a terminal or a plain printer.
#include <algorithm>
#include <cmath>

#include "base/joined.h"
#include "card/figures.h"
#include "card/layout.h"
#include "card/payload_report.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

constexpr int kLabelWidth = 12;
constexpr int kPairWidth = 7;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

/// Open loads are whole kilograms.
std::string kilograms(units::Kilograms load) {
  return std::to_string(std::lround(load.value())) + " kg";
}

/// ", Birk Climb at 789 m", or nothing where the check speaks of no place.
std::string place_words(const PayloadFinding& found) {
  const PayloadPlace& place = found.place;
  if (!words::has_place(found.finding.check)) {
    return "";
  }
  if (!place.turn_from.empty()) {
    return ", turn from " + place.turn_from + " into " + place.trail + " (" + place.from + ")";
  }
  return ", " + place.trail + " at " + std::to_string(std::lround(place.trail_at.value())) +
         " m of its length";
}

std::string words_of(const PayloadFinding& found) {
  const std::string outcome = found.stand == passage::Stand::asks && !found.decision.empty()
                                  ? "asks for a decision: " + found.decision
                                  : words::outcome(found.finding);
  return std::string{passage::facts_of(found.finding.check).title} + ", " + outcome +
         place_words(found);
}

std::string words_of(const PayloadClosed& closed) {
  return closed.at.has_value() ? words_of(*closed.at) : closed.fuel_short;
}

void write_end(Sheet& sheet, std::string_view which, const PayloadEnd& end) {
  sheet.labelled({2, 8, which}, kilograms(end.load) + ": " + words_of(end.binds));
  const bool least = which == "from";
  if (end.beyond.has_value()) {
    const double beyond = end.load.value() + (least ? -1.0 : 1.0);
    sheet.labelled(
        {4, 8, least ? "less" : "more"},
        "closed at " + kilograms(units::Kilograms{beyond}) + ": " + words_of(*end.beyond));
  }
}

void write_ranges(Sheet& sheet, const std::string& title, const std::vector<PayloadRange>& ranges) {
  sheet.heading(title);
  if (ranges.empty()) {
    sheet.paragraph("  CLOSED with every load, all else as asked");
  }
  for (const PayloadRange& range : ranges) {
    sheet.paragraph("  OPEN from " + kilograms(range.from.load) + " to " +
                    kilograms(range.to.load));
    write_end(sheet, "from", range.from);
    write_end(sheet, "to", range.to);
  }
}

/// One letter for each check that closes some pair, in the order in which they are met.
std::vector<std::string> closing_checks(const PayloadGrid& grid) {
  std::vector<std::string> checks;
  for (const PayloadCell& cell : grid.cells) {
    if (!cell.open && std::ranges::find(checks, cell.closed_by) == checks.end()) {
      checks.push_back(cell.closed_by);
    }
  }
  return checks;
}

std::string letter_of(std::size_t index) {
  return index < 26 ? std::string(1, static_cast<char>('a' + index)) : "#";
}

void write_grid(Sheet& sheet, const PayloadGrid& grid) {
  if (grid.cells.empty()) {
    return;
  }
  const std::vector<std::string> checks = closing_checks(grid);
  sheet.heading("BOTH AT ONCE (share of the limit, or a letter for what closes first)");
  std::string head = filled("  bed | towed", 2 * kPairWidth);
  for (const units::Kilograms towed : grid.towed) {
    head += set_right(kilograms(towed), kPairWidth);
  }
  sheet.as_it_stands(head);
  for (std::size_t i = 0; i < grid.bed.size(); ++i) {
    std::string line = filled(set_right(kilograms(grid.bed[i]), kPairWidth), 2 * kPairWidth);
    for (std::size_t j = 0; j < grid.towed.size(); ++j) {
      const PayloadCell& cell = grid.cells[i * grid.towed.size() + j];
      const auto index =
          static_cast<std::size_t>(std::ranges::find(checks, cell.closed_by) - checks.begin());
      line += set_right(cell.open ? share_text(cell.share) : letter_of(index), kPairWidth);
    }
    sheet.as_it_stands(line);
  }
  for (std::size_t i = 0; i < checks.size(); ++i) {
    sheet.labelled({2, 4, letter_of(i)}, "closed: " + checks[i]);
  }
}

void write_question(Sheet& sheet, const PayloadReport& report) {
  item(sheet, "Way",
       base::joined(report.way, ", ") + "; " + distance_text(report.length) +
           (report.found_for.empty() ? "" : "; " + report.found_for));
  item(sheet, "Rig", report.rig + "; driver level " + report.driver_level);
  item(sheet, "Asked with", words::load(report.load, report.trailer));
  item(sheet, report.open_as_asked ? "OPEN" : "CLOSED",
       report.open_as_asked ? words_of(report.binds_as_asked) : words_of(report.closed_as_asked));
  item(sheet, "Allowed", allowed_text(report.allowed_share) + " of every limit");
  item(sheet, "Leave", local_and_zone_text(report.depart, report.local_clock));
  item(sheet, "Snow",
       (report.snow.empty() ? "unknown, or no load is open" : words::snow_states(report.snow)) +
           "; " + told_text(report.snow_told_by, report.local_clock));
  item(sheet, "Weather", words::weather(report.weather));
  if (!report.permitted_by.empty()) {
    item(sheet, "Decisions", "taken by " + report.permitted_by);
  }
  item(sheet, "Judged",
       "every " + kilograms(report.step) +
           " up to the rating, and to the kilogram at every end; walked again at each (" +
           std::to_string(report.places_rewalked) +
           " places); with fuel for the way and the reserve");
}

}  // namespace

std::string text_of(const PayloadReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"PAYLOAD", report.site});
  sheet.paragraph(report.title);
  sheet.rule('=');
  write_question(sheet, report);
  sheet.paragraph(words::planning_aid());
  const bool towing = !report.trailer.empty();
  write_ranges(
      sheet, towing ? "ON THE BED, with " + kilograms(report.load.towed) + " towed" : "ON THE BED",
      report.bed);
  if (towing) {
    write_ranges(sheet, "ON THE TRAILER, with " + kilograms(report.load.bed) + " on the bed",
                 report.towed);
    write_grid(sheet, report.both);
  }
  sheet.heading("ESTIMATES IN USE");
  sheet.list("-", report.estimates);
  return sheet.text();
}

}  // namespace rimehaul::card
