// The verb `errands` on the demo site, each of its trips against what `route` answers for it.
#include <doctest/doctest.h>

#include <cmath>
#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "app/tiny_site.h"

namespace rimehaul::app {

namespace {

using nlohmann::json;
using testing::Ran;
using testing::run_command;
using testing::TinySite;

const std::string kDemo{RIMEHAUL_ROOT "/routes/marrowfell"};

std::vector<std::string> in_dry_snow(std::vector<std::string> words) {
  const std::vector<std::string> more{
      "--rig",      "Broadfoot", "--snow", "dry", "--visibility", "400",
      "--bulletin", "2",         "--wind", "18",  "--now",        "2026-02-01T08:30:00-10:00"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}

Ran errands(const std::vector<std::string>& more) {
  std::vector<std::string> words{"errands", kDemo, "--list", kDemo + "/errands.toml"};
  words.insert(words.end(), more.begin(), more.end());
  return run_command(in_dry_snow(words));
}

json route_for(const json& trip) {
  const Ran ran = run_command(in_dry_snow({"route", kDemo, "--from", trip["legs"].front()["from"],
                                           "--to", trip["legs"].back()["to"], "--load",
                                           std::to_string(trip["rig"]["bed_kg"].get<double>()),
                                           "--depart", trip["depart_utc"], "--json", "-"}));
  REQUIRE(ran.status == Status::yes);
  return json::parse(ran.out)["routes"][0];
}

/// A small site with a list of errands.
struct Site {
  TinySite site;

  [[nodiscard]] Ran ran(const std::string& list, const std::vector<std::string>& more = {}) const {
    site.write("errands.toml", list);
    std::vector<std::string> words{"errands", site.folder(), "--list", site.path("errands.toml"),
                                   "--rig",   "solo",        "--snow", "dry"};
    words.insert(words.end(), more.begin(), more.end());
    return run_command(words);
  }
};

std::string list_of(const std::string& errand) {
  return "schema = 1\nstart = \"Base\"\nend = \"Base\"\n[[errand]]\nwhat = \"wood\"\n" + errand;
}

}  // namespace

TEST_CASE("every trip of a round is what route gives for its load at its hour" *
          doctest::test_suite("whole demo")) {
  const Ran ran = errands({"--json", "-"});
  REQUIRE(ran.status == Status::yes);
  const json round = json::parse(ran.out);
  CHECK(round["kind"] == "round");
  REQUIRE(round["trips"].size() == 4);
  CHECK(round["calls"].size() == 5);
  double fuel = 0.0;
  for (const json& trip : round["trips"]) {
    CAPTURE(trip["title"]);
    const json route = route_for(trip);
    CHECK(route["worst_share"] == trip["worst_share"]);
    // Where hours turn on the way, route enters every leg at a whole second.
    CHECK(std::abs(route["totals"]["time_s"].get<double>() -
                   trip["totals"]["time_s"].get<double>()) <=
          static_cast<double>(trip["legs"].size()));
    REQUIRE(route["legs"].size() == trip["legs"].size());
    for (std::size_t i = 0; i < route["legs"].size(); ++i) {
      CHECK(route["legs"][i]["trail"] == trip["legs"][i]["trail"]);
      CHECK(route["legs"][i]["binding"] == trip["legs"][i]["binding"]);
    }
    fuel += trip["totals"]["fuel_l"].get<double>();
  }
  CHECK(round["fuel_l"].get<double>() == doctest::Approx(fuel));
  // Every load of the list is on the bed between its two stations and nowhere else.
  std::vector<double> aboard;
  for (const json& call : round["calls"]) {
    if (call.contains("aboard")) {
      aboard.push_back(call["aboard"]["bed_kg"].get<double>());
    }
  }
  double on_bed = 0.0;
  for (std::size_t i = 0; i < aboard.size(); ++i) {
    for (const json& errand : round["calls"][i]["taken_on"]) {
      on_bed += errand["load_kg"].get<double>();
    }
    for (const json& errand : round["calls"][i]["put_off"]) {
      on_bed -= errand["load_kg"].get<double>();
    }
    CHECK(aboard[i] == doctest::Approx(on_bed));
  }
}

TEST_CASE("the cards of all trips are printed with their records, and none is told twice") {
  const Site site;
  const std::string into = site.site.path("trips");
  const Ran ran =
      site.ran(list_of("from = \"Base\"\nto = \"Top\"\nload_kg = 40\n"), {"--into", into});
  REQUIRE(ran.status == Status::yes);
  for (const char* name : {"trip-1.pdf", "trip-2.pdf"}) {
    CHECK(site.site.text(std::string{"trips/"} + name).starts_with("%PDF-"));
    const json record = json::parse(site.site.text(std::string{"trips/"} + name + ".record.json"));
    CHECK(record["kind"] == "route_card");
  }
  CHECK_FALSE(std::filesystem::exists(into + "/trip-3.pdf"));
  // The second begins with what the first has left in the tank.
  const auto fuel = [&](const char* name) {
    return json::parse(site.site.text(name))["rig"]["fuel_l"].get<double>();
  };
  CHECK(fuel("trips/trip-2.pdf.record.json") < fuel("trips/trip-1.pdf.record.json"));
}

TEST_CASE("a round that cannot be driven says how far it gets and what would open the rest") {
  const Site site;
  const Ran ran = site.ran(list_of("from = \"Top\"\nto = \"Hut\"\nload_kg = 900\n"));
  CHECK(ran.status == Status::honest_no);
  CHECK(ran.out.find("NO ROUND") == 0);
  CHECK(ran.out.find("- Hut, setting out ") != std::string::npos);
  CHECK(ran.out.find("Opens by") != std::string::npos);
  CHECK(site.ran(list_of("from = \"Top\"\nto = \"Hut\"\nload_kg = 900\n"),
                 {"--into", site.site.path("no")})
            .status == Status::honest_no);
  CHECK_FALSE(std::filesystem::exists(site.site.path("no")));
}

TEST_CASE("a list that cannot be meant is told in one line: which file, where, what to do") {
  const Site site;
  const auto told = [&](const std::string& errand) {
    const Ran ran = site.ran(list_of(errand));
    CHECK(ran.status == Status::bad_input);
    CHECK(ran.out.empty());
    return ran.err;
  };
  CHECK(told("from = \"Base\"\nto = \"Topp\"\nload_kg = 1\n")
            .find("errands.toml: errand \"wood\" to: this site has no station 'Topp'; did you mean "
                  "'Top'?\n") != std::string::npos);
  CHECK(told("from = \"Base\"\nto = \"Top\"\ntowed_load_kg = 1\n")
            .find("is to be towed, and the rig solo tows nothing; write load_kg in place") !=
        std::string::npos);
  CHECK(told("from = \"Top\"\nto = \"Hut\"\nload_kg = 1\n[[errand]]\nwhat = \"ash\"\nfrom = "
             "\"Hut\"\nto = \"Top\"\nload_kg = 1\n")
            .find("called at before itself") != std::string::npos);
  CHECK(told("").find("(errand.from): is missing") != std::string::npos);
  const Ran none = run_command({"errands", site.site.folder(), "--list", site.site.path("none"),
                                "--rig", "solo", "--snow", "dry"});
  CHECK(none.status == Status::bad_input);
}

TEST_CASE("cards of trips go over no file that the command reads") {
  const Site site;
  site.site.write("trip-1.pdf", "mine");
  site.site.change("site.toml", {"snow.toml", "trip-1.pdf"});
  const Ran ran = site.ran(list_of("from = \"Base\"\nto = \"Top\"\nload_kg = 1\n"),
                           {"--into", site.site.folder()});
  CHECK(ran.status == Status::wrong_usage);
  CHECK(ran.err.find("trip-1.pdf, which this command reads") != std::string::npos);
  CHECK(site.site.text("trip-1.pdf") == "mine");
}

}  // namespace rimehaul::app
