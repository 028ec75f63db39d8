#include "ports/toml/wetness_record.h"

#include <algorithm>
#include <filesystem>
#include <iterator>
#include <utility>

#include "ports/toml/snow_file.h"
#include "ports/toml/snow_words.h"
#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

namespace fs = std::filesystem;

snow::SeenWetness read_seen(TableReader in) {
  snow::SeenWetness seen;
  seen.where.when = in.moment("when").value_or(units::Instant{});
  seen.where.height = in.must<geo::Height>("height_m", {.from = -500, .to = 9000});
  if (const auto aspect = in.may<double>("aspect_deg", {.from = 0, .to = 360})) {
    seen.where.aspect = units::Bearing::from_degrees(*aspect);
  }
  if (const auto slope = in.may<double>("slope_deg", {.from = 0, .to = 60})) {
    const units::Slope steep = units::Slope::from_degrees(*slope);
    seen.where.slope = snow::SlopeRange{.least = steep, .most = steep};
  }
  seen.wetness = in.word("wetness", wetness_words()).value_or(snow::Wetness::dry);
  in.refuse_rest();
  return seen;
}

/// The report of a day; its own faults join the others.
snow::SnowReport read_report(TableReader& day, const fs::path& folder,
                             std::vector<base::Fault>& faults) {
  const std::string name = day.text("report").value_or("");
  const fs::path path{name};
  const bool leads_out =
      path.is_absolute() || std::ranges::find(path, fs::path{".."}) != path.end();
  if (leads_out) {
    day.fault("report", {"\"" + name + "\" leads out of the record's folder",
                         "put the report into the folder and name it from there"});
  }
  if (name.empty() || leads_out) {
    return {};
  }
  auto reading = read_snow_report({.path = (folder / path).string(), .shown = name});
  std::ranges::move(reading.faults, std::back_inserter(faults));
  if (!reading.data.forecast) {
    day.fault("report", {"\"" + name + "\" has no forecast", "leave out this day"});
  }
  return std::move(reading.data);
}

}  // namespace

base::Reading<std::vector<snow::SeenDay>> read_wetness_record(const TextFile& file) {
  FaultLog log{file.shown};
  const Node root = parse_file(file);
  TableReader top{root, "", log};
  top.expect_schema();
  const fs::path folder = fs::path{file.path}.parent_path();
  std::vector<snow::SeenDay> days;
  std::vector<base::Fault> of_reports;
  for (TableReader& table : top.tables("day")) {
    snow::SeenDay day{.report = read_report(table, folder, of_reports), .seen = {}};
    for (TableReader& seen : table.tables("seen")) {
      day.seen.push_back(read_seen(seen));
    }
    table.refuse_rest();
    days.push_back(std::move(day));
  }
  top.refuse_rest();
  std::vector<base::Fault> faults = log.in_order();
  std::ranges::move(of_reports, std::back_inserter(faults));
  return {.data = std::move(days), .faults = std::move(faults)};
}

}  // namespace rimehaul::ports::toml
