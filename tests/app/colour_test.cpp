// Colour: on a terminal that takes it, for verdicts alone, and never the only sign.
#include "app/colour.h"

#include <doctest/doctest.h>

#include <regex>

#include "app/program.h"
#include "app/tiny_site.h"

namespace rimehaul::app {
namespace {

using testing::Ran;
using testing::run_command;
using testing::TinySite;
using testing::told_by_shell;
using testing::told_on_terminal;

bool has_colour(const std::string& text) {
  return text.find('\x1b') != std::string::npos;
}

std::string without_colour(const std::string& text) {
  return std::regex_replace(text, std::regex{"\x1b\\[[0-9;]*m"}, "");
}

TEST_CASE("a verdict that stands apart is coloured, a word within a sentence is not") {
  CHECK(coloured("OPEN        at most 53 %") == "\x1b[36mOPEN\x1b[39m        at most 53 %");
  CHECK(coloured("Crow Top   restricted  closed\n") ==
        "Crow Top   \x1b[33mrestricted\x1b[39m  \x1b[35mclosed\x1b[39m\n");
  CHECK(coloured("Hut    open 50 %") == "Hut    \x1b[36mopen\x1b[39m 50 %");
  CHECK(coloured("heading 062 deg: closed") == "heading 062 deg: \x1b[35mclosed\x1b[39m");
  CHECK(coloured("doubt: x\nfault: y\n") == "\x1b[33mdoubt\x1b[39m: x\n\x1b[35mfault\x1b[39m: y\n");
  for (const char* sentence :
       {"it is open from 16:30 to 24:00", "closed over its 467 m", "  opened  ", "reopen",
        "until then nothing is open by it", "0 faults, 2 doubts: usable", ""}) {
    CHECK(coloured(sentence) == sentence);
  }
}

TEST_CASE("on a terminal verdicts are coloured, and without the colour the text is the same" *
          doctest::skip(testing::no_terminal())) {
  const TinySite site;
  site.change("rigs.toml", {"driver_level = \"seasoned\"", "driver_level = \"visitor\""});
  const std::string check = "\"$rimehaul\" check " + site.folder();
  const testing::Told seen = told_on_terminal(check);
  CAPTURE(seen.out);
  CHECK(seen.ended == 0);
  CHECK(seen.out.find("\x1b[33mdoubt\x1b[39m: rigs") != std::string::npos);
  const std::string piped = told_by_shell(check).out;
  CHECK_FALSE(has_colour(piped));
  CHECK(std::regex_replace(without_colour(seen.out), std::regex{"\r"}, "") == piped);
}

TEST_CASE(
    "NO_COLOR, a dumb terminal, a pipe and JSON take no colour; an empty NO_COLOR says nothing" *
    doctest::skip(testing::no_terminal())) {
  const TinySite site;
  const std::string check = "\"$rimehaul\" check " + site.folder();
  site.change("rigs.toml", {"driver_level = \"seasoned\"", "driver_level = \"visitor\""});
  for (const std::string& plain : {"NO_COLOR=1 " + check, "TERM=dumb " + check, "TERM= " + check,
                                   check + " | cat", check + " --json -"}) {
    CAPTURE(plain);
    const std::string told = told_on_terminal(plain).out;
    CHECK(told.find("doubt") != std::string::npos);
    CHECK_FALSE(has_colour(told));
  }
  CHECK(has_colour(told_on_terminal("NO_COLOR= " + check).out));
}

}  // namespace
}  // namespace rimehaul::app
