#include "day/records.h"

#include <cmath>

#include "day/canonical_fields.h"

namespace rimehaul::day {

namespace {

CanonicalFields fields_of(std::string_view kind, std::int64_t number, const Done& done) {
  CanonicalFields fields{kind};
  fields.add(number).add(done.at).add(done.by).add(done.role);
  return fields;
}

/// Nothing is told apart from every moment by being empty.
CanonicalFields& add(CanonicalFields& fields, const std::optional<units::Instant>& moment) {
  return moment ? fields.add(*moment) : fields.add("");
}

CanonicalFields& add(CanonicalFields& fields, const LogHead& head) {
  return fields.add(head.number).add(head.digest);
}

std::int64_t thousandths(double number) {
  // Beyond, or no number at all: one value for all of them, which nothing measured has.
  constexpr double kMost = 1e12;
  return std::abs(number) <= kMost ? std::llround(number * 1000.0) : INT64_MIN;
}

}  // namespace

std::int64_t millidegrees(double degrees) {
  return thousandths(degrees);
}

std::int64_t millimetres(units::Metres length) {
  return thousandths(length.value());
}

std::string canonical_text(const KeptReport& report) {
  CanonicalFields fields = fields_of("snow report 1", report.number, report.kept);
  fields.add(report.digest).add(report.observer).add(report.observed);
  return add(fields, report.until).text();
}

std::string canonical_text(const KeptMark& mark) {
  CanonicalFields fields = fields_of("mark status 1", mark.number, mark.said);
  fields.add(mark.status.mark).add(mark.status.clear ? "clear" : "not clear");
  return add(fields, mark.status.until).text();
}

std::string canonical_text(const SignedBoard& board) {
  CanonicalFields fields = fields_of("day board 1", board.number, board.signed_off);
  fields.add(board.digest).add(board.valid_until);
  add(fields, board.head).add(static_cast<std::int64_t>(board.inputs.size()));
  for (const BoardInput& input : board.inputs) {
    fields.add(input.name).add(input.role).add(input.digest);
  }
  return fields.text();
}

std::string canonical_text(const Override& given) {
  CanonicalFields fields = fields_of("override 1", given.number, given.allowed);
  fields.add(given.kind).add(given.subject).add(given.value).add(given.reason).add(given.expires);
  return fields.text();
}

std::string canonical_text(const OverrideEnd& end) {
  CanonicalFields fields = fields_of("override end 1", end.number, end.ended);
  return fields.add(end.override_number).add(end.reason).text();
}

std::string canonical_text(const IssuedCard& card) {
  CanonicalFields fields = fields_of("route card 1", card.number, card.issued);
  fields.add(card.board).add(card.route).add(card.digest);
  return add(fields, card.head).text();
}

std::string canonical_text(const Recall& recall) {
  CanonicalFields fields = fields_of("card recall 1", recall.number, recall.recalled);
  return fields.add(recall.card).add(recall.reason).text();
}

std::string canonical_text(const FieldCheck& check) {
  CanonicalFields fields = fields_of("field check 1", check.number, check.measured);
  fields.add(millimetres(check.at.east))
      .add(millimetres(check.at.north))
      .add(millidegrees(check.heading.degrees()))
      .add(millidegrees(check.grade.degrees()))
      .add(millidegrees(check.cross_slope.degrees()))
      .add(check.instrument);
  return fields.text();
}

}  // namespace rimehaul::day
