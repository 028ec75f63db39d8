// The manual page, in the macros of man(7).
#include "app/help.h"
#include "card/layout.h"

namespace rimehaul::app {

namespace {

/// Text without escapes of its own, and with minus signs that can be copied.
std::string plain(const std::string& text) {
  std::string safe;
  for (const char letter : text) {
    if (letter == '\\') {
      safe += "\\e";
    } else if (letter == '-') {
      safe += "\\-";
    } else {
      safe += letter;
    }
  }
  return safe;
}

class Page {
 public:
  void section(const std::string& title) { line(".SH " + title); }
  void part(const std::string& title) { line(".SS " + title); }
  void paragraph(const std::string& text) {
    line(".PP");
    running(text);
  }
  /// Lines that are no longer than they may be, and never taken for a macro.
  void running(const std::string& text) {
    for (const std::string& each : card::folded(plain(text), {.columns = 78})) {
      line((each.starts_with('.') || each.starts_with('\'') ? "\\&" : "") + each);
    }
  }
  void tagged(const HelpRow& row) {
    line(".TP");
    line("\\fB" + plain(row.words) + "\\fR");
    running(row.means);
  }
  void example(const Example& example) {
    paragraph(example.aim);
    line(".PP");
    line(".RS 4");
    line(".nf");
    for (const std::string& each : example_lines(example.line, 70)) {
      line(plain(each));
    }
    line(".fi");
    line(".RE");
  }
  void line(const std::string& text) { text_ += text + "\n"; }
  [[nodiscard]] const std::string& text() const { return text_; }

 private:
  std::string text_;
};

void add_command(const Help& help, Page& page) {
  page.part(help.verb);
  page.running(help.usage);
  page.paragraph(help.aim);
  for (const std::string& note : help.guide.notes) {
    page.paragraph(note);
  }
  for (const HelpGroup& group : help.groups) {
    if (!group.title.empty()) {
      page.line(".PP");
      page.line("\\fI" + plain(group.title) + "\\fR");
    }
    for (const HelpRow& row : group.rows) {
      page.tagged(row);
    }
  }
  for (const Example& example : help.guide.examples) {
    page.example(example);
  }
  for (const Ending& ending : help.guide.endings) {
    page.paragraph("Ends with " + number_of(ending.status) + " when " + ending.when + ".");
  }
}

void add_surroundings(Page& page) {
  page.section("EXIT STATUS");
  for (const Ending& ending : common_endings()) {
    page.tagged({number_of(ending.status), ending.when});
  }
  page.paragraph(
      "A signal that ends the program, such as Ctrl-C, is told by the shell as 128 and its "
      "number; no file is left half written, and older ones stay as they were.");
  page.section("ENVIRONMENT");
  page.tagged({"NO_COLOR", "When it is set to anything, verdicts are not coloured."});
  page.tagged(
      {"TERM", "dumb: likewise. Colour is used on a terminal alone, and the words say all."});
  page.section("FILES");
  page.tagged({"share/rimehaul/demo",
               "The invented demo site and its heights, beside the program. The examples work in a "
               "copy of this folder."});
  page.tagged({"share/doc/rimehaul", "The reference, the format of a site, every check."});
}

}  // namespace

std::string manual_page(const ProgramHelp& help) {
  Page page;
  page.line(".TH RIMEHAUL 1 \"" RIMEHAUL_DATED "\" \"" + help.version + "\" \"User Commands\"");
  page.section("NAME");
  page.line("rimehaul \\- " + plain("routes for a light tracked carrier over snow"));
  page.section("SYNOPSIS");
  page.line("\\fBrimehaul\\fR \\fIVERB SITE\\fR [\\fIoptions\\fR]");
  page.section("DESCRIPTION");
  page.running(help.aim);
  page.paragraph(
      std::string{"The operator's manual, local rules and the people on the hill outrank it. "} +
      kWhatBracketsMean + " " + kWhatDashMeans);
  page.section("COMMANDS");
  for (const Help& verb : help.helps) {
    add_command(verb, page);
  }
  add_surroundings(page);
  return page.text();
}

}  // namespace rimehaul::app
