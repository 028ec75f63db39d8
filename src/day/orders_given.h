// Orders of named persons, from the records into the rules: what holds for who leaves when.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "day/record_book.h"
#include "passage/rules.h"

namespace rimehaul::day {

/// The expiry of what holds until it is taken back: the last second of the year 9999.
inline constexpr units::Instant kUntilTakenBack{253'402'300'799};

enum class OrderKind {
  close_trail,    ///< subject: the trail
  trail_hours,    ///< subject: the trail; value: "08:00 to 12:00"
  forbid_rig,     ///< subject: the rig
  allowed_share,  ///< value: "0.6", never above what the rules allow
  rule            ///< value: "most_wind_kmh = 50"; subject: its key
};
[[nodiscard]] const char* key_of(OrderKind kind);  ///< "close_trail", as in records
[[nodiscard]] std::optional<OrderKind> order_kind_named(std::string_view key);

/// Reads "08:00 to 12:00"; nothing unless the first comes before the second.
[[nodiscard]] std::optional<trails::OpenHours> parse_hours(std::string_view text);
[[nodiscard]] std::string text_of(const trails::OpenHours& hours);
/// Reads a share above 0 and up to 1.
[[nodiscard]] std::optional<double> parse_share(std::string_view text);

/// Those not taken back that have not run out at a departure, in the order in which they were
/// given.
[[nodiscard]] std::vector<Override> orders_in_force(const Records& records, units::Instant depart);

/// Puts an order of any kind but a rule's into the rules. Throws OurFault where it says nothing
/// that its kind could mean.
void put_in_force(const Override& order, passage::Rules& rules);

/// "P. Example: wet slides seen"
[[nodiscard]] std::string giver_words(const Override& order);

}  // namespace rimehaul::day
