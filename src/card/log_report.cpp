#include "card/log_report.h"

#include <algorithm>

#include "base/one_line.h"
#include "card/figures.h"
#include "card/layout.h"

namespace rimehaul::card {

namespace {

/// What is counted, one of it and several.
struct Noun {
  std::string one;
  std::string several;
};

std::string counted(std::size_t count, const Noun& noun) {
  return std::to_string(count) + " " + (count == 1 ? noun.one : noun.several);
}

std::string who(const day::LogEntry& entry) {
  return entry.person + (entry.role.empty() ? "" : ", " + entry.role) + " (account " +
         entry.account + ")";
}

std::string what(const day::LogEntry& entry) {
  return entry.act + ": " + entry.subject + (entry.detail.empty() ? "" : "; " + entry.detail);
}

/// One offset, or that it changes between the entries.
std::string clock_words(const LogReport& report) {
  const int last = report.local_clock.offset_minutes(report.entries.back().at);
  const bool alike = std::ranges::all_of(report.entries, [&](const day::LogEntry& entry) {
    return report.local_clock.offset_minutes(entry.at) == last;
  });
  return alike ? "Local time, " + zone_text(last) + "." : "Local time, with summer time.";
}

void tell(Sheet& sheet, const day::LogEntry& entry, const units::LocalClock& local_clock) {
  constexpr int kNumbers = 8;
  const std::string number = std::to_string(entry.number);
  // Whoever wrote into the file may have put anything there.
  sheet.labelled({.width = kNumbers, .words = number},
                 base::one_line(local_text(entry.at, local_clock) + "  " + who(entry)));
  sheet.labelled({.width = kNumbers, .words = ""}, base::one_line(what(entry)));
}

std::string verdict_on(const LogReport& report) {
  std::string text;
  for (const std::string& defect : report.defects) {
    text += "defect: " + base::one_line(defect) + "\n";
  }
  return text + counted(report.defects.size(), {"defect", "defects"}) +
         ": the records are not what was written; compare them with a backup\n";
}

}  // namespace

std::string text_of(const LogReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"LOG", report.site});
  sheet.rule('=');
  if (!report.has_records) {
    sheet.paragraph(
        "No records yet: nothing was signed, allowed, issued or measured here, so that there is no "
        "records.gpkg in the site's folder.");
    return sheet.text();
  }
  const std::string head = day::text_of(day::head_of(report.entries));
  if (report.asked == LogAsked::verify) {
    if (!report.holds()) {
      return sheet.text() + verdict_on(report);
    }
    sheet.paragraph("It holds: " + counted(report.entries.size(), {"entry", "entries"}) +
                    ", and all that they tell of. Head " + head +
                    "; hold it against the latest board or card on paper.");
    return sheet.text();
  }
  sheet.paragraph(clock_words(report));
  for (const day::LogEntry& entry : report.entries) {
    tell(sheet, entry, report.local_clock);
  }
  sheet.rule('-');
  sheet.paragraph(counted(report.entries.size(), {"entry", "entries"}) + ", head " + head +
                  ". Whether it is what was written: --verify.");
  return sheet.text();
}

}  // namespace rimehaul::card
