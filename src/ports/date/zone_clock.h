// Local time by a name of the IANA time zone database ("CET"), as the system keeps that.
#pragma once

#include <optional>
#include <string>

#include "units/local_clock.h"

namespace rimehaul::ports::date {

/// The clock of a zone, with its changes from 1970 to as far as the database tells them (2037 in
/// Debian's); after that the last offset stays. Nothing when the database has no such zone.
[[nodiscard]] std::optional<units::LocalClock> zone_clock(const std::string& name);

}  // namespace rimehaul::ports::date
