#include "app/show_log.h"

#include "app/answer.h"
#include "app/site_clock.h"
#include "card/log_report.h"
#include "ports/gdal/records_file.h"
#include "ports/json/log_json.h"
#include "ports/openssl/digest.h"
#include "ports/toml/site_file.h"

namespace rimehaul::app {

namespace {

std::vector<day::Witness> on_paper(const std::vector<std::string>& heads) {
  std::vector<day::Witness> witnesses;
  for (const std::string& head : heads) {
    if (const auto read = day::parse_head(head)) {
      witnesses.push_back({.where = "the paper says", .head = *read});
    }
  }
  return witnesses;
}

card::LogReport report_on(const LogOptions& options) {
  const ports::toml::SiteFile site = ports::toml::read_site_file(options.common.site).data;
  std::vector<base::Fault> unused;
  card::LogReport report{.site = site.name, .local_clock = site_clock(site, unused)};
  const bool verify = options.verify || !options.heads.empty();
  report.asked = verify ? card::LogAsked::verify : card::LogAsked::list;
  const ports::gdal::RecordsPlace place{.folder = options.common.site};
  const auto records = ports::gdal::read_records(place);
  if (!records) {
    return report;
  }
  report.has_records = true;
  report.entries = records->log();
  if (verify) {
    report.defects = day::defects_of(*records, on_paper(options.heads), ports::openssl::digest_of);
  }
  return report;
}

}  // namespace

Status show_log(const LogOptions& options, const Outside& outside) {
  card::LogReport report = report_on(options);
  if (report.asked == card::LogAsked::verify && report.has_records) {
    for (std::string& damage : ports::gdal::damage_in({.folder = options.common.site})) {
      report.defects.push_back(std::move(damage));
    }
  }
  give_answer({.text = card::text_of(report, kColumns), .json = ports::json::log_json(report)},
              options.common, outside);
  return report.asked == card::LogAsked::list || report.holds() ? Status::yes : Status::honest_no;
}

}  // namespace rimehaul::app
