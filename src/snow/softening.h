// The top 10 cm of the snow through the day: how cold, how wet, whether frozen over again.
#pragma once

#include <optional>
#include <vector>

#include "snow/melt.h"
#include "snow/snow.h"

namespace rimehaul::snow {

/// Thickness and density of the layer that is followed. 1 mm of water in it is 1 % by volume.
inline constexpr units::Metres kLayer{0.1};
inline constexpr units::KilogramsPerCubicMetre kLayerDensity{400};

/// What the layer holds against gravity; the rest has drained at the end of an hour: the high side
/// of Coleou and Lesaffre (1998), Ann. Glaciol. 26, 64-68 (value from memory).
inline constexpr units::Millimetres kHeldWater{4};

/// Water that freezes before snow so cold, not above 0, is at the melting point: density x
/// thickness x 2100 J/(kg K) x degrees / 334 000 J/kg.
[[nodiscard]] units::Millimetres cold_content(units::Celsius snow);

/// The class of so much water in the layer, by its bounds: dry 0, moist < 3 %, wet < 8 %, very wet
/// up to 15 %, else slush, which nobody can reckon: it is called "very wet or worse". Nothing when
/// it is no number, or below 0.
[[nodiscard]] std::optional<Wetness> class_of(units::Millimetres water);
/// The most water of a class; slush has no bound, and stands at 30 mm.
[[nodiscard]] units::Millimetres most_water_of(Wetness wetness);

/// Why an hour is not known.
enum class Blind {
  no,
  to_sun,       ///< sun on the snow with the air at or under 1 degree C
  since_sun,    ///< and what that may have melted has not surely frozen again
  no_forecast,  ///< no weather is told, or something in it is no number
};
[[nodiscard]] const char* words_for(Blind blind);

/// What the weather does to the snow for a while.
struct SnowWeather {
  units::Celsius air;
  units::Percent humidity{100};
  units::Oktas cloud;  ///< for the loss at night; the light counts its own
  units::MillimetresPerHour rain;
  units::WattsPerSquareMetre sun;  ///< that falls on this ground, the most there may be
  /// The most that a melting surface could keep of sun and sky, whatever the cloud. Not above 0: it
  /// surely does not melt, as long as the air is not above 0 either.
  units::WattsPerSquareMetre most_gain;
};

/// One layer, followed step by step with every uncertain number at the side that leaves it wetter.
///   Air over 1 deg C and sun: the index of melt_by, no loss. Dark: loss of `radiated`, less TF T.
///   Sun in colder air: nothing melts where most_gain proves it; else the layer is blind, and
///   carries the most that may have melted until that has frozen again in the dark.
/// Melt and rain fill the cold content first, then wet the snow. Loss freezes water, then makes the
/// layer colder, down to the air's temperature.
class SnowLayer {
 public:
  /// As observed: with the most water of the class; cold only if dry and so measured. `melt` is the
  /// site's factor on kMostMelt, above 0.
  SnowLayer(SnowState observed, std::optional<units::Celsius> temperature, double melt = 1.0);

  void pass(const SnowWeather& weather, units::Seconds lasting);
  /// What is over the held water runs off.
  void drain();

  [[nodiscard]] units::Millimetres water() const { return water_; }
  [[nodiscard]] units::Millimetres cold() const { return cold_; }
  [[nodiscard]] Blind blind() const { return blind_; }
  /// Nothing while blind. Refrozen snow is at least moist: of what is under the crust nobody knows.
  [[nodiscard]] std::optional<SnowState> state_with(units::Millimetres most_water) const;

 private:
  void gain(units::Millimetres water);
  void lose(units::Millimetres ice, units::Celsius air);

  SnowState observed_;
  double melt_;
  units::Millimetres water_;
  units::Millimetres cold_;
  Surface crust_ = Surface::groomed;
  Blind blind_ = Blind::no;
};

}  // namespace rimehaul::snow
