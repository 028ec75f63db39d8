// The re-walk accepts every route that the search returns, and rejects it once it is spoilt.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "audit/rewalk.h"
#include "passage/demo_scene.h"
#include "search/route.h"

using namespace rimehaul;
using namespace rimehaul::testing;
using audit::PromisedLeg;

namespace {

/// Numbers that are the same on every machine.
class Dice {
 public:
  explicit Dice(std::uint32_t seed) : engine_{seed} {}
  std::size_t below(std::size_t count) { return engine_() % count; }
  double between(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() % 10'000) / 9'999.0;
  }

 private:
  std::mt19937 engine_;
};

/// Hills and hollows of three lengths, gentle enough that much of it can be driven.
Surface random_ground(Dice& dice) {
  struct Wave {
    double east;
    double north;
    double phase;
    double size_m;
  };
  std::vector<Wave> waves;
  for (const double length_m : {600.0, 200.0, 70.0}) {
    const double way = dice.between(0, 6.28);
    waves.push_back({6.28 / length_m * std::cos(way), 6.28 / length_m * std::sin(way),
                     dice.between(0, 6.28), dice.between(0.002, 0.008) * length_m});
  }
  return [waves](double east_m, double north_m) {
    double height_m = 1300.0;
    for (const Wave& wave : waves) {
      height_m += wave.size_m * std::sin(wave.east * east_m + wave.north * north_m + wave.phase);
    }
    return height_m;
  };
}

/// A trail from one place to another that wanders in wide bends.
std::vector<geo::MapPoint> wander(Dice& dice, geo::MapPoint from, geo::MapPoint to) {
  std::vector<geo::MapPoint> points;
  const double aside_m = dice.between(-30, 30);
  const units::Bearing right =
      units::Bearing::from_degrees(geo::bearing({from, to}).degrees() + 90.0);
  for (int i = 0; i <= 24; ++i) {
    const double share = i / 24.0;
    const double bulge = aside_m * std::pow(std::sin(3.14159265 * share), 2);
    const geo::MapPoint on_chord = i == 24 ? to : geo::between({from, to}, share);
    points.push_back(i == 0 || i == 24 ? on_chord
                                       : geo::moved(on_chord, right, units::Metres{bulge}));
  }
  return points;
}

/// Six stations around a hub, trails between neighbours and to the hub.
TestTrails random_trails(Dice& dice) {
  TestTrails all;
  std::vector<geo::MapPoint> places;
  for (int i = 0; i < 6; ++i) {
    const double angle = 1.0472 * i + dice.between(-0.2, 0.2);
    const double far_m = dice.between(350, 500);
    places.push_back(place(500 + far_m * std::sin(angle), 500 + far_m * std::cos(angle)));
    all.stations.push_back(plain_station("Station " + std::to_string(i), places.back()));
  }
  const geo::MapPoint hub = place(500 + dice.between(-40, 40), 500 + dice.between(-40, 40));
  all.stations.push_back(plain_station("Hub", hub));
  for (std::size_t i = 0; i < places.size(); ++i) {
    all.trails.push_back(plain_trail("Ring " + std::to_string(i),
                                     wander(dice, places[i], places[(i + 1) % places.size()])));
    all.trails.push_back(plain_trail("Spoke " + std::to_string(i), wander(dice, places[i], hub)));
  }
  for (trails::Trail& trail : all.trails) {
    if (dice.below(5) == 0) {
      trail.direction = trails::AllowedDirection::forward;
    }
    if (dice.below(5) == 0) {
      trail.hours = trails::OpenHours{{0}, {9 * 60 + 2}};
    }
    trail.line_error = units::Metres{dice.between(0, 2)};
  }
  return all;
}

/// Wet below, dry above, wetter where the sun stands: the state changes along every trail.
snow::ReportedSnow random_report(Dice& dice) {
  const geo::Height line{1300.0 + dice.between(-2, 2)};
  const snow::SnowState dry{snow::Wetness::dry, snow::Surface::groomed};
  const snow::SnowState moist{snow::Wetness::moist, snow::Surface::groomed};
  const snow::SnowState wet{snow::Wetness::wet, snow::Surface::groomed};
  return snow::ReportedSnow{
      {.bands = {{.above = line, .below = {}, .aspect_from = {}, .aspect_to = {}, .state = dry},
                 {.above = {},
                  .below = line,
                  .aspect_from = {},
                  .aspect_to = {},
                  .state = dice.below(2) == 0 ? moist : wet},
                 {.above = {},
                  .below = {},
                  .aspect_from = units::Bearing::from_degrees(120),
                  .aspect_to = units::Bearing::from_degrees(250),
                  .state = moist}},
       .weather = plain_weather(),
       .observer = "N. Warden",
       .observed = units::Instant{mid_morning().seconds - 3600},
       .valid_until = units::Instant{mid_morning().seconds + 36'000}}};
}

std::vector<PromisedLeg> promise_of(const search::Route& route, const trails::Network& network,
                                    const search::RouteQuestion& question) {
  std::vector<PromisedLeg> promise;
  for (std::size_t i = 0; i < route.legs.size(); ++i) {
    const search::RouteLeg& driven = route.legs[i];
    const trails::Leg& leg = network.legs[static_cast<std::size_t>(driven.leg)];
    double share = std::max(*driven.judgement.share(), *driven.turn_into.binding.share);
    if (i + 1 < route.legs.size()) {
      share = std::max(share, *route.legs[i + 1].turn_into.binding.share);
    }
    promise.push_back({.trail = network.trails[leg.trail].name,
                       .span = leg.span,
                       .way = leg.way,
                       .entry = driven.entry,
                       .share = share,
                       .permitted = !question.permitted_by.empty(),
                       .speed = driven.judgement.slowest,
                       .time = driven.judgement.time,
                       .fuel = driven.judgement.fuel});
  }
  return promise;
}

/// Spoils one thing, chosen at random. Each of them must be found.
std::string spoil(Dice& dice, std::vector<PromisedLeg>& promise) {
  PromisedLeg& leg = promise[dice.below(promise.size())];
  switch (dice.below(10)) {
    case 0:
      leg.way = leg.way == trails::Way::as_drawn ? trails::Way::against : trails::Way::as_drawn;
      return promise.size() > 1 ? "way" : "";
    case 1:
      leg.share *= 0.3;
      return "share";
    case 2:
      leg.share = std::nan("");
      return "share not a number";
    case 3:
      leg.span.from += units::Metres{1};
      leg.span.to += units::Metres{1};
      return "shifted";
    case 4:
      leg.trail = "Nowhere";
      return "trail";
    case 5:
      leg.entry.seconds += 40'000;  // the report has expired by then
      return "entry";
    case 6:
      leg.speed = dice.below(2) == 0 ? leg.speed * 2.5 : units::MetresPerSecond{std::nan("")};
      return "speed";
    case 7:
      leg.time = dice.below(2) == 0 ? leg.time * 0.97 : units::Seconds{std::nan("")};
      return "time";
    case 8:
      leg.fuel = dice.below(2) == 0 ? leg.fuel * 0.8 : units::Litres{std::nan("")};
      return "fuel";
    default:
      promise.insert(promise.begin(), promise.back());
      return "twice";
  }
}

struct Tally {
  std::size_t routes = 0;
  std::size_t places = 0;
  std::map<std::string, std::size_t> spoilt;  ///< by what was spoilt
  std::size_t none = 0;
};

/// The whole of every limit may be used, so that more is driven and more can go wrong.
passage::Scene without_margin(passage::Scene scene) {
  scene.rules.allowed_share = 1.0;
  for (passage::DriverLevel& level : scene.rules.driver_levels) {
    level.allowed_share = 1.0;
  }
  return scene;
}

class Trial {
 public:
  Trial(std::uint32_t seed, rig::Rig of_rig)
      : dice_{seed},
        scene_{without_margin(scene_of({.ground = random_ground(dice_)}, random_trails(dice_)))},
        rig_{std::move(of_rig)},
        snow_{random_report(dice_)},
        judge_{scene_, rig_, snow_} {}

  void ask_and_distrust(search::Preference prefer, Tally& tally) {
    search::RouteQuestion question;
    question.prefer = prefer;
    question.depart = mid_morning();
    question.permitted_by = "N. Warden";
    const std::size_t from = dice_.below(6);
    question.stations = {from, (from + 1 + dice_.below(5)) % 6};
    const auto answer = search::find_routes(scene_.network, judge_, question);
    if (std::holds_alternative<search::NoRoute>(answer)) {
      ++tally.none;
      return;
    }
    for (const search::Route& route : std::get<std::vector<search::Route>>(answer)) {
      ++tally.routes;
      distrust(promise_of(route, scene_.network, question), tally);
    }
  }

 private:
  void distrust(const std::vector<PromisedLeg>& promise, Tally& tally) {
    const audit::Rewalk walked = audit::rewalk(scene_, rig_, snow_, promise);
    for (const audit::Discrepancy& one : walked.discrepancies) {
      CHECK_MESSAGE(false, promise[one.leg].trail << ": " << one.what);
    }
    tally.places += walked.places_judged;
    std::vector<PromisedLeg> worse = promise;
    const std::string what = spoil(dice_, worse);
    if (!what.empty()) {
      CAPTURE(what);
      ++tally.spoilt[what];
      CHECK_FALSE(audit::rewalk(scene_, rig_, snow_, worse).discrepancies.empty());
    }
  }

  Dice dice_;
  passage::Scene scene_;
  rig::Rig rig_;
  snow::ReportedSnow snow_;
  passage::Judge judge_;
};

}  // namespace

TEST_CASE("every route found holds when it is walked again, and none holds once it is spoilt") {
  Tally tally;
  for (std::uint32_t seed = 1; seed <= 24; ++seed) {
    CAPTURE(seed);
    Trial trial{seed, seed % 2 == 0 ? towing_rig() : solo_rig()};
    for (const auto prefer : {search::Preference::safest, search::Preference::quickest,
                              search::Preference::least_fuel}) {
      trial.ask_and_distrust(prefer, tally);
    }
  }
  std::string spoilt;
  for (const auto& [what, times] : tally.spoilt) {
    spoilt += ", " + std::to_string(times) + " x " + what;
  }
  MESSAGE(tally.routes << " routes, " << tally.places << " places, " << tally.none
                       << " without a way; spoilt" << spoilt);
  CHECK(tally.routes > 30);
  for (const char* what : {"way", "share", "speed", "time", "fuel", "entry", "twice"}) {
    CAPTURE(what);
    CHECK(tally.spoilt[what] >= 5);
  }
}
