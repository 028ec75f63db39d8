// Parts that several answers share, as JSON objects with units in their keys.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "card/route_card.h"
#include "passage/open_loads.h"
#include "passage/workings.h"
#include "ports/json/object.h"

namespace rimehaul::ports::json {

[[nodiscard]] Object input_json(const card::InputFile& input);
[[nodiscard]] std::vector<Object> inputs_json(const std::vector<card::InputFile>& inputs);
/// Adds inputs, versions and the hour it was made, as every answer tells them.
void add_made_from(Object& object, const card::MadeFrom& made_from);
/// What is put on a rig.
[[nodiscard]] Object load_json(const rig::Load& load);
/// "observed by N. N., 2026-02-01T16:30:00Z": files read UTC.
[[nodiscard]] std::string told_utc(const snow::Told& told);
[[nodiscard]] Object span_json(const geo::Span& span);
[[nodiscard]] Object weather_json(const snow::DayWeather& weather);
/// "dry groomed", as in options, one per state.
[[nodiscard]] std::vector<Object> snow_json(const std::vector<snow::SnowState>& states);
/// Check, demand, capacity, share, how it stands, and its inputs.
[[nodiscard]] Object finding_json(const passage::Finding& finding, passage::Stand stand);
/// Symbol, value, where it comes from or by which formula it was worked out, and its page.
[[nodiscard]] std::vector<Object> workings_json(const std::vector<passage::Working>& workings);
/// [{"from_kg":0.0,"to_kg":139.0}], rounded inwards.
[[nodiscard]] std::vector<Object> intervals_json(
    const std::vector<passage::LoadInterval>& intervals);
/// {"bed":[{"from_kg":0.0,"to_kg":139.0}],"towed":[],"both":[]}
[[nodiscard]] Object loads_json(const passage::OpenLoads& loads);
[[nodiscard]] std::string_view key_of(trails::Way way);
[[nodiscard]] std::string_view key_of(search::Preference prefer);
[[nodiscard]] std::string_view key_of(passage::Stand stand);
[[nodiscard]] std::string_view key_of(passage::Tank tank);

}  // namespace rimehaul::ports::json
