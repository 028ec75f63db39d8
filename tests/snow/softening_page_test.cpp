// The worked example of docs/softening.md, run: page and program cannot part ways.
#include <doctest/doctest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <string>

#include "near.h"
#include "snow/softening.h"

namespace rimehaul::snow {

namespace {

struct Shown {
  double value = 0.0;
  double half_digit = 0.0;
};

/// What stands in the example, by name.
std::map<std::string, Shown> example_of_the_page() {
  std::ifstream page{std::string{RIMEHAUL_ROOT} + "/docs/softening.md"};
  std::map<std::string, Shown> shown;
  bool inside = false;
  for (std::string line; std::getline(page, line);) {
    const std::size_t equals = line.find(" = ");
    if (line == "```example softening") {
      inside = true;
    } else if (line == "```") {
      inside = false;
    } else if (inside && equals != std::string::npos) {
      const std::string number = line.substr(equals + 3);
      const std::size_t point = number.find('.');
      const auto decimals = point == std::string::npos ? 0 : number.size() - point - 1;
      shown[line.substr(0, equals)] = {std::stod(number),
                                       0.5 * std::pow(10.0, -static_cast<double>(decimals))};
    }
  }
  return shown;
}

}  // namespace

TEST_CASE("the worked example on the page about softening comes out") {
  std::map<std::string, Shown> page = example_of_the_page();
  REQUIRE(page.size() == 12);
  const auto agrees = [&](const char* name, double found) {
    CAPTURE(name);
    CAPTURE(found);
    CHECK(testing::near(found, page.at(name).value, page.at(name).half_digit));
  };
  const SnowWeather day{.air = units::Celsius{page.at("air_c").value},
                        .cloud = {},
                        .rain = {},
                        .sun = units::WattsPerSquareMetre{page.at("sun_w_m2").value},
                        .most_gain = units::WattsPerSquareMetre{1}};
  const SnowState dry{Wetness::dry, Surface::groomed};
  SnowLayer layer{dry, units::Celsius{page.at("snow_c").value}};
  const double cold = layer.cold().value();
  const double melt = melt_by(kMostMelt, day.air, day.sun).value();
  agrees("cold_mm", cold);
  agrees("melt_mm_h", melt);
  layer.pass(day, units::Seconds{3600});
  agrees("first_hour_mm", layer.water().value());
  CHECK(layer.state_with(layer.water()) == SnowState{Wetness::moist, Surface::groomed});

  const double wet_after = (cold + 3.0) / melt;
  agrees("wet_after_h", wet_after);
  SnowLayer just_wet{dry, units::Celsius{page.at("snow_c").value}};
  just_wet.pass(day, units::Seconds{3600 * (wet_after + 1e-9)});
  CHECK(just_wet.state_with(just_wet.water())->wetness == Wetness::wet);

  const NightSky night{.air = units::Celsius{page.at("night_c").value},
                       .humidity = units::Percent{page.at("humidity_percent").value},
                       .cloud = {}};
  agrees("night_w_m2", radiated(night).value());
  agrees("night_mm_h", melted_by(radiated(night)).value());
  agrees("frozen_after_h", kHeldWater / units::Millimetres{melted_by(radiated(night)).value()});
}

}  // namespace rimehaul::snow
