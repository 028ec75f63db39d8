// The verb `board`: what is open today between which stations.
#include "app/board.h"

#include <algorithm>
#include <list>
#include <utility>

#include "app/answer.h"
#include "app/board_on_cores.h"
#include "app/board_rows.h"
#include "app/day_table.h"
#include "app/open_ground.h"
#include "app/orders.h"
#include "app/print_doubts.h"
#include "app/progress.h"
#include "app/question.h"
#include "app/value_kinds.h"
#include "app/versions.h"
#include "card/board_report.h"
#include "card/day_lines.h"
#include "ports/cairo/board_sheet.h"
#include "ports/json/board_json.h"
#include "ports/qpdf/finish_pdf.h"

namespace rimehaul::app {

namespace {

/// A snow class, and who says so.
struct Column {
  snow::SnowState state;
  ChosenSnow snow;
};

std::vector<Column> columns_of(const LoadedSite& site, const BoardOptions& options,
                               units::Instant depart) {
  std::vector<Column> columns;
  for (const snow::SnowState& state : snows_asked(options)) {
    SnowOptions one = options.weather;
    one.wetness = snow::key_of(state.wetness);
    one.surface = snow::key_of(state.surface);
    columns.push_back({state, snow_to_judge_by(site, one, depart)});
  }
  return columns;
}

std::vector<const snow::SnowAt*> snows_in(const std::vector<Column>& columns) {
  std::vector<const snow::SnowAt*> snows;
  snows.reserve(columns.size());
  for (const Column& column : columns) {
    snows.push_back(column.snow.snow.get());
  }
  return snows;
}

day::DayBoard board_of(const passage::Scene& scene, const rig::Rig& rig,
                       const std::vector<Column>& columns, day::BoardQuestion question,
                       const Outside& outside) {
  std::list<passage::Judge> judges;
  std::vector<day::BoardSnow> snows;
  for (const Column& column : columns) {
    const snow::SnowAt& snow = *column.snow.snow;
    judges.push_back(judges.empty() ? passage::Judge{scene, rig, snow}
                                    : judges.front().with_snow(snow));
    snows.push_back({.state = column.state, .judge = judges.back()});
  }
  Progress progress{outside, "judging pairs"};
  question.rewalk = outside.rewalk;
  question.watcher = &progress;
  return board_on_cores(snows, question);
}

std::vector<trails::LegId> legs_of(const day::DayBoard& board) {
  std::vector<trails::LegId> legs;
  for (const day::BoardCell& cell : board.cells) {
    legs.insert(legs.end(), cell.way.begin(), cell.way.end());
  }
  return legs;
}

}  // namespace

std::vector<snow::SnowState> snows_asked(const BoardOptions& options) {
  const bool all = std::ranges::find(options.surfaces, "all") != options.surfaces.end();
  std::vector<std::string> surfaces = all ? std::vector<std::string>{} : options.surfaces;
  if (!all && surfaces.empty()) {
    surfaces.emplace_back(snow::key_of(snow::Surface::groomed));
  }
  std::vector<snow::SnowState> snows;
  for (const snow::Surface surface : surfaces_typed(surfaces)) {
    for (const snow::Wetness wetness : classes_typed(options.wetness)) {
      snows.push_back({.wetness = wetness, .surface = surface});
    }
  }
  return snows;
}

namespace {

Status board_of_rows(LoadedSite& site, const BoardOptions& options, units::Instant depart,
                     const Outside& outside) {
  const bool by_hour = options.by == kByHour;
  const card::DayTable table = day_table(
      site,
      {.title = title_of_rows(options),
       .by = by_hour ? card::DayBy::hour : card::DayBy::snow,
       .columns = by_hour ? columns_by_hour(site, depart) : columns_by_snow(options, depart),
       .rows = rows_asked(options, site),
       .weather = options.weather,
       .depart = depart,
       .late = reserve_asked(options.hours)},
      outside);
  give_answer(answer_of(site, table, {options.csv, options.pdf, options.paper}), options.common,
              outside);
  return Status::yes;
}

}  // namespace

Status board(const BoardOptions& options, const Outside& outside) {
  LoadedSite site = load_usable_site(options.common.site);
  const units::Instant depart = departure(options.depart, {outside.now, site.local_clock});
  heed_records(site, depart, outside);
  const bool own_rigs = have_own_rigs(options);
  if (own_rigs && (options.all_rigs || !options.rig.name.empty())) {
    throw WrongUsage{"named routes have their own rigs; leave out --rig and --all-rigs"};
  }
  if (!own_rigs && options.all_rigs == !options.rig.name.empty()) {
    throw WrongUsage{"no rig is asked for; say --rig RIG, or --all-rigs"};
  }
  if (options.rows != kRowsOfPairs || options.all_rigs || options.by == kByHour) {
    return board_of_rows(site, options, depart, outside);
  }
  const rig::Rig rig = rig_as_loaded(site, options.rig);
  const std::vector<Column> columns = columns_of(site, options, depart);
  const std::vector<day::Stops> pairs = pairs_asked(options, site.scene->network);
  const day::BoardQuestion question{.rows = {pairs.begin(), pairs.end()}, .depart = depart};
  const day::DayBoard judged = asked_over_open_ground(
      site, {rig, snows_in(columns), depart},
      [&] { return board_of(*site.scene, rig, columns, question, outside); }, legs_of);
  card::BoardReport report = card::board_report(judged, *site.scene, rig);
  const ChosenSnow& first = columns.front().snow;
  report.site = site.name;
  report.weather = first.snow->weather();
  report.told_by = first.snow->told_by();
  report.snow_valid_until = first.valid_until;
  report.report_ran_out = first.ran_out;
  report.depart = depart;
  report.today = card::day_lines(*site.scene, report.weather,
                                 {.depart = depart, .report_ran_out = first.ran_out});
  report.made_from = made_from(inputs_judged_by(site, first), outside);
  report.local_clock = site.local_clock;
  Answer answer{.text = card::text_of(report, kColumns), .json = ports::json::board_json(report)};
  if (options.csv) {
    answer.files.push_back({*options.csv, card::board_csv(report)});
  }
  if (options.pdf) {
    doubt_letters_on_paper(site, answer);
    answer.files.push_back(
        {*options.pdf,
         ports::qpdf::finish_pdf(ports::cairo::draw_board(report),
                                 {.title = "Day board: " + report.site + ", " + report.rig})});
  }
  give_answer(std::move(answer), options.common, outside);
  return Status::yes;
}

}  // namespace rimehaul::app
