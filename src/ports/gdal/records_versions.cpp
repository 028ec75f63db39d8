// Which version of the schema a file has, and the way to the newest.
#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include "ports/gdal/records_database.h"
#include "ports/gdal/records_schema.h"
#include "ports/gdal/utf8.h"

namespace rimehaul::ports::gdal {

namespace {

/// What the file says its things are made by.
std::map<std::string, std::string> made_as(const Connection& connection, const std::string& type) {
  std::map<std::string, std::string> things;
  Statement all{connection, "SELECT name, coalesce(sql, '') FROM sqlite_schema WHERE type = ?1"};
  all.with(std::string_view{type});
  while (all.next()) {
    std::string name = all.text();
    things.emplace(std::move(name), all.text());
  }
  return things;
}

bool has(const std::map<std::string, std::string>& things, const SchemaObject& object) {
  const auto found = things.find(object.name);
  return found != things.end() && found->second == object.sql;
}

base::BadInput not_as_made(const Connection& connection, const std::string& table) {
  return bad_file(connection.shown, {"its table " + table + " is not as this program makes it",
                                     "put the last backup in its place"});
}

/// Columns of the layer that GDAL makes.
void expect_field_checks(const Connection& connection) {
  const std::set<std::string> wanted{"number",      "geom", "grade_deg", "cross_slope_deg",
                                     "heading_deg", "at",   "person",    "role",
                                     "instrument",  "entry"};
  std::set<std::string> found;
  Statement columns{connection, "SELECT name FROM pragma_table_info(?1)"};
  columns.with(std::string_view{kFieldChecks});
  while (columns.next()) {
    found.insert(columns.text());
  }
  if (found != wanted || !made_as(connection, "table").contains(kFieldChecks)) {
    throw not_as_made(connection, kFieldChecks);
  }
}

void show_in_map_programs(const Connection& connection, const std::string& table) {
  Statement list{connection,
                 "INSERT INTO gpkg_contents (table_name, data_type, identifier) VALUES (?1, "
                 "'attributes', ?1)"};
  list.with(std::string_view{table}).run();
}

void take_step(const Connection& connection, std::size_t to) {
  const SchemaStep& step = schema_steps()[to - 1];
  for (const SchemaObject& object : step.objects) {
    run_sql(connection, object.sql);
  }
  for (const std::string& table : step.listed) {
    show_in_map_programs(connection, table);
  }
  Statement told{connection, "INSERT INTO records_schema (version, holds) VALUES (?1, ?2)"};
  told.with(static_cast<std::int64_t>(to)).with("records of rimehaul").run();
}

}  // namespace

std::size_t version_of(const Connection& connection) {
  if (!made_as(connection, "table").contains("records_schema")) {
    throw bad_file(connection.shown, {"it is a GeoPackage, but holds no records of this program",
                                      "keep it under another name"});
  }
  Statement newest{connection, "SELECT coalesce(max(version), 0) FROM records_schema"};
  newest.next();
  const std::int64_t version = newest.whole();
  if (version < 1) {
    throw not_as_made(connection, "records_schema");
  }
  if (std::cmp_greater(version, schema_steps().size())) {
    throw bad_file(connection.shown,
                   {"it is of schema " + std::to_string(version) + ", and this program knows " +
                        std::to_string(schema_steps().size()) + " and older",
                    "use the newer program that wrote it"});
  }
  return static_cast<std::size_t>(version);
}

void migrate(const Connection& connection, Versions versions) {
  run_sql(connection, "BEGIN IMMEDIATE");
  try {
    // Somebody else may have been quicker.
    versions.from = versions.from == 0 ? 0 : version_of(connection);
    for (std::size_t to = versions.from + 1; to <= versions.to; ++to) {
      take_step(connection, to);
    }
    run_sql(connection, "COMMIT");
  } catch (...) {
    undo(connection);
    throw;
  }
}

void expect_tables(const Connection& connection) {
  const auto tables = made_as(connection, "table");
  for (const SchemaObject& object : schema_up_to(schema_steps().size())) {
    if (object.type == "table" && !has(tables, object)) {
      throw not_as_made(connection, object.name);
    }
  }
  expect_field_checks(connection);
}

std::vector<std::string> guards_broken(const Connection& connection) {
  std::vector<std::string> broken;
  std::set<std::string> ours;
  const auto triggers = made_as(connection, "trigger");
  for (const SchemaObject& object : schema_up_to(schema_steps().size())) {
    if (object.type == "table") {
      continue;
    }
    ours.insert(object.name);
    if (!has(triggers, object)) {
      broken.push_back("the guard " + object.name + " is " +
                       (triggers.contains(object.name) ? "not as it was made" : "missing"));
    }
  }
  for (const auto& [name, sql] : triggers) {
    const bool is_of_the_format =
        name.starts_with("gpkg_") || name.starts_with(std::string{"rtree_"} + kFieldChecks);
    if (!is_of_the_format && !ours.contains(name)) {
      broken.push_back("there is a trigger " + short_line(name) +
                       " that is none of this program's");
    }
  }
  return broken;
}

}  // namespace rimehaul::ports::gdal
