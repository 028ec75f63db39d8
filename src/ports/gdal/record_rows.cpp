#include "ports/gdal/record_rows.h"

#include <utility>

#include "ports/gdal/gdal_guard.h"

namespace rimehaul::ports::gdal {

namespace {

day::Done done_in(Statement& row) {
  day::Done done;
  done.at = row.moment();
  done.by = row.text();
  done.role = row.text();
  return done;
}

day::LogHead head_in(Statement& row) {
  day::LogHead head;
  head.number = row.whole();
  head.digest = row.digest();
  return head;
}

day::LogEntry entry_in(Statement& row) {
  day::LogEntry entry;
  entry.number = row.row_number();
  entry.at = row.moment();
  entry.account = row.text();
  entry.person = row.text();
  entry.role = row.text();
  entry.act = row.text();
  entry.subject = row.text();
  entry.detail = row.text();
  entry.about = row.digest();
  entry.previous = row.digest();
  entry.own = row.digest();
  return entry;
}

/// Every row of a query, each made by the function given.
template <class Thing>
std::vector<Thing> all_of(Statement query, Thing (*made)(Statement&)) {
  std::vector<Thing> things;
  while (query.next()) {
    things.push_back(made(query));
  }
  return things;
}

day::FrozenInput frozen_in(Statement& row) {
  day::FrozenInput input;
  input.number = row.row_number();
  input.name = row.text();
  input.role = row.text();
  input.digest = row.digest();
  input.bytes = row.whole();
  input.how = row.whole() == 0 ? day::Frozen::by_digest : day::Frozen::whole;
  return input;
}

day::Kept<day::KeptReport> report_in(Statement& row) {
  day::Kept<day::KeptReport> kept;
  kept.thing.number = row.row_number();
  kept.thing.digest = row.digest();
  kept.thing.observer = row.text();
  kept.thing.observed = row.moment();
  kept.thing.until = row.moment_if_any();
  kept.thing.kept = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::Kept<day::KeptMark> mark_in(Statement& row) {
  day::Kept<day::KeptMark> kept;
  kept.thing.number = row.row_number();
  kept.thing.status.mark = row.text();
  kept.thing.status.clear = row.whole() == 1;
  kept.thing.status.until = row.moment_if_any();
  kept.thing.said = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::Kept<day::SignedBoard> board_in(Statement& row) {
  day::Kept<day::SignedBoard> kept;
  kept.thing.number = row.row_number();
  kept.thing.json = row.text();
  kept.thing.digest = row.digest();
  kept.thing.valid_until = row.moment();
  kept.thing.head = head_in(row);
  kept.thing.signed_off = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::Kept<day::Override> override_in(Statement& row) {
  day::Kept<day::Override> kept;
  kept.thing.number = row.row_number();
  kept.thing.kind = row.text();
  kept.thing.subject = row.text();
  kept.thing.value = row.text();
  kept.thing.reason = row.text();
  kept.thing.expires = row.moment();
  kept.thing.allowed = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::Kept<day::OverrideEnd> override_end_in(Statement& row) {
  day::Kept<day::OverrideEnd> kept;
  kept.thing.number = row.row_number();
  kept.thing.override_number = row.row_number();
  kept.thing.reason = row.text();
  kept.thing.ended = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::Kept<day::IssuedCard> card_in(Statement& row) {
  day::Kept<day::IssuedCard> kept;
  kept.thing.number = row.row_number();
  kept.thing.board = row.row_number();
  kept.thing.route = row.text();
  kept.thing.json = row.text();
  kept.thing.digest = row.digest();
  kept.thing.head = head_in(row);
  kept.thing.issued = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::Kept<day::Recall> recall_in(Statement& row) {
  day::Kept<day::Recall> kept;
  kept.thing.number = row.row_number();
  kept.thing.card = row.row_number();
  kept.thing.reason = row.text();
  kept.thing.recalled = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::Kept<day::FieldCheck> field_check_in(Statement& row) {
  day::Kept<day::FieldCheck> kept;
  kept.thing.number = row.row_number();
  kept.thing.at = row.point();
  kept.thing.grade = units::Slope::from_degrees(row.number());
  kept.thing.cross_slope = units::Slope::from_degrees(row.number());
  kept.thing.heading = units::Bearing::from_degrees(row.number());
  kept.thing.instrument = row.text();
  kept.thing.measured = done_in(row);
  kept.entry = row.row_number();
  return kept;
}

day::BoardInput board_input_in(Statement& row) {
  day::BoardInput input;
  input.name = row.text();
  input.role = row.text();
  input.digest = row.digest();
  return input;
}

constexpr const char* kLogColumns =
    "SELECT number, at, account, person, role, act, subject, detail, about, previous, own FROM log "
    "ORDER BY number";

}  // namespace

std::vector<day::LogEntry> RecordRows::log() const {
  return all_of(Statement{connection_, kLogColumns}, entry_in);
}

day::LogHead RecordRows::head() const {
  const auto last =
      all_of(Statement{connection_, std::string{kLogColumns} + " DESC LIMIT 1"}, entry_in);
  return day::head_of(last);
}

std::vector<day::FrozenInput> RecordRows::frozen_inputs() const {
  return all_of(Statement{connection_,
                          "SELECT number, name, role, digest, bytes, content IS NOT NULL FROM "
                          "frozen_inputs ORDER BY number"},
                frozen_in);
}

std::string RecordRows::content_of(const day::FrozenInput& input) const {
  Statement query{connection_, "SELECT number, content FROM frozen_inputs WHERE number = ?1"};
  query.with(input.number);
  if (!query.next()) {
    throw bad_file(connection_.shown, {"a frozen input was taken out while it was read",
                                       "put the last backup in its place"});
  }
  (void)query.row_number();
  return query.bytes();
}

std::vector<day::Kept<day::KeptReport>> RecordRows::reports() const {
  return all_of(Statement{connection_,
                          "SELECT number, digest, observer, observed, until, at, person, role, "
                          "entry FROM snow_reports ORDER BY number"},
                report_in);
}

std::vector<day::Kept<day::KeptMark>> RecordRows::marks() const {
  return all_of(Statement{connection_,
                          "SELECT number, mark, clear, until, at, person, role, entry FROM "
                          "mark_statuses ORDER BY number"},
                mark_in);
}

std::vector<day::BoardInput> RecordRows::inputs_of(std::int64_t board) const {
  Statement query{connection_,
                  "SELECT name, role, digest FROM day_board_inputs WHERE board = ?1 ORDER BY "
                  "number"};
  query.with(board);
  return all_of(std::move(query), board_input_in);
}

std::vector<day::Kept<day::SignedBoard>> RecordRows::boards() const {
  auto boards = all_of(Statement{connection_,
                                 "SELECT number, json, digest, valid_until, head_number, "
                                 "head_digest, at, person, role, entry FROM day_boards ORDER BY "
                                 "number"},
                       board_in);
  for (auto& board : boards) {
    board.thing.inputs = inputs_of(board.thing.number);
  }
  return boards;
}

std::vector<day::Kept<day::Override>> RecordRows::overrides() const {
  return all_of(Statement{connection_,
                          "SELECT number, kind, subject, value, reason, expires, at, person, role, "
                          "entry FROM overrides ORDER BY number"},
                override_in);
}

std::vector<day::Kept<day::OverrideEnd>> RecordRows::override_ends() const {
  return all_of(Statement{connection_,
                          "SELECT number, override, reason, at, person, role, entry FROM "
                          "override_ends ORDER BY number"},
                override_end_in);
}

std::vector<day::Kept<day::IssuedCard>> RecordRows::cards() const {
  return all_of(Statement{connection_,
                          "SELECT number, board, route, json, digest, head_number, head_digest, "
                          "at, person, role, entry FROM route_cards ORDER BY number"},
                card_in);
}

std::vector<day::Kept<day::Recall>> RecordRows::recalls() const {
  return all_of(Statement{connection_,
                          "SELECT number, card, reason, at, person, role, entry FROM card_recalls "
                          "ORDER BY number"},
                recall_in);
}

std::vector<day::Kept<day::FieldCheck>> RecordRows::field_checks() const {
  return all_of(Statement{connection_,
                          "SELECT number, geom, grade_deg, cross_slope_deg, heading_deg, "
                          "instrument, at, person, role, entry FROM field_checks ORDER BY number"},
                field_check_in);
}

}  // namespace rimehaul::ports::gdal
