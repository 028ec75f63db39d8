#include "units/clock.h"

#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <cstdio>

namespace rimehaul::units {

namespace {

/// Exactly `digits` decimal digits at the front of `text`, which are then removed from it.
std::optional<int> take_number(std::string_view& text, std::size_t digits) {
  if (text.size() < digits) {
    return std::nullopt;
  }
  for (const char letter : text.substr(0, digits)) {
    if (letter < '0' || letter > '9') {
      return std::nullopt;
    }
  }
  int number = 0;
  std::from_chars(text.data(), text.data() + digits, number);
  text.remove_prefix(digits);
  return number;
}

bool take_letter(std::string_view& text, char letter) {
  if (text.empty() || text.front() != letter) {
    return false;
  }
  text.remove_prefix(1);
  return true;
}

std::optional<int> take_pair(std::string_view& text, char separator, int second_limit) {
  const auto first = take_number(text, 2);
  if (!first || !take_letter(text, separator)) {
    return std::nullopt;
  }
  const auto second = take_number(text, 2);
  if (!second || *second >= second_limit) {
    return std::nullopt;
  }
  return *first * 60 + *second;
}

std::optional<std::chrono::sys_days> take_date(std::string_view& text) {
  const auto year = take_number(text, 4);
  if (!year || !take_letter(text, '-')) {
    return std::nullopt;
  }
  const auto month = take_number(text, 2);
  if (!month || !take_letter(text, '-')) {
    return std::nullopt;
  }
  const auto day = take_number(text, 2);
  if (!day) {
    return std::nullopt;
  }
  const std::chrono::year_month_day date{std::chrono::year{*year},
                                         std::chrono::month{static_cast<unsigned>(*month)},
                                         std::chrono::day{static_cast<unsigned>(*day)}};
  if (!date.ok()) {
    return std::nullopt;
  }
  return std::chrono::sys_days{date};
}

std::optional<int> take_offset_minutes(std::string_view& text) {
  if (take_letter(text, 'Z')) {
    return 0;
  }
  const bool east = take_letter(text, '+');
  if (!east && !take_letter(text, '-')) {
    return std::nullopt;
  }
  const auto minutes = take_pair(text, ':', 60);
  if (!minutes || *minutes >= 24 * 60) {
    return std::nullopt;
  }
  return east ? *minutes : -*minutes;
}

}  // namespace

Instant after(Instant start, Seconds lasting) {
  constexpr double kLongest = 1e12;
  const double whole =
      std::abs(lasting.value()) <= kLongest ? std::ceil(lasting.value()) : kLongest;
  return Instant{start.seconds + static_cast<std::int64_t>(whole)};
}

std::optional<Instant> parse_instant(std::string_view text) {
  const auto date = take_date(text);
  if (!date || !take_letter(text, 'T')) {
    return std::nullopt;
  }
  const auto minutes = take_pair(text, ':', 60);
  if (!minutes || *minutes >= 24 * 60) {
    return std::nullopt;
  }
  int seconds = 0;
  if (take_letter(text, ':')) {
    const auto read = take_number(text, 2);
    if (!read || *read >= 60) {
      return std::nullopt;
    }
    seconds = *read;
  }
  const auto offset = take_offset_minutes(text);
  if (!offset || !text.empty()) {
    return std::nullopt;
  }
  const std::int64_t days = date->time_since_epoch().count();
  return Instant{days * 86'400 + (*minutes - *offset) * std::int64_t{60} + seconds};
}

std::string text_of(Instant moment) {
  using std::chrono::days;
  using std::chrono::seconds;
  const std::chrono::sys_seconds when{seconds{moment.seconds}};
  const auto midnight = std::chrono::floor<days>(when);
  const std::chrono::year_month_day date{midnight};
  const long long rest = (when - midnight).count();
  std::array<char, 64> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02u-%02uT%02lld:%02lld:%02lldZ",
                static_cast<int>(date.year()), static_cast<unsigned>(date.month()),
                static_cast<unsigned>(date.day()), rest / 3600, rest / 60 % 60, rest % 60);
  return text.data();
}

std::optional<TimeOfDay> parse_time_of_day(std::string_view text) {
  const auto minutes = take_pair(text, ':', 60);
  if (!minutes || !text.empty() || *minutes > 24 * 60) {
    return std::nullopt;
  }
  return TimeOfDay{*minutes};
}

std::string text_of(TimeOfDay time) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%02d:%02d", time.minutes / 60, time.minutes % 60);
  return text.data();
}

}  // namespace rimehaul::units
