// The quantities of the trade, and the few products of them that the project uses.
#pragma once

#include "units/quantity.h"

namespace rimehaul::units {

using Metres = Quantity<struct MetresTag>;
using SquareMetres = Quantity<struct SquareMetresTag>;
using Kilograms = Quantity<struct KilogramsTag>;
using Seconds = Quantity<struct SecondsTag>;
using MetresPerSecond = Quantity<struct MetresPerSecondTag>;
using Newtons = Quantity<struct NewtonsTag>;
using NewtonMetres = Quantity<struct NewtonMetresTag>;  ///< of a moment
using Kilopascals = Quantity<struct KilopascalsTag>;
using Joules = Quantity<struct JoulesTag>;
using Watts = Quantity<struct WattsTag>;
using Litres = Quantity<struct LitresTag>;
using LitresPerHour = Quantity<struct LitresPerHourTag>;
using KilogramsPerCubicMetre = Quantity<struct KilogramsPerCubicMetreTag>;
/// Specific consumption of an engine, grams of fuel per kilowatt hour at the crankshaft.
using GramsPerKilowattHour = Quantity<struct GramsPerKilowattHourTag>;
/// Celsius temperature difference or temperature; the project only compares and interpolates it.
using Celsius = Quantity<struct CelsiusTag>;

/// How much colder a kilometre higher up.
using CelsiusPerKilometre = Quantity<struct CelsiusPerKilometreTag>;
/// Power of light or heat on a surface.
using WattsPerSquareMetre = Quantity<struct WattsPerSquareMetreTag>;
/// Water, as a depth: 1 mm is 1 kg on a square metre.
using Millimetres = Quantity<struct MillimetresTag>;
using MillimetresPerHour = Quantity<struct MillimetresPerHourTag>;
/// Eighths of the sky under cloud, 0 to 8, as the World Meteorological Organization counts them.
using Oktas = Quantity<struct OktasTag>;
/// Relative humidity, of saturation over water, 0 to 100.
using Percent = Quantity<struct PercentTag>;

/// Ratio of a tangential force to the normal force it comes from: grip, drag, rolling resistance.
using ForceRatio = Quantity<struct ForceRatioTag>;

/// Standard acceleration of free fall, m/s2 (3rd CGPM 1901, exact by definition).
inline constexpr double kGravity = 9.80665;

constexpr Newtons weight_of(Kilograms mass) {
  return Newtons{mass.value() * kGravity};
}
constexpr Newtons operator*(ForceRatio ratio, Newtons normal) {
  return Newtons{ratio.value() * normal.value()};
}
constexpr Seconds operator/(Metres length, MetresPerSecond speed) {
  return Seconds{length.value() / speed.value()};
}
constexpr Metres operator*(MetresPerSecond speed, Seconds time) {
  return Metres{speed.value() * time.value()};
}
constexpr Joules operator*(Newtons force, Metres way) {
  return Joules{force.value() * way.value()};
}
constexpr Watts operator*(Newtons force, MetresPerSecond speed) {
  return Watts{force.value() * speed.value()};
}
/// Of a force about a place, the arm square to it; signs are the caller's.
constexpr NewtonMetres moment_of(Newtons force, Metres arm) {
  return NewtonMetres{force.value() * arm.value()};
}
constexpr Kilopascals operator/(Newtons force, SquareMetres area) {
  return Kilopascals{force.value() / area.value() / 1000.0};
}

}  // namespace rimehaul::units
