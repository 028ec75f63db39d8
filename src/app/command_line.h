// The commands and their options, once: what is parsed, told by help, printed in the manual page
// and offered by completion.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "app/verb.h"

namespace rimehaul::app {

class CommandLine {
 public:
  CommandLine();
  ~CommandLine();
  CommandLine(const CommandLine&) = delete;
  CommandLine& operator=(const CommandLine&) = delete;

  [[nodiscard]] CLI::App& program() { return *program_; }
  [[nodiscard]] std::string aim() const;
  [[nodiscard]] const std::vector<Verb>& verbs() const { return verbs_; }
  [[nodiscard]] std::vector<std::string> verb_names() const;
  /// The command that was parsed; nothing before.
  [[nodiscard]] const Verb* parsed() const;
  /// Its options.
  [[nodiscard]] Command command() const;

 private:
  template <class Options>
  void add(Verb (*adder)(CLI::App&, Options&));

  std::unique_ptr<CLI::App> program_;
  std::vector<Verb> verbs_;
  std::vector<std::function<Command()>> filled_in_;  ///< for each verb
};

/// "rimehaul 0.1.0"
[[nodiscard]] std::string version_line();

}  // namespace rimehaul::app
