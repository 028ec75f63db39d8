#include "app/site_clock.h"

#include <utility>

#include "ports/date/zone_clock.h"

namespace rimehaul::app {

units::LocalClock site_clock(const ports::toml::SiteFile& site, std::vector<base::Fault>& faults) {
  if (!site.time_zone) {
    return units::LocalClock{site.utc_offset_minutes.value_or(0)};
  }
  if (auto clock = ports::date::zone_clock(*site.time_zone)) {
    return std::move(*clock);
  }
  faults.push_back({"site.toml", "time_zone",
                    "\"" + *site.time_zone + "\" is no zone of this system's time zone database",
                    "write its name there, such as CET, or say utc_offset_minutes in its place",
                    base::Weight::fault});
  return units::LocalClock{};
}

}  // namespace rimehaul::app
