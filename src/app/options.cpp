#include "app/options.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <ostream>

#include "app/command_line.h"
#include "app/complete.h"
#include "app/help.h"
#include "app/output_places.h"
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

/// "help" and "help VERB" ask what "--help" and "VERB --help" do.
std::vector<std::string> with_help_behind(std::vector<std::string> arguments) {
  if (!arguments.empty() && arguments.front() == "help") {
    arguments.erase(arguments.begin());
    arguments.emplace_back("--help");
  }
  return arguments;
}

}  // namespace

std::variant<Command, Status> read_command(const std::vector<std::string>& arguments,
                                           const Outside& outside) {
  CommandLine line;
  if (answered_behind_the_scenes(arguments, line, outside.out)) {
    return Status::yes;
  }
  expect_plain_words(arguments);
  std::vector<std::string> reversed = with_help_behind(arguments);
  std::ranges::reverse(reversed);
  try {
    line.program().parse(std::move(reversed));
  } catch (const CLI::CallForHelp& call) {
    const Verb* verb = line.parsed();
    if (verb == nullptr && !line.program().remaining(true).empty()) {
      throw WrongUsage{usage_fault(line, call)};
    }
    outside.out << (verb != nullptr ? help_text(help_of(*verb)) : help_text(help_of(line)));
    return Status::yes;
  } catch (const CLI::CallForVersion&) {
    outside.out << version_line() << '\n';
    return Status::yes;
  } catch (const CLI::ParseError& error) {
    throw WrongUsage{usage_fault(line, error)};
  }
  expect_free_places(*line.parsed()->app);
  return line.command();
}

}  // namespace rimehaul::app
