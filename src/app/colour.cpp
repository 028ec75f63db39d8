#include "app/colour.h"

#include <unistd.h>

#include <array>
#include <cstdlib>
#include <string_view>

namespace rimehaul::app {

namespace {

/// Colours by number (ECMA-48, SGR): near those of the printed sheets, and told apart by those who
/// do not tell red from green.
constexpr std::string_view kCyan = "\x1b[36m";
constexpr std::string_view kYellow = "\x1b[33m";
constexpr std::string_view kMagenta = "\x1b[35m";
constexpr std::string_view kPlain = "\x1b[39m";

struct Word {
  std::string_view word;
  std::string_view colour;
};

/// As they are printed in cards, tables and lists.
constexpr std::array kWords{
    Word{"OPEN", kCyan},         Word{"open", kCyan},         Word{"PASSED", kCyan},
    Word{"RESTRICTED", kYellow}, Word{"restricted", kYellow}, Word{"doubt", kYellow},
    Word{"CLOSED", kMagenta},    Word{"closed", kMagenta},    Word{"FAILED", kMagenta},
    Word{"NO ROUTE", kMagenta},  Word{"fault", kMagenta},
};

/// At the start of a line, after a gap of two blanks, or after a colon.
bool stands_apart_before(std::string_view before) {
  return before.empty() || before.ends_with("  ") || before.ends_with(": ");
}

/// Before the end of a line, a gap, a colon, or a share: "open 53 %".
bool stands_apart_after(std::string_view after) {
  return after.empty() || after.starts_with("  ") || after.starts_with(':') ||
         (after.size() > 1 && after[0] == ' ' && after[1] >= '0' && after[1] <= '9');
}

std::string coloured_line(std::string_view line) {
  std::string text;
  std::size_t at = 0;
  while (at < line.size()) {
    const Word* found = nullptr;
    for (const Word& word : kWords) {
      if (line.substr(at).starts_with(word.word) && stands_apart_before(line.substr(0, at)) &&
          stands_apart_after(line.substr(at + word.word.size()))) {
        found = &word;
      }
    }
    if (found != nullptr) {
      text += found->colour;
      text += found->word;
      text += kPlain;
      at += found->word.size();
    } else {
      text += line[at++];
    }
  }
  return text;
}

}  // namespace

bool takes_colour(int descriptor) {
  const char* unwanted = std::getenv("NO_COLOR");
  const char* terminal = std::getenv("TERM");
  return ::isatty(descriptor) == 1 && (unwanted == nullptr || *unwanted == '\0') &&
         terminal != nullptr && *terminal != '\0' && std::string_view{terminal} != "dumb";
}

std::string coloured(const std::string& text) {
  std::string whole;
  std::size_t from = 0;
  while (from < text.size()) {
    const std::size_t end = text.find('\n', from);
    const std::size_t length = (end == std::string::npos ? text.size() : end) - from;
    whole += coloured_line(std::string_view{text}.substr(from, length));
    if (end == std::string::npos) {
      break;
    }
    whole += '\n';
    from = end + 1;
  }
  return whole;
}

}  // namespace rimehaul::app
