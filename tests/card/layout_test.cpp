#include <doctest/doctest.h>

#include "card/layout.h"

namespace rimehaul::card {
namespace {

std::string without_breaks(const std::vector<std::string>& lines) {
  std::string all;
  for (const std::string& line : lines) {
    for (const char letter : line) {
      if (letter != ' ') {
        all += letter;
      }
    }
  }
  return all;
}

TEST_CASE("accents, wide letters and broken bytes are counted as a terminal shows them") {
  CHECK(width_of("Gill") == 4);
  CHECK(width_of("H\u00FCtte") == 5);
  CHECK(width_of("Hu\u0308tte") == 5);
  CHECK(width_of("\u96EA\u5C71") == 4);
  CHECK(width_of("\U0001F6F7") == 2);
  CHECK(width_of("a\xFF\xC3") == 3);
  CHECK(width_of("") == 0);
}

TEST_CASE("cells of a row stand under each other, and never run together") {
  CHECK(filled("H\u00FCtte", 8) == "H\u00FCtte   ");
  CHECK(filled("Gill", 5) == "Gill ");
  CHECK(filled("Gill", 4) == "Gill ");
  CHECK(set_right("H\u00FCtte", 8) == "   H\u00FCtte");
  CHECK(set_right("Gill", 4) == "Gill");
  CHECK(set_right("Gill", 3) == "Gill");
}

TEST_CASE("text is folded at spaces, exactly at the edge and not one column later") {
  CHECK(folded("one two", {7, 0}) == std::vector<std::string>{"one two"});
  CHECK(folded("one two", {6, 0}) == std::vector<std::string>{"one", "two"});
  CHECK(folded("one two three", {7, 2}) == std::vector<std::string>{"one two", "  three"});
}

TEST_CASE("a number stays on the line of its unit") {
  CHECK(folded("at most 70 % of it", {10, 0}) == std::vector<std::string>{"at most", "70 % of it"});
  CHECK(folded("in 1.67 km, leg 3 (12.7 %)", {12, 0}) ==
        std::vector<std::string>{"in 1.67 km,", "leg 3", "(12.7 %)"});
}

TEST_CASE("a name longer than a line goes on below and loses no letter") {
  const std::string name = "Gro\u00DFglocknerh\u00FCttenversorgungsweg";
  const auto lines = folded("at " + name + " end", {20, 2});
  for (const std::string& line : lines) {
    CHECK(width_of(line) <= 20);
  }
  CHECK(without_breaks(lines) == "at" + name + "end");
}

TEST_CASE("two ends of a line that do not fit beside each other stand below each other") {
  Sheet fits{20};
  fits.both_ends({"left", "right"});
  CHECK(fits.text() == "left           right\n");
  Sheet folds{20};
  folds.both_ends({"a long left end", "right"});
  CHECK(folds.text() == "a long left end\nright\n");
}

TEST_CASE("labelled text hangs in its own column") {
  Sheet sheet{24};
  sheet.labelled({2, 8, "binds"}, "climb traction, 62 %");
  CHECK(sheet.text() == "  binds   climb\n          traction, 62 %\n");
}

}  // namespace
}  // namespace rimehaul::card
