// Who says so: the small tables of numbers with their provenance.
#pragma once

#include <optional>

#include "ports/toml/table_reader.h"
#include "rig/carrier.h"

namespace rimehaul::ports::toml {

/// Whether a number may be no more than an estimate.
enum class Estimates { taken, refused };

/// `standing`, `source` and `date` of a table. The date must be there where the site itself
/// measured or set the number, and is added to the source.
[[nodiscard]] std::optional<rig::Provenance> read_provenance(TableReader& in, Estimates estimates);

/// A steepest slope and who said so. Nothing when any of it is missing or wrong.
struct SteepestRead {
  double deg = 0.0;
  rig::Provenance provenance;
};
[[nodiscard]] std::optional<SteepestRead> read_steepest(TableReader in, Range range,
                                                        Estimates estimates);

/// A rating under a key; nothing when it is not there or has a fault.
[[nodiscard]] std::optional<rig::Rating> read_rating(TableReader& in, std::string_view key);

}  // namespace rimehaul::ports::toml
