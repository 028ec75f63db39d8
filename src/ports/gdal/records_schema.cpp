#include "ports/gdal/records_schema.h"

#include <algorithm>

namespace rimehaul::ports::gdal {

namespace {

constexpr const char* kNumber =
    "number INTEGER PRIMARY KEY CHECK (number BETWEEN 1 AND 1000000000000)";

std::string text_column(const std::string& name) {
  return name + " TEXT NOT NULL";
}

std::string digest_of_64(const std::string& name) {
  return "CHECK (length(" + name + ") = 64 AND " + name + " NOT GLOB '*[^0-9a-f]*')";
}

std::string digest_column(const std::string& name) {
  return text_column(name) + " " + digest_of_64(name);
}

constexpr const char* kMomentLike =
    " GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-5][0-9]Z'";

std::string moment_column(const std::string& name) {
  return text_column(name) + " CHECK (" + name + kMomentLike + ")";
}

std::string moment_if_any_column(const std::string& name) {
  return name + " TEXT CHECK (" + name + kMomentLike + ")";
}

std::string frozen_column(const std::string& name) {
  return digest_column(name) + " REFERENCES frozen_inputs (digest)";
}

/// Who, when, and the entry of the log that tells of it.
std::string done_columns() {
  return moment_column("at") + ", " + text_column("person") + ", " + text_column("role") +
         ", entry INTEGER NOT NULL UNIQUE REFERENCES log (number)";
}

std::string head_columns() {
  return "head_number INTEGER NOT NULL CHECK (head_number >= 0), " + digest_column("head_digest");
}

// As the statement has them.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
SchemaObject trigger(const std::string& name, const std::string& when, const std::string& what) {
  return {
      "trigger", name,
      "CREATE TRIGGER " + name + " " + when + " BEGIN SELECT RAISE(ABORT, '" + what + "'); END"};
}

/// Rows are added with the next number and stay as they are. A replaced row would not be told to
/// the trigger of deletions, but has no next number.
// A table and its column.
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters)
void guard(SchemaStep& step, const std::string& table, const std::string& key) {
  step.objects.push_back(
      trigger(table + "_unchanged", "BEFORE UPDATE ON " + table, "what is kept is not changed"));
  step.objects.push_back(
      trigger(table + "_undeleted", "BEFORE DELETE ON " + table, "what is kept is not taken out"));
  step.objects.push_back(trigger(table + "_in_turn",
                                 "BEFORE INSERT ON " + table + " WHEN NEW." + key +
                                     " IS NOT (SELECT coalesce(max(" + key + "), 0) + 1 FROM " +
                                     table + ")",
                                 "what is kept is numbered in turn"));
}

void add_table(SchemaStep& step, const std::string& name, const std::vector<std::string>& columns) {
  std::string sql = "CREATE TABLE " + name + " (" + columns.front();
  std::for_each(columns.begin() + 1, columns.end(),
                [&sql](const std::string& column) { sql += ", " + column; });
  step.objects.push_back({"table", name, sql + ") STRICT"});
  step.listed.push_back(name);
  guard(step, name, columns.front() == kNumber ? "number" : "version");
}

void add_log(SchemaStep& step) {
  add_table(step, "log",
            {kNumber, moment_column("at"), text_column("account"), text_column("person"),
             text_column("role"), text_column("act"), text_column("subject"), text_column("detail"),
             digest_column("about"), digest_column("previous"),
             text_column("own") + " UNIQUE " + digest_of_64("own")});
  step.objects.push_back(trigger(
      "log_chained",
      "BEFORE INSERT ON log WHEN NEW.previous IS NOT coalesce((SELECT own FROM log ORDER BY "
      "number DESC LIMIT 1), '" +
          std::string(64, '0') + "')",
      "an entry hashes the one before"));
}

/// Its table is GDAL's, which knows no checks.
void guard_field_checks(SchemaStep& step) {
  const std::string table{kFieldChecks};
  guard(step, table, "number");
  step.objects.push_back(trigger(
      table + "_sound",
      "BEFORE INSERT ON " + table +
          " WHEN (typeof(NEW.geom) = 'blob' AND NEW.grade_deg > -90 AND NEW.grade_deg < 90 AND "
          "NEW.cross_slope_deg > -90 AND NEW.cross_slope_deg < 90 AND NEW.heading_deg >= 0 AND "
          "NEW.heading_deg <= 360 AND NEW.at" +
          kMomentLike + " AND EXISTS (SELECT 1 FROM log WHERE number = NEW.entry)) IS NOT TRUE",
      "a field check has its place, its angles and its entry"));
}

SchemaStep first_step() {
  SchemaStep step;
  add_table(step, "records_schema",
            {"version INTEGER PRIMARY KEY CHECK (version > 0)", text_column("holds")});
  add_log(step);
  add_table(step, "frozen_inputs",
            {kNumber, text_column("name"), text_column("role"),
             text_column("digest") + " UNIQUE " + digest_of_64("digest"),
             "bytes INTEGER NOT NULL CHECK (bytes >= 0)",
             "content BLOB CHECK (content IS NULL OR length(content) = bytes)"});
  add_table(step, "snow_reports",
            {kNumber, frozen_column("digest"), text_column("observer"), moment_column("observed"),
             moment_if_any_column("until"), done_columns()});
  add_table(step, "mark_statuses",
            {kNumber, text_column("mark"), "clear INTEGER NOT NULL CHECK (clear IN (0, 1))",
             moment_if_any_column("until"), done_columns()});
  guard_field_checks(step);
  return step;
}

SchemaStep second_step() {
  SchemaStep step;
  add_table(step, "day_boards",
            {kNumber, text_column("json"), digest_column("digest"), moment_column("valid_until"),
             head_columns(), done_columns()});
  add_table(step, "day_board_inputs",
            {kNumber, "board INTEGER NOT NULL REFERENCES day_boards (number)", text_column("name"),
             text_column("role"), frozen_column("digest")});
  add_table(step, "overrides",
            {kNumber, text_column("kind"), text_column("subject"), text_column("value"),
             text_column("reason"), moment_column("expires"), done_columns()});
  add_table(step, "override_ends",
            {kNumber, "override INTEGER NOT NULL UNIQUE REFERENCES overrides (number)",
             text_column("reason"), done_columns()});
  add_table(step, "route_cards",
            {kNumber, "board INTEGER NOT NULL REFERENCES day_boards (number)", text_column("route"),
             text_column("json"), digest_column("digest"), head_columns(), done_columns()});
  add_table(step, "card_recalls",
            {kNumber, "card INTEGER NOT NULL UNIQUE REFERENCES route_cards (number)",
             text_column("reason"), done_columns()});
  return step;
}

}  // namespace

const std::vector<SchemaStep>& schema_steps() {
  static const std::vector<SchemaStep> steps{first_step(), second_step()};
  return steps;
}

std::vector<SchemaObject> schema_up_to(std::size_t version) {
  std::vector<SchemaObject> objects;
  for (std::size_t step = 0; step < version; ++step) {
    const auto& made = schema_steps()[step].objects;
    objects.insert(objects.end(), made.begin(), made.end());
  }
  return objects;
}

}  // namespace rimehaul::ports::gdal
