#include "card/board_words.h"

#include <algorithm>

#include "card/figures.h"
#include "card/words.h"

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

std::vector<LabelledLine> basis_of(const BoardReport& report) {
  return {
      {"Load", words::load(report.load, report.trailer)},
      {"Leave", local_and_zone_text(report.depart, report.utc_offset_minutes)},
      {"Weather", words::weather(report.weather)},
      {"Snow", "each class everywhere; " + told_text(report.told_by, report.utc_offset_minutes)},
      {"Valid", report.snow_valid_until
                    ? "for that hour; the weather report runs out " +
                          local_text(*report.snow_valid_until, report.utc_offset_minutes)
                    : "for that hour; no report says how long this weather holds"},
      {"Allowed", allowed_text(report.allowed_share) + " of every limit"},
      {"Open",
       "as the rig stands, by the safest way: its largest share of a limit, and its "
       "time"},
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

std::string verdict_words(const BoardRow& row) {
  const std::string verdict = passage::words_for(row.verdict);
  return is_open(row) ? verdict + " " + share_text(row.worst_share) : verdict;
}

std::optional<passage::Verdict> sign_of(const BoardRow& row) {
  const bool unknown = row.verdict == passage::Verdict::closed && row.binding &&
                       row.stand == passage::Stand::missing;
  return unknown ? std::nullopt : std::optional{row.verdict};
}

std::string binding_words(const BoardRow& row) {
  if (!row.binding) {
    return "";
  }
  std::string words{passage::facts_of(row.binding->check).title};
  if (is_open(row)) {
    return words + ", " + minutes_text(row.time);
  }
  if (!row.decision.empty()) {
    return words + ": by decision, " + minutes_text(row.time);
  }
  if (by_share(row)) {
    words += " " + share_text(*row.binding->share);
  }
  const std::string loads = loads_words(row);
  return loads.empty() ? words : words + "; " + loads;
}

std::string BoardNotes::mark_of(const BoardRow& row) {
  Note note{.reason = reason_of(row), .lacks = {}};
  if (row.binding && !by_share(row)) {
    note.lacks = words::outcome(*row.binding);
  }
  note.opens_by = loads_words(row);
  const auto same = std::ranges::find_if(notes_, [&](const Note& other) {
    return other.reason == note.reason && other.lacks == note.lacks &&
           other.opens_by == note.opens_by;
  });
  Note& kept = same == notes_.end() ? notes_.emplace_back(note) : *same;
  if (by_share(row)) {
    kept.share = std::max(kept.share, *row.binding->share);
  }
  return "(" + std::to_string(&kept - notes_.data() + 1) + ")";
}

std::vector<LabelledLine> BoardNotes::lines() const {
  std::vector<LabelledLine> lines;
  for (std::size_t i = 0; i < notes_.size(); ++i) {
    const Note& note = notes_[i];
    std::string text = note.reason;
    if (!note.lacks.empty()) {
      text += ": " + note.lacks;
    } else if (note.share > 0.0) {
      text += ": at most " + share_text(note.share) + " of the limit";
    }
    text += note.opens_by.empty() ? "" : "; " + note.opens_by;
    lines.push_back({"(" + std::to_string(i + 1) + ")", text});
  }
  return lines;
}

}  // namespace rimehaul::card
