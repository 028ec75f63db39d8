#include "app/day_table.h"

#include <algorithm>
#include <iterator>
#include <list>
#include <tuple>
#include <utility>

#include "app/board.h"
#include "app/board_on_cores.h"
#include "app/names.h"
#include "app/open_ground.h"
#include "app/print_doubts.h"
#include "app/progress.h"
#include "app/question.h"
#include "app/status.h"
#include "app/versions.h"
#include "card/day_lines.h"
#include "card/trip_words.h"
#include "passage/estimates.h"
#include "ports/cairo/day_table_sheet.h"
#include "ports/json/day_table_json.h"
#include "ports/qpdf/finish_pdf.h"

namespace rimehaul::app {

namespace {

constexpr std::int64_t kHour = 3'600;

/// The snow of each column, as it holds at that column's departure.
std::vector<ChosenSnow> snows_of(const LoadedSite& site, const DayTableAsked& asked) {
  std::vector<ChosenSnow> snows;
  for (const card::DayColumn& column : asked.columns) {
    SnowOptions options = asked.weather;
    options.wetness.reset();
    if (column.snow) {
      options.wetness = snow::key_of(column.snow->wetness);
      options.surface = snow::key_of(column.snow->surface);
      options.report.reset();
    }
    snows.push_back(snow_to_judge_by(site, options, column.depart));
  }
  return snows;
}

/// Rows of the same rig with the same load, judged together; all look for ways, or none.
struct Group {
  const rig::Rig* rig;
  std::vector<std::size_t> rows;
};

/// A rig of the site as it stands on a row.
auto as_loaded(const rig::Rig& rig) {
  return std::tuple{rig.name, rig.load, rig.accompanied};
}

/// Whether its best way is to be looked for.
bool looks_for_way(const AskedRow& row) {
  return std::holds_alternative<day::Stops>(row.trip);
}

std::vector<Group> grouped(const std::vector<AskedRow>& rows) {
  std::vector<Group> groups;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const auto same = std::ranges::find_if(groups, [&](const Group& group) {
      return as_loaded(*group.rig) == as_loaded(rows[i].rig) &&
             looks_for_way(rows[group.rows.front()]) == looks_for_way(rows[i]);
    });
    if (same == groups.end()) {
      groups.push_back({&rows[i].rig, {i}});
    } else {
      same->rows.push_back(i);
    }
  }
  return groups;
}

std::vector<trails::LegId> legs_of(const day::DayBoard& board) {
  std::vector<trails::LegId> legs;
  for (const day::BoardCell& cell : board.cells) {
    legs.insert(legs.end(), cell.way.begin(), cell.way.end());
  }
  return legs;
}

/// What all groups are judged by.
struct Judging {
  LoadedSite& site;
  const DayTableAsked& asked;
  const std::vector<ChosenSnow>& snows;
  const Outside& outside;
};

day::DayBoard judged(const Judging& by, const Group& group) {
  const DayTableAsked& asked = by.asked;
  const passage::Scene& scene = *by.site.scene;
  std::list<passage::Judge> judges;
  std::vector<day::BoardSnow> columns;
  for (std::size_t i = 0; i < asked.columns.size(); ++i) {
    const snow::SnowAt& snow = *by.snows[i].snow;
    judges.push_back(judges.empty() ? passage::Judge{scene, *group.rig, snow}
                                    : judges.front().with_snow(snow));
    columns.push_back({.state = asked.columns[i].snow,
                       .judge = judges.back(),
                       .depart = asked.columns[i].depart});
  }
  Progress progress{by.outside, "judging routes of " + group.rig->name};
  day::BoardQuestion question{.rows = {},
                              .depart = asked.columns.front().depart,
                              .rewalk = by.outside.rewalk,
                              .watcher = &progress};
  for (const std::size_t row : group.rows) {
    question.rows.push_back(asked.rows[row].trip);
  }
  return board_on_cores(columns, question);
}

/// The windows of the day for each row of a group, in the snow that the report has for it.
void tell_hours(const LoadedSite& site, const Group& group, const DayTableAsked& asked,
                card::DayTable& table) {
  const passage::Scene& scene = *site.scene;
  const ChosenSnow snow = snow_to_judge_by(site, asked.weather, asked.depart);
  const passage::Judge judge{scene, *group.rig, *snow.snow};
  passage::GroundMemory ground;
  const passage::RememberingJudge remembering{judge, ground};
  const units::Instant day = asked.columns.front().depart;
  search::LegHours hours{remembering, {day, {site.local_clock.next_day_begins(day).seconds - 1}}};
  for (const std::size_t index : group.rows) {
    const AskedRow& row = asked.rows[index];
    const day::DeparturesQuestion question{row.trip, hours.horizon(), asked.late};
    if (!row.back) {
      table.rows[index].departures =
          day::departures_of(scene.network, hours, question, std::nullopt);
      continue;
    }
    const passage::Judge judge_back = judge.with_rig(row.back->rig);
    const passage::RememberingJudge remembering_back{judge_back, ground};
    table.rows[index].departures = day::departures_of(
        scene.network, hours, question, day::WayBack{remembering_back, row.back->turn_round});
  }
}

/// Judges a group and puts its cells, in names, into its rows. The ways over open ground are those
/// of its rig alone, so the site is as before when it is done; a row that gives its way needs none.
void judge_group(const Judging& by, const Group& group, card::DayTable& table) {
  LoadedSite& site = by.site;
  const DayTableAsked& asked = by.asked;
  const passage::Scene as_it_is = *site.scene;
  // Hours have one report in common, so the ways over open ground are those of the departure.
  const ChosenSnow at_departure = snow_to_judge_by(site, asked.weather, asked.depart);
  std::vector<const snow::SnowAt*> met;
  if (asked.by == card::DayBy::hour) {
    met.push_back(at_departure.snow.get());
  } else {
    std::ranges::transform(by.snows, std::back_inserter(met),
                           [](const ChosenSnow& snow) { return snow.snow.get(); });
  }
  const auto ask = [&] { return judged(by, group); };
  const day::DayBoard board =
      looks_for_way(asked.rows[group.rows.front()])
          ? asked_over_open_ground(site, {*group.rig, met, asked.depart}, ask, legs_of)
          : ask();
  const card::BoardReport report = card::board_report(board, *site.scene, *group.rig);
  for (std::size_t i = 0; i < group.rows.size(); ++i) {
    card::DayRow& row = table.rows[group.rows[i]];
    row.allowed_share = report.allowed_share;
    const auto first = report.rows.begin() + static_cast<std::ptrdiff_t>(i * asked.columns.size());
    row.cells.assign(first, first + static_cast<std::ptrdiff_t>(asked.columns.size()));
  }
  if (asked.by == card::DayBy::hour) {
    tell_hours(site, group, asked, table);
  }
  table.places_rewalked += report.places_rewalked;
  for (const std::string& estimate : report.estimates) {
    if (std::ranges::find(table.estimates, estimate) == table.estimates.end()) {
      table.estimates.push_back(estimate);
    }
  }
  site.scene.emplace(as_it_is);
}

card::DayRow row_in_names(const AskedRow& asked, const trails::Network& network) {
  card::DayRow row{.name = asked.name,
                   .by_way_of = card::places_of(asked.trip, network),
                   .rig = asked.rig.name,
                   .trailer = asked.rig.trailer ? asked.rig.trailer->name : "",
                   .driver_level = asked.rig.driver_level,
                   .load = asked.rig.load};
  if (const auto* way = std::get_if<search::FixedWay>(&asked.trip)) {
    row.trail =
        network.trails[network.legs[static_cast<std::size_t>(way->legs.front())].trail].name;
  }
  return row;
}

}  // namespace

card::DayTable day_table(LoadedSite& site, const DayTableAsked& asked, const Outside& outside) {
  const std::vector<ChosenSnow> snows = snows_of(site, asked);
  card::DayTable table;
  table.site = site.name;
  table.title = asked.title;
  table.by = asked.by;
  table.columns = asked.columns;
  table.depart = asked.depart;
  for (const AskedRow& row : asked.rows) {
    table.rows.push_back(row_in_names(row, site.scene->network));
  }
  const Judging by{site, asked, snows, outside};
  for (const Group& group : grouped(asked.rows)) {
    judge_group(by, group, table);
  }
  const ChosenSnow told = snow_to_judge_by(site, asked.weather, asked.depart);
  table.weather = told.snow->weather();
  table.told_by = told.snow->told_by();
  table.snow_valid_until = told.valid_until;
  table.report_ran_out = told.ran_out;
  table.orders = site.orders;
  table.today = card::day_lines(*site.scene, table.weather,
                                {.depart = asked.depart, .report_ran_out = told.ran_out});
  table.made_from = made_from(inputs_judged_by(site, told), outside);
  table.local_clock = site.local_clock;
  return table;
}

Answer answer_of(const LoadedSite& site, const card::DayTable& table, const DayTableFiles& files) {
  Answer answer{.text = card::text_of(table, kColumns), .json = ports::json::day_table_json(table)};
  if (files.csv) {
    answer.files.push_back({*files.csv, card::day_table_csv(table)});
  }
  if (files.pdf) {
    doubt_letters_on_paper(site, answer);
    const auto paper =
        files.paper == "a3" ? ports::cairo::BoardPaper::a3 : ports::cairo::BoardPaper::a4;
    answer.files.push_back(
        {*files.pdf, ports::qpdf::finish_pdf(ports::cairo::draw_day_table(table, paper),
                                             {.title = "Day board: " + table.site})});
  }
  return answer;
}

std::vector<card::DayColumn> columns_by_snow(const BoardOptions& options, units::Instant depart) {
  std::vector<card::DayColumn> columns{{.snow = {}, .depart = depart}};
  for (const snow::SnowState& state : snows_asked(options)) {
    columns.push_back({.snow = state, .depart = depart});
  }
  return columns;
}

std::vector<card::DayColumn> columns_by_hour(const LoadedSite& site, units::Instant depart) {
  std::vector<card::DayColumn> columns;
  const units::Instant end = site.local_clock.next_day_begins(depart);
  for (units::Instant hour = site.local_clock.day_begins(depart); hour < end;
       hour.seconds += kHour) {
    columns.push_back({.snow = {}, .depart = hour});
  }
  return columns;
}

}  // namespace rimehaul::app
