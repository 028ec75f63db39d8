#include "app/options.h"

#include <CLI/CLI.hpp>
#include <ostream>

#include "app/command_line.h"
#include "app/complete.h"
#include "app/help.h"
#include "app/plain_words.h"
#include "app/usage_fault.h"

namespace rimehaul::app {

namespace {

/// What is asked by the shell and by the build, not by people: no help tells of it.
bool answered_behind_the_scenes(const std::vector<std::string>& arguments, const CommandLine& line,
                                std::ostream& out) {
  if (arguments.size() == 3 && arguments[0] == "complete") {
    out << completion_text(line, {.typed = arguments[1], .last = arguments[2]});
    return true;
  }
  if (arguments.size() == 1 && arguments[0] == "manual-page") {
    out << manual_page(help_of(line));
    return true;
  }
  return false;
}

}  // namespace

std::variant<Command, Status> read_command(const std::vector<std::string>& arguments,
                                           const Outside& outside) {
  CommandLine line;
  if (answered_behind_the_scenes(arguments, line, outside.out)) {
    return Status::yes;
  }
  expect_plain_words(arguments);
  std::vector<std::string> reversed{arguments.rbegin(), arguments.rend()};
  try {
    line.program().parse(std::move(reversed));
  } catch (const CLI::CallForHelp&) {
    const Verb* verb = line.parsed();
    outside.out << (verb != nullptr ? help_text(help_of(*verb)) : help_text(help_of(line)));
    return Status::yes;
  } catch (const CLI::CallForVersion&) {
    outside.out << version_line() << '\n';
    return Status::yes;
  } catch (const CLI::ParseError& error) {
    throw WrongUsage{usage_fault(line, error)};
  }
  return line.command();
}

}  // namespace rimehaul::app
