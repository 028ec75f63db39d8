// A number together with the unit it is shown in, where numbers of many kinds stand in one list.
#pragma once

#include <cmath>
#include <string_view>

#include "units/bearing.h"
#include "units/quantities.h"
#include "units/slope.h"

namespace rimehaul::units {

/// Units in which findings and their inputs are shown. A tangent is shown in degrees and percent.
enum class Unit {
  number,
  tangent,
  degrees,
  metres,
  square_metres,
  kilograms,
  newtons,
  newton_metres,
  kilopascals,
  watts,
  seconds,
  metres_per_second,
  metres_per_second2,
  celsius,
  minutes_of_day,
};

/// The unit's sign in the International System, "" for a plain number or a tangent.
[[nodiscard]] std::string_view sign_of(Unit unit);

/// Whether a value is what it is, or only known not to be less.
enum class Known { exactly, at_least };

/// A value in its unit. Not finite means unknown, and unknown is closed.
struct Amount {
  double value = std::nan("");
  Unit unit = Unit::number;
  Known known = Known::exactly;

  friend bool operator==(const Amount&, const Amount&) = default;
};

constexpr Amount amount(Slope slope) {
  return {slope.ratio(), Unit::tangent};
}
constexpr Amount amount(Bearing bearing) {
  return {bearing.degrees(), Unit::degrees};
}
constexpr Amount amount(Metres metres) {
  return {metres.value(), Unit::metres};
}
constexpr Amount amount(SquareMetres area) {
  return {area.value(), Unit::square_metres};
}
constexpr Amount amount(Kilograms mass) {
  return {mass.value(), Unit::kilograms};
}
constexpr Amount amount(Newtons force) {
  return {force.value(), Unit::newtons};
}
constexpr Amount amount(NewtonMetres moment) {
  return {moment.value(), Unit::newton_metres};
}
constexpr Amount amount(Kilopascals stress) {
  return {stress.value(), Unit::kilopascals};
}
constexpr Amount amount(Watts power) {
  return {power.value(), Unit::watts};
}
constexpr Amount amount(Seconds time) {
  return {time.value(), Unit::seconds};
}
constexpr Amount amount(MetresPerSecond speed) {
  return {speed.value(), Unit::metres_per_second};
}
constexpr Amount amount(ForceRatio ratio) {
  return {ratio.value(), Unit::number};
}
constexpr Amount amount(Celsius temperature) {
  return {temperature.value(), Unit::celsius};
}
constexpr Amount count_of(double number) {
  return {number, Unit::number};
}

}  // namespace rimehaul::units
