// The refusal as text: what would open a way first, then every cause once.
#include <algorithm>
#include <map>

#include "base/joined.h"
#include "card/departure_lines.h"
#include "card/figures.h"
#include "card/layout.h"
#include "card/refusal.h"
#include "card/words.h"

namespace rimehaul::card {

namespace {

using passage::Stand;

/// A label and the lines beside it; all but the first are told as another choice.
void choices(Sheet& sheet, Sheet::Label label, const std::vector<std::string>& lines) {
  for (const std::string& line : lines) {
    sheet.labelled(label, line);
    label.words = "or by";
  }
}

const passage::Finding& finding_at(const RefusedLeg& leg, const RefusalCause& cause) {
  const auto found = std::ranges::find_if(leg.findings, [&](const RefusedFinding& refused) {
    return refused.finding.check == cause.finding.check;
  });
  return found == leg.findings.end() ? leg.finding : found->finding;
}

/// Every trail where the cause holds, with the largest share met on it.
std::string trails_of(const RefusalCause& cause, const Refusal& refusal) {
  std::vector<std::string> order;
  std::map<std::string, std::optional<double>> shares;
  for (const std::size_t index : cause.places) {
    const RefusedLeg& leg = refusal.legs[index];
    const std::optional<double> share = finding_at(leg, cause).share;
    const auto [place, is_new] = shares.emplace(leg.trail, share);
    if (is_new) {
      order.push_back(leg.trail);
    } else if (share > place->second) {
      place->second = share;
    }
  }
  std::vector<std::string> parts;
  for (const std::string& trail : order) {
    const std::optional<double>& share = shares[trail];
    const bool own_share =
        share && cause.stand == Stand::exceeds && words::has_place(cause.finding.check);
    parts.push_back(trail + (own_share ? " " + share_text(*share) : ""));
  }
  return base::joined(parts, ", ");
}

std::string worst_place(const RefusalCause& cause, const Refusal& refusal) {
  const RefusedLeg& leg = refusal.legs[cause.worst];
  const units::Metres at = cause.finding.at;
  if (!leg.turn_from.empty()) {
    return "turn from " + leg.turn_from + " into " + leg.trail;
  }
  return leg.trail + ", " + leg.from + " to " + leg.to + ", " +
         where_text({at, at}, leg.span.to - leg.span.from);
}

std::string nothing_opens(const Refusal& refusal) {
  return words::nothing_opens(refusal.towing ? words::Towing::yes : words::Towing::no);
}

void write_cause(const RefusalCause& cause, const Refusal& refusal, Sheet& sheet) {
  const passage::CheckFacts& facts = passage::facts_of(cause.finding.check);
  const bool at_many = cause.places.size() > 1;
  const bool has_share = cause.stand == Stand::exceeds;
  const bool has_worst = at_many && has_share && words::has_place(cause.finding.check);
  sheet.labelled({0, 2, "-"}, std::string{facts.title} + ", " + cause.where + ": " +
                                  (has_worst ? "at worst " : "") + words::outcome(cause.finding));
  if (at_many) {
    sheet.labelled({4, 10, "trails"}, trails_of(cause, refusal));
  }
  if (has_worst) {
    sheet.labelled({4, 10, "worst"}, worst_place(cause, refusal));
  }
  if (has_share) {
    sheet.labelled({4, 10, "numbers"}, "demand " + amount_text(cause.finding.demand, Side::demand) +
                                           ", capacity " +
                                           amount_text(cause.finding.capacity, Side::capacity));
  }
  if (!cause.remedy.empty()) {
    sheet.labelled({4, 10, "say it by"}, cause.remedy);
  }
  choices(sheet, {4, 10, "lifted by"}, cause.lifted_by);
  if (cause.lifted_by.empty() && cause.remedy.empty()) {
    sheet.labelled({4, 10, "lifted by"}, nothing_opens(refusal));
  }
}

/// What opens a way from one end to the other.
void write_ways(const Refusal& refusal, Sheet& sheet) {
  if (!refusal.nearest.trails.empty()) {
    const bool to_be_told = std::ranges::any_of(
        refusal.causes, [](const RefusalCause& cause) { return !cause.remedy.empty(); });
    std::vector<std::string> opens = refusal.nearest.opens_it;
    if (opens.empty()) {
      opens = {to_be_told ? std::string{words::opens_once_told()} : nothing_opens(refusal)};
    }
    sheet.labelled({0, 10, "Nearest"}, base::joined(refusal.nearest.trails, ", "));
    choices(sheet, {0, 10, "Opens by"}, opens);
  }
  for (const RefusedWay& other : refusal.other_ways) {
    sheet.labelled({0, 10, "Or take"}, base::joined(other.trails, ", "));
    choices(sheet, {0, 10, "Opens by"}, other.opens_it);
  }
}

}  // namespace

std::string text_of(const Refusal& refusal, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"NO ROUTE", refusal.site});
  sheet.both_ends({refusal.title, passage::words_for(refusal.verdict())});
  sheet.rule('=');
  sheet.paragraph(refusal.why);
  sheet.labelled({0, 10, "Rig"}, refusal.rig + "; " + refusal.load);
  sheet.labelled({0, 10, "Leave"}, local_and_zone_text(refusal.depart, refusal.local_clock));
  if (refusal.departures) {
    for (const LabelledLine& line :
         departure_lines({*refusal.departures, refusal.depart, refusal.local_clock})) {
      sheet.labelled({0, 10, line.label}, line.text);
    }
  }
  sheet.labelled({0, 10, "Snow"}, refusal.snow + " at the start; " +
                                      told_text(refusal.snow_told_by, refusal.local_clock));
  sheet.labelled({0, 10, "Allowed"}, allowed_text(refusal.allowed_share) + " of every limit");
  write_ways(refusal, sheet);
  if (!refusal.causes.empty()) {
    sheet.heading("IN THE WAY, the commonest cause first");
  }
  for (const RefusalCause& cause : refusal.causes) {
    write_cause(cause, refusal, sheet);
  }
  return sheet.text();
}

}  // namespace rimehaul::card
