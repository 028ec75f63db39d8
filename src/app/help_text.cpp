// The help of the program and of each command, as text.
#include <algorithm>

#include "app/answer.h"
#include "app/help.h"
#include "app/shell_words.h"
#include "card/layout.h"

namespace rimehaul::app {

namespace {

constexpr const char* kWhereExamplesRun =
    "Examples: they work where the demo site lies (a checkout, share/rimehaul/demo)";
/// Column of what an option means; longer words have a line of their own.
constexpr int kMeans = 26;

void add_rows(const std::vector<HelpRow>& rows, card::Sheet& sheet) {
  for (const HelpRow& row : rows) {
    sheet.labelled({.indent = 2, .width = kMeans, .words = row.words}, row.means);
  }
}

void add_example(const Example& example, card::Sheet& sheet) {
  sheet.labelled({.indent = 2, .width = 0, .words = ""}, example.aim);
  for (const std::string& line : example_lines(example.line, kColumns - 4)) {
    sheet.as_it_stands("    " + line);
  }
}

void add_endings(const std::vector<Ending>& endings, card::Sheet& sheet) {
  for (const Ending& ending : endings) {
    sheet.labelled({.indent = 2, .width = 3, .words = number_of(ending.status)}, ending.when);
  }
}

}  // namespace

std::vector<std::string> example_lines(const std::string& example, int columns) {
  std::vector<std::string> lines;
  std::string line;
  for (const std::string& piece : pieces_of_line(example)) {
    const bool fits = static_cast<int>(line.size() + 1 + piece.size() + 2) <= columns;
    if (!line.empty() && !fits) {
      lines.push_back(line + " \\");
      line = "    " + piece;
    } else {
      line += (line.empty() ? "" : " ") + piece;
    }
  }
  lines.push_back(line);
  return lines;
}

std::string help_text(const Help& help) {
  card::Sheet sheet{kColumns};
  sheet.paragraph(help.usage);
  sheet.blank();
  sheet.paragraph(help.aim);
  for (const std::string& note : help.guide.notes) {
    sheet.paragraph(note);
  }
  for (const HelpGroup& group : help.groups) {
    if (group.title.empty()) {
      sheet.blank();
    } else {
      sheet.heading(group.title);
    }
    add_rows(group.rows, sheet);
  }
  sheet.blank();
  sheet.paragraph(kWhatBracketsMean);
  sheet.paragraph(kWhatDashMeans);
  sheet.heading(kWhereExamplesRun);
  for (const Example& example : help.guide.examples) {
    add_example(example, sheet);
  }
  sheet.heading("Exit status, beside those of every command (rimehaul --help)");
  add_endings(help.guide.endings, sheet);
  return sheet.text();
}

std::string help_text(const ProgramHelp& help) {
  card::Sheet sheet{kColumns};
  sheet.paragraph("rimehaul VERB SITE [options]");
  sheet.blank();
  sheet.paragraph(help.aim);
  sheet.heading("Verbs; rimehaul VERB --help says more, with examples");
  int longest = 0;
  for (const HelpRow& row : help.verbs) {
    longest = std::max(longest, card::width_of(row.words));
  }
  for (const HelpRow& row : help.verbs) {
    sheet.labelled({.indent = 2, .width = longest + 1, .words = row.words}, row.means);
  }
  sheet.heading("Options");
  add_rows({{"--help, or help", "Say this"},
            {"help VERB", "Say what VERB --help does"},
            {"--version", "Say which version this is"}},
           sheet);
  sheet.heading(kWhereExamplesRun);
  for (const Help& verb : help.helps) {
    if (verb.verb == "check" || verb.verb == "route") {
      add_example(verb.guide.examples.front(), sheet);
    }
  }
  sheet.heading("Exit status");
  add_endings(common_endings(), sheet);
  return sheet.text();
}

}  // namespace rimehaul::app
