// The grip law: never better when wetter, published where it can be, a site's own where measured.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <initializer_list>
#include <limits>
#include <string>
#include <vector>

#include "base/require.h"
#include "near.h"
#include "snow/built_in_grip.h"
#include "snow/crrel.h"
#include "snow/grip.h"

namespace rimehaul::snow {

namespace {

using testing::near;
using units::ForceRatio;
using units::Kilopascals;

constexpr SnowState kDryGroomed{Wetness::dry, Surface::groomed};

std::vector<SnowState> all_states() {
  std::vector<SnowState> states;
  for (int surface = 0; surface < kSurfaceCount; ++surface) {
    for (int wetness = 0; wetness < kWetnessCount; ++wetness) {
      states.push_back({static_cast<Wetness>(wetness), static_cast<Surface>(surface)});
    }
  }
  return states;
}

TrackPrint print_at(double pressure_kpa) {
  return {Kilopascals{pressure_kpa}, units::Metres{0.9}, units::Metres{1.4}};
}

GripRow row_of(const GripLaw& law, SnowState state, double pressure_kpa) {
  const auto row = law.row(state, print_at(pressure_kpa));
  REQUIRE(row.has_value());
  return *row;
}

bool grips_no_better(const GripRow& row, const GripRow& than) {
  return row.traction <= than.traction && row.brake <= than.brake && row.lateral <= than.lateral &&
         row.trailer_lateral <= than.trailer_lateral;
}

bool is_no_less_cautious(const GripRow& row, const GripRow& than) {
  return grips_no_better(row, than) && row.carrier_resistance.low <= than.carrier_resistance.low &&
         row.carrier_resistance.high >= than.carrier_resistance.high &&
         row.trailer_resistance.low <= than.trailer_resistance.low &&
         row.trailer_resistance.high >= than.trailer_resistance.high &&
         row.trailer_start >= than.trailer_start;
}

bool is_sound(const GripRow& row) {
  return row.traction > ForceRatio{0} && row.brake > ForceRatio{0} && row.lateral > ForceRatio{0} &&
         row.trailer_lateral > ForceRatio{0} && row.carrier_resistance.low > ForceRatio{0} &&
         row.trailer_resistance.low > ForceRatio{0} &&
         row.carrier_resistance.low <= row.carrier_resistance.high &&
         row.trailer_resistance.low <= row.trailer_resistance.high &&
         row.trailer_start >= row.trailer_resistance.high;
}

void check_wetter_is_never_better(const GripLaw& law) {
  for (double pressure_kpa = 1.0; pressure_kpa <= 60.0; pressure_kpa += 0.5) {
    for (const SnowState state : all_states()) {
      if (state.wetness == Wetness::dry) {
        continue;
      }
      const SnowState drier{static_cast<Wetness>(static_cast<int>(state.wetness) - 1),
                            state.surface};
      CAPTURE(pressure_kpa);
      CAPTURE(words_for(state.surface));
      CAPTURE(words_for(state.wetness));
      CHECK(
          is_no_less_cautious(row_of(law, state, pressure_kpa), row_of(law, drier, pressure_kpa)));
    }
  }
}

MeasuredGrip measured(SnowState state, double traction) {
  MeasuredGrip entry;
  entry.state = state;
  entry.traction = ForceRatio{traction};
  entry.source = "five pulls, A. Example";
  return entry;
}

MeasuredGrip measured_in_full() {
  MeasuredGrip entry = measured(kDryGroomed, 0.45);
  entry.brake = ForceRatio{0.40};
  entry.lateral = ForceRatio{0.35};
  entry.trailer_lateral = ForceRatio{0.20};
  entry.carrier_resistance = ForceRange{ForceRatio{0.05}, ForceRatio{0.07}};
  entry.trailer_resistance = ForceRange{ForceRatio{0.04}, ForceRatio{0.08}};
  entry.trailer_start = ForceRatio{0.12};
  return entry;
}

/// Each number of an entry that is one ratio, and each that is a range.
constexpr std::array kRatios{&MeasuredGrip::traction, &MeasuredGrip::brake, &MeasuredGrip::lateral,
                             &MeasuredGrip::trailer_lateral, &MeasuredGrip::trailer_start};
constexpr std::array kRanges{&MeasuredGrip::carrier_resistance, &MeasuredGrip::trailer_resistance};

/// Whether an entry counts as measured for a carrier alone, and for one that tows on runners.
struct Whole {
  bool alone = false;
  bool towing = false;

  friend bool operator==(const Whole&, const Whole&) = default;
};

Whole whole(const MeasuredGrip& entry) {
  const GripLaw law{{entry}};
  return {law.all_measured(kDryGroomed, Runners::none),
          law.all_measured(kDryGroomed, Runners::towed)};
}

}  // namespace

TEST_CASE("at the same surface wetter snow never grips better, from 1 to 60 kPa") {
  check_wetter_is_never_better(GripLaw{});
}

TEST_CASE("at the same wetness a slipperier surface never grips better, from 1 to 60 kPa") {
  for (double pressure_kpa = 1.0; pressure_kpa <= 60.0; pressure_kpa += 0.5) {
    for (const SnowState state : all_states()) {
      if (state.surface == Surface::groomed) {
        continue;
      }
      const SnowState grippier{state.wetness,
                               static_cast<Surface>(static_cast<int>(state.surface) - 1)};
      CAPTURE(pressure_kpa);
      CAPTURE(words_for(state.surface));
      CAPTURE(words_for(state.wetness));
      CHECK(grips_no_better(row_of(GripLaw{}, state, pressure_kpa),
                            row_of(GripLaw{}, grippier, pressure_kpa)));
    }
  }
}

TEST_CASE("every state has every number, above 0, and no track brakes better than it pulls") {
  for (const SnowState state : all_states()) {
    CAPTURE(words_for(state.surface));
    CAPTURE(words_for(state.wetness));
    const GripRow row = row_of(GripLaw{}, state, 6.0);
    CHECK(is_sound(row));
    CHECK(row.brake <= row.traction);
    CHECK(row.lateral <= row.traction);
    CHECK(row.standing == GripStanding::estimate);
    CHECK(row.source.find("CRREL") != std::string::npos);
  }
}

TEST_CASE("dry groomed snow and dry ice pull as CRREL Report 95-1 says") {
  for (const double pressure_kpa : {4.0, 10.0, 51.2202}) {
    CAPTURE(pressure_kpa);
    const Kilopascals pressure{pressure_kpa};
    CHECK(near(row_of(GripLaw{}, kDryGroomed, pressure_kpa).traction.value(),
               traction_on_prepared_snow(pressure) / pressure, 1e-12));
    CHECK(near(row_of(GripLaw{}, {Wetness::dry, Surface::ice}, pressure_kpa).traction.value(),
               traction_on_ice(pressure) / pressure, 1e-12));
  }
  // The laws at the pressure of light tracks (0.321 N^-0.03 and 0.127 N^0.06, closed form).
  CHECK(near(row_of(GripLaw{}, kDryGroomed, 4.0).traction, ForceRatio{0.308}, ForceRatio{5e-4}));
  CHECK(near(row_of(GripLaw{}, kDryGroomed, 10.0).traction, ForceRatio{0.300}, ForceRatio{5e-4}));
  CHECK(near(row_of(GripLaw{}, {Wetness::dry, Surface::ice}, 4.0).traction, ForceRatio{0.138},
             ForceRatio{5e-4}));
  CHECK(near(row_of(GripLaw{}, {Wetness::dry, Surface::ice}, 10.0).traction, ForceRatio{0.146},
             ForceRatio{5e-4}));
}

TEST_CASE("what light tracks are given where nothing was measured: 0.30 dry, 0.20 wet, no more") {
  for (const double pressure_kpa : {4.0, 6.0, 10.0}) {
    CAPTURE(pressure_kpa);
    const auto grip = [&](Wetness wetness, Surface surface) {
      return row_of(GripLaw{}, {wetness, surface}, pressure_kpa).traction;
    };
    // Richmond, Shoop and Blaisdell (1995) for the dry rows; wet is an estimate.
    CHECK(near(grip(Wetness::dry, Surface::groomed), ForceRatio{0.30}, ForceRatio{0.01}));
    CHECK(near(grip(Wetness::dry, Surface::fresh), ForceRatio{0.30}, ForceRatio{0.01}));
    CHECK(near(grip(Wetness::wet, Surface::groomed), ForceRatio{0.20}, ForceRatio{0.01}));
    CHECK(grip(Wetness::wet, Surface::ice) < ForceRatio{0.13});
    CHECK(grip(Wetness::slush, Surface::groomed) <= ForceRatio{0.13});
  }
}

TEST_CASE("a track brakes and holds on bare ice no better than a car's wheel, nor on packed snow") {
  // Navin, Macnabb and Nicolletti (1996): a car's brake and lateral 0.35 and 0.38 on packed snow,
  // 0.09 and 0.09 on bare ice.
  for (double pressure_kpa = 1.0; pressure_kpa <= 60.0; pressure_kpa += 1.0) {
    CAPTURE(pressure_kpa);
    const GripRow ice = row_of(GripLaw{}, {Wetness::dry, Surface::ice}, pressure_kpa);
    CHECK(ice.brake == ForceRatio{0.09});
    CHECK(ice.lateral == ForceRatio{0.09});
    const GripRow packed = row_of(GripLaw{}, kDryGroomed, pressure_kpa);
    CHECK(packed.brake <= ForceRatio{0.35});
    CHECK(packed.lateral <= ForceRatio{0.38});
  }
  // So light on the snow the law pulls better than a car's wheel: 0.321 N^-0.03 is 0.395.
  const GripRow lightest = row_of(GripLaw{}, kDryGroomed, 0.001);
  CHECK(near(lightest.traction, ForceRatio{0.395}, ForceRatio{5e-4}));
  CHECK(lightest.brake == ForceRatio{0.35});
  CHECK(lightest.lateral == ForceRatio{0.38});
}

TEST_CASE("runners slide as easily as on a film of water and start as hard as in the cold") {
  // Colbeck (1992), values from memory: 0.02 to 0.05 on a thin film, 0.05 to 0.10 in the cold, 0.10
  // to 0.30 starting in the cold or soaked, 0.05 to 0.15 in all in soft snow.
  for (const SnowState state : all_states()) {
    CHECK(row_of(GripLaw{}, state, 6.0).trailer_resistance.low == ForceRatio{0.02});
  }
  const GripRow cold = row_of(GripLaw{}, kDryGroomed, 6.0);
  CHECK(cold.trailer_resistance.high == ForceRatio{0.10});
  CHECK(cold.trailer_start == ForceRatio{0.30});
  CHECK(row_of(GripLaw{}, {Wetness::dry, Surface::fresh}, 6.0).trailer_resistance.high ==
        ForceRatio{0.15});
  CHECK(near(row_of(GripLaw{}, {Wetness::slush, Surface::groomed}, 6.0).trailer_resistance.high,
             ForceRatio{0.30}, ForceRatio{1e-12}));
}

TEST_CASE("fresh snow counts for no more than tan 28 degrees, nor than prepared snow") {
  const ForceRatio light_tracks{std::tan(28.0 * 3.14159265358979 / 180.0)};
  for (const double pressure_kpa : {1.0, 4.0, 10.0, 60.0}) {
    CAPTURE(pressure_kpa);
    const GripRow fresh = row_of(GripLaw{}, {Wetness::dry, Surface::fresh}, pressure_kpa);
    CHECK(fresh.traction <= light_tracks);
    CHECK(fresh.traction <= row_of(GripLaw{}, kDryGroomed, pressure_kpa).traction);
  }
  // So light that the law of prepared snow gives more: 0.321 N^-0.03 is 0.598.
  CHECK(near(row_of(GripLaw{}, kDryGroomed, 1e-9).traction, ForceRatio{0.598}, ForceRatio{5e-4}));
  CHECK(near(row_of(GripLaw{}, {Wetness::dry, Surface::fresh}, 1e-9).traction, light_tracks,
             ForceRatio{1e-6}));
}

TEST_CASE("slush grips no better than dry ice on any surface, and doubles the drag") {
  const GripRow ice = row_of(GripLaw{}, {Wetness::dry, Surface::ice}, 6.0);
  for (int surface = 0; surface < kSurfaceCount; ++surface) {
    const SnowState slush{Wetness::slush, static_cast<Surface>(surface)};
    const SnowState dry{Wetness::dry, slush.surface};
    CAPTURE(words_for(slush.surface));
    CHECK(grips_no_better(row_of(GripLaw{}, slush, 6.0), ice));
    CHECK(row_of(GripLaw{}, slush, 6.0).carrier_resistance.high >=
          row_of(GripLaw{}, dry, 6.0).carrier_resistance.high * 2.0);
    CHECK(row_of(GripLaw{}, slush, 6.0).trailer_resistance.high >=
          row_of(GripLaw{}, dry, 6.0).trailer_resistance.high * 2.0);
  }
}

TEST_CASE("wet ice has its own row, at most half of dry ice") {
  const GripRow dry = row_of(GripLaw{}, {Wetness::dry, Surface::ice}, 6.0);
  const GripRow wet = row_of(GripLaw{}, {Wetness::moist, Surface::ice}, 6.0);
  CHECK(wet.traction <= dry.traction * 0.5);
  CHECK(wet.brake <= dry.brake * 0.5);
}

TEST_CASE("a pressure that is none gives no row: nothing, negative, unknown, without end") {
  for (const double pressure_kpa :
       {0.0, -0.001, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(pressure_kpa);
    CHECK_FALSE(GripLaw{}.row(kDryGroomed, print_at(pressure_kpa)).has_value());
  }
  CHECK(GripLaw{}.row(kDryGroomed, print_at(0.001)).has_value());
}

TEST_CASE("a print without width or length gives no row") {
  for (const double bad : {0.0, -1.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
    TrackPrint print = print_at(6.0);
    print.width = units::Metres{bad};
    CHECK_FALSE(GripLaw{}.row(kDryGroomed, print).has_value());
    print = print_at(6.0);
    print.length = units::Metres{bad};
    CHECK_FALSE(GripLaw{}.row(kDryGroomed, print).has_value());
  }
}

TEST_CASE(
    "measured strength tells resistance, on top of hard ground, and how deep one side sinks") {
  const SnowState fresh{Wetness::dry, Surface::fresh};
  MeasuredGrip entry;
  entry.state = fresh;
  entry.strength = SnowStrength{1.6, 4.37, 196.72};  // "U.S." of Wong's table
  const TrackPrint print = print_at(9.80665);
  const GripRow row = *GripLaw{{entry}}.row(fresh, print);
  const double z = sinkage_of(*entry.strength, print).value();
  CHECK(near(row.carrier_resistance.high.value(), 0.0525 + z / (1.4 * 2.6), 1e-12));
  CHECK(row.carrier_resistance.low == ForceRatio{0.0375});
  // Twice the pressure sinks 2^(1 / n) times as deep.
  CHECK(near(row.side_sinkage.value(), z * std::pow(2.0, 1.0 / 1.6), 1e-12));
  CHECK(row.traction == GripLaw{}.row(fresh, print)->traction);
  CHECK(GripLaw{}.row(fresh, print)->side_sinkage == units::Metres{0});
  // Resistance that was itself measured counts before it.
  entry.carrier_resistance = ForceRange{ForceRatio{0.02}, ForceRatio{0.3}};
  CHECK(GripLaw{{entry}}.row(fresh, print)->carrier_resistance.high == ForceRatio{0.3});
  // What is wetter sinks no less.
  const SnowState wetter{Wetness::wet, Surface::fresh};
  CHECK(GripLaw{{entry}}.row(wetter, print)->side_sinkage == row.side_sinkage);
  entry.strength->k_phi = -1.0;
  CHECK_THROWS_AS(GripLaw{{entry}}, base::OurFault);
}

TEST_CASE("what a site measured replaces the built-in number; the rest stays an estimate") {
  const SnowState wet{Wetness::wet, Surface::groomed};
  const GripRow built_in = row_of(GripLaw{}, wet, 6.0);
  const GripRow row = row_of(GripLaw{{measured(wet, 0.24)}}, wet, 6.0);
  CHECK(row.traction == ForceRatio{0.24});
  CHECK(row.traction > built_in.traction);
  CHECK(row.brake == built_in.brake);
  CHECK(row.standing == GripStanding::estimate);
  CHECK(row.source.starts_with("five pulls, A. Example; rest: "));
}

TEST_CASE("a row measured in full is the site's own, by its name") {
  const GripRow row = row_of(GripLaw{{measured_in_full()}}, kDryGroomed, 6.0);
  CHECK(row.traction == ForceRatio{0.45});
  CHECK(row.brake == ForceRatio{0.40});
  CHECK(row.lateral == ForceRatio{0.35});
  CHECK(row.trailer_lateral == ForceRatio{0.20});
  CHECK(row.carrier_resistance.low == ForceRatio{0.05});
  CHECK(row.carrier_resistance.high == ForceRatio{0.07});
  CHECK(row.trailer_resistance.low == ForceRatio{0.04});
  CHECK(row.trailer_resistance.high == ForceRatio{0.08});
  CHECK(row.trailer_start == ForceRatio{0.12});
  CHECK(row.standing == GripStanding::site_measured);
  CHECK(row.source == "five pulls, A. Example");
}

TEST_CASE("a wet measurement above the moist row counts for no more than the moist row") {
  const SnowState moist{Wetness::moist, Surface::groomed};
  const SnowState wet{Wetness::wet, Surface::groomed};
  const GripRow built_in = row_of(GripLaw{}, moist, 6.0);
  CHECK(row_of(GripLaw{{measured(wet, 0.50)}}, wet, 6.0).traction == built_in.traction);
  const GripLaw both{{measured(moist, 0.29), measured(wet, 0.28)}};
  CHECK(row_of(both, wet, 6.0).traction == ForceRatio{0.28});
}

TEST_CASE("a poor dry measurement brings every wetter state of its surface down to it") {
  const GripLaw law{{measured(kDryGroomed, 0.10)}};
  for (const Wetness wetness :
       {Wetness::dry, Wetness::moist, Wetness::wet, Wetness::very_wet, Wetness::slush}) {
    CAPTURE(words_for(wetness));
    const GripRow row = row_of(law, {wetness, Surface::groomed}, 6.0);
    CHECK(row.traction <= ForceRatio{0.10});
    CHECK(row.brake <= ForceRatio{0.10});
    CHECK(row.lateral <= ForceRatio{0.10});
  }
  const SnowState fresh{Wetness::dry, Surface::fresh};
  CHECK(row_of(law, fresh, 6.0).traction == row_of(GripLaw{}, fresh, 6.0).traction);
}

TEST_CASE("wetter is never better whatever a site measures") {
  check_wetter_is_never_better(GripLaw{{measured({Wetness::moist, Surface::groomed}, 0.9),
                                        measured({Wetness::wet, Surface::ice}, 0.4),
                                        measured({Wetness::dry, Surface::refrozen}, 0.02),
                                        measured({Wetness::slush, Surface::fresh}, 0.3)}});
}

TEST_CASE("an estimate or a published value counts only where it is the more cautious") {
  for (const GripStanding standing : {GripStanding::estimate, GripStanding::published}) {
    MeasuredGrip high = measured(kDryGroomed, 0.60);
    high.standing = standing;
    high.carrier_resistance = ForceRange{ForceRatio{0.05}, ForceRatio{0.06}};
    const GripRow built_in = row_of(GripLaw{}, kDryGroomed, 6.0);
    const GripRow row = row_of(GripLaw{{high}}, kDryGroomed, 6.0);
    CHECK(row.traction == built_in.traction);
    CHECK(row.carrier_resistance.low == built_in.carrier_resistance.low);
    CHECK(row.carrier_resistance.high == built_in.carrier_resistance.high);
    MeasuredGrip low = measured(kDryGroomed, 0.20);
    low.standing = standing;
    CHECK(row_of(GripLaw{{low}}, kDryGroomed, 6.0).traction == ForceRatio{0.20});
  }
}

TEST_CASE("two entries for one state, or a number that is none, are faults of the program") {
  const MeasuredGrip good = measured(kDryGroomed, 0.3);
  CHECK_THROWS_AS((GripLaw{{good, good}}), base::OurFault);
  for (const double ratio : {0.0, -0.1, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(ratio);
    CHECK_THROWS_AS((GripLaw{{measured(kDryGroomed, ratio)}}), base::OurFault);
  }
  MeasuredGrip crossed = good;
  crossed.trailer_resistance = ForceRange{ForceRatio{0.2}, ForceRatio{0.1}};
  CHECK_THROWS_AS((GripLaw{{crossed}}), base::OurFault);
}

TEST_CASE("every standing of a grip has its own words") {
  CHECK(std::string{words_for(GripStanding::published)} == "published");
  CHECK(std::string{words_for(GripStanding::site_measured)} == "measured by the site");
  CHECK(std::string{words_for(GripStanding::estimate)} == "estimate");
  // One that is none of them is told as the weakest.
  CHECK(std::string{words_for(static_cast<GripStanding>(3))} == "estimate");
}

TEST_CASE("a site's number that is none is our fault, whichever number it is") {
  constexpr ForceRatio kGood{0.1};
  CHECK_NOTHROW((GripLaw{{measured_in_full()}}));
  for (const double bad : {0.0, -0.1, std::nan(""), std::numeric_limits<double>::infinity()}) {
    CAPTURE(bad);
    for (std::size_t i = 0; i < kRatios.size(); ++i) {
      CAPTURE(i);
      MeasuredGrip entry = measured_in_full();
      entry.*kRatios.at(i) = ForceRatio{bad};
      CHECK_THROWS_AS((GripLaw{{entry}}), base::OurFault);
    }
    for (std::size_t i = 0; i < kRanges.size(); ++i) {
      CAPTURE(i);
      MeasuredGrip entry = measured_in_full();
      entry.*kRanges.at(i) = ForceRange{ForceRatio{bad}, kGood};
      CHECK_THROWS_AS((GripLaw{{entry}}), base::OurFault);
      entry.*kRanges.at(i) = ForceRange{kGood, ForceRatio{bad}};
      CHECK_THROWS_AS((GripLaw{{entry}}), base::OurFault);
    }
  }
}

TEST_CASE("a state is measured only when no number that bears on the rig is left out") {
  CHECK(whole(measured_in_full()) == Whole{.alone = true, .towing = true});
  for (const auto left_out :
       {&MeasuredGrip::traction, &MeasuredGrip::brake, &MeasuredGrip::lateral}) {
    MeasuredGrip entry = measured_in_full();
    (entry.*left_out).reset();
    CHECK(whole(entry) == Whole{.alone = false, .towing = false});
  }
  for (const auto left_out : {&MeasuredGrip::trailer_lateral, &MeasuredGrip::trailer_start}) {
    MeasuredGrip entry = measured_in_full();
    (entry.*left_out).reset();
    CHECK(whole(entry) == Whole{.alone = true, .towing = false});
  }
  MeasuredGrip entry = measured_in_full();
  entry.trailer_resistance.reset();
  CHECK(whole(entry) == Whole{.alone = true, .towing = false});
}

TEST_CASE("strength stands in for the carrier's resistance, nothing stands in for both") {
  MeasuredGrip entry = measured_in_full();
  entry.carrier_resistance.reset();
  CHECK(whole(entry) == Whole{.alone = false, .towing = false});
  CHECK(row_of(GripLaw{{entry}}, kDryGroomed, 6.0).standing == GripStanding::estimate);
  entry.strength = SnowStrength{1.6, 4.37, 196.72};  // "U.S." of Wong's table
  CHECK(whole(entry) == Whole{.alone = true, .towing = true});
  CHECK(row_of(GripLaw{{entry}}, kDryGroomed, 6.0).standing == GripStanding::site_measured);
}

}  // namespace rimehaul::snow
