// Kept things written as rows.
#include "base/require.h"
#include "ports/gdal/point_blob.h"
#include "ports/gdal/record_rows.h"

namespace rimehaul::ports::gdal {

namespace {

const char* table_of(day::Kind kind) {
  switch (kind) {
    case day::Kind::log_entry:
      return "log";
    case day::Kind::frozen_input:
      return "frozen_inputs";
    case day::Kind::snow_report:
      return "snow_reports";
    case day::Kind::mark_status:
      return "mark_statuses";
    case day::Kind::day_board:
      return "day_boards";
    case day::Kind::override_given:
      return "overrides";
    case day::Kind::override_end:
      return "override_ends";
    case day::Kind::route_card:
      return "route_cards";
    case day::Kind::card_recall:
      return "card_recalls";
    case day::Kind::field_check:
      return "field_checks";
  }
  base::require(/*holds=*/false, "every kind has its table");
  return "";
}

std::string insert_into(const char* table, int values) {
  std::string sql = std::string{"INSERT INTO "} + table + " VALUES (?1";
  for (int value = 2; value <= values; ++value) {
    sql += ", ?" + std::to_string(value);
  }
  return sql + ")";
}

double degrees_kept(double degrees) {
  return static_cast<double>(day::millidegrees(degrees)) / 1000.0;
}

}  // namespace

std::int64_t RecordRows::next(day::Kind kind) const {
  Statement query{connection_,
                  std::string{"SELECT coalesce(max(number), 0) + 1 FROM "} + table_of(kind)};
  query.next();
  return query.row_number();
}

void RecordRows::touch(const char* table, units::Instant at) const {
  std::string moment = units::text_of(at);
  moment.insert(moment.size() - 1, ".000");  // as the format wants it
  Statement{connection_, "UPDATE gpkg_contents SET last_change = ?2 WHERE table_name = ?1"}
      .with(std::string_view{table})
      .with(std::string_view{moment})
      .run();
}

void RecordRows::put_done(Statement& statement, const day::Done& done, std::int64_t entry) const {
  statement.with(done.at)
      .with(std::string_view{done.by})
      .with(std::string_view{done.role})
      .with(entry)
      .run();
}

void RecordRows::put(const day::LogEntry& entry) const {
  Statement{connection_, insert_into("log", 11)}
      .with(entry.number)
      .with(entry.at)
      .with(std::string_view{entry.account})
      .with(std::string_view{entry.person})
      .with(std::string_view{entry.role})
      .with(std::string_view{entry.act})
      .with(std::string_view{entry.subject})
      .with(std::string_view{entry.detail})
      .with(entry.about)
      .with(entry.previous)
      .with(entry.own)
      .run();
  touch("log", entry.at);
}

void RecordRows::put(const day::FrozenInput& input, std::string_view content) const {
  Statement row{connection_, insert_into("frozen_inputs", 6)};
  row.with(input.number)
      .with(std::string_view{input.name})
      .with(std::string_view{input.role})
      .with(input.digest)
      .with(input.bytes);
  // A value that is not given is nothing.
  if (input.how == day::Frozen::whole) {
    row.with_bytes(content);
  }
  row.run();
}

void RecordRows::put(const day::Kept<day::KeptReport>& report) const {
  const day::KeptReport& thing = report.thing;
  Statement row{connection_, insert_into("snow_reports", 9)};
  row.with(thing.number)
      .with(thing.digest)
      .with(std::string_view{thing.observer})
      .with(thing.observed)
      .with(thing.until);
  put_done(row, thing.kept, report.entry);
  touch("snow_reports", thing.kept.at);
}

void RecordRows::put(const day::Kept<day::KeptMark>& mark) const {
  const day::KeptMark& thing = mark.thing;
  Statement row{connection_, insert_into("mark_statuses", 8)};
  row.with(thing.number)
      .with(std::string_view{thing.status.mark})
      .with(std::int64_t{thing.status.clear ? 1 : 0})
      .with(thing.status.until);
  put_done(row, thing.said, mark.entry);
  touch("mark_statuses", thing.said.at);
}

void RecordRows::put(const day::Kept<day::SignedBoard>& board) const {
  const day::SignedBoard& thing = board.thing;
  Statement row{connection_, insert_into("day_boards", 10)};
  row.with(thing.number)
      .with(std::string_view{thing.json})
      .with(thing.digest)
      .with(thing.valid_until)
      .with(thing.head.number)
      .with(thing.head.digest);
  put_done(row, thing.signed_off, board.entry);
  for (const day::BoardInput& input : thing.inputs) {
    Statement{connection_,
              "INSERT INTO day_board_inputs SELECT coalesce(max(number), 0) + 1, ?1, ?2, ?3, ?4 "
              "FROM day_board_inputs"}
        .with(thing.number)
        .with(std::string_view{input.name})
        .with(std::string_view{input.role})
        .with(input.digest)
        .run();
  }
  touch("day_boards", thing.signed_off.at);
}

void RecordRows::put(const day::Kept<day::Override>& given) const {
  const day::Override& thing = given.thing;
  Statement row{connection_, insert_into("overrides", 10)};
  row.with(thing.number)
      .with(std::string_view{thing.kind})
      .with(std::string_view{thing.subject})
      .with(std::string_view{thing.value})
      .with(std::string_view{thing.reason})
      .with(thing.expires);
  put_done(row, thing.allowed, given.entry);
  touch("overrides", thing.allowed.at);
}

void RecordRows::put(const day::Kept<day::OverrideEnd>& end) const {
  Statement row{connection_, insert_into("override_ends", 7)};
  row.with(end.thing.number)
      .with(end.thing.override_number)
      .with(std::string_view{end.thing.reason});
  put_done(row, end.thing.ended, end.entry);
  touch("override_ends", end.thing.ended.at);
}

void RecordRows::put(const day::Kept<day::IssuedCard>& card) const {
  const day::IssuedCard& thing = card.thing;
  Statement row{connection_, insert_into("route_cards", 11)};
  row.with(thing.number)
      .with(thing.board)
      .with(std::string_view{thing.route})
      .with(std::string_view{thing.json})
      .with(thing.digest)
      .with(thing.head.number)
      .with(thing.head.digest);
  put_done(row, thing.issued, card.entry);
  touch("route_cards", thing.issued.at);
}

void RecordRows::put(const day::Kept<day::Recall>& recall) const {
  Statement row{connection_, insert_into("card_recalls", 7)};
  row.with(recall.thing.number).with(recall.thing.card).with(std::string_view{recall.thing.reason});
  put_done(row, recall.thing.recalled, recall.entry);
  touch("card_recalls", recall.thing.recalled.at);
}

void RecordRows::put(const day::Kept<day::FieldCheck>& check) const {
  const day::FieldCheck& thing = check.thing;
  const ReferenceNumber frame{[this] {
    Statement query{connection_,
                    "SELECT srs_id FROM gpkg_geometry_columns WHERE table_name = 'field_checks'"};
    base::require(query.next(), "the layer of field checks is listed");
    return query.whole();
  }()};
  Statement row{connection_,
                "INSERT INTO field_checks (number, geom, grade_deg, cross_slope_deg, heading_deg, "
                "instrument, at, person, role, entry) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, "
                "?10)"};
  row.with(thing.number)
      .with_bytes(point_blob(thing.at, frame))
      .with(degrees_kept(thing.grade.degrees()))
      .with(degrees_kept(thing.cross_slope.degrees()))
      .with(degrees_kept(thing.heading.degrees()))
      .with(std::string_view{thing.instrument});
  put_done(row, thing.measured, check.entry);
  Statement{connection_,
            "UPDATE gpkg_contents SET min_x = min(coalesce(min_x, ?1), ?1), max_x = "
            "max(coalesce(max_x, ?1), ?1), min_y = min(coalesce(min_y, ?2), ?2), max_y = "
            "max(coalesce(max_y, ?2), ?2) WHERE table_name = 'field_checks'"}
      .with(thing.at.east.value())
      .with(thing.at.north.value())
      .run();
  touch("field_checks", thing.measured.at);
}

}  // namespace rimehaul::ports::gdal
