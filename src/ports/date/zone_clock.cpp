#include "ports/date/zone_clock.h"

#include <date/tz.h>

#include <chrono>
#include <stdexcept>
#include <utility>
#include <vector>

namespace rimehaul::ports::date {

namespace {

constexpr std::chrono::year_month_day kFirstDay{std::chrono::year{1970}, std::chrono::January,
                                                std::chrono::day{1}};
/// A zone that changes for ever would else be listed for ever.
constexpr std::chrono::year_month_day kLastDay{std::chrono::year{2100}, std::chrono::January,
                                               std::chrono::day{1}};

const ::date::time_zone* zone_named(const std::string& name) {
  try {
    return ::date::locate_zone(name);
  } catch (const std::runtime_error&) {
    return nullptr;
  }
}

int whole_minutes(std::chrono::seconds offset) {
  return static_cast<int>(std::chrono::round<std::chrono::minutes>(offset).count());
}

units::Instant instant(::date::sys_seconds moment) {
  return {moment.time_since_epoch().count()};
}

}  // namespace

std::optional<units::LocalClock> zone_clock(const std::string& name) {
  const ::date::time_zone* zone = zone_named(name);
  if (zone == nullptr) {
    return std::nullopt;
  }
  const ::date::sys_seconds last = std::chrono::sys_days{kLastDay};
  ::date::sys_info part = zone->get_info(::date::sys_seconds{std::chrono::sys_days{kFirstDay}});
  const int first = whole_minutes(part.offset);
  std::vector<units::OffsetFrom> changes;
  while (part.end < last) {
    const ::date::sys_seconds change = part.end;
    part = zone->get_info(change);
    changes.push_back({.from = instant(change), .minutes = whole_minutes(part.offset)});
  }
  return units::LocalClock{first, std::move(changes)};
}

}  // namespace rimehaul::ports::date
