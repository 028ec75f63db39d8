// The whole line on measured heights and GPX trails: the same verdicts however heights are stored.
#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>
#include <string>
#include <vector>

#include "app/run.h"
#include "near.h"
#include "real/real_sites.h"
#include "units/clock.h"

using nlohmann::json;
using rimehaul::app::Outside;
using rimehaul::app::Status;
using rimehaul::testing::near;
using rimehaul::testing::RealSites;

namespace {

constexpr std::array<const char*, 5> kOtherWays{"feet", "point", "south_up", "grid", "degrees"};

struct Ran {
  Status status = Status::our_fault;
  std::string out;
  std::string err;
};

Ran run_command(const std::vector<std::string>& words) {
  std::ostringstream out;
  std::ostringstream err;
  const Outside outside{
      .out = out, .err = err, .now = *rimehaul::units::parse_instant("2026-02-01T09:00:00Z")};
  Ran ran;
  ran.status = rimehaul::app::run(words, outside);
  ran.out = out.str();
  ran.err = err.str();
  return ran;
}

/// `route` from West Hut in one of the sites, with more words behind.
Ran route(const std::string& site, const std::string& to,
          const std::vector<std::string>& more = {}) {
  std::vector<std::string> words{"route",  RealSites::made().site(site),
                                 "--rig",  "solo",
                                 "--load", "0",
                                 "--snow", "dry",
                                 "--from", "West Hut",
                                 "--to",   to};
  words.insert(words.end(), more.begin(), more.end());
  return run_command(words);
}

json only_route(const Ran& ran) {
  const json answer = json::parse(ran.out);
  REQUIRE(answer.at("routes").size() == 1);
  return answer.at("routes").at(0);
}

bool says(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// How far two numbers under one path in two legs may lie apart.
void check_near(const json& one, const json& other, const std::string& path, double within) {
  INFO(path);
  const json::json_pointer pointer{path};
  const double found = other.at(pointer).get<double>();
  const double wanted = one.at(pointer).get<double>();
  INFO(found);
  INFO(wanted);
  CHECK(near(found, wanted, within));
}

}  // namespace

TEST_CASE("the real site has no fault, in whatever way its heights are stored") {
  for (const std::string name : {"metric", "feet", "point", "south_up", "grid", "degrees"}) {
    CAPTURE(name);
    const Ran ran = run_command({"check", RealSites::made().site(name)});
    INFO(ran.out);
    INFO(ran.err);
    CHECK(ran.status == Status::yes);
  }
}

TEST_CASE("trails from GPX on real heights lead to a card, with its GPX beside it") {
  const std::string gpx = RealSites::made().file("card.gpx");
  const Ran ran = route("metric", "East Hut", {"--gpx", gpx});
  INFO(ran.err);
  REQUIRE(ran.status == Status::yes);
  for (const char* part : {"ROUTE CARD", "West Hut to East Hut", "Valley Way", "Meadow Way", "OPEN",
                           "heights.tif", "not permission"}) {
    CAPTURE(part);
    CHECK(says(ran.out, part));
  }
  std::ostringstream text;
  text << std::ifstream{gpx}.rdbuf();
  CHECK(says(text.str(), "<rte>"));
  CHECK(says(text.str(), "<ele>"));
}

TEST_CASE("feet, points, south-up and ASCII grids give the legs, verdicts and angles of metres") {
  const json metric = only_route(route("metric", "East Hut", {"--json", "-"}));
  for (const std::string name : {"feet", "point", "south_up", "grid"}) {
    CAPTURE(name);
    const json other = only_route(route(name, "East Hut", {"--json", "-"}));
    REQUIRE(other.at("legs").size() == metric.at("legs").size());
    for (std::size_t index = 0; index < metric.at("legs").size(); ++index) {
      const json& wanted = metric.at("legs").at(index);
      const json& found = other.at("legs").at(index);
      for (const char* same : {"trail", "from", "to", "direction", "verdict"}) {
        CHECK(found.at(same) == wanted.at(same));
      }
      CHECK(found.at("binding").at("check") == wanted.at("binding").at("check"));
      // Heights rounded to 32 bits, in feet once more: 1e-4 m over 80 m.
      check_near(wanted, found, "/binding/share", 1e-4);
      check_near(wanted, found, "/steepest_up/up_to_deg", 1e-3);
      check_near(wanted, found, "/steepest_down/up_to_deg", 1e-3);
      check_near(wanted, found, "/steepest_across/up_to_deg", 1e-3);
      check_near(wanted, found, "/length_m", 1e-3);
      check_near(wanted, found, "/climb_m", 0.01);
    }
  }
}

TEST_CASE("heights in degrees give the same legs and verdicts, and nearly the same angles") {
  const json metric = only_route(route("metric", "East Hut", {"--json", "-"}));
  const json degrees = only_route(route("degrees", "East Hut", {"--json", "-"}));
  REQUIRE(degrees.at("legs").size() == metric.at("legs").size());
  for (std::size_t index = 0; index < metric.at("legs").size(); ++index) {
    const json& wanted = metric.at("legs").at(index);
    const json& found = degrees.at("legs").at(index);
    for (const char* same : {"trail", "from", "to", "direction", "verdict"}) {
      CHECK(found.at(same) == wanted.at(same));
    }
    // The metric set was resampled to 80 m before, which flattens what lies between its centres;
    // the warp of the program's own keeps it.
    check_near(wanted, found, "/steepest_up/up_to_deg", 2.0);
    check_near(wanted, found, "/steepest_down/up_to_deg", 2.0);
    check_near(wanted, found, "/steepest_across/up_to_deg", 2.0);
    check_near(wanted, found, "/length_m", 1e-3);
  }
}

TEST_CASE("the way over the ridge is refused in all six, and the same trail stands in the way") {
  const Ran metric = route("metric", "Ridge Hut");
  CHECK(metric.status == Status::honest_no);
  CHECK(says(metric.out, "- stopping, on Ridge Way, Middle to Ridge Hut"));
  for (const std::string name : kOtherWays) {
    CAPTURE(name);
    const Ran other = route(name, "Ridge Hut");
    CHECK(other.status == Status::honest_no);
    CHECK(says(other.out, "- stopping, on Ridge Way, Middle to Ridge Hut"));
  }
}
