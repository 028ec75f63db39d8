// What help says, as plain data made from the parser's own options; as text and as a manual page.
#pragma once

#include <string>
#include <vector>

#include "app/command_line.h"

namespace rimehaul::app {

struct HelpRow {
  std::string words;  ///< "--load KG"
  std::string means;
};

struct HelpGroup {
  std::string title;
  std::vector<HelpRow> rows;
};

/// The help of one command.
struct Help {
  std::string verb;
  std::string aim;    ///< one sentence
  std::string usage;  ///< with all that is needed
  std::vector<HelpGroup> groups;
  Guide guide;
};

/// The help of the program as a whole.
struct ProgramHelp {
  std::string aim;
  std::vector<HelpRow> verbs;
  std::vector<Help> helps;  ///< of each verb
  std::string version;
};

[[nodiscard]] Help help_of(const Verb& verb);
[[nodiscard]] ProgramHelp help_of(const CommandLine& line);

// Sentences that help and the manual page both need.
inline constexpr const char* kWhatBracketsMean =
    "In brackets: what is taken when the option is not given.";
inline constexpr const char* kWhatDashMeans =
    "An answer's FILE may be -: standard output, in place of the text.";

[[nodiscard]] std::string number_of(Status status);

/// What every exit status means.
[[nodiscard]] std::vector<Ending> common_endings();

/// At most 80 columns wide.
[[nodiscard]] std::string help_text(const Help& help);
[[nodiscard]] std::string help_text(const ProgramHelp& help);

/// An example on lines of at most `columns`, which a shell reads as one; every line but the first
/// is set in.
[[nodiscard]] std::vector<std::string> example_lines(const std::string& example, int columns);

/// The manual page, section 1, in the macros of man(7).
[[nodiscard]] std::string manual_page(const ProgramHelp& help);

}  // namespace rimehaul::app
