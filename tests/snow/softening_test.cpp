// The layer through the day: worked by hand, cautious at every doubt, blind where it cannot know.
#include "snow/softening.h"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "near.h"

namespace rimehaul::snow {

namespace {

using testing::near;
using units::Celsius;
using units::Millimetres;
using units::MillimetresPerHour;
using units::Oktas;
using units::Percent;
using units::Seconds;
using units::WattsPerSquareMetre;

constexpr SnowState kDry{Wetness::dry, Surface::groomed};
constexpr Seconds kHour{3600};

SnowWeather dark(double air_c) {
  return {.air = Celsius{air_c},
          .humidity = Percent{60},
          .cloud = Oktas{0},
          .rain = MillimetresPerHour{0},
          .sun = WattsPerSquareMetre{0},
          .most_gain = WattsPerSquareMetre{-100}};
}

SnowWeather sunny(double air_c, double sun) {
  SnowWeather weather = dark(air_c);
  weather.sun = WattsPerSquareMetre{sun};
  weather.most_gain = WattsPerSquareMetre{1};
  return weather;
}

std::optional<Wetness> wetness_of(const SnowLayer& layer) {
  const auto state = layer.state_with(layer.water());
  return state ? std::optional{state->wetness} : std::nullopt;
}

}  // namespace

TEST_CASE("five degrees of frost in the layer take up 1.2575 mm before it is wet") {
  // 400 kg/m3 x 0.1 m x 2100 J/(kg K) x 5 K = 420 kJ/m2, over 334 kJ/kg.
  CHECK(near(cold_content(Celsius{-5}).value(), 1.2575, 5e-5));
  CHECK(cold_content(Celsius{0}).value() == 0.0);
}

TEST_CASE("each class holds its bounds of the classification, at them and a hair beside") {
  CHECK(class_of(Millimetres{0}) == Wetness::dry);
  CHECK(class_of(Millimetres{1e-9}) == Wetness::moist);
  CHECK(class_of(Millimetres{2.999}) == Wetness::moist);
  CHECK(class_of(Millimetres{3}) == Wetness::wet);
  CHECK(class_of(Millimetres{7.999}) == Wetness::wet);
  CHECK(class_of(Millimetres{8}) == Wetness::very_wet);
  CHECK(class_of(Millimetres{15}) == Wetness::very_wet);
  CHECK(class_of(Millimetres{15.001}) == Wetness::slush);
  CHECK_FALSE(class_of(Millimetres{-1e-9}).has_value());
  CHECK_FALSE(class_of(Millimetres{std::nan("")}).has_value());
  CHECK(most_water_of(Wetness::wet).value() == 8.0);
}

TEST_CASE("cold snow is wet and very wet when the published rate says so") {
  // At the fitted 2.932 mm/h from -5 deg C, nothing draining: 3 % after 1.452 h, 8 % after 3.157 h.
  const double fitted = melt_by(kFittedMelt, Celsius{6}, WattsPerSquareMetre{700}).value() /
                        melt_by(kMostMelt, Celsius{6}, WattsPerSquareMetre{700}).value();
  for (const auto& [hours, wanted] :
       {std::pair{1.451, Wetness::moist}, std::pair{1.453, Wetness::wet},
        std::pair{3.156, Wetness::wet}, std::pair{3.158, Wetness::very_wet}}) {
    SnowLayer layer{kDry, Celsius{-5}, fitted};
    layer.pass(sunny(6, 700), kHour * hours);
    CHECK(wetness_of(layer) == wanted);
  }
}

TEST_CASE("snow of which nobody took the temperature is at the melting point") {
  SnowLayer layer{kDry, {}};
  CHECK(layer.cold().value() == 0.0);
  layer.pass(sunny(6, 700), kHour * 0.001);
  CHECK(wetness_of(layer) == Wetness::moist);
  // And what is wet is not cold, whatever a thermometer says.
  CHECK(SnowLayer({Wetness::moist, Surface::groomed}, Celsius{-5}).cold().value() == 0.0);
}

TEST_CASE("snow starts with the most water of its class") {
  CHECK(wetness_of(SnowLayer{{Wetness::slush, Surface::groomed}, {}}) == Wetness::slush);
  CHECK(SnowLayer({Wetness::moist, Surface::groomed}, {}).water().value() == 3.0);
}

TEST_CASE("rain counts: it fills what is cold, then wets the snow") {
  SnowWeather rain = dark(2);
  rain.cloud = Oktas{8};
  rain.humidity = Percent{100};
  rain.rain = MillimetresPerHour{4};
  SnowLayer layer{kDry, Celsius{-5}};
  layer.pass(rain, kHour * 0.25);
  CHECK(near(layer.cold().value(), 0.2575, 0.05));
  CHECK(wetness_of(layer) == Wetness::dry);
  layer.pass(rain, kHour);
  CHECK(layer.water() > Millimetres{3.5});
  CHECK(wetness_of(layer) == Wetness::wet);
  CHECK(layer.state_with(layer.water())->surface == Surface::groomed);
}

TEST_CASE("rain that falls on snow in air at or under 1 deg C leaves ice") {
  SnowWeather rain = dark(1);
  rain.rain = MillimetresPerHour{0.1};
  SnowLayer layer{kDry, {}};
  layer.pass(rain, kHour * 0.1);
  CHECK(layer.state_with(layer.water())->surface == Surface::ice);
  rain.air = Celsius{1.01};
  SnowLayer warmer{kDry, {}};
  warmer.pass(rain, kHour * 0.1);
  CHECK(warmer.state_with(warmer.water())->surface != Surface::ice);
}

TEST_CASE("water over what the layer holds drains, but counted before it did") {
  SnowLayer layer{{Wetness::very_wet, Surface::groomed}, {}};
  CHECK(wetness_of(layer) == Wetness::very_wet);
  layer.drain();
  CHECK(layer.water() == kHeldWater);
  layer.drain();
  CHECK(layer.water() == kHeldWater);
}

TEST_CASE("a clear night freezes wet snow over, which is refrozen and never dry") {
  SnowLayer layer{{Wetness::moist, Surface::groomed}, {}};
  layer.pass(dark(0), kHour);
  // 3 - 1.1 mm, and a crust on it.
  CHECK(near(layer.water().value(), 3 - 1.101, 0.003));
  CHECK(layer.state_with(layer.water()) == SnowState{Wetness::moist, Surface::refrozen});
  layer.pass(dark(-3), kHour * 3);
  CHECK(layer.water().value() == 0.0);
  CHECK(layer.state_with(layer.water()) == SnowState{Wetness::moist, Surface::refrozen});
  // Dry snow that only gets colder has no crust.
  SnowLayer dry{kDry, {}};
  dry.pass(dark(-3), kHour);
  CHECK(dry.state_with(dry.water()) == kDry);
}

TEST_CASE("snow grows as cold as the air in the dark and no colder; warm air leaves it at 0") {
  SnowLayer layer{kDry, {}};
  layer.pass(dark(-3), kHour * 20);
  CHECK(near(layer.cold().value(), cold_content(Celsius{-3}).value(), 1e-12));
  SnowLayer under_warm{kDry, {}};
  under_warm.pass(dark(2), kHour * 20);
  CHECK(under_warm.cold().value() == 0.0);
  // What was colder than the air stays so.
  SnowLayer colder{kDry, Celsius{-9}};
  colder.pass(dark(-3), kHour);
  CHECK(near(colder.cold().value(), cold_content(Celsius{-9}).value(), 1e-12));
}

TEST_CASE("the warmth of the air is taken off what a night freezes, and melts when it is more") {
  SnowLayer layer{{Wetness::wet, Surface::groomed}, {}};
  layer.pass(dark(3), kHour);
  CHECK(near(layer.water().value(), 8 - (0.932 - 3 * 0.078), 0.003));
  SnowLayer melting{kDry, {}};
  SnowWeather warm = dark(12);
  warm.humidity = Percent{100};
  warm.cloud = Oktas{8};
  melting.pass(warm, kHour);
  CHECK(melting.water().value() > 0.9);
}

TEST_CASE("sun on the snow is unknown in air of 1 deg C, and known a hair above") {
  SnowLayer blind{kDry, {}};
  blind.pass(sunny(1, 1), kHour);
  CHECK(blind.blind() == Blind::to_sun);
  CHECK_FALSE(wetness_of(blind).has_value());
  SnowLayer seeing{kDry, {}};
  seeing.pass(sunny(1.001, 1), kHour);
  CHECK(seeing.blind() == Blind::no);
  CHECK(wetness_of(seeing) == Wetness::moist);
}

TEST_CASE("light that surely cannot melt the snow leaves it as it is, in frost alone") {
  SnowWeather dawn = sunny(0, 5);
  dawn.most_gain = WattsPerSquareMetre{0};
  SnowLayer layer{kDry, {}};
  layer.pass(dawn, kHour);
  CHECK(layer.state_with(layer.water()) == kDry);
  dawn.most_gain = WattsPerSquareMetre{1e-9};
  SnowLayer more{kDry, {}};
  more.pass(dawn, kHour);
  CHECK(more.blind() == Blind::to_sun);
  dawn.most_gain = WattsPerSquareMetre{0};
  dawn.air = Celsius{0.001};
  SnowLayer warmer{kDry, {}};
  warmer.pass(dawn, kHour);
  CHECK(warmer.blind() == Blind::to_sun);
}

TEST_CASE("after cold sun all is unknown until the most it may have melted is frozen again") {
  SnowLayer layer{kDry, {}};
  layer.pass(sunny(-2, 400), kHour);  // at most 0.55 x 400 W/m2: 2.37 mm
  CHECK(near(layer.water().value(), 2.3713, 0.0005));
  layer.pass(dark(-2), kHour);
  CHECK(layer.blind() == Blind::since_sun);
  CHECK_FALSE(wetness_of(layer).has_value());
  layer.pass(dark(-2), kHour);
  CHECK(layer.blind() == Blind::no);
  CHECK(layer.state_with(layer.water()) == SnowState{Wetness::moist, Surface::refrozen});
}

TEST_CASE("a site's factor changes the melt, but never makes less of what cold sun may melt") {
  SnowLayer half{kDry, {}, 0.5};
  SnowLayer whole{kDry, {}};
  half.pass(sunny(5, 300), kHour);
  whole.pass(sunny(5, 300), kHour);
  CHECK(near(half.water().value() * 2, whole.water().value(), 1e-12));
  SnowLayer cold_half{kDry, {}, 0.5};
  cold_half.pass(sunny(-2, 400), kHour);
  CHECK(near(cold_half.water().value(), 2.3713, 0.0005));
}

TEST_CASE("a number that is none makes all that follows unknown") {
  for (const SnowWeather& broken :
       {sunny(5, std::nan("")), sunny(std::nan(""), 5), dark(std::nan(""))}) {
    SnowLayer layer{kDry, {}};
    layer.pass(broken, kHour);
    CHECK_FALSE(wetness_of(layer).has_value());
    layer.pass(dark(-5), kHour);
    layer.drain();
    CHECK_FALSE(wetness_of(layer).has_value());
  }
  SnowLayer no_thermometer{kDry, Celsius{std::nan("")}};
  no_thermometer.pass(dark(-5), kHour);
  CHECK(no_thermometer.blind() == Blind::no_forecast);
  CHECK_FALSE(SnowLayer(kDry, {}).state_with(Millimetres{-1}).has_value());
  SnowWeather rain = dark(2);
  rain.rain = MillimetresPerHour{std::nan("")};
  SnowLayer layer{kDry, {}};
  layer.pass(rain, kHour);
  CHECK(layer.blind() == Blind::no_forecast);
}

TEST_CASE("every reason for not knowing has its words") {
  CHECK(std::string{words_for(Blind::to_sun)} ==
        "unknown: sun on the snow with the air at or under 1 degree C");
  CHECK(std::string{words_for(Blind::since_sun)}.starts_with("unknown: "));
  CHECK(std::string{words_for(Blind::no_forecast)} == "unknown: no forecast");
  CHECK(std::string{words_for(Blind::no)} == "known");
}

}  // namespace rimehaul::snow
