// The slope audit as text: totals first, then what exceeds, then what is tightest.
#include <algorithm>
#include <set>

#include "card/audit_words.h"
#include "card/figures.h"
#include "card/layout.h"
#include "card/words.h"
#include "units/rounding.h"

namespace rimehaul::card {

using audit::Band;

namespace {

constexpr int kLabelWidth = 10;
/// So many lines of exceedances stay readable; the rest is for the CSV.
constexpr std::size_t kMostGroups = 60;
constexpr int kCaseWidth = 18;
constexpr int kBandWidth = 9;
constexpr int kLastWidth = 10;

void item(Sheet& sheet, std::string_view label, const std::string& text) {
  sheet.labelled({0, kLabelWidth, label}, text);
}

void write_totals(const AuditReport& report, Sheet& sheet) {
  sheet.heading("METRES OF TRAIL BY SHARE OF THE LIMIT, each way that may be driven counted");
  std::string head = filled("", kCaseWidth);
  for (int band = 0; band < audit::kBandCount; ++band) {
    head += set_right(band_words(static_cast<Band>(band)), band < 1 ? kBandWidth : kBandWidth + 2);
  }
  sheet.as_it_stands(head + set_right("exceed", kLastWidth - 2));
  for (std::size_t i = 0; i < report.cases.size(); ++i) {
    const AuditedCase& one = report.cases[i];
    const bool first = i == 0 || report.cases[i - 1].rig != one.rig ||
                       report.cases[i - 1].load_name != one.load_name;
    if (first) {
      sheet.paragraph(report.rigs[one.rig].name + ", " + one.load_name + ": " +
                      words::load(one.load, report.rigs[one.rig].trailer));
    }
    std::string row = filled("  " + std::string{snow::words_for(one.snow.wetness)}, kCaseWidth);
    for (int band = 0; band < audit::kBandCount; ++band) {
      row += set_right(metres_words(one.lengths.of(static_cast<Band>(band))),
                       band < 1 ? kBandWidth : kBandWidth + 2);
    }
    sheet.as_it_stands(row + set_right(std::to_string(one.exceedances), kLastWidth - 2));
  }
  const bool any_waits = std::ranges::any_of(
      report.cases, [](const AuditedCase& one) { return one.lengths.waiting > units::Metres{0}; });
  if (any_waits) {
    units::Metres most{0};
    for (const AuditedCase& one : report.cases) {
      most = std::max(most, one.lengths.waiting);
    }
    sheet.paragraph("Of the first two columns, up to " + distance_text(most) +
                    " in one line wait for a named person's decision.");
  }
}

std::string_view ways_words(const ExceedanceGroup& group) {
  const trails::Way first = group.rows.front()->place.way;
  const bool one_way =
      std::ranges::all_of(group.rows, [&](const AuditRow* row) { return row->place.way == first; });
  return one_way ? way_words(first) : "both ways";
}

/// The stretches of the worst case, so that the line can be followed on the map.
std::string stretches_words(const ExceedanceGroup& group) {
  constexpr std::size_t kMostStretches = 3;
  std::string text;
  std::size_t told = 0;
  std::size_t more = 0;
  for (const AuditRow* row : group.rows) {
    const bool of_worst =
        row->audited_case == group.worst->audited_case && row->place.way == group.worst->place.way;
    if (!of_worst) {
      continue;
    }
    if (told == kMostStretches) {
      ++more;
      continue;
    }
    text += (text.empty() ? "" : ", ") + span_words(row->place);
    ++told;
  }
  return more > 0 ? text + " and " + std::to_string(more) + " more" : text;
}

/// Where to say what is not known; empty where nothing is missing.
std::string remedy_words(const passage::Finding& finding) {
  const std::string where = words::where_to_say(finding);
  return finding.missing.empty() || where.empty() ? "" : "; say it in " + where;
}

void write_group(const AuditReport& report, const ExceedanceGroup& group, Sheet& sheet) {
  const audit::AuditedPlace& worst = group.worst->place;
  const std::string numbers = numbers_words(worst);
  std::string text =
      std::string{passage::facts_of(worst.finding.check).title} + ": " + interval_words(worst);
  if (!numbers.empty()) {
    text += " (" + numbers + ")";
  }
  if (words::has_place(worst.finding.check) && worst.finding.missing.empty()) {
    text += ", worst at " + units::text_of(worst.at.value(), 0, units::Round::nearest) + " m";
  }
  text += "; " + std::string{ways_words(group)} + ", " + stretches_words(group);
  if (report.cases.size() > 1) {
    text += "; in " + std::to_string(group.cases) + " of " + std::to_string(report.cases.size()) +
            " lines above, worst " + case_words(report, group.worst->audited_case);
  }
  text += remedy_words(worst.finding);
  sheet.labelled({0, 4, "  -"}, text);
}

void write_alike(const AuditReport& report, const AlikeGroups& alike, Sheet& sheet) {
  const audit::AuditedPlace& one = alike.groups.front()->worst->place;
  const std::size_t count = alike.groups.size();
  std::string text =
      std::string{passage::facts_of(one.finding.check).title} + ": " + words::outcome(one.finding) +
      "; on " + (count == report.trails.size() ? "all " : "") + std::to_string(count) +
      (count == report.trails.size() ? " trails"
                                     : " of " + std::to_string(report.trails.size()) + " trails");
  text += remedy_words(one.finding);
  sheet.labelled({0, 4, "  -"}, text);
}

void write_exceedances(const AuditReport& report, Sheet& sheet) {
  const std::vector<ExceedanceGroup> groups = groups_of(report);
  const std::vector<AlikeGroups> alike = alike_groups(groups, report.trails.size());
  sheet.heading("EXCEEDANCES: over what is allowed, refused, or not known");
  std::set<const ExceedanceGroup*> told;
  if (!alike.empty()) {
    sheet.paragraph("Alike on many trails");
    for (const AlikeGroups& one : alike) {
      write_alike(report, one, sheet);
      told.insert(one.groups.begin(), one.groups.end());
    }
  }
  std::size_t shown = 0;
  std::size_t left_out = 0;
  const ExceedanceGroup* before = nullptr;
  for (const ExceedanceGroup& group : groups) {
    if (told.contains(&group)) {
      continue;
    }
    if (shown == kMostGroups) {
      left_out += group.rows.size();
      continue;
    }
    if (before == nullptr || before->trail != group.trail) {
      sheet.paragraph(report.trails[group.trail].name);
    }
    write_group(report, group, sheet);
    before = &group;
    ++shown;
  }
  if (left_out > 0) {
    sheet.paragraph("and " + std::to_string(left_out) + " more in the CSV (--csv FILE).");
  }
  if (groups.empty()) {
    sheet.paragraph("None.");
  }
}

void write_tightest(const AuditReport& report, Sheet& sheet) {
  sheet.heading("TIGHTEST PLACES of what is open, 50 m and more from each other");
  if (report.tightest.empty()) {
    sheet.paragraph("None: nothing is open with a share above 0.");
  }
  int number = 0;
  for (const AuditRow& row : report.tightest) {
    const std::string label = set_right(std::to_string(++number), 2) + ".";
    sheet.labelled({0, 4, label},
                   report.trails[row.place.trail].name + " at " +
                       units::text_of(row.place.at.value(), 0, units::Round::nearest) + " m " +
                       std::string{way_words(row.place.way)} + ": " +
                       std::string{passage::facts_of(row.place.finding.check).title} + " " +
                       interval_words(row.place) + "; " + case_words(report, row.audited_case));
  }
}

void write_foot(const AuditReport& report, Sheet& sheet) {
  sheet.heading("GROUND AND SOURCES");
  item(sheet, "Map", report.map_frame + "; heights above " + report.vertical_datum);
  for (const std::string& note : report.heights_notes) {
    item(sheet, "Heights", note);
  }
  for (const AuditedRig& rig : report.rigs) {
    for (const std::string& source : rig.sources) {
      item(sheet, "Rating", rig.name + ", " + source);
    }
  }
  for (const std::string& estimate : report.estimates) {
    item(sheet, "Estimate", estimate);
  }
  for (const InputFile& input : report.made_from.inputs) {
    item(sheet, "Input", input.name + " (" + input.what + ") " + input.digest.hex());
  }
  for (const std::string& version : report.made_from.versions) {
    item(sheet, "Made by", version);
  }
}

}  // namespace

std::string text_of(const AuditReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"SLOPE AUDIT", report.site});
  sheet.paragraph(outcome_words(report));
  sheet.rule('=');
  for (const LabelledLine& line : head_lines(report)) {
    item(sheet, line.label, line.text);
  }
  sheet.paragraph(cautions_words());
  write_totals(report, sheet);
  write_exceedances(report, sheet);
  write_tightest(report, sheet);
  write_foot(report, sheet);
  return sheet.text();
}

}  // namespace rimehaul::card
