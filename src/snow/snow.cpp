// Words and keys of the snow classes, and the planner's "what if".
#include "snow/snow.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

#include "snow/turning_moments.h"

namespace rimehaul::snow {

namespace {

/// One class as people read it and as files write it.
struct ClassName {
  const char* words;
  const char* key;
};

constexpr std::array<ClassName, kWetnessCount> kWetness{{{"dry", "dry"},
                                                         {"moist", "moist"},
                                                         {"wet", "wet"},
                                                         {"very wet", "very_wet"},
                                                         {"slush", "slush"}}};

constexpr std::array<ClassName, kSurfaceCount> kSurface{
    {{"groomed", "groomed"}, {"fresh", "fresh"}, {"refrozen", "refrozen"}, {"ice", "ice"}}};

template <class Class, std::size_t kCount>
std::optional<Class> class_named(const std::array<ClassName, kCount>& names, std::string_view key) {
  for (std::size_t index = 0; index < kCount; ++index) {
    if (names[index].key == key) {
      return static_cast<Class>(index);
    }
  }
  return std::nullopt;
}

}  // namespace

const char* words_for(Wetness wetness) {
  return kWetness.at(static_cast<std::size_t>(wetness)).words;
}

const char* words_for(Surface surface) {
  return kSurface.at(static_cast<std::size_t>(surface)).words;
}

const char* key_of(Wetness wetness) {
  return kWetness.at(static_cast<std::size_t>(wetness)).key;
}

const char* key_of(Surface surface) {
  return kSurface.at(static_cast<std::size_t>(surface)).key;
}

std::optional<Wetness> wetness_named(std::string_view key) {
  return class_named<Wetness>(kWetness, key);
}

std::optional<Surface> surface_named(std::string_view key) {
  return class_named<Surface>(kSurface, key);
}

SnowState SnowState::worst_with(SnowState other) const {
  return {.wetness = std::max(wetness, other.wetness), .surface = std::max(surface, other.surface)};
}

ConstantSnow::ConstantSnow(SnowState state, DayWeather weather, Told told_by,
                           std::optional<units::Instant> until)
    : state_{state}, weather_{std::move(weather)}, told_by_{std::move(told_by)}, until_{until} {}

std::optional<SnowState> OtherSnow::at(const PlaceAndHour& where) const {
  return told_->at(where) ? std::optional{state_} : std::nullopt;
}

ConstantSnow::ConstantSnow(SnowState state, DayWeather weather, std::string told_by)
    : ConstantSnow{state, std::move(weather), Told{std::move(told_by), {}}} {}

std::optional<SnowState> ConstantSnow::at(const PlaceAndHour& where) const {
  const bool holds = !until_ || where.when <= *until_;
  return holds ? std::optional{state_} : std::nullopt;
}

std::vector<units::Instant> ConstantSnow::turning_moments(units::Period during) const {
  std::vector<units::Instant> moments = weather_.site.turning_moments();
  if (until_) {
    moments.push_back({until_->seconds + 1});
  }
  return in_order_within(std::move(moments), during);
}

}  // namespace rimehaul::snow
