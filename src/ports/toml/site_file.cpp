// Reads site.toml.
#include "ports/toml/site_file.h"

#include <algorithm>
#include <array>
#include <filesystem>
#include <system_error>
#include <utility>

#include "ports/toml/provenance_reader.h"
#include "ports/toml/table_reader.h"

namespace rimehaul::ports::toml {

namespace {

using units::Metres;

constexpr std::array<Word<HeightUnit>, 3> kUnits{{{"metres", HeightUnit::metres},
                                                  {"feet", HeightUnit::feet},
                                                  {"us_survey_feet", HeightUnit::us_survey_feet}}};

constexpr Range kPlausible{.from = -500, .to = 9000};

bool stays_inside(const std::string& name) {
  const std::filesystem::path path{name};
  return path.is_relative() &&
         std::ranges::none_of(path, [](const std::filesystem::path& part) { return part == ".."; });
}

/// A list of file names; those that lead out of the folder are left out.
std::vector<std::string> files_in(TableReader& in, std::string_view key, Presence presence) {
  std::vector<std::string> names = in.texts(key, presence);
  std::erase_if(names, [&](const std::string& name) {
    if (!stays_inside(name)) {
      in.fault(key, {"\"" + name + "\" leads out of the site folder",
                     "put the file into the folder and name it from there"});
      return true;
    }
    return false;
  });
  return names;
}

std::optional<std::string> file_in(TableReader& in, std::string_view key) {
  std::optional<std::string> name = in.text(key, Presence::may);
  if (name && !stays_inside(*name)) {
    in.fault(key, {"\"" + *name + "\" leads out of the site folder",
                   "put the file into the folder and name it from there"});
    name.reset();
  }
  return name;
}

/// What the heights may be trusted for, and who says so.
struct Trust {
  terrain::HeightTrust trust;
  std::vector<std::string> error_sources;
  std::string sub_cell_source;
};

Trust read_said_trust(TableReader& in) {
  Trust said;
  for (TableReader& error : in.tables("error")) {
    said.trust.errors.push_back(
        {.standard_deviation = error.must<Metres>("sd_m", {.above = 0, .to = 50}),
         .correlation_length = error.must<Metres>("correlation_m", {.from = 0, .to = 100'000})});
    said.error_sources.push_back(error.text("source").value_or(""));
    error.refuse_rest();
  }
  if (const auto sub_cell = in.table_if_there("sub_cell")) {
    if (auto read = read_steepest(*sub_cell, {.from = 0, .to = 60}, Estimates::taken)) {
      said.trust.sub_cell = units::Slope::from_degrees(read->deg);
      said.trust.sub_cell_is_estimate = read->provenance.standing == rig::Standing::estimate;
      said.sub_cell_source = std::move(read->provenance.source);
    }
  }
  return said;
}

/// With a fault anywhere in it the heights are trusted for nothing.
Trust read_trust(TableReader& in) {
  const std::size_t faults_before = in.faults();
  Trust said = read_said_trust(in);
  if (in.faults() != faults_before) {
    return {};
  }
  if (said.trust.errors.empty()) {
    in.doubt({"says nothing of the heights' error, so every trail is closed",
              "declare it under [[heights.error]]"});
  }
  return said;
}

HeightsDeclared read_heights(TableReader in) {
  HeightsDeclared heights;
  heights.folder = in.text("folder", Presence::may).value_or("");
  heights.files = files_in(in, "files", Presence::must);
  heights.vertical_datum = in.text("vertical_datum", Presence::may);
  heights.unit = in.word("unit", kUnits, Presence::may);
  heights.unit_is_unclear = in.has("unit") && !heights.unit;
  heights.source = in.text("source").value_or("");
  heights.date = in.text("date").value_or("");
  heights.lowest = in.may<Metres>("lowest_m", kPlausible).value_or(heights.lowest);
  heights.highest = in.may<Metres>("highest_m", kPlausible).value_or(heights.highest);
  if (!(heights.lowest < heights.highest)) {
    in.fault("lowest_m", {"is not below highest_m", "correct one of them"});
    heights.lowest = HeightsDeclared{}.lowest;
    heights.highest = HeightsDeclared{}.highest;
  }
  Trust said = read_trust(in);
  heights.trust = std::move(said.trust);
  heights.error_sources = std::move(said.error_sources);
  heights.sub_cell_source = std::move(said.sub_cell_source);
  in.refuse_rest();
  return heights;
}

/// The offset is asked for unless a zone is given.
void read_local_time(TableReader& top, SiteFile& site) {
  site.time_zone = top.text("time_zone", Presence::may);
  site.utc_offset_minutes = top.whole("utc_offset_minutes", {.from = -720, .to = 840},
                                      site.time_zone ? Presence::may : Presence::must);
  if (site.time_zone && top.has("utc_offset_minutes")) {
    top.fault("time_zone", {"is given beside utc_offset_minutes", "take one of the two out"});
  }
}

/// It changes by a dated measurement alone.
SofteningMeasured read_softening(TableReader in) {
  constexpr double kSecondsInHour = 3'600.0;
  SofteningMeasured measured;
  measured.melt = in.must<double>("melt_factor", {.from = 0.25, .to = 1.5});
  measured.off = units::Seconds{in.must<double>("off_h", {.from = 2, .to = 6}) * kSecondsInHour};
  measured.source = in.text("source").value_or("");
  measured.source += ", " + in.day("date").value_or("");
  in.refuse_rest();
  return measured;
}

void expect_folder(const std::string& folder) {
  std::error_code failed;
  const std::filesystem::file_status status = std::filesystem::status(folder, failed);
  if (std::filesystem::is_directory(status)) {
    return;
  }
  std::string problem =
      std::filesystem::exists(status) ? "is no folder" : "there is no such folder";
  if (status.type() == std::filesystem::file_type::none) {
    problem = "cannot be looked at: " + failed.message();
  }
  throw base::BadInput{{.file = folder,
                        .place = "",
                        .problem = std::move(problem),
                        .remedy = "name the folder that holds the site.toml"}};
}

}  // namespace

base::Reading<SiteFile> read_site_file(const std::string& folder) {
  expect_folder(folder);
  FaultLog log{"site.toml"};
  const std::filesystem::path path = std::filesystem::path{folder} / "site.toml";
  const Node root = parse_file({.path = path.string(), .shown = log.file()});
  TableReader top{root, "", log};
  top.expect_schema();

  SiteFile site;
  site.folder = folder;
  site.name = top.text("name").value_or("");
  site.map_frame = top.text("map_frame", Presence::may);
  read_local_time(top, site);
  site.snap = top.may<Metres>("snap_m", {.from = 0, .to = 20}).value_or(site.snap);
  TableReader files = top.table("files");
  site.trails = files_in(files, "trails", Presence::must);
  site.stations = files_in(files, "stations", Presence::may);
  site.zones = files_in(files, "zones", Presence::may);
  site.marks = files_in(files, "marks", Presence::may);
  site.rigs = file_in(files, "rigs").value_or(site.rigs);
  site.rules = file_in(files, "rules").value_or(site.rules);
  site.snow = file_in(files, "snow").value_or(site.snow);
  site.people = file_in(files, "people").value_or(site.people);
  site.routes = file_in(files, "routes").value_or(site.routes);
  files.refuse_rest();
  site.heights = read_heights(top.table("heights"));
  if (const auto softening = top.table_if_there("softening")) {
    site.softening = read_softening(*softening);
  }
  top.refuse_rest();
  return {.data = std::move(site), .faults = log.in_order()};
}

}  // namespace rimehaul::ports::toml
