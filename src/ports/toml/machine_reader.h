// The sheets of carriers and trailers, each one table of rigs.toml.
#pragma once

#include <optional>
#include <string>

#include "ports/toml/table_reader.h"
#include "rig/carrier.h"

namespace rimehaul::ports::toml {

/// `[carrier.NAME]`; nothing when its sheet has a fault other than in a rating, which then counts
/// as not given.
[[nodiscard]] std::optional<rig::Carrier> read_carrier(const NamedReader& sheet);

/// `[trailer.NAME]`; nothing when its sheet has any fault: its own ratings bind beside the
/// carrier's, so leaving one out would allow more.
[[nodiscard]] std::optional<rig::Trailer> read_trailer(const NamedReader& sheet);

/// A place `[forward, left, up]` on a machine.
[[nodiscard]] rig::BodyPoint read_place(TableReader& in, std::string_view key);

}  // namespace rimehaul::ports::toml
