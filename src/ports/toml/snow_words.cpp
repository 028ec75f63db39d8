// Snow classes as files write them.
#include "ports/toml/snow_words.h"

namespace rimehaul::ports::toml {

namespace {

template <class Class, std::size_t kCount>
std::array<Word<Class>, kCount> words_of() {
  std::array<Word<Class>, kCount> words{};
  for (std::size_t index = 0; index < kCount; ++index) {
    const auto meaning = static_cast<Class>(index);
    words.at(index) = {.word = snow::key_of(meaning), .meaning = meaning};
  }
  return words;
}

}  // namespace

std::array<Word<snow::Wetness>, snow::kWetnessCount> wetness_words() {
  return words_of<snow::Wetness, snow::kWetnessCount>();
}

std::array<Word<snow::Surface>, snow::kSurfaceCount> surface_words() {
  return words_of<snow::Surface, snow::kSurfaceCount>();
}

std::optional<snow::SnowState> read_snow_state(TableReader& in) {
  const auto wetness = in.word("wetness", wetness_words());
  const auto surface = in.word("surface", surface_words());
  if (!wetness || !surface) {
    return std::nullopt;
  }
  return snow::SnowState{.wetness = *wetness, .surface = *surface};
}

}  // namespace rimehaul::ports::toml
