// Ratings and what they rest on, in words.
#pragma once

#include <optional>
#include <string>

#include "rig/carrier.h"

namespace rimehaul::card {

/// "25.0 deg (46.6 %), maker: manual, p. 8"; "not given, so closed" without one.
[[nodiscard]] std::string rating_words(const std::optional<rig::Rating>& rating);

/// "maker: sheet 1"
[[nodiscard]] std::string provenance_words(const rig::Provenance& provenance);

}  // namespace rimehaul::card
