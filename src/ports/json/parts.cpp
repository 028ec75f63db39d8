#include "ports/json/parts.h"

#include <cmath>
#include <string>

namespace rimehaul::ports::json {

namespace {

/// How a key names the unit of its number.
std::string_view suffix_of(units::Unit unit) {
  switch (unit) {
    case units::Unit::number:
      return "";
    case units::Unit::tangent:
      return "_tangent";
    case units::Unit::degrees:
      return "_deg";
    case units::Unit::metres:
      return "_m";
    case units::Unit::square_metres:
      return "_m2";
    case units::Unit::kilograms:
      return "_kg";
    case units::Unit::newtons:
      return "_n";
    case units::Unit::newton_metres:
      return "_nm";
    case units::Unit::kilopascals:
      return "_kpa";
    case units::Unit::watts:
      return "_w";
    case units::Unit::seconds:
      return "_s";
    case units::Unit::metres_per_second:
      return "_m_per_s";
    case units::Unit::metres_per_second2:
      return "_m_per_s2";
    case units::Unit::celsius:
      return "_c";
    case units::Unit::minutes_of_day:
      return "_minutes_of_day";
  }
  return "";
}

void add_amount(Object& object, std::string_view name, const units::Amount& amount) {
  if (amount.known == units::Known::at_least) {
    object.text(std::string{name} + "_known", "at_least");
  }
  object.number(std::string{name} + std::string{suffix_of(amount.unit)}, amount.value);
  if (amount.unit == units::Unit::tangent) {
    object.number(std::string{name} + "_deg", units::Slope::from_ratio(amount.value).degrees());
  }
}

Object interval_json(const passage::LoadInterval& interval) {
  return Object{}
      .number("from_kg", std::ceil(interval.from.value()))
      .number("to_kg", std::floor(interval.to.value()));
}

std::string_view key_of(passage::Origin origin) {
  switch (origin) {
    case passage::Origin::heights:
      return "heights";
    case passage::Origin::trail:
      return "trail";
    case passage::Origin::rig_sheet:
      return "rig_sheet";
    case passage::Origin::load:
      return "load";
    case passage::Origin::grip:
      return "grip";
    case passage::Origin::rules:
      return "rules";
    case passage::Origin::snow_report:
      return "snow_report";
    case passage::Origin::mark:
      return "mark";
    case passage::Origin::physics:
      return "physics";
    case passage::Origin::derived:
      return "derived";
  }
  return "";
}

}  // namespace

std::vector<Object> intervals_json(const std::vector<passage::LoadInterval>& intervals) {
  std::vector<Object> objects;
  objects.reserve(intervals.size());
  for (const passage::LoadInterval& interval : intervals) {
    objects.push_back(interval_json(interval));
  }
  return objects;
}

Object input_json(const card::InputFile& input) {
  Object object;
  object.text("name", input.name).text("what", input.what).text("sha256", input.digest.hex());
  if (!input.date.empty()) {
    object.text("date", told_utc({input.date, input.observed}));
  }
  return object;
}

Object load_json(const rig::Load& load) {
  return Object{}
      .number("bed_kg", load.bed.value())
      .number("towed_kg", load.towed.value())
      .whole("passengers", load.passengers)
      .number("passenger_kg", load.passenger_mass.value())
      .number("fuel_l", load.fuel.value());
}

std::vector<Object> inputs_json(const std::vector<card::InputFile>& inputs) {
  std::vector<Object> objects;
  objects.reserve(inputs.size());
  for (const card::InputFile& input : inputs) {
    objects.push_back(input_json(input));
  }
  return objects;
}

void add_made_from(Object& object, const card::MadeFrom& made_from) {
  object.list("inputs", inputs_json(made_from.inputs)).texts("versions", made_from.versions);
  object.text("made_utc", units::text_of(made_from.made));
}

std::string told_utc(const snow::Told& told) {
  return told.observed ? told.words + ", " + units::text_of(*told.observed) : told.words;
}

Object span_json(const geo::Span& span) {
  return Object{}.number("from_m", span.from.value()).number("to_m", span.to.value());
}

Object weather_json(const snow::DayWeather& weather) {
  Object object;
  const auto value_of = [](const auto& quantity) {
    return quantity ? std::optional{quantity->value()} : std::nullopt;
  };
  object.number("visibility_m", value_of(weather.visibility));
  object.number("wind_m_per_s", value_of(weather.wind));
  object.number("new_snow_m", value_of(weather.new_snow));
  object.number("new_snow_kg_m3", value_of(weather.new_snow_density));
  object.number("temperature_c", value_of(weather.temperature));
  if (weather.bulletin_level) {
    object.whole("bulletin_level", *weather.bulletin_level);
  } else {
    object.unknown("bulletin_level");
  }
  object.text("bulletin_source", weather.bulletin_source);
  if (weather.rain) {
    object.truth("rain", *weather.rain ? Truth::yes : Truth::no);
  } else {
    object.unknown("rain");
  }
  return object;
}

std::vector<Object> snow_json(const std::vector<snow::SnowState>& states) {
  std::vector<Object> objects;
  objects.reserve(states.size());
  for (const snow::SnowState& state : states) {
    objects.push_back(Object{}
                          .text("wetness", snow::key_of(state.wetness))
                          .text("surface", snow::key_of(state.surface)));
  }
  return objects;
}

Object finding_json(const passage::Finding& finding, passage::Stand stand) {
  const passage::CheckFacts& facts = passage::facts_of(finding.check);
  Object object;
  object.text("check", facts.key).text("title", facts.title);
  object.text("formula", finding.formula.empty() ? facts.formula : finding.formula);
  object.text("source", facts.source).text("page", facts.page).text("stand", key_of(stand));
  object.text("measure", finding.measure == passage::Measure::rule ? "rule" : "share");
  if (finding.tank != passage::Tank::as_loaded) {
    object.text("tank", key_of(finding.tank));
  }
  if (!finding.how.empty()) {
    object.text("how", finding.how);
  }
  // A rule that is kept or broken has no numbers, and nothing is missing then.
  const bool closed_unknown = stand == passage::Stand::missing;
  if (closed_unknown || std::isfinite(finding.demand.value)) {
    add_amount(object, "demand", finding.demand);
  }
  if (closed_unknown || std::isfinite(finding.capacity.value)) {
    add_amount(object, "capacity", finding.capacity);
  }
  if (closed_unknown || finding.share) {
    object.number("share", finding.share);
  }
  object.number("at_m", finding.at.value());
  if (!finding.missing.empty()) {
    object.missing(finding.missing);
  }
  if (!finding.refused.empty()) {
    object.text("refused", finding.refused);
  }
  if (!finding.asks.empty()) {
    object.text("asks", finding.asks);
  }
  std::vector<Object> inputs;
  for (const passage::Input& input : finding.inputs.all()) {
    Object entry;
    entry.text("name", input.name).text("origin", key_of(input.origin));
    add_amount(entry, "value", input.value);
    inputs.push_back(entry);
  }
  return object.list("inputs", inputs);
}

std::vector<Object> workings_json(const std::vector<passage::Working>& workings) {
  std::vector<Object> objects;
  objects.reserve(workings.size());
  for (const passage::Working& working : workings) {
    Object object;
    object.text("name", working.symbol).text("origin", key_of(working.origin));
    add_amount(object, "value", working.value);
    if (!working.formula.empty()) {
      object.text("formula", working.formula);
    }
    objects.push_back(object.text("page", working.page));
  }
  return objects;
}

Object loads_json(const passage::OpenLoads& loads) {
  Object object;
  object.list("bed", intervals_json(loads.bed)).list("towed", intervals_json(loads.towed));
  std::vector<Object> pairs;
  for (const passage::LoadPair& pair : loads.both) {
    pairs.push_back(
        Object{}.object("bed", interval_json(pair.bed)).object("towed", interval_json(pair.towed)));
  }
  return object.list("both", pairs);
}

std::string_view key_of(trails::Way way) {
  return way == trails::Way::as_drawn ? "forward" : "backward";
}

std::string_view key_of(search::Preference prefer) {
  switch (prefer) {
    case search::Preference::safest:
      return "safest";
    case search::Preference::quickest:
      return "quickest";
    case search::Preference::least_fuel:
      return "least-fuel";
  }
  return "";
}

std::string_view key_of(passage::Stand stand) {
  switch (stand) {
    case passage::Stand::passes:
      return "passes";
    case passage::Stand::asks:
      return "asks";
    case passage::Stand::exceeds:
      return "exceeds";
    case passage::Stand::refused:
      return "refused";
    case passage::Stand::missing:
      return "missing";
  }
  return "";
}

std::string_view key_of(passage::Tank tank) {
  return tank == passage::Tank::empty ? "empty" : "as_loaded";
}

}  // namespace rimehaul::ports::json
