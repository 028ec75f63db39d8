// Which of the site's rules a person may change for a while, and whether a change tightens them.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "passage/rules.h"

namespace rimehaul::passage {

enum class Leaning { same, tighter, looser };

/// How a rule changes from one set of rules to another, by its key in the rules file
/// ("most_wind_kmh", "passengers.wettest"). What is not proven to be as tight is looser. Nothing:
/// no order may change that key. Those are all that belong to a rig, to physics, to what was
/// measured or to the error of a number (k, reserve against roll-over, grip, reaction, slopes that
/// release avalanches), and the allowed share, which has an order of its own.
[[nodiscard]] std::optional<Leaning> leaning_of(std::string_view key, const Rules& before,
                                                const Rules& after);

/// The keys that an order may change, sorted.
[[nodiscard]] std::vector<std::string_view> keys_open_to_orders();

}  // namespace rimehaul::passage
