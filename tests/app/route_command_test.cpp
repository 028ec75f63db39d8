#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "app/tiny_site.h"

namespace rimehaul::app {
namespace {

using nlohmann::json;
using testing::Ran;
using testing::route_words;
using testing::run_command;
using testing::TinySite;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

TEST_CASE("an open way ends with 0 and prints its card, and nothing on standard error") {
  const TinySite site;
  const Ran ran = run_command(route_words(site));
  CAPTURE(ran.err);
  CHECK(ran.status == Status::yes);
  CHECK(ran.err.empty());
  for (const char* part : {"ROUTE CARD", "Base to Top", "OPEN", "Low Way", "TURN BACK",
                           "BEFORE STARTING", "PARKING", "not permission", "SHA-256", "GDAL",
                           "OpenSSL 3.", "toml++ 3.", "nlohmann-json 3.", "standard deviation"}) {
    CAPTURE(part);
    CHECK(says(ran.out, part));
  }
}

TEST_CASE("the same question at the same --now gives the same bytes, text and JSON") {
  const TinySite site;
  const auto words = route_words(site, {"--now", "2026-02-01T10:00:00Z"});
  CHECK(run_command(words).out == run_command(words).out);
  const auto as_json = route_words(site, {"--now", "2026-02-01T10:00:00Z", "--json", "-"});
  const std::string bytes = run_command(as_json).out;
  CHECK(bytes == run_command(as_json).out);
  CHECK(json::parse(bytes)["routes"][0]["made_utc"] == "2026-02-01T10:00:00Z");
}

TEST_CASE("JSON and GPX go to the files named, and no unfinished file is left") {
  const TinySite site;
  const Ran ran = run_command(
      route_words(site, {"--json", site.path("card.json"), "--gpx", site.path("card.gpx")}));
  CHECK(ran.status == Status::yes);
  CHECK(says(ran.out, "ROUTE CARD"));
  const json answer = json::parse(site.text("card.json"));
  CHECK(answer["kind"] == "routes");
  CHECK(answer["routes"][0]["legs"][0]["trail"] == "Low Way");
  CHECK(answer["routes"][0]["inputs"].size() >= 7);
  const std::string gpx = site.text("card.gpx");
  CHECK(says(gpx, "<rte>"));
  CHECK(says(gpx, "<trk>"));
  CHECK(says(gpx, "above Tiny datum"));
  for (const auto& entry : std::filesystem::directory_iterator{site.folder()}) {
    CHECK_FALSE(says(entry.path().filename().string(), "unfinished"));
  }
}

TEST_CASE("a mark on the way stands on the card, among the radio calls, and in the GPX") {
  const TinySite site;
  site.change("site.toml", {"stations = [", "marks = [\"marks.geojson\"]\nstations = ["});
  site.write("marks.geojson",
             R"({"type":"FeatureCollection","crs":{"type":"name","properties":{"name":)"
             R"("urn:ogc:def:crs:EPSG::32605"}},"features":[{"type":"Feature","properties":)"
             R"({"name":"Half Way","kind":"check_in","trail":"Low Way"},"geometry":)"
             R"({"type":"Point","coordinates":[499850,5099815]}}]})");
  const Ran ran = run_command(route_words(site, {"--gpx", site.path("card.gpx")}));
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::yes);
  // 150 m east and 15 m north of the start: 150.75 m along.
  CHECK(says(ran.out, "leg 1 at 151 m: call in at Half Way"));
  CHECK(says(site.text("card.gpx"), "radio check-in Half Way: call in"));
}

TEST_CASE("a file that cannot be written ends with 3 and says which") {
  const TinySite site;
  const Ran ran = run_command(route_words(site, {"--json", site.path("nowhere/card.json")}));
  CHECK(ran.status == Status::bad_input);
  CHECK(says(ran.err, "nowhere/card.json"));
}

TEST_CASE("--via is passed, and other ways are shown when asked for") {
  const TinySite site;
  const Ran via = run_command(route_words(site, {"--via", "Hut", "--json", "-"}));
  CAPTURE(via.err);
  REQUIRE(via.status == Status::yes);
  const json legs = json::parse(via.out)["routes"][0]["legs"];
  CHECK(std::any_of(legs.begin(), legs.end(), [](const json& leg) { return leg["to"] == "Hut"; }));
  const Ran more = run_command(route_words(site, {"--alternatives", "3", "--json", "-"}));
  CHECK(json::parse(more.out)["routes"].size() == 2);
  CHECK(says(run_command(route_words(site, {"--alternatives", "3"})).out, "ANOTHER WAY (1)"));
}

TEST_CASE("no way ends with 1 and says which leg, which check, and what would open it") {
  const TinySite site;
  site.change("rules.toml", {"most_wind_kmh = 60", "most_wind_kmh = 10"});
  const Ran ran = run_command(route_words(site));
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "NO ROUTE"));
  CHECK(says(ran.out, "Low Way"));
  CHECK(says(ran.out, "wind"));
  const Ran as_json = run_command(route_words(site, {"--json", "-"}));
  CHECK(as_json.status == Status::honest_no);
  const json answer = json::parse(as_json.out);
  CHECK(answer["kind"] == "no_route");
  CHECK(answer["verdict"] == "closed");
  CHECK(answer["obstacles"][0]["finding"]["check"] == "wind");
}

TEST_CASE("a bed too heavy ends with 1, restricted, and the load told opens the way") {
  const TinySite site;
  std::vector<std::string> words{"route",  site.folder(), "--rig", "solo", "--snow", "dry",
                                 "--from", "Base",        "--to",  "Top",  "--load", "240"};
  const Ran ran = run_command(words);
  CAPTURE(ran.out);
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "restricted\n"));
  CHECK(says(ran.out, "Opens by  bed load from 0 kg to 175 kg\n"));
  words.insert(words.end(), {"--json", "-"});
  const json answer = json::parse(run_command(words).out);
  CHECK(answer["verdict"] == "restricted");
  CHECK(answer["load_kg"]["bed"] == json::parse(R"([{"from_kg":0.0,"to_kg":175.0}])"));
  CHECK(answer["obstacles"][0]["verdict"] == "restricted");
  words[11] = "175";
  CHECK(run_command(words).status == Status::yes);
  words[11] = "176";
  CHECK(run_command(words).status == Status::honest_no);
}

TEST_CASE("what nobody said of the weather closes, and the refusal names the option that tells") {
  const TinySite site;
  site.change("snow.toml", {"visibility_m = 2000\n", ""});
  const Ran closed = run_command(route_words(site));
  CHECK(closed.status == Status::honest_no);
  CHECK(says(closed.out, "--visibility"));
  CHECK(run_command(route_words(site, {"--visibility", "200"})).status == Status::yes);
}

TEST_CASE("the site's weather counts while its report holds, and not a minute longer") {
  const TinySite site;
  CHECK(run_command(route_words(site, {"--depart", "13:55"})).status == Status::yes);
  // The way takes some minutes, and the report runs out at 14:00.
  const Ran late = run_command(route_words(site, {"--depart", "14:00"}));
  CHECK(late.status == Status::honest_no);
  const Ran early = run_command(route_words(site, {"--depart", "2026-02-01T05:59:59Z"}));
  CHECK(early.status == Status::honest_no);
}

TEST_CASE("a snow report is judged by, is among the inputs, and closes when it has run out") {
  const TinySite site;
  std::vector<std::string> words{"route",  site.folder(), "--rig", "solo", "--load", "100",
                                 "--from", "Base",        "--to",  "Top",  "--json", "-"};
  const Ran own = run_command(words);
  CHECK(own.status == Status::yes);
  words.insert(words.end(), {"--snow-report", site.path("snow.toml")});
  const Ran given = run_command(words);
  CAPTURE(given.err);
  REQUIRE(given.status == Status::yes);
  const json card = json::parse(given.out)["routes"][0];
  CHECK(says(card["snow"]["told_by"].get<std::string>(), "A. Example"));
  const auto reports = std::ranges::count_if(
      card["inputs"], [](const json& input) { return input["what"] == "snow"; });
  CHECK(reports == 1);
  words.insert(words.end(), {"--depart", "2026-02-02T09:00:00Z"});
  CHECK(run_command(words).status == Status::honest_no);
}

TEST_CASE("too little fuel for the way and the reserve is an honest no") {
  const TinySite site;
  const Ran ran = run_command(route_words(site, {"--fuel", "13"}));
  CHECK(ran.status == Status::honest_no);
  CHECK(says(ran.out, "fuel aboard 13.0 L"));
}

audit::Rewalk finds_fault(const passage::Scene& /*scene*/, const rig::Rig& /*rig*/,
                          const snow::SnowAt& /*snow*/,
                          const std::vector<audit::PromisedLeg>& /*promise*/) {
  return {.discrepancies = {{0, "climb traction 80 % against 60 % promised"}},
          .worst_share = 0.8,
          .places_judged = 10};
}

audit::Rewalk judges_nothing(const passage::Scene& /*scene*/, const rig::Rig& /*rig*/,
                             const snow::SnowAt& /*snow*/,
                             const std::vector<audit::PromisedLeg>& /*promise*/) {
  return {};
}

TEST_CASE("a route that is worse when walked again is withheld: 4, no card, no file") {
  const TinySite site;
  const auto words =
      route_words(site, {"--json", site.path("card.json"), "--gpx", site.path("card.gpx")});
  for (const audit::WalkAgain rewalk : {&finds_fault, &judges_nothing}) {
    const Ran ran = run_command(words, rewalk);
    CHECK(ran.status == Status::our_fault);
    CHECK(ran.out.empty());
    CHECK_FALSE(std::filesystem::exists(site.path("card.json")));
    CHECK_FALSE(std::filesystem::exists(site.path("card.gpx")));
  }
  CHECK(says(run_command(words, finds_fault).err, "climb traction 80 % against 60 % promised"));
}

}  // namespace
}  // namespace rimehaul::app
