#include "app/check_site.h"

#include "app/answer.h"
#include "app/load_site.h"
#include "app/print_doubts.h"
#include "app/site_words.h"
#include "ports/json/answers.h"

namespace rimehaul::app {

card::SiteReport report_on(const std::string& folder, const Outside& outside) {
  const LoadedSite site = load_site(folder);
  card::SiteReport report;
  report.site = site.name;
  report.faults = site.faults;
  for (const base::Fault& doubt : doubts_about(site, outside.now)) {
    report.faults.push_back(doubt);
  }
  if (const auto doubt = doubt_about_letters(site)) {
    report.faults.push_back(*doubt);
  }
  report.contents = site.contents;
  report.inputs = site.inputs;
  return report;
}

Status check_site(const CheckOptions& options, const Outside& outside) {
  const card::SiteReport report = report_on(options.common.site, outside);
  give_answer(
      {.text = card::text_of(report, kColumns), .json = ports::json::site_report_json(report)},
      options.common, outside);
  return report.usable() ? Status::yes : Status::honest_no;
}

}  // namespace rimehaul::app
