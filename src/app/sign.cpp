#include "app/sign.h"

#include <algorithm>
#include <utility>

#include "app/answer.h"
#include "app/board_rows.h"
#include "app/day_table.h"
#include "app/deciders.h"
#include "app/frozen_files.h"
#include "app/input_files.h"
#include "app/keep_report.h"
#include "app/names.h"
#include "app/orders.h"
#include "app/question.h"
#include "app/record_place.h"
#include "ports/json/day_table_json.h"
#include "ports/openssl/digest.h"

namespace rimehaul::app {

namespace {

/// The report holds at the departure and is the site's own; else there is nothing to sign by.
units::Instant report_holds_until(const LoadedSite& site, units::Instant depart) {
  if (!site.snow || !holds_at(*site.snow, depart)) {
    throw WrongUsage{
        "no snow report of this site holds at that hour, so there is nothing to sign; write "
        "today's and name it in site.toml"};
  }
  return *site.snow->valid_until;
}

card::DayRow& row_named(card::DayTable& table, const std::string& name) {
  const auto row = std::ranges::find(table.rows, name, &card::DayRow::name);
  if (row == table.rows.end()) {
    throw WrongUsage{no_such({"route", names_of(table.rows)}, name)};
  }
  return *row;
}

/// Whether nothing but a decision keeps a row from being driven as reported.
bool waits_for_decision(const card::DayRow& row) {
  const card::BoardRow& as_reported = row.cells.front();
  return as_reported.verdict == passage::Verdict::restricted && !as_reported.decision.empty();
}

void set_by_hand(card::DayTable& table, const SignOptions& options, const day::Done& by) {
  if (options.reason.empty() && !(options.close.empty() && options.permit.empty())) {
    throw WrongUsage{"routes are closed or permitted without a reason; say --reason TEXT"};
  }
  const std::string words = by.by + ": " + options.reason;
  for (const std::string& name : options.close) {
    row_named(table, name).closed_by_hand = words;
  }
  for (const std::string& name : options.permit) {
    card::DayRow& row = row_named(table, name);
    if (!row.closed_by_hand.empty()) {
      throw WrongUsage{"\"" + name + "\" is closed and permitted at once"};
    }
    if (!waits_for_decision(row)) {
      throw WrongUsage{"\"" + name +
                       "\" waits for no decision as reported; there is nothing to "
                       "permit"};
    }
    row.permitted = words + " (" + row.cells.front().decision + ")";
  }
}

day::SignedBoard board_to_keep(const card::DayTable& table, const day::Writing& writing,
                               const day::Done& by) {
  std::string json = ports::json::day_table_json(table);
  const base::Digest digest = ports::openssl::digest_of(json);
  day::SignedBoard board{.number = table.signed_by->board,
                         .json = std::move(json),
                         .digest = digest,
                         .signed_off = by,
                         .valid_until = table.signed_by->valid_until,
                         .inputs = {},
                         .head = writing.head()};
  for (const card::InputFile& input : table.made_from.inputs) {
    board.inputs.push_back({input.name, input.what, input.digest});
  }
  return board;
}

FileToFreeze file_of(const LoadedSite& site, const card::InputFile& input) {
  return {path_of({site.folder, input.name}), input};
}

void freeze_inputs(const LoadedSite& site, const card::DayTable& table, day::Writing& writing) {
  for (const card::InputFile& input : table.made_from.inputs) {
    freeze(file_of(site, input), writing);
  }
}

void keep_report_of(const LoadedSite& site, const card::DayTable& table, const day::Done& by,
                    day::Writing& writing) {
  const auto input = std::ranges::find(table.made_from.inputs, "snow", &card::InputFile::what);
  keep_report({*site.snow, file_of(site, *input)}, by, writing);
}

}  // namespace

Status sign(const SignOptions& options, const Outside& outside) {
  LoadedSite site = load_usable_site(options.common.site);
  if (options.person.empty()) {
    throw WrongUsage{"nobody signs; say --as PERSON"};
  }
  const day::Done by = decided_by(site, options.person, outside);
  const units::Instant depart = departure(options.depart, {outside.now, site.local_clock});
  const units::Instant until = report_holds_until(site, depart);
  heed_records(site, depart, outside);
  card::DayTable table = day_table(site,
                                   {.title = "NAMED ROUTES",
                                    .by = card::DayBy::snow,
                                    .columns = columns_by_snow(options.board, depart),
                                    .rows = named_routes(site),
                                    .weather = {},
                                    .depart = depart},
                                   outside);
  set_by_hand(table, options, by);

  const auto writing = begin_writing(site, outside);
  freeze_inputs(site, table, *writing);
  keep_report_of(site, table, by, *writing);
  table.signed_by = card::SignedBy{.board = writing->next(day::Kind::day_board),
                                   .person = by.by,
                                   .role = by.role,
                                   .at = by.at,
                                   .valid_until = until,
                                   .log_head = text_of(writing->head())};
  Answer answer = answer_of(site, table, {options.csv, options.pdf, options.board.paper});
  writing->add(board_to_keep(table, *writing, by),
               {"sign", "board " + std::to_string(table.signed_by->board), table.title});
  writing->commit();
  give_answer(std::move(answer), options.common, outside);
  return Status::yes;
}

}  // namespace rimehaul::app
