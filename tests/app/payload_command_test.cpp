// The verb `payload` from the command line, against what `route` answers for the same loads.
#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <string>

#include "app/tiny_site.h"

namespace rimehaul::app {

namespace {

using testing::Ran;
using testing::run_command;

const std::string kDemo{RIMEHAUL_ROOT "/routes/marrowfell"};

struct Loads {
  std::string bed;
  std::string towed;
};

Ran ask(const std::string& verb, const Loads& loads, const std::vector<std::string>& more) {
  std::vector<std::string> words{verb,           kDemo,
                                 "--rig",        "Broadfoot with sled",
                                 "--load",       loads.bed,
                                 "--towed-load", loads.towed,
                                 "--snow",       "moist",
                                 "--visibility", "400",
                                 "--bulletin",   "2",
                                 "--wind",       "18",
                                 "--now",        "2026-02-01T08:30:00-10:00",
                                 "--from",       "Cable House",
                                 "--to",         "Fell Lodge"};
  words.insert(words.end(), more.begin(), more.end());
  return run_command(words);
}

std::string kilograms(const nlohmann::json& load) {
  return std::to_string(load.get<int>());
}

}  // namespace

TEST_CASE("a load inside what payload tells is a route, and one kilogram past its end is none") {
  const Ran told = ask("payload", {"40", "60"}, {"--json", "-"});
  REQUIRE(told.status == Status::yes);
  const auto answer = nlohmann::json::parse(told.out);
  CHECK(answer["kind"] == "payload");
  CHECK(answer["verdict_asked"] == "open");
  REQUIRE(answer["bed"].size() == 1);
  REQUIRE(answer["towed"].size() == 1);
  const auto& bed = answer["bed"][0]["to"];
  const auto& towed = answer["towed"][0]["to"];
  CHECK(ask("route", {kilograms(bed["load_kg"]), "60"}, {}).status == Status::yes);
  CHECK(ask("route", {std::to_string(bed["load_kg"].get<int>() + 1), "60"}, {}).status ==
        Status::honest_no);
  CHECK(ask("route", {"40", kilograms(towed["load_kg"])}, {}).status == Status::yes);
  CHECK(ask("route", {"40", std::to_string(towed["load_kg"].get<int>() + 1)}, {}).status ==
        Status::honest_no);
  CHECK(towed["one_kg_beyond"]["at"].contains("finding"));
  CHECK(bed["one_kg_beyond"]["at"]["finding"]["share"].get<double>() >
        answer["allowed_share"].get<double>());
  CHECK(towed["binds"]["finding"]["share"].get<double>() <= answer["allowed_share"].get<double>());
  CHECK(answer["pairs"].size() > 20);
  CHECK(answer["places_rewalked"].get<int>() > 1000);
}

TEST_CASE(
    "what is too heavy as asked is closed, and the loads that are open are told all the same") {
  const Ran told = ask("payload", {"40", "190"}, {});
  CHECK(told.status == Status::yes);
  CHECK(told.out.find("CLOSED      ") != std::string::npos);
  CHECK(told.out.find("as none is open") != std::string::npos);
  CHECK(told.out.find("OPEN from 0 kg to ") != std::string::npos);
  CHECK(told.out.find("closed at ") != std::string::npos);
}

TEST_CASE("where no load has a way, payload says why, as route does") {
  const Ran payload = ask("payload", {"40", "60"}, {"--rain", "yes"});
  const Ran route = ask("route", {"40", "60"}, {"--rain", "yes"});
  CHECK(payload.status == Status::honest_no);
  CHECK(payload.out == route.out);
}

TEST_CASE("steps are whole kilograms from 1 to 100") {
  CHECK(ask("payload", {"40", "60"}, {"--step", "0"}).status == Status::wrong_usage);
  CHECK(ask("payload", {"40", "60"}, {"--step", "101"}).status == Status::wrong_usage);
  CHECK(ask("payload", {"40", "60"}, {"--step", "100"}).status == Status::yes);
}

}  // namespace rimehaul::app
