// What never reaches the parser, what it refuses, and how the readers' small parts behave.
#include <doctest/doctest.h>

#include <sys/stat.h>

#include <cmath>
#include <filesystem>
#include <limits>
#include <string>

#include "examples.h"
#include "ports/toml/range.h"
#include "ports/toml/rig_sheets.h"
#include "ports/toml/rules_file.h"
#include "ports/toml/site_file.h"
#include "ports/toml/snow_file.h"

namespace rimehaul::ports::toml {

namespace {

using testing::TestFolder;
using testing::told_of;

using Lines = std::vector<std::string>;

}  // namespace

TEST_CASE("a file that is not there, or is a folder or a pipe, is refused without opening it") {
  const TestFolder folder;
  CHECK(told_of([&] { return read_rules(folder.file("rules.toml")); }) ==
        Lines{"rules.toml: does not exist; write it, or correct its name where it is named"});
  const Lines irregular{
      "rules.toml: is no regular file inside its folder; put the file itself there"};
  const auto file = folder.file("rules.toml");
  std::filesystem::create_directory(file.path);
  CHECK(told_of([&] { return read_rules(file); }) == irregular);
  std::filesystem::remove(file.path);
  REQUIRE(mkfifo(file.path.c_str(), 0600) == 0);
  CHECK(told_of([&] { return read_rules(file); }) == irregular);
}

TEST_CASE("a link within the folder is followed, one that leads out of it is not") {
  const TestFolder folder;
  const TestFolder elsewhere;
  (void)folder.with("rules-2026.toml", "schema = 1\n");
  std::filesystem::create_symlink("rules-2026.toml", folder.file("rules.toml").path);
  CHECK(told_of([&] { return read_rules(folder.file("rules.toml")); }) == Lines{});
  const auto outside = elsewhere.with("rules.toml", "schema = 1\n");
  std::filesystem::create_symlink(outside.path, folder.file("away.toml").path);
  CHECK(told_of([&] { return read_rules(folder.file("away.toml")); }) ==
        Lines{"away.toml: is no regular file inside its folder; put the file itself there"});
}

TEST_CASE("a file of 1 MB is read, one byte more is refused") {
  const TestFolder folder;
  std::string text = "schema = 1\n";
  while (text.size() < 1'000'000) {
    text += "# " + std::string(std::min<std::size_t>(97, 1'000'000 - text.size() - 3), 'x') + "\n";
    if (1'000'000 - text.size() < 3) {
      text += std::string(1'000'000 - text.size(), '\n');
    }
  }
  REQUIRE(text.size() == 1'000'000);
  CHECK(told_of([&] { return read_rules(folder.with("rules.toml", text)); }) == Lines{});
  CHECK(told_of([&] { return read_rules(folder.with("rules.toml", text + "\n")); }) ==
        Lines{"rules.toml: is larger than 1 MB; check that it is the right file"});
}

TEST_CASE("a line that nests a table for each of its dots is refused before it fills the stack") {
  const TestFolder folder;
  std::string dots = "a";
  while (dots.size() < 900'000) {
    dots += ".a";
  }
  CHECK(told_of([&] { return read_rules(folder.with("rules.toml", "[" + dots + "]\n")); }) ==
        Lines{"rules.toml: line 1 is longer than 4096 bytes; break it into several lines"});
  const std::string short_dots = "schema = 1\n[" + dots.substr(0, 4001) + "]\n";
  CHECK(told_of([&] { return read_rules(folder.with("rules.toml", short_dots)); }).size() == 1);
}

TEST_CASE("what is no TOML is refused with its line and column") {
  const TestFolder folder;
  for (const std::string text : {"schema = \n", "schema = 1\n[bulletin\n", "a = \"\xff\"\n",
                                 "\x7f"
                                 "ELF",
                                 "a = [[[[", "a = 1979-02-30\n"}) {
    CAPTURE(text);
    const Lines told = told_of([&] { return read_rules(folder.with("rules.toml", text)); });
    REQUIRE(told.size() == 1);
    CHECK(told.front().starts_with("rules.toml: line "));
    CHECK(told.front().find(", column ") != std::string::npos);
  }
}

TEST_CASE("an empty file lacks its schema and whatever must be there") {
  const TestFolder folder;
  (void)folder.with("site.toml", "");
  CHECK(told_of([&] { return read_site_file(folder.path()); }).size() > 5);
  CHECK(told_of([&] { return read_rules(folder.with("rules.toml", "")); }) ==
        Lines{"rules.toml: line 1 (schema): is missing; add it: schema = 1"});
}

TEST_CASE("letters beyond ASCII stand in quotes and comments alone, and text is of one line") {
  const TestFolder folder;
  const auto told = [&](const std::string& text) {
    return told_of([&] { return read_rules(folder.with("rules.toml", text)); });
  };
  // The mark of the byte order that some editors write; quotes in comments, comments in quotes.
  CHECK(told("\xef\xbb\xbfschema = 1 # \"Grüße\n") == Lines{});
  CHECK(told("schema = 1\n[driver.\"Häse # \\\" 'x\"]\nallowed_share = 0.5 # ü\nmay_tow = true\n"
             "wettest_towing = 'wet'\n") == Lines{});
  CHECK(told("schema = 1\n\"ü\" = 1 ä\n") ==
        Lines{"rules.toml: line 2, column 9: a letter beyond ASCII stands outside of quotes; put "
              "names and texts with such letters in quotes"});
  // No-break space, and the first and last letters that the parser's table of spaces lacks.
  for (const char* letter : {"\u00a0", "\u00a1", "\u00e4", "\u0499", "\u3000", "\uffef"}) {
    CAPTURE(letter);
    const Lines lines = told(std::string{"schema = 1\nmost_wi"} + letter + "nd = 1\n");
    REQUIRE(lines.size() == 1);
    CHECK(lines.front().starts_with("rules.toml: line 2, column 8: a letter beyond ASCII"));
  }
  for (const char* mark : {"\xff\xfe", "\xfe\xff"}) {
    CHECK(told(std::string{mark} + "s") ==
          Lines{"rules.toml: line 1, column 1: the file is UTF-16; store it as UTF-8"});
  }
  for (const char* text : {"2P\"ü\"", "true 'ü'", "'a' \"ü\"", "1.5'ü", "\"a\"\"\""}) {
    CAPTURE(text);
    const Lines lines = told(std::string{"schema = 1\na = "} + text + "\n");
    REQUIRE(lines.size() == 1);
    CHECK(lines.front().find(": a quote stands where no text may begin; ") != std::string::npos);
  }
  CHECK(told("schema = 1\n[driver . \"Häse\"]\r\n\"allowed_share\" = 0.5\n'may_tow' = true\n"
             "wettest_towing = 'wet'\n") == Lines{});
  const Lines several{
      "rules.toml: line 2, column 5: text of several lines is not read; write it on one line, in "
      "single quotes or double"};
  CHECK(told("schema = 1\na = \"\"\"b\\\n ä\"\"\"\n") == several);
  CHECK(told("schema = 1\na = '''b'''\n") == several);
  CHECK(told("schema = 1\n# \"\"\"\n") == Lines{});
}

TEST_CASE("a newer schema is refused in each of the four files") {
  const TestFolder folder;
  const std::string newer = "schema = 2\nunheard_of = true\n";
  const std::string told =
      ": line 1 (schema): schema 2 is newer than this program, which reads schema 1; "
      "use a newer program";
  (void)folder.with("site.toml", newer);
  CHECK(told_of([&] { return read_site_file(folder.path()); }) == Lines{"site.toml" + told});
  CHECK(told_of([&] { return read_rigs(folder.with("rigs.toml", newer)); }) ==
        Lines{"rigs.toml" + told});
  CHECK(told_of([&] { return read_rules(folder.with("rules.toml", newer)); }) ==
        Lines{"rules.toml" + told});
  CHECK(told_of([&] { return read_snow_report(folder.with("snow.toml", newer)); }) ==
        Lines{"snow.toml" + told});
}

TEST_CASE("names with line breaks or terminal codes in them cannot forge a line of the report") {
  const TestFolder folder;
  const Lines told = told_of([&] {
    return read_rules(folder.with("rules.toml",
                                  "schema = 1\n\"a\\nrules.toml: all well\" = 1\n"
                                  "\"\\u001b[2J\" = 1\n"));
  });
  REQUIRE(told.size() == 2);
  for (const std::string& line : told) {
    CHECK(line.find('\n') == std::string::npos);
    CHECK(line.find('\x1b') == std::string::npos);
  }
}

TEST_CASE("a range holds its taken ends, not its left-out end, and no number that is none") {
  const Range taken{.from = 0, .to = 1};
  CHECK(taken.holds(0));
  CHECK(taken.holds(1));
  CHECK_FALSE(taken.holds(std::nextafter(0.0, -1.0)));
  CHECK_FALSE(taken.holds(std::nextafter(1.0, 2.0)));
  const Range above{.above = 0, .to = 1};
  CHECK_FALSE(above.holds(0));
  CHECK(above.holds(std::nextafter(0.0, 1.0)));
  for (const double none : {std::nan(""), std::numeric_limits<double>::infinity(),
                            -std::numeric_limits<double>::infinity()}) {
    CHECK_FALSE(taken.holds(none));
    CHECK_FALSE(Range{}.holds(none));
  }
  CHECK(taken.words() == "from 0 to 1");
  CHECK(above.words() == "above 0, up to 1");
}

}  // namespace rimehaul::ports::toml
