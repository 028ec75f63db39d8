#include "app/command_line.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <utility>

#include "base/require.h"

namespace rimehaul::app {

CommandLine::CommandLine()
    : program_{std::make_unique<CLI::App>(
          "Where a tracked carrier may go over snow, and how to drive it. A planning aid, not "
          "permission to drive.")} {
  program_->name("rimehaul");
  program_->set_version_flag("--version", version_line());
  program_->require_subcommand(1);
  add(add_new);
  add(add_check);
  add(add_route);
  add(add_errands);
  add(add_payload);
  add(add_explain);
  add(add_snow_day);
  add(add_audit);
  add(add_field_check);
  add(add_limits);
  add(add_board);
  add(add_override);
  add(add_sign);
  add(add_card);
  add(add_recall);
  add(add_slopes);
  add(add_rig_sheet);
  add(add_log);
  add(add_backup);
}

CommandLine::~CommandLine() = default;

template <class Options>
void CommandLine::add(Verb (*adder)(CLI::App&, Options&)) {
  const auto options = std::make_shared<Options>();
  verbs_.push_back(adder(*program_, *options));
  filled_in_.push_back([options] { return Command{*options}; });
}

std::string CommandLine::aim() const {
  return program_->get_description();
}

std::vector<std::string> CommandLine::verb_names() const {
  std::vector<std::string> names;
  names.reserve(verbs_.size());
  for (const Verb& verb : verbs_) {
    names.push_back(verb.app->get_name());
  }
  return names;
}

const Verb* CommandLine::parsed() const {
  const auto found =
      std::ranges::find_if(verbs_, [](const Verb& verb) { return verb.app->parsed(); });
  return found == verbs_.end() ? nullptr : &*found;
}

Command CommandLine::command() const {
  const Verb* verb = parsed();
  base::require(verb != nullptr, "a command was asked for before one was parsed");
  return filled_in_[static_cast<std::size_t>(verb - verbs_.data())]();
}

std::string version_line() {
  return std::string{"rimehaul "} + RIMEHAUL_VERSION;
}

}  // namespace rimehaul::app
