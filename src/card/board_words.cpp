#include "card/board_words.h"

#include <algorithm>
#include <cmath>

#include "base/joined.h"
#include "card/figures.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

bool is_open(const BoardRow& row) {
  return row.verdict == passage::Verdict::open;
}

/// Whether the binding finding is told by its share alone.
bool by_share(const BoardRow& row) {
  return row.binding && row.binding->share && row.binding->missing.empty() &&
         row.binding->refused.empty() && row.binding->asks.empty();
}

std::string loads_words(const BoardRow& row) {
  std::string words;
  for (const std::string& loads : words::opens_with_loads(row.loads)) {
    words += (words.empty() ? "opens with " : "; or with ") + loads +
             (row.and_decision ? " and a decision" : "");
  }
  return words;
}

}  // namespace

std::string validity_words(const Validity& validity) {
  if (validity.valid_until) {
    return "the weather report runs out " + local_text(*validity.valid_until, validity.local_clock);
  }
  return validity.ran_out ? "the site's report ran out " +
                                local_text(*validity.ran_out, validity.local_clock) + ", before it"
                          : "no report says how long this weather holds";
}

std::vector<LabelledLine> basis_of(const BoardReport& report) {
  return {{"Load", words::load(report.load, report.trailer)},
          {"Leave", local_and_zone_text(report.depart, report.local_clock)},
          {"Weather", words::weather(report.weather)},
          {"Snow", "each class everywhere; " + told_text(report.told_by, report.local_clock)},
          {"Valid", "for that hour; " + validity_words({.valid_until = report.snow_valid_until,
                                                        .ran_out = report.report_ran_out,
                                                        .local_clock = report.local_clock})},
          {"Allowed", allowed_text(report.allowed_share) + " of every limit"}};
}

std::vector<LabelledLine> meanings() {
  return {
      {"Open", "as the rig stands, by the safest way, with its largest share of a limit"},
      {"Restricted", "with the load told in the note, or by a decision, or by both"},
      {"Closed", "all else: no other load that was tried opens it; what is not known is closed"}};
}

std::vector<std::string> board_cautions() {
  std::vector<std::string> cautions = words::cautions();
  cautions.erase(cautions.begin());  // it speaks of a card; a board says the same at its head
  return cautions;
}

std::vector<snow::SnowState> columns_on(snow::Surface surface, const BoardReport& report) {
  std::vector<snow::SnowState> columns = report.snows;
  std::erase_if(columns,
                [surface](const snow::SnowState& state) { return state.surface != surface; });
  return columns;
}

std::optional<double> share_in_cell(const BoardRow& row) {
  if (is_open(row) || !row.decision.empty()) {
    return row.worst_share;
  }
  return by_share(row) ? row.binding->share : std::nullopt;
}

std::string cell_percent(double share) {
  constexpr double kMost = 99.99;
  if (!std::isfinite(share)) {
    return "?";
  }
  if (share > kMost) {
    return ">9999";
  }
  const std::string whole = units::text_of(share * 100.0, 0, units::Round::up);
  return whole != "100" || share == 1.0 ? whole : share < 1.0 ? "<100" : ">100";
}

std::string cell_minutes(units::Seconds time) {
  constexpr double kSecondsInMinute = 60.0;
  return units::text_of(time.value() / kSecondsInMinute, 0, units::Round::up) + " min";
}

std::vector<std::string> made_from_lines(const BoardMaking& making) {
  std::vector<std::string> lines{"made " + local_text(making.made_from.made, making.local_clock) +
                                 "; what is not closed was judged again at " +
                                 std::to_string(making.places_rewalked) +
                                 " places before printing"};
  for (const InputFile& input : making.made_from.inputs) {
    lines.push_back(input.what + ": " + name_and_date(input, making.local_clock) + ", SHA-256 " +
                    input.digest.hex());
  }
  lines.push_back(base::joined(making.made_from.versions, ", "));
  return lines;
}

std::string verdict_words(const BoardRow& row) {
  const std::string verdict = passage::words_for(row.verdict);
  return is_open(row) ? verdict + " " + cell_percent(row.worst_share) + " %" : verdict;
}

std::optional<passage::Verdict> sign_of(const BoardRow& row) {
  const bool unknown = row.verdict == passage::Verdict::closed && row.binding &&
                       row.stand == passage::Stand::missing;
  return unknown ? std::nullopt : std::optional{row.verdict};
}

int BoardNotes::number_of(const BoardRow& row) {
  Note note{.reason = reason_of(row), .lacks = {}};
  if (row.binding && !by_share(row)) {
    note.lacks = words::outcome(*row.binding);
  }
  note.opens_by = loads_words(row);
  const auto same = std::ranges::find(notes_, note);
  const Note& kept = same == notes_.end() ? notes_.emplace_back(note) : *same;
  return static_cast<int>(&kept - notes_.data()) + 1;
}

std::string BoardNotes::mark_of(const BoardRow& row) {
  return "(" + std::to_string(number_of(row)) + ")";
}

std::vector<LabelledLine> BoardNotes::lines() const {
  std::vector<LabelledLine> lines;
  for (std::size_t i = 0; i < notes_.size(); ++i) {
    const Note& note = notes_[i];
    lines.push_back({"(" + std::to_string(i + 1) + ")",
                     note.reason + (note.lacks.empty() ? "" : ": " + note.lacks) +
                         (note.opens_by.empty() ? "" : "; " + note.opens_by)});
  }
  return lines;
}

}  // namespace rimehaul::card
