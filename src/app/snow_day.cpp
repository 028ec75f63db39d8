#include "app/snow_day.h"

#include <utility>

#include "app/answer.h"
#include "app/input_files.h"
#include "app/place.h"
#include "app/question.h"
#include "app/softening.h"
#include "app/status.h"
#include "app/versions.h"
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
  give_answer({.text = card::text_of(day, kColumns), .json = ports::json::snow_day_json(day)},
              options.common, outside);
  return Status::yes;
}

}  // namespace rimehaul::app
