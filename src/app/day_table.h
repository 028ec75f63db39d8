// Works out the day board of many rigs: routes or trails, each with its own rig and load, column by
// column.
#pragma once

#include <string>
#include <vector>

#include "app/answer.h"
#include "app/load_site.h"
#include "app/options.h"
#include "app/route_hours.h"
#include "card/day_table.h"
#include "day/day_board.h"

namespace rimehaul::app {

/// One row that is asked for.
struct AskedRow {
  std::string name;
  day::Trip trip;
  rig::Rig rig;
  std::optional<AskedBack> back{};  ///< the way back that its hours are told for
};

struct DayTableAsked {
  std::string title;
  card::DayBy by = card::DayBy::snow;
  std::vector<card::DayColumn> columns;  ///< one or more
  std::vector<AskedRow> rows;            ///< one or more
  SnowOptions weather;                   ///< its wetness and surface are not used
  units::Instant depart;                 ///< for which weather, day and hours are told
  units::Seconds late{0};                ///< by the hour: that windows allow for
};

/// Judges every row in every column, over open ground too, rig by rig; what it is made from and the
/// orders in force are told with it. The site must have its orders in force already.
[[nodiscard]] card::DayTable day_table(LoadedSite& site, const DayTableAsked& asked,
                                       const Outside& outside);

/// A table on the screen, as JSON, and in the files that were asked for.
struct DayTableFiles {
  const std::optional<std::string>& csv;
  const std::optional<std::string>& pdf;
  const std::string& paper;  ///< "a4" or "a3"
};
[[nodiscard]] Answer answer_of(const LoadedSite& site, const card::DayTable& table,
                               const DayTableFiles& files);

/// As the day's report has it at a departure, then every class on every surface asked for.
[[nodiscard]] std::vector<card::DayColumn> columns_by_snow(const BoardOptions& options,
                                                           units::Instant depart);
/// Each full hour of the local day of a departure.
[[nodiscard]] std::vector<card::DayColumn> columns_by_hour(const LoadedSite& site,
                                                           units::Instant depart);

}  // namespace rimehaul::app
