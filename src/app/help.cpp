#include "app/help.h"

#include <CLI/CLI.hpp>
#include <algorithm>

#include "app/option_groups.h"

namespace rimehaul::app {

namespace {

/// "--load KG"; what stands alone has no value.
std::string words_for(const CLI::Option& option) {
  const std::string value = option.get_type_name();
  if (option.get_positional()) {
    return option.get_name();
  }
  return option.get_name() + (option.get_items_expected() == 0 ? "" : " " + value);
}

std::string means(const CLI::Option& option) {
  return option.get_description() + (option.get_required() ? "; needed" : "");
}

bool is_help(const CLI::Option& option) {
  return option.get_name() == "--help";
}

HelpGroup& group_called(const std::string& title, std::vector<HelpGroup>& groups) {
  const auto found = std::ranges::find(groups, title, &HelpGroup::title);
  if (found != groups.end()) {
    return *found;
  }
  groups.push_back({title, {}});
  return groups.back();
}

/// As the options were added, but what is answered comes last.
std::vector<HelpGroup> groups_of(const CLI::App& verb) {
  std::vector<HelpGroup> groups;
  HelpGroup answer{kAnswerGroup, {}};
  for (const CLI::Option* option : verb.get_options()) {
    if (is_help(*option)) {
      continue;
    }
    const HelpRow row{words_for(*option), means(*option)};
    if (option->get_positional()) {
      group_called("", groups).rows.push_back(row);
    } else if (option->get_group() == kAnswerGroup) {
      answer.rows.push_back(row);
    } else {
      group_called(option->get_group(), groups).rows.push_back(row);
    }
  }
  answer.rows.push_back({"--help", "Say this"});
  groups.push_back(std::move(answer));
  return groups;
}

std::string usage_of(const CLI::App& verb) {
  std::string usage = "rimehaul " + verb.get_name();
  for (const CLI::Option* option : verb.get_options()) {
    if (option->get_required()) {
      usage += " " + words_for(*option);
    }
  }
  return usage + " [options]";
}

}  // namespace

Help help_of(const Verb& verb) {
  return {.verb = verb.app->get_name(),
          .aim = verb.app->get_description(),
          .usage = usage_of(*verb.app),
          .groups = groups_of(*verb.app),
          .guide = verb.guide};
}

ProgramHelp help_of(const CommandLine& line) {
  ProgramHelp help{.aim = line.aim(), .verbs = {}, .helps = {}, .version = version_line()};
  for (const Verb& verb : line.verbs()) {
    help.helps.push_back(help_of(verb));
    help.verbs.push_back({help.helps.back().verb, help.helps.back().aim});
  }
  return help;
}

std::string number_of(Status status) {
  return std::to_string(static_cast<int>(status));
}

std::vector<Ending> common_endings() {
  return {{Status::yes, "yes"},
          {Status::honest_no, "the honest answer is no"},
          {Status::wrong_usage, "wrong usage: the line says what was probably meant"},
          {Status::bad_input,
           "bad input, or an answer that cannot be written: the line says which "
           "file, where in it, and what to do"},
          {Status::our_fault, "a fault of the program, which then gives no answer"}};
}

}  // namespace rimehaul::app
