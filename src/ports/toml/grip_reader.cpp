// Reads a site's own grip, and refuses what cannot be: better grip in wetter snow.
#include "ports/toml/grip_reader.h"

#include <array>
#include <string>
#include <utility>

#include "ports/toml/snow_words.h"
#include "ports/toml/trial_reader.h"

namespace rimehaul::ports::toml {

namespace {

using snow::GripStanding;
using snow::MeasuredGrip;
using units::ForceRatio;

constexpr std::array<Word<GripStanding>, 3> kStandings{
    {{"site_measured", GripStanding::site_measured},
     {"published", GripStanding::published},
     {"estimate", GripStanding::estimate}}};

constexpr Range kRatio{.above = 0, .to = 1};

/// A key of a grip entry and the number it fills in.
struct RatioKey {
  const char* key;
  std::optional<ForceRatio> MeasuredGrip::*ratio;
};

constexpr std::array<RatioKey, 4> kGrips{{{"traction", &MeasuredGrip::traction},
                                          {"brake", &MeasuredGrip::brake},
                                          {"lateral", &MeasuredGrip::lateral},
                                          {"trailer_lateral", &MeasuredGrip::trailer_lateral}}};

std::optional<snow::ForceRange> read_range(TableReader& in, std::string_view key) {
  constexpr std::array<Range, 2> kLowHigh{kRatio, kRatio};
  const auto numbers = in.numbers(key, kLowHigh, Presence::may);
  if (!numbers) {
    return std::nullopt;
  }
  if (!(numbers->front() <= numbers->back())) {
    in.fault(key, {"its low value is above its high value", "write [low, high]"});
  }
  return snow::ForceRange{.low = ForceRatio{numbers->front()}, .high = ForceRatio{numbers->back()}};
}

bool says_nothing(const MeasuredGrip& entry) {
  return !entry.traction && !entry.brake && !entry.lateral && !entry.trailer_lateral &&
         !entry.carrier_resistance && !entry.trailer_resistance && !entry.trailer_start &&
         !entry.strength;
}

/// The plate's law of the site's own snow.
std::optional<snow::SnowStrength> read_strength(TableReader& in) {
  std::optional<TableReader> table = in.table_if_there("strength");
  if (!table) {
    return std::nullopt;
  }
  const snow::SnowStrength strength{
      .n = table->must<double>("n", {.from = 0.3, .to = 3}),
      .k_c = table->must<double>("k_c", {.from = 0, .to = 10'000}),
      .k_phi = table->must<double>("k_phi", {.above = 0, .to = 100'000})};
  table->refuse_rest();
  return strength;
}

/// "five pulls, A. Example, 2026-01-12".
std::string source_of(TableReader& in) {
  const std::string source = in.text("source").value_or("");
  const std::string by = in.text("by").value_or("");
  return source + ", " + by + ", " + in.day("date").value_or("");
}

std::optional<MeasuredGrip> read_entry(TableReader& in) {
  const std::size_t faults_before = in.faults();
  const auto state = read_snow_state(in);
  const auto standing = in.word("standing", kStandings);
  MeasuredGrip entry;
  entry.source = source_of(in);
  for (const RatioKey& grip : kGrips) {
    entry.*(grip.ratio) = in.may<ForceRatio>(grip.key, kRatio);
  }
  entry.carrier_resistance = read_range(in, "carrier_resistance");
  entry.trailer_resistance = read_range(in, "trailer_resistance");
  entry.trailer_start = in.may<ForceRatio>("trailer_start", kRatio);
  entry.strength = read_strength(in);
  if (entry.strength && standing && *standing != GripStanding::site_measured) {
    in.fault("strength", {"is not measured by the site",
                          "measure it here, or leave it out: snow differs too much"});
  }
  const std::string told = entry.source;
  read_trials(in, entry);
  if (standing && *standing != GripStanding::site_measured && entry.source != told) {
    in.fault("standing", {"is not site_measured, but there are trials", "write site_measured"});
  }
  in.refuse_rest();
  if (in.faults() == faults_before && says_nothing(entry)) {
    in.fault({"gives no number", "give traction, another number that was measured, or a trial"});
  }
  if (in.faults() != faults_before || !state || !standing) {
    return std::nullopt;
  }
  entry.state = *state;
  entry.standing = *standing;
  return entry;
}

/// Two entries of one surface.
struct WetAndDry {
  const MeasuredGrip& wet;
  const MeasuredGrip& dry;
};

/// The first key under which the wetter entry grips more than the drier one.
const char* better_when_wet(const WetAndDry& pair) {
  for (const RatioKey& grip : kGrips) {
    const auto wet = pair.wet.*(grip.ratio);
    const auto dry = pair.dry.*(grip.ratio);
    if (wet && dry && *wet > *dry) {
      return grip.key;
    }
  }
  return nullptr;
}

/// Whether an entry goes with those read before; complains when it does not.
bool goes_with(const std::vector<MeasuredGrip>& others, const MeasuredGrip& entry,
               TableReader& in) {
  for (const MeasuredGrip& other : others) {
    if (entry.state == other.state) {
      in.fault({"is a second entry for the same wetness and surface", "keep one of them"});
      return false;
    }
    if (entry.state.surface != other.state.surface) {
      continue;
    }
    const bool is_wetter = entry.state.wetness > other.state.wetness;
    const WetAndDry pair{.wet = is_wetter ? entry : other, .dry = is_wetter ? other : entry};
    if (const char* key = better_when_wet(pair)) {
      in.fault(key, {std::string{snow::words_for(pair.wet.state.wetness)} + " " +
                         snow::words_for(pair.wet.state.surface) + " snow would grip more than " +
                         snow::words_for(pair.dry.state.wetness),
                     "measure again, or lower the wetter one"});
      return false;
    }
  }
  return true;
}

}  // namespace

std::vector<MeasuredGrip> read_grip(TableReader& top) {
  std::vector<MeasuredGrip> entries;
  for (TableReader& in : top.tables("grip")) {
    const std::optional<MeasuredGrip> entry = read_entry(in);
    if (entry && goes_with(entries, *entry, in)) {
      entries.push_back(*entry);
    }
  }
  return entries;
}

}  // namespace rimehaul::ports::toml
