// The clock on the wall at a site, as site.toml tells it.
#pragma once

#include <vector>

#include "base/fault.h"
#include "ports/toml/site_file.h"
#include "units/local_clock.h"

namespace rimehaul::app {

/// UTC where site.toml does not say what the clocks show, of which its reader has told; and with a
/// fault where its zone is none of the system's.
[[nodiscard]] units::LocalClock site_clock(const ports::toml::SiteFile& site,
                                           std::vector<base::Fault>& faults);

}  // namespace rimehaul::app
