// Where the numbers of an explanation come from: who measured, who rated, which book.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "passage/judge.h"

namespace rimehaul::card {

/// "grip of moist, groomed: measured at the site: ten pulls", a line for each snow; then the sheets
/// of carrier and trailer, and the ratings in force.
[[nodiscard]] std::vector<std::string> sources_of(
    const passage::Judge& judge, const std::vector<std::optional<snow::SnowState>>& states);

/// The source of a finding's formula; of a rating, who set it: "limit set by the site: R. Example,
/// 2026-01-04".
[[nodiscard]] std::string source_of(const passage::Finding& finding, const rig::Rig& rig);

}  // namespace rimehaul::card
