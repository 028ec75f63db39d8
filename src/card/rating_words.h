// Ratings and what they rest on, in words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "rig/rig.h"

namespace rimehaul::card {

/// "25.0 deg (46.6 %), maker: manual, p. 8"; "not given, so closed" without one.
[[nodiscard]] std::string rating_words(const std::optional<rig::Rating>& rating);

/// The ratings in force for a rig as it stands, a line for each; the trailer's own where given.
[[nodiscard]] std::vector<std::string> rating_lines(const rig::Rig& rig);

/// "maker: sheet 1"
[[nodiscard]] std::string provenance_words(const rig::Provenance& provenance);

}  // namespace rimehaul::card
