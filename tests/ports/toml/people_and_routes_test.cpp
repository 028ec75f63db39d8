// people.toml and routes.toml: what is read, and what a person is told of each way to break them.
#include <doctest/doctest.h>

#include "examples.h"
#include "ports/toml/people_file.h"
#include "ports/toml/routes_file.h"

namespace rimehaul::ports::toml {

namespace {

using testing::Breakage;
using testing::changed;
using testing::TestFolder;
using testing::told_of;

const std::string kPeople =
    "schema = 1\n"
    "[[person]]\n"
    "name = \"P. Example\"\n"
    "roles = [\"planner\", \"driver\"]\n"
    "[[person]]\n"
    "name = \"O. Example\"\n"
    "roles = [\"officer\"]\n";

const std::string kRoutes =
    "schema = 1\n"
    "[[route]]\n"
    "name = \"Supper run\"\n"
    "stations = [\"Cable House\", \"Midway\", \"Fell Lodge\"]\n"
    "rig = \"Broadfoot with sled\"\n"
    "load_kg = 40\n"
    "towed_load_kg = 60.5\n"
    "passengers = 1\n"
    "accompanied = true\n"
    "[[route]]\n"
    "name = \"Back\"\n"
    "stations = [\"Fell Lodge\", \"Cable House\"]\n"
    "rig = \"Broadfoot\"\n";

const std::vector<Breakage> kBrokenPeople{
    {"name = \"P. Example\"\n",
     "",
     {"people.toml: line 2 (person.name): is missing; add it: text in quotes"}},
    {"\"driver\"",
     "\"rider\"",
     {"people.toml: line 4 (person.roles): \"rider\" is no role; write planner, officer or "
      "driver"}},
    {"roles = [\"officer\"]",
     "roles = []",
     {"people.toml: line 7 (person.roles): is an empty list; name at least one"}},
    {"O. Example",
     "P. Example",
     {"people.toml: line 6 (person.name): is there twice; list each person once, with all roles"}},
    {"[\"officer\"]",
     "\"officer\"",
     {"people.toml: line 7 (person.roles): is text; write a list of texts"}},
    {"roles = [\"officer\"]",
     "roles = [\"officer\"]\npassword = \"x\"",
     {"people.toml: line 8 (person.password): is no key of this table; remove it; "
      "docs/site-format.md names the keys"}},
};

const std::vector<Breakage> kBrokenRoutes{
    {"stations = [\"Fell Lodge\", \"Cable House\"]",
     "stations = [\"Fell Lodge\"]",
     {"routes.toml: line 12 (route.stations): is a single station; name two or more, in driving "
      "order"}},
    {"\"Midway\"",
     "\"Cable House\"",
     {"routes.toml: line 4 (route.stations): \"Cable House\" follows itself; take one of the two "
      "out"}},
    {"name = \"Back\"",
     "name = \"Supper run\"",
     {"routes.toml: line 11 (route.name): is there twice; give each route a name of its own"}},
    {"load_kg = 40",
     "load_kg = -1",
     {"routes.toml: line 6 (route.load_kg): -1 is out of range; write a number from 0 to 10000"}},
    {"passengers = 1",
     "passengers = 1.5",
     {"routes.toml: line 8 (route.passengers): is a number; write a whole number from 0 to 20"}},
    {"rig = \"Broadfoot\"\n",
     "",
     {"routes.toml: line 10 (route.rig): is missing; add it: text in quotes"}},
};

}  // namespace

TEST_CASE("people are read with every role that they have") {
  const TestFolder folder;
  const auto [people, faults] = read_people(folder.with("people.toml", kPeople));
  CHECK(faults.empty());
  REQUIRE(people.size() == 2);
  CHECK(people[0].name == "P. Example");
  CHECK(people[0].has(day::Role::planner));
  CHECK(people[0].has(day::Role::driver));
  CHECK_FALSE(people[0].has(day::Role::officer));
}

TEST_CASE("with any fault in the list of people nobody decides") {
  const TestFolder folder;
  for (const Breakage& broken : kBrokenPeople) {
    CAPTURE(broken.to);
    const auto file = folder.with("people.toml", changed(kPeople, broken.from, broken.to));
    CHECK(told_of([&] { return read_people(file); }) == broken.lines);
    CHECK(read_people(file).data.empty());
  }
  CHECK(told_of([&] { return read_people(folder.with("people.toml", "schema = 1\n")); }) ==
        std::vector<std::string>{
            "people.toml: line 1 (person): there is nobody; list people under [[person]]"});
}

TEST_CASE("named routes are read with their stations, rig and load; what is not said is nothing") {
  const TestFolder folder;
  const auto [routes, faults] = read_routes(folder.with("routes.toml", kRoutes));
  CHECK(faults.empty());
  REQUIRE(routes.size() == 2);
  CHECK(routes[0].stations == std::vector<std::string>{"Cable House", "Midway", "Fell Lodge"});
  CHECK(routes[0].rig == "Broadfoot with sled");
  CHECK(routes[0].bed == units::Kilograms{40});
  CHECK(routes[0].towed == units::Kilograms{60.5});
  CHECK(routes[0].passengers == 1);
  CHECK(routes[0].accompanied);
  CHECK(routes[1].bed == units::Kilograms{0});
  CHECK_FALSE(routes[1].accompanied);
}

TEST_CASE("a named route with a fault is left out and told, the others stay") {
  const TestFolder folder;
  for (const Breakage& broken : kBrokenRoutes) {
    CAPTURE(broken.to);
    const auto file = folder.with("routes.toml", changed(kRoutes, broken.from, broken.to));
    CHECK(told_of([&] { return read_routes(file); }) == broken.lines);
    CHECK(read_routes(file).data.size() == 1);
  }
  CHECK(told_of([&] { return read_routes(folder.with("routes.toml", "schema = 1\n")); }) ==
        std::vector<std::string>{
            "routes.toml: line 1 (route): there is none; write the site's routes under [[route]]"});
}

}  // namespace rimehaul::ports::toml
