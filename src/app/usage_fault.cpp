#include "app/usage_fault.h"

#include <CLI/CLI.hpp>

#include "app/names.h"

namespace rimehaul::app {

namespace {

std::vector<std::string> option_names(const CLI::App& verb) {
  std::vector<std::string> names;
  for (const CLI::Option* option : verb.get_options()) {
    if (!option->get_positional()) {
      names.push_back(option->get_name());
    }
  }
  return names;
}

/// "--load KG"
std::string as_typed(const CLI::Option& option) {
  return option.get_positional() ? option.get_name()
                                 : option.get_name() + " " + option.get_type_name();
}

std::string where_to_read(const CLI::App& verb) {
  return "; see rimehaul " + verb.get_name() + " --help";
}

std::string not_known(const CLI::App& verb, const std::string& word) {
  if (word.starts_with('-')) {
    const std::string typed = word.substr(0, word.find('='));
    return no_such({"option of " + verb.get_name(), option_names(verb)}, typed);
  }
  return "\"" + word + "\" belongs to no option; put a name of several words in quotes" +
         where_to_read(verb);
}

/// What is needed and was not given, or nothing.
std::vector<std::string> still_needed(const CLI::App& verb) {
  std::vector<std::string> needed;
  for (const CLI::Option* option : verb.get_options()) {
    if (option->get_required() && option->count() == 0) {
      needed.push_back(as_typed(*option));
    }
  }
  return needed;
}

/// What the parser says, where it says it well; `what()` opens with the option's name.
std::string in_our_words(const CLI::App& verb, const CLI::ParseError& error) {
  std::string said = error.what();
  if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr) {
    const CLI::Option* option = verb.get_option_no_throw(said.substr(0, said.find(':')));
    if (option != nullptr && option->get_items_expected() == 0) {
      return option->get_name() + " stands alone, without a value";
    }
    if (option != nullptr) {
      return "write " + as_typed(*option) + ", once";
    }
  }
  return said;
}

std::string verb_wanted(const CommandLine& line, const std::vector<std::string>& unknown) {
  const Named verbs{"command", line.verb_names()};
  if (unknown.empty()) {
    return "which command? There is " + listed(verbs.known, " and ") + "; see rimehaul --help";
  }
  if (unknown.front().starts_with('-')) {
    return no_such({"option before the command", {"--help", "--version"}}, unknown.front());
  }
  const std::string line_about = no_such(verbs, unknown.front());
  return line_about.ends_with('?') ? line_about : line_about + "; see rimehaul --help";
}

}  // namespace

std::string usage_fault(CommandLine& line, const CLI::ParseError& error) {
  const std::vector<std::string> unknown = line.program().remaining(true);
  const Verb* verb = line.parsed();
  if (verb == nullptr) {
    return verb_wanted(line, unknown);
  }
  if (!unknown.empty()) {
    return not_known(*verb->app, unknown.front());
  }
  if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
    if (const auto needed = still_needed(*verb->app); !needed.empty()) {
      return verb->app->get_name() + " needs " + listed(needed, " and ") +
             where_to_read(*verb->app);
    }
  }
  const std::string why = in_our_words(*verb->app, error);
  return why.ends_with('?') ? why : why + where_to_read(*verb->app);
}

}  // namespace rimehaul::app
