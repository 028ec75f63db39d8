// A fault reads as one line: which file, where in it, what is wrong, what to do.
#include "base/fault.h"

#include <doctest/doctest.h>

#include <string>

namespace rimehaul {

namespace {

using base::Fault;
using base::line_of;

}  // namespace

TEST_CASE("a fault names file, place, problem and remedy in one line") {
  const Fault fault{.file = "rigs.toml",
                    .place = "line 12",
                    .problem = "the payload is below 0",
                    .remedy = "write a mass in kilograms"};
  CHECK(line_of(fault) == "rigs.toml: line 12: the payload is below 0; write a mass in kilograms");
}

TEST_CASE("a fault of a whole file, or without a remedy, leaves no loose punctuation") {
  CHECK(line_of({.file = "site.toml", .place = "", .problem = "not found", .remedy = "write it"}) ==
        "site.toml: not found; write it");
  CHECK(line_of({.file = "a", .place = "b", .problem = "c", .remedy = ""}) == "a: b: c");
  CHECK(line_of({.file = "", .place = "", .problem = "c", .remedy = ""}) == "c");
}

TEST_CASE("a name with line breaks or terminal controls in it cannot break the line") {
  const Fault fault{
      .file = "a\nb.toml", .place = "trail \x1b[2J\r\x7f", .problem = "odd", .remedy = "rename it"};
  const std::string line = line_of(fault);
  CHECK(line == "a b.toml: trail  [2J  : odd; rename it");
  for (const char letter : line) {
    CHECK(static_cast<unsigned char>(letter) >= 0x20);
  }
}

TEST_CASE("letters beyond ASCII in a name survive") {
  CHECK(line_of({.file = "Hütte.toml", .place = "", .problem = "odd", .remedy = ""}) ==
        "Hütte.toml: odd");
}

TEST_CASE("bad input carries its fault and prints as its line") {
  const Fault fault{.file = "f", .place = "p", .problem = "q", .remedy = "r"};
  const base::BadInput thrown{fault};
  CHECK(thrown.fault() == fault);
  CHECK(std::string{thrown.what()} == line_of(fault));
  const base::BadInput copy{thrown};
  CHECK(std::string{copy.what()} == line_of(fault));
}

TEST_CASE("a fault stops and a doubt does not, and a fault is the default") {
  CHECK(Fault{}.weight == base::Weight::fault);
  Fault doubt;
  doubt.weight = base::Weight::doubt;
  CHECK_FALSE(doubt == Fault{});
}

}  // namespace rimehaul
