// Cards of the demo site as they are printed: one sheet up to twelve legs, and links that lead
// there.
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <vector>

#include "app/tiny_site.h"
#include "app/workplace.h"
#include "ports/cairo/read_back.h"

namespace rimehaul::app {
namespace {

using nlohmann::json;
using testing::pages_of;
using testing::Ran;
using testing::run_command;
using testing::smallest_letters;

/// A card, and how many legs it has.
struct Drawn {
  int legs = 0;  ///< 0: there is no such route
  std::string bytes;
};

Drawn card_past(const std::vector<std::string>& stations) {
  std::vector<std::string> words{"route",          "routes/marrowfell",
                                 "--rig",          "Broadfoot",
                                 "--load",         "100",
                                 "--snow",         "moist",
                                 "--visibility",   "400",
                                 "--bulletin",     "2",
                                 "--wind",         "18",
                                 "--now",          "2026-02-01T17:00:00Z",
                                 "--json",         "-",
                                 "--card",         "card.pdf",
                                 "--permitted-by", "Demo Planner"};
  for (std::size_t i = 0; i < stations.size(); ++i) {
    const bool is_end = i + 1 == stations.size();
    words.emplace_back(i == 0 ? "--from" : (is_end ? "--to" : "--via"));
    words.push_back(stations[i]);
  }
  const Ran ran = run_command(words);
  if (ran.status != Status::yes) {
    return {};
  }
  std::ifstream card{"card.pdf", std::ios::binary};
  return {static_cast<int>(json::parse(ran.out).at("routes").at(0).at("legs").size()),
          {std::istreambuf_iterator<char>{card}, std::istreambuf_iterator<char>{}}};
}

std::vector<std::string> demo_stations() {
  std::ifstream file{"routes/marrowfell/stations.geojson"};
  const json stations = json::parse(file);
  std::vector<std::string> names;
  for (const json& feature : stations.at("features")) {
    names.push_back(feature.at("properties").at("name"));
  }
  return names;
}

TEST_CASE("the card of a way from the top, and of one from the far hut, is one sheet" *
          doctest::test_suite("whole demo")) {
  const testing::Workplace workplace;
  int ways = 0;
  for (const char* const from : {"Crow Top", "Gill Hut"}) {
    for (const std::string& to : demo_stations()) {
      CAPTURE(from);
      CAPTURE(to);
      const Drawn card = from == to ? Drawn{} : card_past({from, to});
      if (card.legs > 0) {
        ++ways;
        CHECK(card.legs <= 12);
        CHECK(pages_of(card.bytes) == 2);
      }
    }
  }
  CHECK(ways >= 12);
}

TEST_CASE(
    "so are the cards of longer ways past other stations, up to twelve legs; one more takes "
    "another page" *
    doctest::test_suite("whole demo")) {
  const testing::Workplace workplace;
  std::set<int> legs;
  for (const std::vector<std::string>& stations :
       std::vector<std::vector<std::string>>{{"Crow Top", "Cable House", "Gill Hut"},
                                             {"Crow Top", "Midway", "Fell Lodge"},
                                             {"Moss Refuge", "Midway", "Cable House", "Gill Hut"},
                                             {"Midway", "Tarn Hut", "Gill Hut"},
                                             {"Moss Refuge", "Gill Hut", "Midway"},
                                             {"Crow Top", "Drum Yard", "Gill Hut", "Midway"},
                                             {"Midway", "Gill Hut", "Midway"},
                                             {"Moss Refuge", "Sledge Shed", "Midway"},
                                             {"Crow Top", "Midway", "Gill Hut", "Cable House"}}) {
    const Drawn card = card_past(stations);
    CAPTURE(stations.front());
    CAPTURE(card.legs);
    REQUIRE(card.legs >= 6);
    CHECK(pages_of(card.bytes) == (card.legs <= 12 ? 2 : 3));
    CHECK(smallest_letters(card.bytes) >= 8.0);
    legs.insert(card.legs);
  }
  CHECK(legs.contains(12));
}

TEST_CASE("where no way is open, the nearest is none over ground without heights") {
  const testing::Workplace workplace;
  const Ran ran = run_command({"route", "routes/marrowfell", "--rig", "Broadfoot", "--load", "100",
                               "--snow-report", "routes/marrowfell/snow-noon.toml", "--depart",
                               "12:00", "--from", "Midway", "--to", "Gill Hut", "--now",
                               "2026-02-01T08:30:00-10:00", "--json", "-"});
  CAPTURE(ran.err);
  REQUIRE(ran.status == Status::honest_no);
  const json answer = json::parse(ran.out);
  const json& nearest = answer["nearest_way"]["trails"];
  CHECK(std::ranges::find(nearest, "Void Cut") == nearest.end());
  CHECK(answer["other_ways"][0]["trails"] ==
        json::parse(R"(["Lodge Traverse", "Tarn Loop", "Tarn Drop"])"));
  // The report tells the bulletin's level, so nobody is asked for it again.
  CHECK(ran.out.find("--bulletin") == std::string::npos);
}

/// The value of an object of a PDF as qpdf tells it, followed where it is only named.
json value_of(const json& objects, const json& object) {
  return object.is_string() && objects.contains("obj:" + object.get<std::string>())
             ? objects.at("obj:" + object.get<std::string>()).at("value")
             : object;
}

/// The object of the page of each named place.
void add_places(const json& objects, const json& tree, std::map<std::string, std::string>& places) {
  const json node = value_of(objects, tree);
  for (const json& kid : node.value("/Kids", json::array())) {
    add_places(objects, kid, places);
  }
  const json names = node.value("/Names", json::array());
  for (std::size_t i = 0; i + 1 < names.size(); i += 2) {
    places[names[i]] = value_of(objects, names[i + 1]).at(0);
  }
}

TEST_CASE("links lead from a leg's row in front to its note behind and back, and none to nowhere") {
  const testing::Workplace workplace;
  const Drawn card = card_past({"Crow Top", "Midway", "Fell Lodge"});
  REQUIRE(card.legs == 12);
  const json whole = json::parse(testing::told_of(card.bytes, "qpdf --json=2 2>/dev/null"));
  const json& objects = whole.at("qpdf").at(1);
  std::vector<std::string> pages;
  for (const json& page : whole.at("pages")) {
    pages.push_back(page.at("object"));
  }
  REQUIRE(pages.size() == 2);
  std::map<std::string, std::string> places;
  const json root = value_of(objects, objects.at("trailer").at("value").at("/Root"));
  add_places(objects, value_of(objects, root.at("/Names")).at("/Dests"), places);
  int to_notes = 0;
  int back = 0;
  for (std::size_t i = 0; i < pages.size(); ++i) {
    const json annotations = value_of(objects, value_of(objects, pages[i]).at("/Annots"));
    for (const json& annotation : annotations) {
      const json link = value_of(objects, annotation);
      const std::string name = link.at("/Dest");
      CAPTURE(name);
      CHECK(link.at("/Subtype") == "/Link");
      CHECK(link.contains("/StructParent"));  // readers by ear meet it too
      REQUIRE(places.contains(name));
      const bool is_note = name.starts_with("u:note ");
      CHECK(places.at(name) == pages[is_note ? 1 : 0]);
      CHECK(!(is_note && i == 1));
      to_notes += is_note ? 1 : 0;
      back += i == 1 && name.starts_with("u:leg ") ? 1 : 0;
    }
  }
  CHECK(to_notes >= 3);
  CHECK(back >= 3);
}

}  // namespace
}  // namespace rimehaul::app
