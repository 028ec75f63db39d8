#include "card/figures.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <optional>

#include "units/rounding.h"

namespace rimehaul::card {

using units::Round;
using units::text_of;

namespace {

template <int Digits>
std::string padded(std::int64_t number) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%0*lld", Digits, static_cast<long long>(number));
  return text.data();
}

/// Seconds rounded up, a thousandth of one let go so that 60.0000001 s stays a minute.
std::int64_t whole_seconds(units::Seconds time) {
  return static_cast<std::int64_t>(std::ceil(time.value() - 1e-3));
}

Round rounding_of(Side side) {
  if (side == Side::input) {
    return Round::nearest;
  }
  return side == Side::demand ? Round::up : Round::down;
}

/// Slopes are rounded on their size; a side of a finding counts with its sign.
Round rounding_of_size(double value, Side side) {
  const Round round = rounding_of(side);
  if (!(value < 0.0) || round == Round::nearest) {
    return round;
  }
  return round == Round::up ? Round::down : Round::up;
}

std::string with_sign(const std::string& number, const units::Amount& amount) {
  const std::string sign{units::sign_of(amount.unit)};
  const std::string at_least = amount.known == units::Known::at_least ? "at least " : "";
  return sign.empty() || !std::isfinite(amount.value) ? number : at_least + number + " " + sign;
}

/// A demand's minute is rounded up, like any demand.
std::optional<std::string> time_text(const units::Amount& amount, Side side) {
  const double minutes = side == Side::demand ? std::ceil(amount.value) : amount.value;
  const bool is_time =
      amount.unit == units::Unit::minutes_of_day && minutes >= 0 && minutes <= 1440;
  return is_time ? std::optional{units::text_of(units::TimeOfDay{static_cast<int>(minutes)})}
                 : std::nullopt;
}

constexpr double kLongestTime = 1e7;

bool tellable(units::Seconds time) {
  return time.value() >= 0.0 && time.value() < kLongestTime;
}

}  // namespace

std::string least_share_text(double share) {
  return std::isfinite(share) ? text_of(share * 100.0, 0, Round::down) + " %" : "unknown";
}

std::string share_text(double share) {
  if (!std::isfinite(share)) {
    return "unknown";
  }
  constexpr int kMostDecimals = 9;
  for (int decimals = 0; decimals <= kMostDecimals; ++decimals) {
    const std::string text = text_of(share * 100.0, decimals, Round::up);
    const bool reads_full = std::strtod(text.c_str(), nullptr) == 100.0;
    if (!reads_full || share == 1.0) {
      return text + " %";
    }
  }
  return share < 1.0 ? "just under 100 %" : "just over 100 %";
}

std::string allowed_text(double allowed_share) {
  return text_of(allowed_share * 100.0, 0, Round::down) + " %";
}

std::string distance_text(units::Metres length) {
  return length < units::Metres{999.5} ? text_of(length.value(), 0, Round::up) + " m"
                                       : text_of(length.value() / 1000.0, 2, Round::up) + " km";
}

std::string where_text(const geo::Span& span, units::Metres leg_length) {
  const units::Metres slack{0.5};
  const std::string from = text_of(span.from.value(), 0, Round::nearest) + " m";
  if (span.to - span.from < units::Metres{1.0}) {
    return "at " + from;
  }
  if (span.from < slack && span.to > leg_length - slack) {
    return "all along";
  }
  return "from " + from + " to " + text_of(span.to.value(), 0, Round::nearest) + " m";
}

std::string speed_limit_text(units::MetresPerSecond speed) {
  const double kmh = speed.value() * 3.6;
  return text_of(kmh, kmh < 10.0 ? 1 : 0, Round::down) + " km/h";
}

std::string duration_text(units::Seconds time) {
  if (!tellable(time)) {
    return "unknown";
  }
  const std::int64_t seconds = whole_seconds(time);
  const std::string rest = std::to_string(seconds % 60) + " s";
  return seconds < 60 ? rest : std::to_string(seconds / 60) + " min " + rest;
}

std::string minutes_text(units::Seconds time) {
  if (!tellable(time)) {
    return "unknown";
  }
  const std::int64_t minutes = (whole_seconds(time) + 59) / 60;
  return minutes < 60 ? std::to_string(minutes) + " min"
                      : std::to_string(minutes / 60) + " h " + padded<2>(minutes % 60) + " min";
}

std::string fuel_needed_text(units::Litres fuel) {
  return text_of(fuel.value(), 1, Round::up) + " L";
}

std::string fuel_there_text(units::Litres fuel) {
  return text_of(fuel.value(), 1, Round::down) + " L";
}

std::string mass_text(units::Kilograms mass) {
  return text_of(mass.value(), 0, Round::up) + " kg";
}

std::string found_text(const passage::Steepness& steepness) {
  const units::Slope level;
  return steepness.up_to <= level || steepness.found <= level ? "none"
                                                              : text_of(steepness.found, Round::up);
}

std::string up_to_text(const passage::Steepness& steepness) {
  return steepness.up_to <= units::Slope{} ? "" : text_of(steepness.up_to, Round::up);
}

std::string steepness_text(const passage::Steepness& steepness) {
  const std::string up_to = up_to_text(steepness);
  if (up_to.empty()) {
    return found_text(steepness);
  }
  return found_text(steepness) + ", up to " + up_to + " at " +
         text_of(steepness.at.value(), 0, Round::nearest) + " m";
}

std::string bearing_text(units::Bearing bearing) {
  const std::int64_t degrees = std::llround(bearing.degrees()) % 360;
  return padded<3>(degrees) + " deg";
}

std::string local_text(units::Instant moment, const units::LocalClock& local_clock) {
  const units::Instant shifted{moment.seconds +
                               std::int64_t{60} * local_clock.offset_minutes(moment)};
  const std::string utc = units::text_of(shifted);
  return utc.substr(0, 10) + " " + utc.substr(11, 5);
}

std::string zone_text(int offset_minutes) {
  const int minutes = std::abs(offset_minutes);
  return std::string{"UTC"} + (offset_minutes < 0 ? "-" : "+") + padded<2>(minutes / 60) + ":" +
         padded<2>(minutes % 60);
}

std::string local_and_zone_text(units::Instant moment, const units::LocalClock& local_clock) {
  return local_text(moment, local_clock) + " (local time, " +
         zone_text(local_clock.offset_minutes(moment)) + ")";
}

std::string told_text(const snow::Told& told, const units::LocalClock& local_clock) {
  return told.observed ? told.words + ", " + local_text(*told.observed, local_clock) : told.words;
}

std::string confidence_text(double k) {
  const double percent = 50.0 * std::erfc(-k / std::sqrt(2.0));
  return text_of(percent, 0, Round::down) + " %";
}

std::string amount_text(const units::Amount& amount, Side side) {
  if (amount.unit == units::Unit::tangent && std::isfinite(amount.value)) {
    return text_of(units::Slope::from_ratio(amount.value), rounding_of_size(amount.value, side));
  }
  if (const auto time = time_text(amount, side)) {
    return *time;
  }
  const double size = std::abs(amount.value);
  int decimals = size < 1000.0 ? 1 : 0;
  decimals = size < 10.0 ? 2 : decimals;
  return with_sign(text_of(amount.value, decimals, rounding_of(side)), amount);
}

std::string exact_text(const units::Amount& amount, Side side) {
  if (const auto time = time_text(amount, side)) {
    return *time;
  }
  int decimals = 5;
  double size = std::abs(amount.value);
  while (size >= 1.0 && decimals > 1) {
    --decimals;
    size /= 10.0;
  }
  const std::string number = text_of(amount.value, decimals, rounding_of(side));
  if (amount.unit == units::Unit::tangent && std::isfinite(amount.value)) {
    return number + " = " + amount_text(amount, side);
  }
  return with_sign(number, amount);
}

}  // namespace rimehaul::card
