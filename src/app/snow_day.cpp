#include "app/snow_day.h"

#include <algorithm>
#include <filesystem>
#include <utility>

#include "app/answer.h"
#include "app/deciders.h"
#include "app/input_files.h"
#include "app/keep_report.h"
#include "app/place.h"
#include "app/question.h"
#include "app/record_place.h"
#include "app/softening.h"
#include "app/status.h"
#include "app/versions.h"
#include "base/require.h"
#include "card/snow_day.h"
#include "ports/json/snow_day_json.h"
#include "ports/toml/wetness_record.h"
#include "terrain/gradient.h"
#include "terrain/stretch.h"

namespace rimehaul::app {

namespace {

/// The ground at a place as the heights have it.
snow::PlaceAndHour ground_at(const LoadedSite& site, geo::MapPoint place, units::Instant when) {
  const auto height = site.scene->heights.at(place);
  const auto gradient = terrain::surface_gradient(site.scene->heights, place);
  if (!height || !gradient) {
    throw WrongUsage{
        "there is no height at that place, or none is known so far from the trails; give a place "
        "on a trail or beside one"};
  }
  const units::Slope slope = terrain::slope_of(*gradient);
  return {.height = *height,
          .aspect = terrain::aspect_of(*gradient),
          .when = when,
          .slope = snow::SlopeRange{.least = slope, .most = slope},
          .place = place};
}

struct AskedReport {
  snow::SnowReport report;
  ChosenSnow chosen;  ///< only its file
};

AskedReport report_asked(const LoadedSite& site, const SnowDayOptions& options) {
  AskedReport asked;
  if (options.report) {
    asked.report = report_in(*options.report, site.scene->network);
    asked.chosen.file = snow_report_file(*options.report, asked.report);
  } else if (site.snow) {
    asked.report = *site.snow;
  } else {
    throw WrongUsage{"what is the snow like? Say --snow-report FILE; site.toml names no report"};
  }
  return asked;
}

/// Who keeps the report; nothing: it is not to be kept.
std::optional<day::Done> keeper(const LoadedSite& site, const SnowDayOptions& options,
                                const Outside& outside) {
  if (!options.keep && options.person.empty()) {
    return std::nullopt;
  }
  if (!options.keep) {
    throw WrongUsage{"--as says who keeps the report, and it is not to be kept; say --keep too"};
  }
  if (options.person.empty()) {
    throw WrongUsage{"nobody keeps the report; say --as PERSON"};
  }
  return told_by(site, options.person, outside);
}

/// The file of the report, by the name that the records bear: as seen from the site's folder.
struct ReportFile {
  card::InputFile input;
  std::string path;
};

ReportFile file_of(const LoadedSite& site, const AskedReport& asked) {
  if (!asked.chosen.file) {
    const auto input = std::ranges::find(site.inputs, "snow", &card::InputFile::what);
    base::require(input != site.inputs.end(), "the site's own report is among its files");
    return {*input, path_of({site.folder, input->name})};
  }
  ReportFile given{*asked.chosen.file, asked.chosen.file->name};
  given.input.name = std::filesystem::proximate(given.path, site.folder).string();
  return given;
}

card::ReportKept kept_by(const day::Done& by, const LoadedSite& site, const AskedReport& asked,
                         const Outside& outside) {
  const ReportFile file = file_of(site, asked);
  if (const auto records = records_of(site)) {
    if (const auto number = kept_report(*records, file.input.digest)) {
      return {.number = *number, .already = true};
    }
  }
  const auto writing = begin_writing(site, outside);
  // Somebody else may have kept it while this waited for them.
  if (const auto number = kept_report(*writing, file.input.digest)) {
    return {.number = *number, .already = true};
  }
  const std::int64_t number = keep_report({asked.report, {file.path, file.input}}, by, *writing);
  writing->commit();
  return {.number = number, .already = false};
}

Status tell_record(const LoadedSite& site, const SnowDayOptions& options, const Outside& outside) {
  auto reading = ports::toml::read_wetness_record({*options.record, *options.record});
  std::erase_if(reading.faults,
                [](const base::Fault& fault) { return fault.weight != base::Weight::fault; });
  if (!reading.faults.empty()) {
    throw UnfitInput{std::move(reading.faults)};
  }
  card::SnowRecord record;
  record.site = site.name;
  record.days = static_cast<int>(reading.data.size());
  for (const snow::SeenDay& day : reading.data) {
    record.seen += static_cast<int>(day.seen.size());
  }
  record.shown = snow::calibrated(reading.data, softening_of(site));
  record.made_from = made_from(site.inputs, outside);
  record.local_clock = site.local_clock;
  give_answer(
      {.text = card::text_of(record, kColumns), .json = ports::json::snow_record_json(record)},
      options.common, outside);
  return record.shown ? Status::yes : Status::honest_no;
}

}  // namespace

Status snow_day(const SnowDayOptions& options, const Outside& outside) {
  const LoadedSite site = load_usable_site(options.common.site);
  const std::optional<day::Done> by = keeper(site, options, outside);
  if (options.record) {
    return tell_record(site, options, outside);
  }
  const MapPlace place = place_on_map(site.scene->network, options.place);
  const AskedReport asked = report_asked(site, options);
  const snow::SnowReport& report = asked.report;
  card::SnowDay day =
      card::snow_day(report, report.forecast ? softening_of(site) : snow::SofteningSite{},
                     ground_at(site, place.at, report.observed.value_or(outside.now)));
  day.site = site.name;
  day.map_frame = site.scene->frame.horizontal_name;
  day.local_clock = site.local_clock;
  if (place.on_trail) {
    day.trail = site.scene->network.trails[place.on_trail->trail].name;
    day.along = place.on_trail->at;
  }
  day.made_from = made_from(inputs_judged_by(site, asked.chosen), outside);
  if (by) {
    day.kept = kept_by(*by, site, asked, outside);
  }
  give_answer({.text = card::text_of(day, kColumns), .json = ports::json::snow_day_json(day)},
              options.common, outside);
  return Status::yes;
}

}  // namespace rimehaul::app
