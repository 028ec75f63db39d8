// Help teaches by example: every option is told, every example works, also in the manual page.
#include "app/help.h"

#include <doctest/doctest.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <filesystem>
#include <sstream>

#include "app/documents.h"
#include "app/program.h"
#include "app/shell_words.h"
#include "app/workplace.h"

namespace rimehaul::app {
namespace {

using testing::run_command;
using testing::told_by_shell;
using testing::Workplace;

bool says(const std::string& text, std::string_view part) {
  return text.find(part) != std::string::npos;
}

/// With every run of blanks and line ends as one blank, hyphens at line ends kept.
std::string on_one_line(const std::string& text) {
  std::istringstream words{text};
  std::string line;
  for (std::string word; words >> word;) {
    line += (line.empty() ? "" : " ") + word;
  }
  return line;
}

TEST_CASE(
    "help of every command: a sentence, groups, two or more examples, how it ends; 80 columns") {
  const CommandLine line;
  REQUIRE(line.verbs().size() >= 8);
  for (const Verb& verb : line.verbs()) {
    const Help help = help_of(verb);
    CAPTURE(help.verb);
    CHECK(help.aim.ends_with('.'));
    CHECK(help.guide.examples.size() >= 2);
    CHECK_FALSE(help.guide.endings.empty());
    for (const HelpGroup& group : help.groups) {
      CHECK(group.title != "Options");  // the parser's own: nobody chose it
    }
    const std::string text = run_command({help.verb, "--help"}).out;
    CHECK(text == help_text(help));
    std::istringstream lines{text};
    for (std::string each; std::getline(lines, each);) {
      CAPTURE(each);
      CHECK(each.size() <= 80);
    }
    for (const CLI::Option* option : verb.app->get_options()) {
      CHECK(says(text, option->get_name()));
      CHECK(says(on_one_line(text), on_one_line(option->get_description())) !=
            (option->get_name() == "--help"));
    }
  }
}

TEST_CASE("the program's help tells every command apart from what it does") {
  const std::string text = on_one_line(run_command({"--help"}).out);
  const CommandLine line;
  for (const Verb& verb : line.verbs()) {
    CAPTURE(verb.app->get_name());
    CHECK(says(text, " " + verb.app->get_name() + " " + verb.app->get_description()));
  }
}

TEST_CASE("every example of help works as it stands where the demo site lies") {
  const CommandLine line;
  for (const Verb& verb : line.verbs()) {
    const Workplace workplace;
    for (const Example& example : verb.guide.examples) {
      CAPTURE(example.line);
      REQUIRE(example.line.starts_with("rimehaul " + verb.app->get_name() + " "));
      std::string shown;
      for (const std::string& each : example_lines(example.line, 76)) {
        CHECK(each.size() <= 76);
        shown += each + "\n";
      }
      const testing::Told told =
          told_by_shell("rimehaul() { \"$rimehaul\" \"$@\"; }\n{ " + shown + "} 2>&1 >answer");
      CHECK(told.ended == static_cast<int>(example.ends));
      CHECK(told.out.empty());
      CHECK(std::filesystem::file_size("answer") > 60);
    }
  }
}

TEST_CASE("the reference names every option in its command's part, or among those of all") {
  std::string common;
  std::string part;
  std::map<std::string, std::string> parts;
  for (const std::string& each :
       testing::lines_in(std::filesystem::path{RIMEHAUL_ROOT} / "docs" / "commands.md")) {
    if (each.starts_with("## ")) {
      part = each.starts_with("## `") ? each.substr(4, each.find(' ', 4) - 4) : "";
    }
    (part.empty() ? common : parts[part]) += each + "\n";
  }
  const CommandLine line;
  for (const Verb& verb : line.verbs()) {
    const std::string name = verb.app->get_name();
    for (const CLI::Option* option : verb.app->get_options()) {
      CAPTURE(name);
      CAPTURE(option->get_name());
      const std::string& text = parts[name];
      const bool as_for_route =
          says(text, "given as for `route`") && says(parts["route"], option->get_name());
      CHECK((option->get_positional() || says(text, option->get_name()) ||
             says(common, option->get_name()) || as_for_route));
    }
  }
}

TEST_CASE("the manual page has no fault that its formatter finds, and tells all that help tells") {
  for (const char* formatter : {"groff -man -Tutf8 -ww -b -z", "mandoc -Tlint"}) {
    const testing::Told linted =
        told_by_shell(std::string{"\"$rimehaul\" manual-page | "} + formatter + " 2>&1");
    CAPTURE(linted.out);
    CHECK(linted.ended == 0);
    CHECK(linted.out.empty());
  }
  const std::string page = on_one_line(
      told_by_shell("\"$rimehaul\" manual-page | groff -man -Tascii -P-cbou -rLL=200n").out);
  const CommandLine line;
  for (const Verb& verb : line.verbs()) {
    const Help help = help_of(verb);
    CAPTURE(help.verb);
    CHECK(says(page, on_one_line(help.usage)));
    for (const HelpGroup& group : help.groups) {
      for (const HelpRow& row : group.rows) {
        CAPTURE(row.words);
        CHECK(says(page, on_one_line(row.words + " " + row.means)));
      }
    }
    for (const Example& example : help.guide.examples) {
      CHECK(says(page, on_one_line(example.aim)));
    }
  }
  CHECK(says(page, "EXIT STATUS"));
  CHECK(says(page, "NO_COLOR"));
}

}  // namespace
}  // namespace rimehaul::app
