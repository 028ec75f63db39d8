// The files of a new site as text: what is known filled in, what is not left open with a word why.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "app/own_facts.h"
#include "card/new_site.h"
#include "units/slope.h"

namespace rimehaul::app {

/// Estimates from the width of a cell alone. A tenth of a cell, at least 0.2 m: rough, and meant to
/// be replaced by what the survey's own report says.
[[nodiscard]] units::Metres height_error_guess(units::Metres cell);
/// Degrees that may hide between cell centres.
[[nodiscard]] double hidden_slope_guess_deg(units::Metres cell);

/// site.toml. The name fits a site file, and so do the files' names.
[[nodiscard]] std::string site_draft(const std::string& name, const OwnNames& names,
                                     const OwnFacts& facts);
/// The rules at their defaults, each as a comment.
[[nodiscard]] std::string_view rules_draft();
/// A rig to be filled in, all of it a comment.
[[nodiscard]] std::string_view rigs_draft();
/// A snow report to be filled in, all of it a comment.
[[nodiscard]] std::string_view snow_draft();

/// Everything that no file says.
[[nodiscard]] std::vector<card::ToSay> still_to_say(const OwnNames& names, const OwnFacts& facts);

}  // namespace rimehaul::app
