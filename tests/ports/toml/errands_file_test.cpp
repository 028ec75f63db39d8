// A list of errands: what is read, and what a person is told of each way to break it.
#include "ports/toml/errands_file.h"

#include <doctest/doctest.h>

#include "examples.h"

namespace rimehaul::ports::toml {

namespace {

using testing::Breakage;
using testing::changed;
using testing::TestFolder;
using testing::told_of;

const std::string kErrands =
    "schema = 1\n"
    "start = \"Cable House\"\n"
    "end = \"Fell Lodge\"\n"
    "[[errand]]\n"
    "what = \"gas\"\n"
    "from = \"Cable House\"\n"
    "to = \"Tarn Hut\"\n"
    "load_kg = 60.5\n"
    "towed_load_kg = 20\n"
    "[[errand]]\n"
    "what = \"a guest\"\n"
    "from = \"Tarn Hut\"\n"
    "to = \"Fell Lodge\"\n"
    "passengers = 1\n";

const std::vector<Breakage> kBroken{
    {"what = \"gas\"\n",
     "",
     {"errands.toml: line 4 (errand.what): is missing; add it: text in quotes"}},
    {"to = \"Tarn Hut\"",
     "to = \"Cable House\"",
     {"errands.toml: line 7 (errand.to): is where it is taken from; name the station that it is "
      "for"}},
    {"load_kg = 60.5",
     "load_kg = -1",
     {"errands.toml: line 8 (errand.load_kg): -1 is out of range; write a number from 0 to "
      "10000"}},
    {"towed_load_kg = 20",
     "towed_load_kg = nan",
     {"errands.toml: line 9 (errand.towed_load_kg): nan is out of range; write a number from 0 to "
      "10000"}},
    {"passengers = 1",
     "passengers = 21",
     {"errands.toml: line 14 (errand.passengers): 21 is out of range; write a whole number from 0 "
      "to 20"}},
    {"passengers = 1\n",
     "",
     {"errands.toml: line 10 (errand): takes nothing along; say load_kg, towed_load_kg or "
      "passengers"}},
    {"passengers = 1",
     "passengers = 0",
     {"errands.toml: line 10 (errand): takes nothing along; say load_kg, towed_load_kg or "
      "passengers"}},
    {"passengers = 1",
     "passengers = 1\nheight_m = 2",
     {"errands.toml: line 15 (errand.height_m): is no key of this table; remove it; "
      "docs/site-format.md names the keys"}},
};

}  // namespace

TEST_CASE("errands are read with what they take from where to where") {
  const TestFolder folder;
  const auto [round, faults] = read_errands(folder.with("errands.toml", kErrands));
  CHECK(faults.empty());
  CHECK(round.start == "Cable House");
  CHECK(round.end == "Fell Lodge");
  REQUIRE(round.errands.size() == 2);
  CHECK(round.errands[0].what == "gas");
  CHECK(round.errands[0].from == "Cable House");
  CHECK(round.errands[0].to == "Tarn Hut");
  CHECK(round.errands[0].bed == units::Kilograms{60.5});
  CHECK(round.errands[0].towed == units::Kilograms{20});
  CHECK(round.errands[0].passengers == 0);
  CHECK(round.errands[1].bed == units::Kilograms{0});
  CHECK(round.errands[1].passengers == 1);
}

TEST_CASE("an errand with a fault is left out and told, the others stay") {
  const TestFolder folder;
  for (const Breakage& broken : kBroken) {
    CAPTURE(broken.to);
    const auto file = folder.with("errands.toml", changed(kErrands, broken.from, broken.to));
    CHECK(told_of([&] { return read_errands(file); }) == broken.lines);
    CHECK(read_errands(file).data.errands.size() == 1);
  }
}

TEST_CASE("a list without a start or without errands is told so; without an end it has none") {
  const TestFolder folder;
  const auto without = [&](const std::string& line) {
    return folder.with("errands.toml", changed(kErrands, line, ""));
  };
  CHECK(
      told_of([&] { return read_errands(without("start = \"Cable House\"\n")); }) ==
      std::vector<std::string>{"errands.toml: line 1 (start): is missing; add it: text in quotes"});
  CHECK(read_errands(without("end = \"Fell Lodge\"\n")).faults.empty());
  CHECK(read_errands(without("end = \"Fell Lodge\"\n")).data.end.empty());
  CHECK(told_of([&] {
          return read_errands(folder.with("errands.toml", "schema = 1\nstart = \"Base\"\n"));
        }) ==
        std::vector<std::string>{"errands.toml: line 1 (errand): there is none; write what is to "
                                 "be taken where under [[errand]]"});
}

}  // namespace rimehaul::ports::toml
