#include "ports/json/log_json.h"

#include "ports/json/object.h"

namespace rimehaul::ports::json {

namespace {

Object entry_json(const day::LogEntry& entry) {
  Object object;
  object.whole("number", entry.number).text("at", units::text_of(entry.at));
  object.text("account", entry.account).text("person", entry.person).text("role", entry.role);
  object.text("act", entry.act).text("subject", entry.subject).text("detail", entry.detail);
  object.text("about_sha256", entry.about.hex());
  object.text("previous_sha256", entry.previous.hex());
  return object.text("own_sha256", entry.own.hex());
}

}  // namespace

std::string log_json(const card::LogReport& report) {
  std::vector<Object> entries;
  entries.reserve(report.entries.size());
  for (const day::LogEntry& entry : report.entries) {
    entries.push_back(entry_json(entry));
  }
  Object object;
  object.whole("schema", report.schema).text("kind", "log").text("site", report.site);
  object.truth("has_records", report.has_records ? Truth::yes : Truth::no);
  object.text("head", day::text_of(day::head_of(report.entries))).list("entries", entries);
  if (report.asked == card::LogAsked::verify) {
    object.truth("holds", report.holds() ? Truth::yes : Truth::no);
    object.texts("defects", report.defects);
  }
  return object.bytes();
}

std::string backup_json(const BackupMade& backup) {
  Object object;
  object.whole("schema", 1).text("kind", "backup").text("site", backup.site);
  object.truth("has_records", backup.file.empty() ? Truth::no : Truth::yes);
  if (!backup.file.empty()) {
    object.text("file", backup.file).text("head", day::text_of(backup.head));
  }
  return object.bytes();
}

}  // namespace rimehaul::ports::json
