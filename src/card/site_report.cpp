#include "card/site_report.h"

#include <algorithm>

#include "card/layout.h"

namespace rimehaul::card {

namespace {

long count_of(const SiteReport& report, base::Weight weight) {
  return std::ranges::count(report.faults, weight, &base::Fault::weight);
}

struct Noun {
  std::string_view one;
  std::string_view many;
};

std::string counted(long count, const Noun& noun) {
  return std::to_string(count) + " " + std::string{count == 1 ? noun.one : noun.many};
}

}  // namespace

bool SiteReport::usable() const {
  return count_of(*this, base::Weight::fault) == 0;
}

std::string text_of(const SiteReport& report, int columns) {
  Sheet sheet{columns};
  sheet.both_ends({"SITE CHECK", report.site});
  sheet.rule('=');
  sheet.list("-", report.contents);
  std::string text = sheet.text();
  for (const base::Fault& fault : report.faults) {
    text += fault.weight == base::Weight::fault ? "fault: " : "doubt: ";
    text += base::line_of(fault) + "\n";
  }
  const long faults = count_of(report, base::Weight::fault);
  const long doubts = count_of(report, base::Weight::doubt);
  text += counted(faults, {"fault", "faults"}) + ", " + counted(doubts, {"doubt", "doubts"}) +
          (faults == 0 ? ": usable\n" : ": not usable until the faults are mended\n");
  return text;
}

}  // namespace rimehaul::card
