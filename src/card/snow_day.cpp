#include "card/snow_day.h"

#include <algorithm>

#include "card/figures.h"
#include "units/clock.h"
#include "units/rounding.h"

namespace rimehaul::card {

namespace {

using snow::Blind;
using snow::SnowState;
using snow::Wetness;
using units::Instant;

/// The worst answer at both ends of an hour: it changes at whole hours from the edges alone, so
/// that every state of the hour is met at one of them, or lasts through both.
std::optional<SnowState> worst_in_hour(const snow::ForecastSnow& snow, snow::PlaceAndHour where,
                                       Instant start) {
  std::optional<SnowState> worst;
  std::vector<Instant> moments =
      snow.turning_moments({start, {start.seconds + snow::kSecondsInHour - 1}});
  moments.insert(moments.begin(), start);
  for (const Instant moment : moments) {
    where.when = moment;
    const std::optional<SnowState> state = snow.at(where);
    if (!state) {
      return std::nullopt;
    }
    worst = worst ? worst->worst_with(*state) : *state;
  }
  return worst;
}

bool is_within(const snow::SnowReport& report, Instant start) {
  return start.seconds + snow::kSecondsInHour > report.observed->seconds &&
         start.seconds < report.observed->seconds + snow::kSecondsInHour;
}

std::string clock(Instant moment, const SnowDay& day) {
  return units::text_of(day.local_clock.time_of_day(moment));
}

/// The first hour from `from` on for which something holds.
template <class Holds>
std::vector<SnowHour>::const_iterator first_from(const SnowDay& day,
                                                 std::vector<SnowHour>::const_iterator from,
                                                 const Holds& holds) {
  return std::find_if(from, day.hours.end(), holds);
}

bool is_at_least(const SnowHour& hour, Wetness wetness) {
  return hour.soft.state && hour.soft.state->wetness >= wetness;
}

std::string off_text(const SnowDay& day) {
  return " +- " + units::text_of(day.off.value() / 3600.0, 0, units::Round::up) + " h";
}

}  // namespace

SnowDay snow_day(const snow::SnowReport& report, const snow::SofteningSite& site,
                 const snow::PlaceAndHour& where) {
  const snow::ForecastSnow snow{report, site};
  SnowDay day;
  day.place = where.place.value_or(geo::MapPoint{});
  day.height = where.height;
  day.slope = where.slope ? std::optional{where.slope->most} : std::nullopt;
  day.aspect = where.aspect;
  day.off = site.off;
  day.told = snow::observed_by(report);
  day.valid_until = report.valid_until;
  snow::PlaceAndHour seen = where;
  seen.when = report.observed.value_or(where.when);
  day.observed = snow.at(seen);
  if (!report.forecast) {
    return day;
  }
  day.forecast_by = report.forecast->source;
  for (const snow::SoftHour& soft : snow.hours_at(where)) {
    const auto forecast =
        std::ranges::find(report.forecast->hours, soft.start, &snow::ForecastHour::start);
    SnowHour hour{.start = soft.start,
                  .air = air_at(*report.forecast, forecast->air, where.height),
                  .soft = soft,
                  .counts = {}};
    const bool is_seen = is_within(report, soft.start);
    hour.counts = worst_in_hour(snow, where, std::max(soft.start, *report.observed));
    if (hour.counts) {
      hour.said_by = is_seen ? SaidBy::seen : SaidBy::forecast;
    }
    day.hours.push_back(hour);
  }
  return day;
}

std::vector<std::string> sentences_of(const SnowDay& day) {
  if (!day.observed) {
    return {"the report does not speak of this place: unknown"};
  }
  if (day.hours.empty()) {
    return {"no forecast that holds: as observed, for as long as the report holds"};
  }
  std::vector<std::string> sentences;
  const auto end = day.hours.end();
  const auto wet = first_from(day, day.hours.begin(),
                              [](const SnowHour& hour) { return is_at_least(hour, Wetness::wet); });
  const auto blind = first_from(day, day.hours.begin(), [](const SnowHour& hour) {
    return hour.soft.blind == Blind::to_sun || hour.soft.blind == Blind::no_forecast;
  });
  if (wet != end) {
    sentences.push_back("likely wet from " + clock(wet->start, day) + off_text(day));
  }
  const auto slush =
      first_from(day, wet, [](const SnowHour& hour) { return is_at_least(hour, Wetness::slush); });
  if (slush != end) {
    sentences.push_back("very wet or worse from " + clock(slush->start, day) + off_text(day));
  }
  if (blind != end) {
    sentences.push_back("from " + clock(blind->start, day) + " on " + words_for(blind->soft.blind));
  }
  const auto frozen = first_from(day, std::min(wet, blind), [](const SnowHour& hour) {
    return hour.soft.state && hour.soft.state->surface >= snow::Surface::refrozen &&
           hour.soft.state->wetness < Wetness::wet;
  });
  if (frozen != end && std::min(wet, blind) != end) {
    sentences.push_back("refrozen by " + clock(frozen->start, day) + off_text(day));
  }
  if (sentences.empty()) {
    sentences.push_back("not likely wet before " +
                        clock({day.hours.back().start.seconds + snow::kSecondsInHour}, day) +
                        ", where the forecast ends");
  }
  return sentences;
}

std::string state_text(const std::optional<SnowState>& state, SaidBy said_by) {
  if (!state) {
    return "unknown";
  }
  if (said_by == SaidBy::forecast && state->wetness == Wetness::slush) {
    return "very wet or worse, " + std::string{words_for(state->surface)};
  }
  const bool is_crust = said_by == SaidBy::forecast && state->surface == snow::Surface::refrozen &&
                        state->wetness <= Wetness::moist;
  return is_crust ? "refrozen"
                  : std::string{words_for(state->wetness)} + " " + words_for(state->surface);
}

}  // namespace rimehaul::card
